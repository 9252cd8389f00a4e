"""Whether pictures that follow one another flash more than WCAG 2.2, success criterion 2.3.1, allows.

Allowed are no more than three general and no more than three red flashes within any one second, or flashes whose area
at any one time is no more than a quarter of any 10 degrees of the visual field (W3C, WCAG 2.2; READ in the w3c/wcag
repository). A flash is a pair of opposing changes:

* general: of relative luminance, by a tenth of the maximum or more, the darker image below 0.80;
* red: to or from a saturated red, the two colours more than 0.2 apart in CIE 1976 u', v'.

Where the wording leaves a choice, the stricter reading is taken:

* Seven changes to and fro in less than a second are more than three flashes: three and a half.
* A change is from one peak or valley to the next, however many frames it takes. (Of the cases labelled in the open data
  set pse-test-media, READ, those whose ramps take several frames are labelled as passing; here they don't.)
* The picture is taken to fill the screen, so 10 degrees are a third of its width and height (341 x 256 of 1024 x 768
  pixels: WCAG's own figures, READ), wherever in it they are looked at.
* What counts is the area that flashes too often pixel by pixel, and the flashes of areas, wherever in the 10 degrees
  each next one is. The exception for fine patterns is not made.

What is found nothing against is not thereby safe: see `planeproof.pictures.caution`.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

import numpy as np
from numpy.typing import NDArray

from planeproof.pictures.marks import Canvas
from planeproof.pictures.opposing import Luminance, Mask, Opposing, Redness

CHANGES = 7
"""Opposing changes within a second that are more than three flashes."""

FIELDS = 3
"""How many 10-degree fields there are across a screen that the picture fills, and down."""

PART_OF_FIELD = Fraction(1, 4)
"""How much of a field may flash."""

_LONG_AGO = -(1 << 40)


@dataclass(frozen=True, kw_only=True)
class Excess:
    """The first second in which a limit is exceeded.

    ``kind`` is ``general`` or ``red``. ``changes`` opposing changes lie in frames ``first`` to ``last``, less than a
    second apart. ``area`` is the share that flashes of the 10-degree field with the centre ``field`` (x, y in pixels).
    """

    kind: str
    first: int
    last: int
    changes: int
    area: float
    field: tuple[int, int]

    def __str__(self) -> str:
        return (
            f"{self.kind} flashes: {self.changes / 2:g} within one second (3 are allowed) in frames {self.first} to "
            f"{self.last}, over {self.area:.0%} of the 10-degree field round pixel {self.field} (25% is allowed)"
        )


def excesses(frames: Iterable[Canvas], period: Fraction) -> tuple[Excess, ...]:
    """The first excess of each kind, nothing where the limits are kept.

    ``frames`` are RGB arrays (height, width, 3) of one size, each shown for ``period`` seconds.
    """
    found: dict[str, Excess] = {}
    watches: list[_Watch] = []
    held: Canvas | None = None
    for number, frame in enumerate(frames):
        if held is None:
            watches = [_Watch("general", frame, Luminance(frame)), _Watch("red", frame, Redness(frame))]
        elif not np.array_equal(frame, held):
            for watch in watches:
                excess = watch.see(frame, number, period)
                if excess is not None:
                    found.setdefault(watch.kind, excess)
        held = frame
    return tuple(found.values())


class _Watch:
    """Watches for flashes of one kind: those of each pixel, and those of areas in each 10-degree field."""

    def __init__(self, kind: str, frame: Canvas, opposing: Opposing) -> None:
        self.kind = kind
        self._opposing = opposing
        self._pixels = _Recent(frame.shape[:2])
        fields = in_fields(np.zeros(frame.shape[:2], dtype=np.bool_)).shape
        self._areas = _Recent(fields)
        self._way = np.zeros(fields, dtype=np.int8)

    def see(self, frame: Canvas, number: int, period: Fraction) -> Excess | None:
        """The excess that this frame, which is unlike the one before, completes."""
        up, down = self._opposing.see(frame)
        self._pixels.add(up | down, number)
        too_often = self._pixels.too_often(number, period)
        return self._of_pixels(too_often, number) or self._of_areas(up, down, number, period)

    def _of_pixels(self, too_often: Mask, number: int) -> Excess | None:
        counts = in_fields(too_often)
        if not _too_large(counts, too_often.shape).any():
            return None
        y, x = np.unravel_index(int(counts.argmax()), counts.shape)
        height, width = field_size(too_often.shape)
        here = too_often[y : y + height, x : x + width]
        first = int(self._pixels.oldest[y : y + height, x : x + width][here].min())
        return self._excess(first, number, int(counts[y, x]), (int(y), int(x)), too_often.shape)

    def _of_areas(self, up: Mask, down: Mask, number: int, period: Fraction) -> Excess | None:
        rising, falling = _too_large(in_fields(up), up.shape), _too_large(in_fields(down), up.shape)
        way = np.where(rising & falling, np.where(self._way > 0, -1, 1), rising.astype(np.int8) - falling)
        self._areas.add((way != 0) & (way != self._way), number)
        self._way = np.where(way != 0, way, self._way).astype(np.int8)
        too_often = self._areas.too_often(number, period)
        if not too_often.any():
            return None
        y, x = np.argwhere(too_often)[0]
        count = int(in_fields(up | down)[y, x])
        return self._excess(int(self._areas.oldest[y, x]), number, count, (int(y), int(x)), up.shape)

    def _excess(self, first: int, last: int, count: int, corner: tuple[int, int], shape: tuple[int, ...]) -> Excess:
        height, width = field_size(shape)
        area = count * FIELDS**2 / (shape[0] * shape[1])
        middle = (corner[1] + width // 2, corner[0] + height // 2)
        return Excess(kind=self.kind, first=first, last=last, changes=CHANGES, area=min(area, 1.0), field=middle)


class _Recent:
    """The frames of the last `CHANGES` changes of each place, the oldest first; shape (CHANGES, height, width)."""

    def __init__(self, shape: tuple[int, ...]) -> None:
        self._frames = np.full((CHANGES, *shape), _LONG_AGO, dtype=np.int64)

    @property
    def oldest(self) -> NDArray[np.int64]:
        """The frame of the oldest of them."""
        return np.asarray(self._frames[0])

    def add(self, where: Mask, number: int) -> None:
        """A change in frame ``number``."""
        self._frames[:-1, where] = self._frames[1:, where]
        self._frames[-1, where] = number

    def too_often(self, number: int, period: Fraction) -> Mask:
        """Where as many changes lie within the second that ends with frame ``number``."""
        return np.asarray((number - self.oldest) * period.numerator < period.denominator)


def field_size(shape: tuple[int, ...]) -> tuple[int, int]:
    """(height, width) in pixels of a 10-degree field of a picture that fills the screen, rounded up."""
    return -(-shape[0] // FIELDS), -(-shape[1] // FIELDS)


def in_fields(mask: Mask) -> NDArray[np.int64]:
    """How many pixels of ``mask`` lie in the field at each place, by its top left corner."""
    height, width = field_size(mask.shape)
    sums = np.pad(mask.astype(np.int64).cumsum(axis=0).cumsum(axis=1), ((1, 0), (1, 0)))
    below, above = sums[height:], sums[:-height]
    return np.asarray(below[:, width:] - below[:, :-width] - above[:, width:] + above[:, :-width])


def _too_large(counts: NDArray[np.int64], shape: tuple[int, ...]) -> Mask:
    """Which counts are more than the part of a field that may flash; exactly, with no rounding of its size."""
    allowed = PART_OF_FIELD * Fraction(shape[0] * shape[1], FIELDS**2)
    return np.asarray(counts * allowed.denominator > allowed.numerator)
