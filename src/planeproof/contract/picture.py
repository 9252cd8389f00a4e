"""A picture: what the renderer wants seen next, as bytes per cell; and the answers to it."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum
from functools import cached_property
from typing import Self

import numpy as np
from numpy.typing import ArrayLike, NDArray

from planeproof.contract.errors import SceneError, require
from planeproof.contract.layout import TILE_SIDE, ByteDirection


class Answer(Enum):
    """What a scheduler says to a picture.

    ``TAKEN``: it will be shown, whole, after those taken before. ``BUSY``: offer it again next refresh.
    ``TOO_BIG``: it will not be shown.
    """

    TAKEN = "taken"
    BUSY = "busy"
    TOO_BIG = "too big"


@dataclass(frozen=True, eq=False)
class Picture:
    """One picture. ``number`` counts from 0 in the order of the scene.

    ``rows`` is a read-only uint8 array of shape (cells, 8), or (cells, depth, 8) where a pixel has ``depth``
    bits: the bytes of each cell as they are written to a plane, the lowest bit of the pixels first. Build one
    with `from_rows`, which copies, so that nobody can change it afterwards.
    """

    number: int
    rows: NDArray[np.uint8]

    @classmethod
    def from_rows(cls, number: int, rows: ArrayLike) -> Self:
        """A picture from anything of shape (cells, 8) or (cells, depth, 8) with values 0..255."""
        array = np.asarray(rows)
        shaped = array.ndim in (2, 3) and array.shape[-1] == TILE_SIDE and array.shape[0] > 0
        require(shaped, SceneError, "picture.rows", array.shape, "must have the shape (cells, 8) or (cells, depth, 8)")
        whole = array.dtype.kind in "iu" and array.min() >= 0 and array.max() <= 255
        require(bool(whole), SceneError, "picture.rows", array.dtype.name, "must hold whole numbers from 0 to 255")
        # A view of an immutable bytes object: no candidate can make it writable again.
        frozen = np.frombuffer(array.astype(np.uint8).tobytes(), dtype=np.uint8).reshape(array.shape)
        return cls(number, frozen)

    def __repr__(self) -> str:
        return f"<picture {self.number}: {len(self.occupied)} of {len(self.rows)} cells occupied>"

    def __reduce__(self) -> tuple[object, tuple[int, NDArray[np.uint8]]]:
        return type(self).from_rows, (self.number, self.rows)  # or the rows would come back writable

    @cached_property
    def occupied(self) -> tuple[int, ...]:
        """The numbers of the cells that are not empty."""
        return tuple(np.flatnonzero(self.planes.any(axis=(1, 2))).tolist())

    @property
    def planes(self) -> NDArray[np.uint8]:
        """``rows`` as (cells, depth, 8), whatever the depth."""
        return self.rows.reshape(len(self.rows), -1, TILE_SIDE)

    @property
    def depth(self) -> int:
        """Bits per pixel."""
        return int(self.planes.shape[1])

    def renumbered(self, number: int) -> "Picture":
        """The same picture under another number."""
        return Picture(number, self.rows)

    def pixels(self, direction: ByteDirection) -> NDArray[np.uint8]:
        """Pixel values (cells, 8, 8), indexed [cell, y, x]; ``direction`` is the machine's ``tiles.byte``."""
        bits = np.unpackbits(self.planes, axis=2).reshape(*self.planes.shape, TILE_SIDE)
        values: NDArray[np.uint8] = bits[:, 0]
        for bit in range(1, self.depth):
            values = values | bits[:, bit] << np.uint8(bit)
        return values if direction is ByteDirection.ROW else values.transpose(0, 2, 1)

    @classmethod
    def from_pixels(cls, number: int, pixels: NDArray[np.uint8], *, depth: int, direction: ByteDirection) -> Self:
        """A picture from pixel values (cells, 8, 8), indexed [cell, y, x], each below 2^depth."""
        lines = pixels if direction is ByteDirection.ROW else pixels.transpose(0, 2, 1)
        planes = np.stack([np.packbits(lines >> bit & 1, axis=2)[:, :, 0] for bit in range(depth)], axis=1)
        return cls.from_rows(number, planes[:, 0] if depth == 1 else planes)


def same_rows(one: Sequence[Picture], other: Sequence[Picture]) -> bool:
    """Whether two sequences hold the same pictures byte for byte."""
    return len(one) == len(other) and all(np.array_equal(a.rows, b.rows) for a, b in zip(one, other, strict=True))
