"""The tour: one scene that comes to as many edges as one scene can, on a machine at its own size.

Most faults show in it, so it is played before all else: whoever has just broken a scheduler sees it at once. What
only small machines, long scenes or rare coincidences show is left to the rest of the search.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

import numpy as np

from planeproof.contract import TILE_SIDE, Disturbance, Machine, Picture, Scene
from planeproof.scenes.patterns import Rows, different, in_shape

DISTURBED = 240
"""Blankings of the disturbed tour among which some are lost or cut; a tour hardly takes more."""

GOLDEN = (5**0.5 - 1) / 2
"""Its multiples, less their whole parts, come close to every number between 0 and 1 in few steps."""


def tour(machine: Machine) -> Scene:
    """Pictures at the limit, one bit apart, alike, moved, emptied, refilled, brought back, too big, small; all ready.

    At the limit: as many cells as must be shown, all different. Those that may be declined are one cell more than that,
    and one pattern more than a view has tiles.
    """
    return Scene.of(machine, [Picture.from_rows(0, in_shape(machine, rows)) for rows in _pictures(machine)])


def opening(machine: Machine) -> Scene:
    """The first two pictures alone: that a picture never comes shows best where none comes after it."""
    return Scene.of(machine, tour(machine).pictures[:2])


def disturbed_tour(machine: Machine) -> Scene:
    """The same pictures; of the first `DISTURBED` blankings every second is cut, each elsewhere, and some are lost."""
    cuts = [Disturbance(refresh, _left(machine, refresh)) for refresh in range(1, DISTURBED, 2)]
    return replace(tour(machine), disturbances=tuple(cuts))


def _left(machine: Machine, refresh: int) -> int:
    """Cycles of a disturbed blanking: shares spread evenly, by the golden section; of every seventh none."""
    return 0 if refresh % 7 == 0 else int(machine.blank_cycles * (refresh * GOLDEN % 1))


def _pictures(machine: Machine) -> Iterator[Rows]:
    most, cells = min(machine.must_show, machine.cells), machine.cells
    first, last = range(most), range(cells - most, cells)
    spread = np.linspace(0, cells - 1, most).astype(int).tolist()
    limit = _filled(machine, first, 0)
    changed = _one_bit(limit, first, row=3)
    yield limit
    yield changed
    yield changed
    yield _filled(machine, last, most)
    # The picture before last: what the hidden side holds already.
    yield changed
    yield _filled(machine, (), 0)
    refilled = _filled(machine, spread, 2 * most)
    yield refilled
    yield np.roll(refilled, 1, axis=0)
    yield _filled(machine, last[::-1], 0)
    # The same bytes in another order.
    yield limit[:, :, ::-1]
    # Two that may be declined, each before one that may not.
    yield _filled(machine, range(min(machine.cap_of_view + 1, cells)), 3 * most)
    yield limit
    yield _filled(machine, range(min(most + 1, cells)), 5)
    yield limit
    yield from _columns(machine, most)
    corners = (0, cells - 1)[: min(most, 2)]
    small = _filled(machine, corners, 7)
    yield small
    yield _one_bit(small, corners, row=TILE_SIDE - 1)
    yield _alike(machine, first)


def _columns(machine: Machine, most: int) -> Iterator[Rows]:
    """The last column, then it with other ends, where bursts down a column pass over what stays."""
    column = range(machine.window.columns - 1, machine.cells, machine.window.columns)[:most]
    whole = _filled(machine, column, 11)
    ends = list(column[:: max(len(column) - 1, 1)])
    other = whole.copy()
    other[ends] = _filled(machine, ends, 3)[ends]
    yield whole
    yield other


def _filled(machine: Machine, cells: Sequence[int], number: int) -> Rows:
    """Each of ``cells`` with a pattern of its own, from the ``number``-th on, and nothing elsewhere."""
    rows = np.zeros((machine.cells, machine.tiles.depth, TILE_SIDE), dtype=np.uint8)
    for place, cell in enumerate(cells):
        rows[cell] = _dense(machine, number + place)
    return rows


def _alike(machine: Machine, cells: Sequence[int]) -> Rows:
    rows = _filled(machine, (), 0)
    rows[cells] = _dense(machine, 0)
    return rows


def _one_bit(rows: Rows, cells: Sequence[int], *, row: int) -> Rows:
    """``rows`` with one bit of the last of ``cells`` changed, if there is any."""
    changed = rows.copy()
    changed[cells[-1:], 0, row] ^= 2
    return changed


def _dense(machine: Machine, number: int) -> Rows:
    """The ``number``-th of a series of patterns that are all different, with ink in all rows.

    With more planes than one, neighbours in the series differ in the last plane only, and some planes are empty.
    """
    last = machine.tiles.depth - 1
    rows = np.array([_plane(machine, number if plane == last else number // 2, plane) for plane in range(last + 1)])
    if last and number % 4 == 3:
        rows[last] = 0
    if last and number % 8 == 6:
        rows[0] = 0
    return rows


def _plane(machine: Machine, number: int, plane: int) -> Rows:
    rows: Rows = different(machine, number)[0]
    rows[: TILE_SIDE - 2] = (number * 29 + np.arange(TILE_SIDE - 2) * 37 + plane * 101 + 5) % 256
    return rows
