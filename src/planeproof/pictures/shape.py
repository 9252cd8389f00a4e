"""The shape of a display's pixel, and pixels enlarged by whole numbers so that they keep it.

A machine says its line standard, but not how wide a pixel is. So one is assumed: 6.75 million pixels a second, half the
luma samples of ITU-R BT.601, with one field of lines in every refresh. Then a pixel is as wide to its height as the
sample aspect ratios 12:11 (625 lines) and 10:11 (525 lines) of ITU-T H.264, table E-1 (from memory, not read). On a
display of another pixel rate, say so with a shape of your own.
"""

import math
from dataclasses import dataclass
from fractions import Fraction

from planeproof.contract import Machine

ASSUMED = "6.75 million pixels a second, half the luma samples of ITU-R BT.601"
"""What a pixel's shape rests on where nobody says another."""

_SHAPES = {"625": Fraction(12, 11), "525": Fraction(10, 11)}

WIDEST = 3840
"""Pixels that an enlarged picture may be wide, unless a scale is asked for: the width of a UHD film."""

ROOMY = 960
"""Pixels up to which a small picture is made larger than it need be to keep its shape."""

LARGEST = 64
"""The largest scale."""


def pixel_shape(machine: Machine) -> Fraction:
    """Width of a pixel by its height: by the machine's line standard, 1 for a standard that is neither of the two."""
    return _SHAPES.get(machine.time.standard[:3], Fraction(1))


@dataclass(frozen=True, kw_only=True)
class Enlargement:
    """Every pixel of a display becomes ``across`` x ``down`` pixels; ``shape`` is what they stand for."""

    across: int
    down: int
    shape: Fraction

    @property
    def size(self) -> tuple[int, int]:
        """(height, width) of an enlarged pixel."""
        return self.down, self.across

    @property
    def left_over(self) -> Fraction:
        """Width by height that each pixel of the enlarged picture should still be shown with; 1 if it is exact."""
        return self.shape / Fraction(self.across, self.down)

    def __str__(self) -> str:
        ratio = f"{self.shape.numerator}:{self.shape.denominator}"
        said = f"each pixel of the display is {self.across} x {self.down}, its shape is {ratio}"
        off = abs(1 - float(self.left_over))
        return (
            f"{said}, kept exactly" if not off else f"{said}: {off:.0%} off, which the file's pHYs chunk makes up for"
        )


def enlarged_by(scale: int, shape: Fraction) -> Enlargement:
    """``scale`` pixels down for each, and across the whole number nearest to the shape."""
    return Enlargement(across=max(1, math.floor(scale * shape + Fraction(1, 2))), down=scale, shape=shape)


def fitting(columns: int, shape: Fraction, widest: int = WIDEST, roomy: int = ROOMY) -> Enlargement:
    """The enlargement of ``columns`` pixels beside one another that fits into ``widest``.

    It keeps the shape exactly if that fits: the least scale that does, or, for few pixels, a multiple of it that still
    fits into ``roomy``. Otherwise it is the largest that fits, or 1.
    """
    exact = shape.denominator if shape != 1 else 8
    multiple = min(LARGEST // exact, roomy // (columns * max(1, enlarged_by(exact, shape).across)))
    scales = [exact * max(1, multiple), *range(min(exact, LARGEST), 0, -1)]
    choices = (enlarged_by(scale, shape) for scale in scales if scale <= LARGEST)
    return next((one for one in choices if one.across * columns <= widest), enlarged_by(1, shape))
