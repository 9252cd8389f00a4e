"""Pictures for the page: each different one is kept once, however often it is shown."""

import base64
import io
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from planeproof.contract import TILE_SIDE, Machine
from planeproof.display import UNDEFINED, Frame
from planeproof.pictures.colours import GROUND
from planeproof.pictures.compared import MARKS, SHADED
from planeproof.pictures.frames import displayed, in_colours
from planeproof.pictures.marks import Canvas, canvas, painted
from planeproof.pictures.shape import Enlargement, pixel_shape
from planeproof.report.strip import Cut

Value = TypeVar("Value", bound=np.generic)
Values = NDArray[np.integer]
Draw = Callable[[Machine, Values], Canvas]

WIDE, HIGH = 320, 136
"""Units of the page that a picture in a row is wide and high at most, unless a single scale is more."""

WIDER, HIGHER = 420, 216
"""The same for the pictures at the head of the page."""

FINE = 4
"""Pixels a side that a pixel takes where marks or hatching need some to have a shape."""

LARGER = Enlargement(across=FINE, down=FINE, shape=Fraction(1))
"""As large as that; the shape of the display's pixels is the page's affair."""

GRIDDED = 16
"""Cells up to which a picture is ruled into cells."""


@dataclass(frozen=True, kw_only=True)
class Box:
    """A rectangle marked on a picture, in units of it."""

    x: float
    y: float
    width: float
    height: float


@dataclass(frozen=True, kw_only=True)
class Shot:
    """One picture where it is shown: ``image`` is its number in the gallery, None where there is nothing to show.

    ``alt`` says what a reader who can't see it should know; ``width`` and ``height`` are units of the page.
    """

    label: str
    caption: str
    alt: str
    image: int | None = None
    width: int = 0
    height: int = 0
    box: Box | None = None


@dataclass(frozen=True, kw_only=True, eq=False)
class Print:
    """One picture of the gallery; ``pixels`` has shape (height, width, 3).

    ``wide`` and ``high`` are its size in units, by the shape of the display's pixels; ``grid`` rules it into cells.
    """

    number: int
    pixels: Canvas
    wide: float
    high: float
    grid: str

    @property
    def address(self) -> str:
        """The picture itself as a data: address of a PNG with a palette."""
        held = io.BytesIO()
        packed = self.pixels.astype(np.uint32) @ np.array([1 << 16, 1 << 8, 1], dtype=np.uint32)
        colours, values = np.unique(packed, return_inverse=True)
        image = Image.fromarray(values.reshape(packed.shape).astype(np.uint8))
        image.putpalette(b"".join(int(colour).to_bytes(3, "big") for colour in colours))
        image.save(held, "PNG", bits=_bits(len(colours)), optimize=True)
        return "data:image/png;base64," + base64.b64encode(held.getvalue()).decode("ascii")


@dataclass(kw_only=True)
class Gallery:
    """The different pictures of one page, numbered in the order in which they came."""

    _prints: dict[tuple[object, ...], Print] = field(default_factory=dict)

    def __iter__(self) -> Iterator[Print]:
        return iter(self._prints.values())

    def frame(self, machine: Machine, frame: Frame, words: tuple[str, str, str], *, large: bool = False) -> Shot:
        """A frame in the display's colours; ``words`` are its label, caption and alternative text."""
        return self._shot(machine, frame, _coloured, words, large=large)

    def differences(
        self, machine: Machine, values: NDArray[np.uint8], words: tuple[str, str, str], *, large: bool = False
    ) -> Shot:
        """The marks of `planeproof.pictures.compared` on a ground that is darker in the cells concerned."""
        return self._shot(machine, values, _marked, words, large=large)

    def _shot(self, machine: Machine, values: Values, draw: Draw, words: tuple[str, str, str], *, large: bool) -> Shot:
        label, caption, alt = words
        key = (draw, values.tobytes(), values.shape, machine.colours, pixel_shape(machine))
        if key not in self._prints:  # asked of the values: most frames are drawn a hundred times and coloured once
            self._prints[key] = _print(len(self._prints), draw(machine, values), values.shape, pixel_shape(machine))
        found = self._prints[key]
        widest, highest = (WIDER, HIGHER) if large else (WIDE, HIGH)
        times = max(1, min(int(widest / found.wide), int(highest / found.high)))
        return Shot(
            label=label,
            caption=caption,
            alt=alt,
            image=found.number,
            width=round(found.wide * times),
            height=round(found.high * times),
        )


def part_of(frame: NDArray[Value], cut: Cut) -> NDArray[Value]:
    """The cells of ``cut`` out of a frame, or out of anything with a value a pixel."""
    rows = slice(cut.top * TILE_SIDE, (cut.bottom + 1) * TILE_SIDE)
    return frame[rows, cut.left * TILE_SIDE : (cut.right + 1) * TILE_SIDE]


def box_round(machine: Machine, cut: Cut) -> Box:
    """Where ``cut`` is on a picture of the whole window."""
    shape = float(pixel_shape(machine))
    return Box(
        x=cut.left * TILE_SIDE * shape,
        y=cut.top * TILE_SIDE,
        width=(cut.right - cut.left + 1) * TILE_SIDE * shape,
        height=(cut.bottom - cut.top + 1) * TILE_SIDE,
    )


def _coloured(machine: Machine, frame: Values) -> Canvas:
    """A frame in the display's colours; what is undefined is hatched, for which every pixel is made larger."""
    drawn = frame.astype(np.int16)
    return displayed(machine, drawn, LARGER) if (frame == UNDEFINED).any() else in_colours(machine, drawn)


def _marked(_machine: Machine, values: Values) -> Canvas:
    """Marks of what differs, large enough to have a shape."""
    concerned = _cells(values > 0)
    ground = canvas(values.shape[0] * FINE, values.shape[1] * FINE, GROUND)
    ground[np.kron(concerned, np.ones((TILE_SIDE * FINE,) * 2, dtype=np.bool_))] = SHADED.colour
    return painted(values, MARKS, (FINE, FINE), ground)


def _print(number: int, pixels: Canvas, size: tuple[int, ...], shape: Fraction) -> Print:
    high, columns = size
    wide = round(float(columns * shape), 3)
    return Print(number=number, pixels=pixels, wide=wide, high=high, grid=_grid(columns, high, float(shape)))


def _grid(columns: int, high: int, shape: float) -> str:
    """Lines between cells as the path of an SVG, where there are few."""
    if columns * high > GRIDDED * TILE_SIDE**2:
        return ""
    across = [f"M{x * shape:g} 0V{high}" for x in range(TILE_SIDE, columns, TILE_SIDE)]
    return "".join([*across, *(f"M0 {y}H{columns * shape:g}" for y in range(TILE_SIDE, high, TILE_SIDE))])


def _cells(mask: NDArray[np.bool_]) -> NDArray[np.bool_]:
    rows, columns = (size // TILE_SIDE for size in mask.shape)
    return np.asarray(mask.reshape(rows, TILE_SIDE, columns, TILE_SIDE).any(axis=(1, 3)))


def _bits(colours: int) -> int:
    return next(bits for bits in (1, 2, 4, 8) if colours <= 1 << bits)
