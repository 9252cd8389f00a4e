"""Small relatives of a machine: the same kind of display, with few cells, few tiles and a short blanking.

A fault that a scheduler has on a big display it nearly always has on a small one too, and there the scene that
shows it can be read. What makes a scheduler's work different is kept: planes, depth, storage, pages, banks, map
entries, steps, costs, what late bytes do. What only makes scenes bigger is drawn.

What the owner demands is kept as far as it means the same: ``must_show`` as a share of the cap. ``patience`` is not: it
is a number of blankings of the machine itself, and a relative, whose blankings may hold one burst, has its own default.
"""

import math
from dataclasses import replace
from fractions import Fraction

from planeproof.contract import TILE_SIDE, Demands, Machine, Rational, Tiles, Timing, Window
from planeproof.scenes.source import Source, pick

MOST_COLUMNS, MOST_ROWS = 4, 3
"""The largest window of a relative, in cells; where bursts may step over map rows it is higher than wide."""

RELATIVE = "small relative of "
"""Begins the name of one."""


def relative(base: Machine, source: Source) -> Machine:
    """A small relative of ``base``."""
    window = _window(base, source)
    tiles = _tiles(base, source, window.columns * window.rows)
    demands = Demands(must_show=_must_show(base, len(tiles.pool)))
    name = f"{RELATIVE}{base.name}"
    bottom = window.first_line + window.rows * TILE_SIDE
    machine = replace(
        base, name=name, window=window, tiles=tiles, memory=None, time=_endless(base.time, bottom), demands=demands
    )
    return _timed(base, source, laid_out_anew(machine, base))


def _window(base: Machine, source: Source) -> Window:
    # Bursts that step over map rows run down columns, and short ones are not worth a burst.
    wide, high = (MOST_COLUMNS, MOST_ROWS) if base.layout.steps == (1,) else (MOST_ROWS - 1, MOST_COLUMNS)
    columns, rows = source.number(1, wide), source.number(1, high)
    spare_columns = min(base.window.pitch - base.window.columns, 2)
    spare_rows = min(base.window.map_height - base.window.rows, 2)
    column, row = source.number(0, spare_columns), source.number(0, spare_rows)
    return Window(
        columns=columns,
        rows=rows,
        map_columns=columns + spare_columns,
        map_rows=rows + spare_rows,
        origin_column=column,
        origin_row=row,
        first_line=source.number(0, min(base.window.first_line, 8)),
    )


def _tiles(base: Machine, source: Source, cells: int) -> Tiles:
    banks = base.map.banks
    least = 1 if base.map.pages == 2 and base.plane_sets > 1 else 2
    size = max(least, source.number(1, min(cells + 1, base.cap)))
    first = _first_of_pool(base, source)
    per_bank = first + size + source.number(0, 2)
    in_a_bank = range(first, first + size)
    pool = tuple(bank * per_bank + tile for bank in range(banks) for tile in in_a_bank)
    blank = source.number(0, first - 1)
    # Of two bytes one may be equal: far apart is not enough, so the blank tile is often number 0.
    blank = pick(source, (0, blank)) if base.map.entry_bytes == 2 else blank
    return replace(base.tiles, count=per_bank * banks, pool=pool, blank=blank)


def _first_of_pool(base: Machine, source: Source) -> int:
    """Low, or such that tile numbers cross from one byte to two where entries have two."""
    low = source.number(1, 3)
    return pick(source, (low, 253 + low)) if base.map.entry_bytes == 2 else low


def _must_show(base: Machine, cap: int) -> int | None:
    return None if base.demands.must_show is None else cap * base.demands.must_show // base.cap


def _endless(time: Timing, shown: int) -> Timing:
    """A time in which every burst fits, for finding out what bursts cost."""
    return replace(time, lines=4096, shown=shown, reserve=0)


def laid_out_anew(machine: Machine, like: Machine) -> Machine:
    """``machine``, which has the default layout, with the steps of a burst that ``like`` permits."""
    if like.layout.steps == (1,):
        return machine
    row = machine.window.pitch * machine.map.entry_bytes
    return replace(machine, memory=replace(machine.layout, steps=(1,) if row == 1 else (1, row)))


def _timed(base: Machine, source: Source, machine: Machine) -> Machine:
    """``machine`` with a blanking of few cycles, so few that their number left over takes every small value.

    Where any picture of ``base`` fits one blanking, it does on its relatives too.
    """
    least = least_blanking(machine)
    if picture_cycles(base) <= base.blank_cycles:
        least += math.ceil(picture_cycles(machine))
    most = least + math.ceil(picture_cycles(machine))
    short = least + source.number(0, math.ceil(machine.burst_cycles(8)))
    cycles = pick(source, (short, source.number(least, most)))
    return with_blanking(machine, cycles, time=base.time, below=source.number(0, 8))


def with_blanking(machine: Machine, cycles: int, *, time: Timing, below: int = 0) -> Machine:
    """``machine`` with the costs of ``time``, a blanking of ``cycles``, and ``below`` lines shown below the window."""
    shown = machine.window.first_line + machine.window.rows * 8 + below
    blanking = math.ceil(cycles / Fraction(time.cycles_per_line))
    reserve: Rational = blanking * time.cycles_per_line - cycles
    return replace(machine, time=replace(time, lines=shown + blanking, shown=shown, reserve=reserve))


def least_blanking(machine: Machine) -> int:
    """Cycles of the shortest blanking on which the machine is not refused."""
    return math.ceil(max(machine.burst_cycles(8), dearest_view_change(machine)))


def dearest_view_change(machine: Machine) -> Rational:
    """Cycles of the dearest change between the views of two sides."""
    sides = range(machine.sides)
    return max(sum(machine.cost(burst) for burst in machine.view_bursts(a, b)) for a in sides for b in sides)


def picture_cycles(machine: Machine) -> Rational:
    """Cycles of a picture that uses the whole pool, each pattern and each cell in a burst of its own."""
    patterns = machine.cap * machine.tiles.depth * machine.burst_cycles(8)
    return patterns + machine.cells * machine.burst_cycles(machine.map.entry_bytes)
