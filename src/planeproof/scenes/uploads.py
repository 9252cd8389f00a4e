"""What sending a picture takes, to the cycle, where each changed pattern and map entry is a burst of its own.

That is what can be counted without knowing the scheduler, and what `planeproof.contract.demands` counts patience in. A
scheduler that joins bursts or splits them at the end of a blanking needs other cycles; so does one that re-uses tiles.

>>> from planeproof.machines import read_machine
>>> Tariff.of(read_machine("vitrine-50")).ending(patterns=100, entries=20)
Ending(blankings=2, left=7360, missing=None)
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Self

from planeproof.contract import TILE_SIDE, Machine, Rational, Storage
from planeproof.scenes.patterns import Rows
from planeproof.scenes.relatives import dearest_view_change


def changed(now: Rows, held: Rows) -> tuple[int, int]:
    """Patterns and map entries to send so that a side that holds ``held`` holds ``now``, both (cells, depth, 8).

    A cell keeps its tile while it is occupied: a pattern for each occupied cell that differs, an entry for each cell
    that is newly occupied or newly empty.
    """
    filled, was_filled = now.any(axis=(1, 2)), held.any(axis=(1, 2))
    differ = (now != held).any(axis=(1, 2))
    return int((filled & differ).sum()), int((filled != was_filled).sum())


@dataclass(frozen=True)
class Ending:
    """How sending ends: in which blanking (the first is 1), with ``left`` cycles left of it.

    ``missing``: cycles by which the last burst (of a reveal, its bursts together) did not fit the blanking before, and
    so had to wait for this one; None if it did not have to wait.
    """

    blankings: int
    left: Rational
    missing: Rational | None


@dataclass(frozen=True, kw_only=True)
class Tariff:
    """What a machine asks: cycles of a full ``blanking``, of the smallest bursts and of the dearest ``reveal``.

    A pattern takes ``bursts_a_pattern`` of ``burst`` cycles each: one a plane, one a byte where storage is interleaved.
    """

    blanking: int
    burst: Rational
    bursts_a_pattern: int
    entry: Rational
    reveal: Rational
    per_byte: Rational
    per_view_byte: Rational

    @classmethod
    def of(cls, machine: Machine) -> Self:
        """The tariff of ``machine``."""
        storage, tiles = machine.tiles.storage, machine.tiles
        bytewise = storage is Storage.INTERLEAVED
        planes = tiles.planes if storage is Storage.PACKED else tiles.depth
        return cls(
            blanking=machine.blank_cycles,
            burst=machine.burst_cycles(1 if bytewise else TILE_SIDE),
            bursts_a_pattern=planes * (TILE_SIDE if bytewise else 1),
            entry=machine.burst_cycles(machine.map.entry_bytes),
            reveal=dearest_view_change(machine),
            per_byte=machine.rates(view=False)[1],
            per_view_byte=machine.rates(view=True)[1],
        )

    def cycles(self, *, patterns: int, entries: int) -> Rational:
        """What so many patterns and entries and the reveal take together."""
        return sum((cycles * count for cycles, count in self._bursts(patterns, entries)), start=self.reveal)

    def ending(self, *, patterns: int, entries: int) -> Ending:
        """How sending patterns, then entries, then the reveal ends, in full blankings; no burst is split."""
        *before, (last, count) = self._work(patterns, entries)
        place: tuple[int, Rational] = (1, self.blanking)
        for cycles, number in (*before, (last, count - 1)):
            place = self._sent(place, cycles, number)
        end, left = self._sent(place, last, 1)
        return Ending(end, left, last - place[1] if end > place[0] else None)

    def ends_full(self, *, patterns: int, entries: int) -> bool:
        """Whether sending so much ends with the last cycle of a blanking."""
        return patterns + entries > 0 and self.ending(patterns=patterns, entries=entries).left == 0

    def ends_a_byte_late(self, *, patterns: int, entries: int) -> bool:
        """Whether all but the last byte of so much would have fitted a blanking less."""
        if patterns + entries == 0:
            return False
        missing = self.ending(patterns=patterns, entries=entries).missing
        return missing is not None and missing <= (self.per_view_byte if self.reveal else self.per_byte)

    def _work(self, patterns: int, entries: int) -> list[tuple[Rational, int]]:
        """Cycles of a burst, and how many such; at least one."""
        reveal = [(self.reveal, 1)] if self.reveal else []
        return [*self._bursts(patterns, entries), *reveal] or [(0, 1)]

    def _bursts(self, patterns: int, entries: int) -> Iterator[tuple[Rational, int]]:
        if patterns:
            yield self.burst, patterns * self.bursts_a_pattern
        if entries:
            yield self.entry, entries

    def _sent(self, place: tuple[int, Rational], cycles: Rational, count: int) -> tuple[int, Rational]:
        """The place, number of the blanking and cycles left of it, after ``count`` more bursts of ``cycles``."""
        blanking, left = place
        rest = count - min(int(left // cycles), count) if cycles else 0
        if not rest:
            return blanking, left - count * cycles
        whole = (rest - 1) // int(self.blanking // cycles)
        return blanking + 1 + whole, self.blanking - (rest - whole * int(self.blanking // cycles)) * cycles
