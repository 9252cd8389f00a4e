"""The small relatives of a machine on which goals are met in pairs: always the same ones."""

import math
from collections.abc import Iterator
from dataclasses import replace

from planeproof.contract import Machine
from planeproof.scenes.relatives import least_blanking, picture_cycles, relative, with_blanking
from planeproof.scenes.uploads import Tariff

COLUMNS, ROWS = 4, 2
"""Room for every goal, and few enough cells for a solver to decide on every pair."""

BLANKINGS = 3
"""What the dearest picture takes on a relative, or less; where it need not fit one blanking."""


class _Choices:
    """A window of `COLUMNS` x `ROWS`, and the middle of every other choice, so that no number is a special one."""

    def __init__(self) -> None:
        self._first = iter((COLUMNS, ROWS))

    def number(self, low: int, high: int) -> int:
        return next(self._first, (low + high + 1) // 2)


def edge_relatives(base: Machine) -> tuple[Machine, ...]:
    """Small relatives of ``base`` which differ in their blanking alone.

    In the shortest that is long enough one upload ends with the last cycle of a blanking, and another is a byte too
    long. Where there is no such blanking there are two relatives, one for either. Where any picture of ``base`` fits
    one blanking there is one relative, on which the dearest that must be shown just fills it.
    """
    machine = relative(base, _Choices())
    return tuple(with_blanking(machine, cycles, time=base.time) for cycles in _blankings(base, machine))


def uploads(machine: Machine) -> list[tuple[int, int]]:
    """All (patterns, entries) that two pictures within ``must_show`` can differ by."""
    most = min(machine.must_show, machine.cells)
    return [(p, e) for p in range(most + 1) for e in range(2 * most + 1) if _possible(machine.cells, most, p, e)]


def _possible(cells: int, most: int, patterns: int, entries: int) -> bool:
    """As many patterns as can be go to cells newly filled, the others to cells that stay; other cells are emptied."""
    filled = min(patterns, entries)
    stay, emptied = patterns - filled, entries - filled
    return emptied + stay <= most and entries + stay <= cells


def _blankings(base: Machine, machine: Machine) -> tuple[int, ...]:
    least, tariff, some = least_blanking(machine), Tariff.of(machine), uploads(machine)
    dearest = math.ceil(max(tariff.cycles(patterns=p, entries=e) for p, e in some))
    if picture_cycles(base) <= base.blank_cycles:
        return (max(dearest, least),)
    full: list[int] = []
    late: list[int] = []
    for cycles, just_full, just_late in _admitting(tariff, some, range(max(-(-dearest // BLANKINGS), least), dearest)):
        if just_full and just_late:
            return (cycles,)
        full += [cycles] * just_full
        late += [cycles] * just_late
    return (*full[:1], *late[:1]) or (machine.blank_cycles,)


def _admitting(tariff: Tariff, some: list[tuple[int, int]], blankings: range) -> Iterator[tuple[int, bool, bool]]:
    """Each length, and whether some upload ends with its last cycle, and some a byte late."""
    for cycles in blankings:
        tried = replace(tariff, blanking=cycles)
        full = any(tried.ends_full(patterns=p, entries=e) for p, e in some)
        yield cycles, full, any(tried.ends_a_byte_late(patterns=p, entries=e) for p, e in some)
