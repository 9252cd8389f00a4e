"""Columns: where a burst may step a map row at a time, entries are sent column by column."""

from collections.abc import Iterator

from planeproof.candidates.reference.pairs import Pairs
from planeproof.contract import Burst


class Columns(Pairs):
    """One map page, palette alone; entries in bursts down the columns, or along the rows where that is cheaper.

    A drawing that is taller than it is wide changes whole columns of the map. An entry of two bytes can't be written by
    bursts that step over rows without being half old for a while, so such entries are sent one by one.
    """

    @property
    def step(self) -> int:
        """From an entry of one byte to the one below it."""
        return self.machine.window.pitch

    def _send_entries(self, tile_of: list[int]) -> None:
        if self.machine.map.entry_bytes > 1 or self.step not in self.machine.layout.steps:
            super()._send_entries(tile_of)
            return
        wanted: dict[int, int] = {}
        for cell, tile in enumerate(tile_of):
            wanted |= self.shadow.entry(0, cell, tile)
        ways = tuple(self.by_columns(wanted)), self.machine.bursts(wanted, self.shadow.bytes)
        self.outbox.put(min(ways, key=lambda bursts: sum(map(self.machine.cost, bursts))))
        self.shadow.bytes |= wanted
        self.tile_of = tile_of

    def by_columns(self, wanted: dict[int, int]) -> Iterator[Burst]:
        """For each column with changes a burst from the first to the last of them."""
        machine = self.machine
        for column in range(machine.window.columns):
            cells = range(column, machine.cells, machine.window.columns)
            addresses = [machine.map_address(0, cell) for cell in cells]
            changed = [address for address in addresses if wanted[address] != self.shadow.bytes[address]]
            if changed:
                yield self.burst(range(changed[0], changed[-1] + 1, self.step), wanted)

    def burst(self, addresses: range, wanted: dict[int, int]) -> Burst:
        """Part of a column: what did not change is written as it is."""
        return Burst(addresses.start, bytes(wanted[address] for address in addresses), self.step)
