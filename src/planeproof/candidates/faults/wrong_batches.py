"""Rows and columns of cells that are sent together: the wrong ones, too many of them, or not to their end."""

from collections.abc import Iterable, Mapping

from planeproof.candidates.reference import Columns, Rows
from planeproof.candidates.reference.outbox import Outbox
from planeproof.contract import Burst, Machine, Picture, Rational


class RowComparedByItsEnds(Rows):
    """A row counts as unchanged if its first and last cells are, so what changed between them is never seen."""

    def holds(self, row: range, picture: Picture, named: Mapping[int, int]) -> bool:
        """Whether it holds the outermost cells."""
        return all(self.holds_cell(cell, picture, named) for cell in (row[0], row[-1]))


class KeptTilesGivenAway(Rows):
    """Rows that are sent get tiles from the beginning of the pool, so rows that were kept show them too."""

    def tiles_for(self, picture: Picture) -> Mapping[int, int] | None:
        """The tiles of the rows that are kept, and just the first ones for the others."""
        tiles = super().tiles_for(picture)
        if tiles is None:
            return None
        sent = [cell for cell in tiles if not any(cell in row for row in self.kept)]
        return {**tiles, **dict(zip(sent, self.pool, strict=False))}


class OneEntryTooMany(Rows):
    """A map row is sent with one entry more than the window has, so the panel beside it loses its edge."""

    def addresses(self, row: range) -> range:
        """As far as the cell to the right of the row."""
        addresses = super().addresses(row)
        return range(addresses.start, addresses.stop + self.machine.map.entry_bytes)

    def entries(self, tiles: Mapping[int, int]) -> dict[int, int]:
        """With blank entries to the right of the window."""
        blank, entries = self.machine.map_entry(self.machine.blank_tile), super().entries(tiles)
        beyond = [Rows.addresses(self, row).stop for row in self.rows()]
        return {first + i: byte for first in beyond for i, byte in enumerate(blank)} | entries


class _Dropping(Outbox):
    """Sends the part of a burst that fits, and forgets the rest."""

    def _split(self, left: Rational) -> list[Burst]:
        begun = super()._split(left)
        if begun:
            self._units.popleft(), self._splits.popleft()
        return begun


class RestOfBurstDropped(Rows):
    """Where the end of a blanking cuts a burst in two the second half is lost, so a cell lacks its lower lines."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Use an outbox that forgets."""
        bursts = super().start(machine)
        self.outbox = _Dropping(machine)
        return bursts


class ColumnOneTooLong(Columns):
    """A burst down a column goes one row too far, so the panel below the window loses a piece."""

    def burst(self, addresses: range, wanted: dict[int, int]) -> Burst:
        """The part of the column, and a blank entry below it."""
        burst = super().burst(addresses, wanted)
        return Burst(burst.address, burst.data + self.machine.map_entry(self.machine.blank_tile), burst.step)


class _Stepless(Outbox):
    """Goes on with a burst that was split at neighbouring addresses."""

    def _split(self, left: Rational) -> list[Burst]:
        begun = super()._split(left)
        if begun:
            (rest,) = self._units[0]
            self._units[0] = (Burst(rest.address, rest.data),)
        return begun


class ColumnGoesOnAlongTheRow(Columns):
    """A column that the end of a blanking cuts in two goes on along the row, so entries land beside one another."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Use an outbox that loses the step."""
        bursts = super().start(machine)
        self.outbox = _Stepless(machine)
        return bursts


class PassedOverBlanked(Columns):
    """Cells that a column passes over are blanked though they are being seen, so they drop out until the reveal."""

    def burst(self, addresses: range, wanted: dict[int, int]) -> Burst:
        """Blank entries between those that change."""
        (blank,) = self.machine.map_entry(self.machine.blank_tile)
        unchanged = {address: blank for address in addresses if wanted[address] == self.shadow.bytes[address]}
        return super().burst(addresses, wanted | unchanged)
