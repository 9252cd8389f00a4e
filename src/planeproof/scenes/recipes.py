"""Recipes: scenes as short lists of moves, each of which makes the next picture from those before.

Uniformly random pictures hardly ever hold the situations in which schedulers go wrong: a cell emptied and filled
again, the picture before last brought back, one bit changed in the last row, exactly as many tiles as there are.
A recipe asks for them by name. What is drawn is small numbers only, so a recipe shrinks well, and every draw is a
valid scene: nothing is filtered out.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import accumulate

import numpy as np

from planeproof.contract import Disturbance, Machine, Picture, Scene
from planeproof.scenes.patterns import Rows, different, drawn_pattern, in_shape
from planeproof.scenes.relatives import relative
from planeproof.scenes.source import Source, cells_from, pick

LONGEST = 6
"""Pictures in a scene at the most; faults that need history have needed up to five."""


@dataclass(frozen=True, kw_only=True)
class _Kitchen:
    """What a move works with: the machine, the choices, and the pictures so far, the newest last."""

    machine: Machine
    source: Source
    past: Sequence[Rows]

    @property
    def last(self) -> Rows:
        return self.past[-1] if self.past else self.empty()

    def empty(self) -> Rows:
        return np.zeros((self.machine.cells, self.machine.tiles.depth, 8), dtype=np.uint8)

    def cells(self, count: int) -> list[int]:
        return cells_from(self.source, self.machine.cells, min(count, self.machine.cells))


def recipe(base: Machine, source: Source, *, as_given: bool = False, longest: int = LONGEST) -> Scene:
    """A scene of up to ``longest`` pictures on a small relative of ``base``, or ``as_given`` on ``base`` itself."""
    machine = base if as_given else relative(base, source)
    past: list[Rows] = []
    for _ in range(source.number(1, longest)):
        past.append(pick(source, MOVES)(_Kitchen(machine=machine, source=source, past=past)))
    pictures = [Picture.from_rows(0, in_shape(machine, rows)) for rows in past]
    return Scene.of(machine, pictures, _ready(source, len(past)), _disturbances(machine, source))


def _ready(source: Source, pictures: int) -> list[int]:
    """Gaps between pictures: none, a few refreshes, or an idle while."""
    gaps = [pick(source, (0, 0, 1, 2, 4, 9)) for _ in range(pictures)]
    return list(accumulate(gaps))


def _disturbances(machine: Machine, source: Source) -> list[Disturbance]:
    found: dict[int, Disturbance] = {}
    for _ in range(pick(source, (0, 0, 0, 1, 2, 4))):
        refresh = source.number(0, 16)
        cycles = pick(source, (0, source.number(0, machine.blank_cycles - 1)))
        found[refresh] = Disturbance(refresh, cycles)
    return list(found.values())


# --- moves ------------------------------------------------------------------------------------------------


def _some_cells(kitchen: _Kitchen) -> Rows:
    """A few cells drawn anew on an empty window."""
    rows = kitchen.empty()
    for cell in kitchen.cells(kitchen.source.number(0, 3)):
        rows[cell] = drawn_pattern(kitchen.machine, kitchen.source)
    return rows


def _to_the_limit(kitchen: _Kitchen) -> Rows:
    """Exactly as many cells as must be shown, all different."""
    return _filled(kitchen, kitchen.machine.must_show)


def _to_the_cap(kitchen: _Kitchen) -> Rows:
    """As many cells as there are tiles, or one more: all different."""
    return _filled(kitchen, kitchen.machine.cap + kitchen.source.number(0, 1))


def _filled(kitchen: _Kitchen, count: int) -> Rows:
    rows, first = kitchen.empty(), kitchen.source.number(0, 3) * 16
    for number, cell in enumerate(kitchen.cells(count)):
        rows[cell] = different(kitchen.machine, first + number)
    return rows


def _same_everywhere(kitchen: _Kitchen) -> Rows:
    """One pattern in many cells: as many as must be shown, or more cells than there are tiles."""
    rows, pattern = kitchen.empty(), drawn_pattern(kitchen.machine, kitchen.source)
    most = pick(kitchen.source, (max(kitchen.machine.must_show, 1), kitchen.machine.cells))
    rows[kitchen.cells(kitchen.source.number(1, most))] = pattern
    return rows


def _changed_cells(kitchen: _Kitchen) -> Rows:
    """The last picture with a cell or two drawn anew."""
    rows = kitchen.last.copy()
    for cell in kitchen.cells(kitchen.source.number(1, 2)):
        rows[cell] = drawn_pattern(kitchen.machine, kitchen.source)
    return _within_limit(kitchen, rows)


def _emptied_cells(kitchen: _Kitchen) -> Rows:
    """The last picture with a cell, a row or everything emptied."""
    rows, columns = kitchen.last.copy(), kitchen.machine.window.columns
    row = kitchen.source.number(0, kitchen.machine.window.rows - 1)
    one = kitchen.source.number(0, kitchen.machine.cells - 1)
    rows[pick(kitchen.source, (slice(one, one + 1), slice(row * columns, (row + 1) * columns), slice(None)))] = 0
    return rows


def _one_bit(kitchen: _Kitchen) -> Rows:
    """The last picture with one bit of one cell flipped; the last row of the last cell is the simplest."""
    rows = kitchen.last.copy()
    cell = kitchen.machine.cells - 1 - kitchen.source.number(0, kitchen.machine.cells - 1)
    rows[cell, 0, 7 - kitchen.source.number(0, 7)] ^= 1 << kitchen.source.number(0, 7)
    return _within_limit(kitchen, rows)


def _moved(kitchen: _Kitchen) -> Rows:
    """Every tile of the last picture moved by a cell, none changed."""
    step = pick(kitchen.source, (1, -1, kitchen.machine.window.columns))
    return np.roll(kitchen.last, step, axis=0)


def _swapped(kitchen: _Kitchen) -> Rows:
    """Two rows of one cell exchanged: the same bytes in another order."""
    rows = kitchen.last.copy()
    cell = kitchen.source.number(0, kitchen.machine.cells - 1)
    one, other = kitchen.source.number(0, 7), kitchen.source.number(0, 7)
    rows[cell][:, [one, other]] = rows[cell][:, [other, one]]
    return rows


def _same_again(kitchen: _Kitchen) -> Rows:
    """The last picture again."""
    return kitchen.last.copy()


def _before_last(kitchen: _Kitchen) -> Rows:
    """The picture before last: what the hidden side holds already."""
    return kitchen.past[-2].copy() if len(kitchen.past) > 1 else kitchen.empty()


def _earlier(kitchen: _Kitchen) -> Rows:
    """Any earlier picture."""
    return pick(kitchen.source, [*kitchen.past[::-1], kitchen.empty()]).copy()


def _within_limit(kitchen: _Kitchen, rows: Rows) -> Rows:
    """Empties the first cells of a picture that has more than must be shown: most scenes should be shown."""
    occupied = np.flatnonzero(rows.any(axis=(1, 2)))
    rows[occupied[: max(len(occupied) - kitchen.machine.must_show, 0)]] = 0
    return rows


MOVES: tuple[Callable[[_Kitchen], Rows], ...] = (
    _some_cells,
    _to_the_limit,
    _changed_cells,
    _before_last,
    _emptied_cells,
    _moved,
    _one_bit,
    _swapped,
    _same_again,
    _earlier,
    _same_everywhere,
    _to_the_cap,
)
"""All moves, the simplest first."""
