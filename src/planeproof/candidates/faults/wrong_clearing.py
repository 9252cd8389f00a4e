"""Clearing at the wrong time or in the wrong place."""

from collections.abc import Mapping

from planeproof.candidates.reference import LazyClear, Rows
from planeproof.contract import Burst, Picture, Rational


class OnePageCleared(LazyClear):
    """Only page 1, the first to be prepared, is ever cleared, so what was drawn on page 0 comes back later."""

    def entries(self, tiles: Mapping[int, int]) -> dict[int, int]:
        """On page 0, the entries of occupied cells."""
        page, entries = self.machine.page_of(self.hidden), super().entries(tiles)
        if page == 1:
            return entries
        return {address: entries[address] for cell in tiles for address in self.shadow.entry(page, cell, tiles[cell])}


class SeenPageCleared(LazyClear):
    """Idle blankings clear the page that is being seen, so the drawing falls to pieces until the next one comes."""

    def clear(self, cycles: Rational) -> list[Burst]:
        """Clear the other side than is right."""
        self.seen = self.hidden
        sent = super().clear(cycles)
        self.seen = self.hidden
        return sent


class ClearedAsFarAsItGoes(LazyClear):
    """What a blanking had no time to clear counts as cleared, so old cells are seen among the next picture's."""

    def clear(self, cycles: Rational) -> list[Burst]:
        """Clear what fits, and take it for everything."""
        sent = super().clear(cycles)
        self.shadow.bytes |= self.entries({})
        return sent


class TileClearedFirst(Rows):
    """Pattern bytes are emptied before they are written: packed ones hold the seen picture too, which loses lines."""

    def patterns(self, picture: Picture, tiles: Mapping[int, int]) -> dict[int, int]:
        """The bytes, after as many empty ones."""
        wanted = super().patterns(picture, tiles)
        self.outbox.put(self.machine.bursts(dict.fromkeys(wanted, 0), {}))
        return wanted
