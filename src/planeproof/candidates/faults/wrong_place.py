"""Bytes that go where they should not: another plane, another row, the rest of the screen."""

from collections.abc import Mapping

import numpy as np

from planeproof.candidates.reference import Delta, Fresh, Pairs, SplitPool
from planeproof.candidates.reference.pairs import Pair
from planeproof.contract import TILE_SIDE, Burst, Picture


class PatternsToSeenPlane(Fresh):
    """Patterns go to the plane that is seen, not to the hidden one, so what the reveal shows is empty."""

    def patterns(self, picture: Picture, tiles: Mapping[int, int]) -> dict[int, int]:
        """The bytes of the seen side."""
        wanted: dict[int, int] = {}
        for cell, tile in tiles.items():
            wanted |= self.shadow.pattern(tile, self.seen, picture.planes[cell])
        return wanted


class WrongPitch(Fresh):
    """Rows of the window are taken to follow one another in the map, so the second one runs into the panel."""

    def entries(self, tiles: Mapping[int, int]) -> dict[int, int]:
        """Entries one after the other from the window's first."""
        machine, size = self.machine, self.machine.map.entry_bytes
        first = machine.map_address(machine.page_of(self.hidden), 0)
        wanted: dict[int, int] = {}
        for cell in range(machine.cells):
            entry = machine.map_entry(tiles.get(cell, machine.blank_tile))
            wanted |= {first + cell * size + i: byte for i, byte in enumerate(entry)}
        return wanted


class CountsTilesFromOne(Fresh):
    """Tiles are counted from one, so the last of the pool lies past the end of memory, and its cell shows nothing."""

    def patterns(self, picture: Picture, tiles: Mapping[int, int]) -> dict[int, int]:
        """Each pattern one tile further on."""
        wanted = super().patterns(picture, tiles)
        return {address + self.machine.tile_bytes: byte for address, byte in wanted.items()}

    def entries(self, tiles: Mapping[int, int]) -> dict[int, int]:
        """Each entry names the tile after."""
        page = self.machine.page_of(self.hidden)
        after = {self.machine.map_address(page, cell): (tile + 1) % 256 for cell, tile in tiles.items()}
        return super().entries(tiles) | after


class PoolBeginsTooEarly(Delta):
    """The pool is taken to begin one tile early, so the first cell of a picture overwrites a tile of the panel."""

    @property
    def pool(self) -> tuple[int, ...]:
        """The pool, moved down by one."""
        tiles = super().pool
        return (tiles[0] - 1, *tiles[:-1])


class PanelColours(Delta):
    """The reveal writes the palette from its first entry, not from the window's, so the panel changes its colours."""

    def reveal(self) -> None:
        """The window's colours at the beginning of the whole palette."""
        machine, side = self.machine, self.hidden
        palette = Burst(machine.palette_address - machine.colours.first_entry, machine.palette_showing(side))
        page = Burst(machine.page_address, bytes([machine.page_of(side)]))
        self.outbox.put_together((palette, page))
        self.seen = side


class BlankTileWritten(Fresh):
    """Patterns are sent for empty cells too, into the blank tile, which all of the screen's empty places share."""

    def patterns(self, picture: Picture, tiles: Mapping[int, int]) -> dict[int, int]:
        """The patterns, and eight empty bytes where any cell is empty."""
        wanted = super().patterns(picture, tiles)
        if len(tiles) == self.machine.cells:
            return wanted
        empty = np.zeros((self.machine.tiles.depth, TILE_SIDE), dtype=np.uint8)
        return wanted | self.shadow.pattern(self.machine.blank_tile, self.hidden, empty)


class PanelTileForBlank(Delta):
    """Empty cells name a tile of the panel that is empty today, so what the panel draws in it is seen."""

    def entries(self, tiles: Mapping[int, int]) -> dict[int, int]:
        """The first tile that is neither blank nor of the pool stands for the blank one."""
        machine = self.machine
        taken = {*machine.pool, *machine.blank_tiles}
        panel = next((tile for tile in range(machine.tiles_per_bank) if tile not in taken), machine.blank_tile)
        return super().entries(dict.fromkeys(range(machine.cells), panel) | dict(tiles))


class SeenPlaneToo(Pairs):
    """The next pattern is written to both planes of a tile, so a cell changes before the rest."""

    def _send_patterns(self, tiles: Mapping[Pair, int]) -> None:
        for (_, following), tile in tiles.items():
            super()._send_patterns({(following, following): tile})


class PoolNotSplit(SplitPool):
    """Both sides use the whole pool though a tile has but one plane, so the next picture is drawn over the seen one."""

    @property
    def pool(self) -> tuple[int, ...]:
        """All of it, whichever side."""
        return self.machine.pool
