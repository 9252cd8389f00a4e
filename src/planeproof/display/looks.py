"""Frames and looks: what the viewer can tell apart.

A frame is an int16 array (height, width) of the window in pixels. Each value is a palette byte; where several
bytes show the same colour, the least of them stands for all, so two frames look alike exactly if they are equal.
"""

from functools import lru_cache
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import TILE_SIDE, Colours, Machine, Picture

Frame = NDArray[np.int16]
Value = TypeVar("Value", bound=np.generic)

UNDEFINED = -1
"""A pixel of a frame of which nothing can be said."""


@lru_cache(maxsize=64)
def looks(colours: Colours) -> NDArray[np.int16]:
    """For each of the 256 palette bytes the least byte that shows the same colour; shape (256,)."""
    first: dict[tuple[int, int, int], int] = {}
    return np.array([first.setdefault(colours.look(byte), byte) for byte in range(256)], dtype=np.int16)


def look_of(machine: Machine, picture: Picture) -> Frame:
    """The frame that shows ``picture`` whole."""
    shades = looks(machine.colours)[[machine.colours.background, *machine.colours.inks]]
    return shades.take(arranged(machine, picture.pixels(machine.tiles.byte)))


def blank_frame(machine: Machine) -> Frame:
    """The frame that is background all over."""
    height, width = machine.window.rows * TILE_SIDE, machine.window.columns * TILE_SIDE
    return np.full((height, width), looks(machine.colours)[machine.colours.background], dtype=np.int16)


def arranged(machine: Machine, cells: NDArray[Value]) -> NDArray[Value]:
    """Cells of shape (cells, 8, 8), put in their places in the window: shape (height, width)."""
    rows, columns = machine.window.rows, machine.window.columns
    grid = cells.reshape(rows, columns, TILE_SIDE, TILE_SIDE)
    return grid.transpose(0, 2, 1, 3).reshape(rows * TILE_SIDE, columns * TILE_SIDE)
