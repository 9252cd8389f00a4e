"""Row by row: a row's patterns, then its map row, in one batch."""

from collections.abc import Iterable, Mapping

import numpy as np

from planeproof.candidates.reference.two_sides import TwoSides
from planeproof.contract import Burst, Picture


class Rows(TwoSides):
    """Hidden side; a row of the window that it holds already is kept, tiles and all, and any other is sent whole.

    There is nothing to compare byte by byte, and what is written between two rows is a picture with a clean edge.
    """

    def tiles_for(self, picture: Picture) -> Mapping[int, int] | None:
        """Cells of a row that is kept keep their tiles; the others get free ones, in their order."""
        pool = self.pool
        if len(picture.occupied) > len(pool):
            return None
        named = self.named()
        self.kept = [row for row in self.rows() if self.holds(row, picture, named)]
        kept = [cell for row in self.kept for cell in row if cell in named and picture.planes[cell].any()]
        tiles = {cell: named[cell] for cell in kept}
        used = set(tiles.values())
        free = iter([tile for tile in pool if tile not in used])
        return {cell: tiles[cell] if cell in tiles else next(free) for cell in picture.occupied}

    def send(self, picture: Picture, tiles: Mapping[int, int]) -> None:
        """Each row that is not kept: its patterns, then its entries."""
        entries = self.entries(tiles)
        for row in self.rows():
            if row not in self.kept:
                self.put(self.patterns(picture, {cell: tiles[cell] for cell in row if cell in tiles}))
                self.put({address: entries[address] for address in self.addresses(row)})

    def to_send(self, wanted: Mapping[int, int]) -> Iterable[Burst]:
        """All of a row."""
        return self.machine.bursts(wanted, {})

    def put(self, wanted: Mapping[int, int]) -> None:
        """Put part of a row in the outbox."""
        self.outbox.put(self.to_send(wanted))
        self.shadow.bytes |= wanted

    def rows(self) -> list[range]:
        """The cells of each row of the window."""
        columns = self.machine.window.columns
        return [range(first, first + columns) for first in range(0, self.machine.cells, columns)]

    def addresses(self, row: range) -> range:
        """The addresses of the row's entries, which are neighbours."""
        machine, page = self.machine, self.machine.page_of(self.hidden)
        return range(machine.map_address(page, row[0]), machine.map_address(page, row[-1]) + machine.map.entry_bytes)

    def named(self) -> dict[int, int]:
        """The tiles of the pool that the hidden page names, by cell."""
        page, tile_of = self.machine.page_of(self.hidden), {self.machine.map_entry(tile): tile for tile in self.pool}
        entries = {cell: self.shadow.entry_of(page, cell) for cell in range(self.machine.cells)}
        return {cell: tile_of[entry] for cell, entry in entries.items() if entry in tile_of}

    def holds(self, row: range, picture: Picture, named: Mapping[int, int]) -> bool:
        """Whether the hidden side holds the row of ``picture``; ``named`` are the tiles that its page names."""
        return all(self.holds_cell(cell, picture, named) for cell in row)

    def holds_cell(self, cell: int, picture: Picture, named: Mapping[int, int]) -> bool:
        """Whether it holds one cell: the tile that is named has the bytes, or none is named and there are none."""
        wanted = picture.planes[cell]
        if cell not in named or not wanted.any():
            return cell not in named and not wanted.any()
        return np.array_equal(self.shadow.pattern_of(named[cell], self.hidden), wanted)
