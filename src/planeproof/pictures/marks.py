"""Marks: a colour and a shape together, so that whoever can't tell the colours apart can tell the marks apart.

A mark fills one enlarged pixel or cell (`block`) or an area (`texture`); below three pixels a side there is room for
its colour only.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import Enum

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import RGB
from planeproof.pictures.colours import PAPER

Canvas = NDArray[np.uint8]
"""A picture as RGB, shape (height, width, 3)."""

Mask = NDArray[np.bool_]

PERIOD = 10
"""Pixels from one stripe or dot of a texture to the next, at unit 1."""


class Shape(Enum):
    """What a mark looks like without its colour."""

    SOLID = "solid"
    RING = "ring"
    DOT = "dot"
    STRIPES = "stripes"
    CROSS = "cross"
    BARS = "bars"


@dataclass(frozen=True, kw_only=True)
class Mark:
    """A shape in a colour."""

    shape: Shape
    colour: RGB


def canvas(height: int, width: int, colour: RGB = PAPER) -> Canvas:
    """A ground of one colour."""
    return np.full((height, width, 3), colour, dtype=np.uint8)


def block(shape: Shape, height: int, width: int) -> Mask:
    """The pixels that a mark fills of one block, shape (height, width)."""
    if min(height, width) < 3:
        return np.ones((height, width), dtype=np.bool_)
    return _BLOCKS[shape](height, width)


def texture(shape: Shape, height: int, width: int, unit: int = 1) -> Mask:
    """The pixels that a mark fills of an area, shape (height, width)."""
    y, x = np.mgrid[0:height, 0:width]
    return np.asarray(_TEXTURES[shape](y, x, PERIOD * unit))


def fill(picture: Canvas, place: tuple[slice, slice], mark: Mark, unit: int = 1) -> None:
    """Fill the rectangle ``place`` of ``picture`` with a mark's texture; what lies between is left."""
    part = picture[place]
    part[texture(mark.shape, part.shape[0], part.shape[1], unit)] = mark.colour


def painted(values: NDArray[np.integer], marks: Mapping[int, Mark], size: tuple[int, int], ground: Canvas) -> Canvas:
    """``ground`` with a mark in the place of each value, each place ``size`` (height, width) pixels large.

    ``values`` has shape (rows, columns), ``ground`` is the enlarged picture below it. Values without a mark leave it.
    """
    picture = ground.copy()
    for value, mark in marks.items():
        if (values == value).any():
            picture[np.kron(values == value, block(mark.shape, *size))] = mark.colour
    return picture


# --- one block ---------------------------------------------------------------------------------------------


def _ring(height: int, width: int) -> Mask:
    thick = max(1, min(height, width) // 5)
    mask = np.ones((height, width), dtype=np.bool_)
    mask[thick:-thick, thick:-thick] = False
    return mask


def _dot(height: int, width: int) -> Mask:
    y, x = np.mgrid[0:height, 0:width]
    return np.asarray(((2 * y - height + 1) / height) ** 2 + ((2 * x - width + 1) / width) ** 2 <= 0.36)


def _stripes(height: int, width: int) -> Mask:
    y, x = np.mgrid[0:height, 0:width]
    thick = max(1, min(height, width) // 4)
    return np.asarray((x + y) // thick % 2 == 0)


def _cross(height: int, width: int) -> Mask:
    y, x = np.mgrid[0:height, 0:width]
    across, thick = x * (height - 1) / (width - 1), max(0.5, min(height, width) / 10)
    return np.asarray((abs(across - y) <= thick) | (abs(height - 1 - across - y) <= thick))


def _bars(height: int, width: int) -> Mask:
    thick = max(1, height // 5)
    return np.repeat((np.arange(height) // thick % 2 == 0)[:, None], width, axis=1)


_BLOCKS: dict[Shape, Callable[[int, int], Mask]] = {
    Shape.SOLID: lambda height, width: np.ones((height, width), dtype=np.bool_),
    Shape.RING: _ring,
    Shape.DOT: _dot,
    Shape.STRIPES: _stripes,
    Shape.CROSS: _cross,
    Shape.BARS: _bars,
}

# --- an area -----------------------------------------------------------------------------------------------

_Grid = NDArray[np.integer]


def _frame(y: _Grid, x: _Grid, period: int) -> Mask:
    thick = max(1, period // 4)
    return np.asarray((y < thick) | (x < thick) | (y > y.max() - thick) | (x > x.max() - thick))


_TEXTURES: dict[Shape, Callable[[_Grid, _Grid, int], Mask]] = {
    Shape.SOLID: lambda y, x, period: np.ones_like(y, dtype=np.bool_),
    Shape.RING: _frame,
    Shape.DOT: lambda y, x, period: np.asarray((y % period < period * 0.4) & (x % period < period * 0.4)),
    Shape.STRIPES: lambda y, x, period: np.asarray((x + y) % period < period * 0.5),
    Shape.CROSS: lambda y, x, period: np.asarray(((x + y) % period < period * 0.3) | ((x - y) % period < period * 0.3)),
    Shape.BARS: lambda y, x, period: np.asarray(y % period < period * 0.5),
}
