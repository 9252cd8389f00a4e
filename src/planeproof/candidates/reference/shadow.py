"""The shadow: what picture memory will hold once everything that was put in the outbox is sent."""

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import ByteDirection, Machine
from planeproof.contract.layout import tile_bits


class Shadow:
    """A copy of pattern and map bytes by address, kept in the scheduler's own memory.

    Picture memory can't be read back. ``bytes`` begins as picture memory does before the set-up.
    """

    def __init__(self, machine: Machine) -> None:
        self.machine = machine
        # Of the window's own cells and tiles only: what is not known here is not written in passing either.
        self.bytes: dict[int, int] = {}
        for page, cell in np.ndindex(machine.map.pages, machine.cells):
            self.bytes |= self.entry(page, cell, machine.blank_tile)
        for tile in machine.pool:
            self.bytes |= dict.fromkeys(range(self._first(tile), self._first(tile) + machine.tile_bytes), 0)
        # Indexed [plane, line, position]: pattern bytes come in lines, whichever way those run over the screen.
        self._bits = tile_bits(machine.tiles.storage, machine.tiles.planes, ByteDirection.ROW)

    def pattern(self, tile: int, side: int, rows: NDArray[np.uint8]) -> dict[int, int]:
        """The bytes, by address, that make the planes of ``side`` of ``tile`` hold ``rows``, shape (depth, 8).

        The other planes of the bytes concerned stay as they are: on packed storage, where a byte holds all planes,
        that is what the shadow is for.
        """
        planes = list(self.machine.planes_of(side))
        offset, place = self._bits.offset[planes], self._bits.bit[planes]
        block = self._block(tile)
        np.bitwise_and.at(block, offset, ~(np.uint8(1) << place))
        np.bitwise_or.at(block, offset, np.unpackbits(rows[:, :, None], axis=2) << place)
        first = self._first(tile)
        return {first + at: int(block[at]) for at in np.unique(offset).tolist()}

    def pattern_of(self, tile: int, side: int) -> NDArray[np.uint8]:
        """What the planes of ``side`` of ``tile`` hold, shape (depth, 8)."""
        planes = list(self.machine.planes_of(side))
        bits = self._block(tile)[self._bits.offset[planes]] >> self._bits.bit[planes] & 1
        return np.packbits(bits, axis=2)[:, :, 0]

    def entry(self, page: int, cell: int, tile: int) -> dict[int, int]:
        """The bytes, by address, that make ``cell`` of ``page`` name ``tile``."""
        first = self.machine.map_address(page, cell)
        return {first + i: byte for i, byte in enumerate(self.machine.map_entry(tile))}

    def entry_of(self, page: int, cell: int) -> bytes:
        """The map entry of ``cell`` on ``page``."""
        first = self.machine.map_address(page, cell)
        return bytes(self.bytes[first + i] for i in range(self.machine.map.entry_bytes))

    def _first(self, tile: int) -> int:
        return self.machine.layout.patterns + tile * self.machine.tile_bytes

    def _block(self, tile: int) -> NDArray[np.uint8]:
        first = self._first(tile)
        return np.array([self.bytes.get(first + at, 0) for at in range(self.machine.tile_bytes)], dtype=np.uint8)
