"""How the bits of a tile lie in its bytes: one small value a storage layout.

A tile has 8 x 8 pixels of ``planes`` bits each and takes ``8 * planes`` bytes. A layout says where bit
``plane`` of the pixel at ``position`` of ``line`` stands: a byte offset within the tile and a bit of that
byte (7 is the highest). A line is a row of pixels, or a column of them where the machine's bytes are
columns; position 0 is the leftmost pixel of a row, the topmost of a column.

To add a layout, add a function and a row to ``Storage``.
"""

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum
from functools import cached_property, lru_cache

import numpy as np
from numpy.typing import NDArray

TILE_SIDE = 8
"""Pixels along one side of a tile, lines in a tile, and pixels in one plane of a line."""

Place = Callable[[int, int, int, int], tuple[int, int]]


def _planar(planes: int, plane: int, line: int, position: int) -> tuple[int, int]:
    return plane * TILE_SIDE + line, 7 - position


def _interleaved(planes: int, plane: int, line: int, position: int) -> tuple[int, int]:
    return line * planes + plane, 7 - position


def _packed(planes: int, plane: int, line: int, position: int) -> tuple[int, int]:
    pixels_per_byte = 8 // planes
    byte, slot = divmod(position, pixels_per_byte)
    return line * planes + byte, (pixels_per_byte - 1 - slot) * planes + plane


class Storage(Enum):
    """Where the planes of a tile stand.

    ``PLANAR``: each plane's 8 bytes together. ``INTERLEAVED``: lines of the planes alternate. ``PACKED``: the
    bits of a pixel are neighbours in one byte, the leftmost pixel in the high bits, plane 0 the lowest bit.
    """

    PLANAR = "planar"
    INTERLEAVED = "interleaved"
    PACKED = "packed"

    @property
    def place(self) -> Place:
        """The function (planes, plane, line, position) -> (byte offset in the tile, bit)."""
        return _PLACES[self]

    def line_offset(self, planes: int, plane: int, line: int) -> int:
        """Offset in the tile of the byte that holds the first pixel of ``line`` in ``plane``."""
        return self.place(planes, plane, line, 0)[0]


_PLACES: dict[Storage, Place] = {
    Storage.PLANAR: _planar,
    Storage.INTERLEAVED: _interleaved,
    Storage.PACKED: _packed,
}


class ByteDirection(Enum):
    """Whether the pixels of one pattern byte stand beside (``ROW``) or below one another (``COLUMN``)."""

    ROW = "row"
    COLUMN = "column"


@dataclass(frozen=True, kw_only=True)
class TileBits:
    """Where every bit of every pixel of a tile stands, as arrays.

    ``offset`` and ``bit`` have shape (planes, 8, 8), indexed [plane, y, x]: byte offset in the tile and bit of
    that byte. ``isolated`` tells whether each byte holds bits of one plane only.
    """

    offset: NDArray[np.intp]
    bit: NDArray[np.uint8]
    isolated: bool

    @property
    def planes(self) -> int:
        """How many planes a tile has."""
        return int(self.offset.shape[0])

    def pixels(self, blocks: NDArray[np.uint8]) -> NDArray[np.uint8]:
        """Pixel values (n, 8, 8) of n tiles given as their bytes, shape (n, 8 * planes)."""
        bits = np.unpackbits(blocks, axis=1).take(self._places, axis=1)
        values: NDArray[np.uint8] = bits[:, 0]
        for plane in range(1, self.planes):
            values = values | bits[:, plane] << np.uint8(plane)
        return values

    @cached_property
    def _places(self) -> NDArray[np.intp]:
        """Place of each bit among all bits of a tile, the highest of a byte first; shape (planes, 8, 8)."""
        return self.offset * 8 + 7 - self.bit


@lru_cache(maxsize=64)
def tile_bits(storage: Storage, planes: int, direction: ByteDirection) -> TileBits:
    """The arrays of one layout; see `TileBits`."""
    offset = np.zeros((planes, TILE_SIDE, TILE_SIDE), dtype=np.intp)
    bit = np.zeros((planes, TILE_SIDE, TILE_SIDE), dtype=np.uint8)
    for plane, line, position in np.ndindex(planes, TILE_SIDE, TILE_SIDE):
        y, x = (line, position) if direction is ByteDirection.ROW else (position, line)
        offset[plane, y, x], bit[plane, y, x] = storage.place(planes, plane, line, position)
    offset.flags.writeable = False
    bit.flags.writeable = False
    return TileBits(offset=offset, bit=bit, isolated=planes == 1 or storage is not Storage.PACKED)
