"""What it takes to send one picture whole, counted from a machine's addresses and costs.

Whole means: the pattern of each tile that the picture may have, every map entry it needs, the change of view. That is
what a scheduler sends that remembers nothing; one that remembers may send less. Bursts are the cheapest of step 1: what
lies between two bytes is written with them where that is cheaper than another set-up and it is the window's own.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from planeproof.contract import TILE_SIDE, Burst, Machine, Rational


@dataclass(frozen=True, kw_only=True)
class Sending:
    """One picture, sent whole: bytes by kind, ``bursts``, and ``cycles`` in all; ``view`` are those of the view change.

    ``least`` are the cycles of the dearest part that can't be split between blankings.
    """

    patterns: int
    entries: int
    view: int
    bursts: int
    cycles: Rational
    least: Rational

    @property
    def n_bytes(self) -> int:
        """Bytes in all."""
        return self.patterns + self.entries + self.view


@dataclass(frozen=True, kw_only=True)
class PatternBytes:
    """One pattern of some planes of a tile: its ``n_bytes`` in so many ``bursts``, which take ``cycles``."""

    bursts: int
    n_bytes: int
    cycles: Rational


def pattern_offsets(machine: Machine, side: int) -> list[int]:
    """The bytes of a tile that hold bits of the side's planes, as offsets in rising order."""
    held = machine.tile_bits.offset[list(machine.planes_of(side))]
    return sorted({int(offset) for offset in held.ravel()})


def own_bytes(machine: Machine, side: int) -> PatternBytes:
    """A pattern of ``side``: just the bytes that hold bits of it, in as few bursts as they allow."""
    own = _at(machine, machine.pool[:1], pattern_offsets(machine, side))
    bursts = machine.bursts(dict.fromkeys(own, 1), {})
    return PatternBytes(bursts=len(bursts), n_bytes=len(own), cycles=_cost(machine, bursts))


def whole_span(machine: Machine, side: int) -> PatternBytes:
    """A pattern of ``side`` in one burst from its first byte to its last; a copy of what lies between is needed."""
    offsets = pattern_offsets(machine, side)
    n_bytes = offsets[-1] - offsets[0] + 1
    return PatternBytes(bursts=1, n_bytes=n_bytes, cycles=machine.burst_cycles(n_bytes))


def sending(
    machine: Machine, *, tiles: Sequence[int], cells: int, side: int, view: Iterable[int], page: int = 0
) -> Sending:
    """A picture in ``tiles``, with the entries of the first ``cells`` cells on ``page``, and the ``view`` bytes."""
    patterns = _at(machine, tiles, pattern_offsets(machine, side))
    entries = [
        machine.map_address(page, cell) + byte for cell in range(cells) for byte in range(machine.map.entry_bytes)
    ]
    changed = list(view)
    between = dict.fromkeys(_at(machine, tiles, range(machine.tile_bytes)), 0)
    bursts = machine.bursts(dict.fromkeys(patterns + entries, 1), between)
    turn = machine.bursts(dict.fromkeys(changed, 1), {})
    # What lies together is split between bytes where a blanking ends; a map entry and the view change are not.
    parts = [machine.burst_cycles(TILE_SIDE), machine.burst_cycles(machine.map.entry_bytes), _cost(machine, turn)]
    return Sending(
        patterns=len(patterns),
        entries=len(entries),
        view=len(changed),
        bursts=len(bursts) + len(turn),
        cycles=_cost(machine, bursts) + _cost(machine, turn),
        least=max(parts),
    )


def _cost(machine: Machine, bursts: Iterable[Burst]) -> Rational:
    return sum(map(machine.cost, bursts))


def _at(machine: Machine, tiles: Iterable[int], offsets: Iterable[int]) -> list[int]:
    base, within = machine.layout.patterns, list(offsets)
    return [base + tile * machine.tile_bytes + offset for tile in tiles for offset in within]
