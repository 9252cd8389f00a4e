"""One map page, palette switch alone: a tile holds what is seen in one set of planes, what comes next in the other.

The map is the same before and after the reveal, so cells with different (seen, next) pairs need different tiles.
A map entry may change while it is being seen if the new tile looks the same: it gets the seen pattern too, before
the entry changes.
"""

from collections.abc import Iterable, Mapping

import numpy as np

from planeproof.candidates.reference.outbox import Outbox
from planeproof.candidates.reference.shadow import Shadow
from planeproof.contract import Answer, Burst, Machine, Picture

Pair = tuple[bytes, bytes]


class Pairs:
    """One map page; the view changes by palette alone."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Show side 0, which is empty."""
        self.machine = machine
        self.seen = 0
        self.outbox = Outbox(machine)
        self.shadow = Shadow(machine)
        self.tile_of = [machine.blank_tile] * machine.cells
        return machine.view_bursts(0)

    def offer(self, picture: Picture) -> Answer:
        """Take the picture if whatever follows it will find a tile for each different pair as well."""
        if self.outbox:
            return Answer.BUSY
        if len(picture.occupied) > self.most:
            return Answer.TOO_BIG
        pairs = [(self._seen_pattern(cell), picture.planes[cell].tobytes()) for cell in range(self.machine.cells)]
        tiles = self.tiles_for(pairs)
        if tiles is None:
            return Answer.TOO_BIG
        self._release(pairs)
        self._send_patterns(tiles)
        self._send_entries([tiles[pair] for pair in pairs])
        self.reveal()
        return Answer.TAKEN

    @property
    def most(self) -> int:
        """Half the cap: what any two pictures in a row can have, for with more the next could be impossible."""
        return self.machine.cap // 2

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Send what fits."""
        return self.outbox.fill(cycles)

    def reveal(self) -> None:
        """Turn the palette, and nothing else, to the hidden planes once all is sent."""
        self.outbox.put_together(self.machine.bursts(self._palette(1 - self.seen), self._palette(self.seen)))
        self.seen = 1 - self.seen

    def _palette(self, side: int) -> dict[int, int]:
        return dict(enumerate(self.machine.palette_showing(side), self.machine.palette_address))

    def tiles_for(self, pairs: list[Pair]) -> dict[Pair, int] | None:
        """A tile for each different pair, None if the pool has not enough.

        A tile that is being seen keeps the pair of the first of its cells; the other pairs get free tiles.
        """
        empty = bytes(8 * self.machine.tiles.depth)
        tiles: dict[Pair, int] = {(empty, empty): self.machine.blank_tile}
        being_seen = {self.tile_of[cell] for cell, (seen, _) in enumerate(pairs) if seen != empty}
        kept: set[int] = set()
        for cell, pair in enumerate(pairs):
            tile = self.tile_of[cell]
            if pair not in tiles and pair[0] != empty and tile not in kept:
                tiles[pair] = tile
                kept.add(tile)
        free = (tile for tile in self.machine.pool if tile not in being_seen)
        for pair in pairs:
            if pair not in tiles:
                tile = next(free, -1)
                if tile < 0:
                    return None
                tiles[pair] = tile
        return tiles

    def _seen_pattern(self, cell: int) -> bytes:
        return self.shadow.pattern_of(self.tile_of[cell], self.seen).tobytes()

    def _release(self, pairs: list[Pair]) -> None:
        """Cells that look empty name the blank tile, so that their tiles are free to be written."""
        look_empty = [not any(seen) for seen, _ in pairs]
        blank = self.machine.blank_tile
        self._send_entries([blank if empty else tile for empty, tile in zip(look_empty, self.tile_of, strict=True)])

    def _send_patterns(self, tiles: Mapping[Pair, int]) -> None:
        """The seen pattern changes nothing where the tile is being seen, for it holds that already."""
        for (seen, following), tile in tiles.items():
            if tile != self.machine.blank_tile:
                for side, pattern in ((self.seen, seen), (1 - self.seen, following)):
                    rows = np.frombuffer(pattern, dtype=np.uint8).reshape(-1, 8)
                    self._put(self.shadow.pattern(tile, side, rows))

    def _send_entries(self, tile_of: list[int]) -> None:
        """Each entry whole, in one blanking: half of a two-byte entry would name a tile that is nobody's."""
        for cell, tile in enumerate(tile_of):
            entry = self.shadow.entry(0, cell, tile)
            self.outbox.put_together(self.machine.bursts(entry, self.shadow.bytes))
            self.shadow.bytes |= entry
        self.tile_of = tile_of

    def _put(self, wanted: Mapping[int, int]) -> None:
        self.outbox.put(self.machine.bursts(wanted, self.shadow.bytes))
        self.shadow.bytes |= wanted
