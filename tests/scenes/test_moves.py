"""Each move of a recipe does what its name says: asked for alone, with choices fixed in advance."""

from collections.abc import Sequence

import numpy as np
import pytest

from planeproof.contract import Colours, Machine, TileMap, Tiles, Window
from planeproof.scenes import patterns as patterns_of_cells
from planeproof.scenes import recipes
from planeproof.scenes.patterns import Rows
from planeproof.scenes.recipes import MOVES
from planeproof.scenes.source import RandomSource, Source
from tests.scenes.fixed_source import FixedSource

MACHINE = Machine(name="six", window=Window(columns=3, rows=2), tiles=Tiles(count=6, pool=(1, 2, 3, 4)))
ONE_PAGE = Machine(
    name="half", window=Window(columns=3, rows=2), tiles=Tiles(count=6, pool=(1, 2, 3, 4)), map=TileMap(pages=1)
)
DEEP = Machine(
    name="deep",
    window=Window(columns=3, rows=2),
    tiles=Tiles(count=6, pool=(1, 2, 3, 4), planes=4, depth=2),
    colours=Colours(meaning=((0, 0, 0), (9, 9, 9), (99, 99, 99), (200, 200, 200)), inks=(1, 2, 3)),
)
every_move = pytest.mark.parametrize("move", MOVES, ids=lambda move: move.__name__)


def picture(cells: dict[int, Sequence[int]], machine: Machine = MACHINE) -> Rows:
    """A picture with those bytes in the lowest bit of those cells."""
    rows = np.zeros((machine.cells, machine.tiles.depth, 8), dtype=np.uint8)
    for cell, data in cells.items():
        rows[cell, 0] = data
    return rows


SQUARE, LINE, DOT = [0xFF] * 8, [0] * 7 + [0xFF], [0] * 7 + [1]
FIRST = picture({0: SQUARE, 1: LINE, 4: DOT})
SECOND = picture({2: range(1, 9)})


def made(name: str, numbers: Sequence[int] = (), past: Sequence[Rows] = (FIRST,), machine: Machine = MACHINE) -> Rows:
    """What the move of that name makes of those choices."""
    return cook(name, FixedSource(numbers), past, machine)


def cook(name: str, source: Source, past: Sequence[Rows], machine: Machine) -> Rows:
    """What the move of that name makes."""
    move = next(move for move in MOVES if move.__name__ == f"_{name}")
    return move(recipes._Kitchen(machine=machine, source=source, past=past))


def occupied(rows: Rows) -> list[int]:
    """The cells that are not empty."""
    found: list[int] = np.flatnonzero(rows.any(axis=(1, 2))).tolist()
    return found


def test_some_cells_are_drawn_on_an_empty_window() -> None:
    """Two cells, a square and a line; nothing of the last picture is left."""
    rows = made("some_cells", [2, 1, 3, 0, 1, 0])
    assert np.array_equal(rows, picture({1: SQUARE, 4: LINE}))
    assert occupied(made("some_cells")) == []


def test_to_the_limit_is_exactly_must_show_all_different() -> None:
    """Four cells where the cap must be shown, two where half of it must."""
    for machine, count in ((MACHINE, 4), (ONE_PAGE, 2), (DEEP, 4)):
        rows = made("to_the_limit", machine=machine)
        assert len(occupied(rows)) == machine.must_show == count
        assert len({rows[cell].tobytes() for cell in occupied(rows)}) == count


def test_to_the_cap_is_the_cap_or_one_more() -> None:
    """As many cells as tiles, or one more: all different, so that no sharing makes room."""
    for more in (0, 1):
        rows = made("to_the_cap", [more])
        assert len(occupied(rows)) == len({rows[cell].tobytes() for cell in occupied(rows)}) == 4 + more


def test_to_the_cap_ends_at_the_window() -> None:
    """A window with fewer cells than tiles is filled, and no more."""
    small = Machine(name="small", window=Window(columns=2, rows=1), tiles=Tiles(count=6, pool=(1, 2, 3, 4)))
    assert occupied(made("to_the_cap", [1], past=(), machine=small)) == [0, 1]


def test_the_different_patterns_are_different() -> None:
    """A thousand of them, more than any pool drawn; they differ in the last row first, and none is empty."""
    series = [patterns_of_cells.different(MACHINE, number) for number in range(1000)]
    assert len({rows.tobytes() for rows in series}) == 1000
    assert all(rows[0, 7] for rows in series)
    assert (series[0][0, :7] == series[1][0, :7]).all()


def test_one_pattern_in_many_cells() -> None:
    """The same bytes in five cells: more cells than tiles, but one pattern."""
    rows = made("same_everywhere", [2, 4, 0, 1, 5, 0, 1])
    assert len({rows[cell].tobytes() for cell in occupied(rows)}) == 1
    assert len(occupied(rows)) == 5


def test_changed_cells_are_few_and_the_rest_stays() -> None:
    """Two cells drawn anew, everything else as in the last picture."""
    rows = made("changed_cells", [2, 0, 0, 1, 0, 1, 0])
    assert np.array_equal(rows, picture({0: LINE, 1: LINE, 4: DOT}))


@pytest.mark.parametrize(("which", "left"), [(0, [0, 1]), (1, [0, 1]), (2, [])])
def test_a_cell_a_row_or_everything_is_emptied(which: int, left: list[int]) -> None:
    """Row 1 or its cell 4, or all; the cells that stay, stay as they are."""
    rows = made("emptied_cells", [1, 4, which])
    assert occupied(rows) == left
    assert np.array_equal(rows[left], FIRST[left])


def test_one_bit_is_one_bit() -> None:
    """Any one bit of any one cell; the lowest bit of the last row of the last cell for the simplest choices."""
    rows = made("one_bit")
    assert np.array_equal(np.argwhere(rows != FIRST), [[5, 0, 7]])
    assert rows[5, 0, 7] == 1
    for number in range(60):
        changed = cook("one_bit", RandomSource(str(number)), [SECOND], MACHINE)
        assert int(np.unpackbits(changed ^ SECOND).sum()) == 1


@pytest.mark.parametrize(("which", "cells"), [(0, [1, 2, 5]), (1, [0, 3, 5]), (2, [1, 3, 4])])
def test_moved_means_that_no_tile_changes(which: int, cells: list[int]) -> None:
    """A cell to the right, to the left, or a row down, round the edge: the same patterns in other cells."""
    rows = made("moved", [which])
    assert occupied(rows) == cells
    assert sorted(cell.tobytes() for cell in rows) == sorted(cell.tobytes() for cell in FIRST)


def test_swapped_are_two_rows_of_one_cell() -> None:
    """The same bytes in another order, in one cell: what a sum of the bytes does not notice."""
    rows = made("swapped", [2, 0, 7], past=(SECOND,))
    assert rows[2, 0].tolist() == [8, 2, 3, 4, 5, 6, 7, 1]
    rows[2] = SECOND[2]
    assert np.array_equal(rows, SECOND)


def test_swapped_rows_are_swapped_in_every_bit_of_a_pixel() -> None:
    """At depth 2 both bits of the pixels move."""
    before = picture({}, DEEP)
    before[0] = np.arange(16).reshape(2, 8)
    rows = made("swapped", [0, 0, 1], past=(before,), machine=DEEP)
    assert rows[0, :, :2].tolist() == [[1, 0], [9, 8]]


def test_pictures_that_come_back() -> None:
    """The last, the one before it, or any earlier one or none: as they were."""
    past = (FIRST, SECOND, FIRST[::-1])
    assert np.array_equal(made("same_again", past=past), past[2])
    assert np.array_equal(made("before_last", past=past), past[1])
    for back, expected in enumerate((past[2], past[1], past[0], np.zeros_like(FIRST))):
        assert np.array_equal(made("earlier", [back], past=past), expected)


def test_most_pictures_may_not_be_declined() -> None:
    """Where a change makes more than must be shown, the first cells are emptied until it is not too much."""
    crowded = picture({0: DOT, 1: DOT, 2: DOT, 3: DOT})
    rows = made("changed_cells", [1, 5], past=(crowded,))
    assert occupied(rows) == [1, 2, 3, 5]


@every_move
@pytest.mark.parametrize("machine", [MACHINE, ONE_PAGE, DEEP], ids=lambda machine: machine.name)
def test_a_move_leaves_the_past_as_it_was(move: object, machine: Machine) -> None:
    """And gives a new array: what is drawn later can't change an earlier picture. It can begin a scene as well."""
    name = move.__name__.removeprefix("_")  # type: ignore[attr-defined]
    for number in range(30):
        past = [picture({0: SQUARE, 3: DOT}, machine), picture({1: LINE}, machine)]
        before = [rows.copy() for rows in past]
        rows = cook(name, RandomSource(str(number)), past, machine)
        assert not any(np.shares_memory(rows, old) for old in past)
        assert all(np.array_equal(old, kept) for old, kept in zip(past, before, strict=True))
        first = cook(name, RandomSource(str(number)), [], machine)
        assert first.shape == rows.shape == (6, machine.tiles.depth, 8)
        assert first.dtype == rows.dtype == np.uint8


def test_a_drawn_pattern_is_never_empty() -> None:
    """Not even where each of its planes may be: an occupied cell is what was asked for."""
    patterns = [patterns_of_cells.drawn_pattern(DEEP, RandomSource(str(number))) for number in range(300)]
    assert all(rows.any() for rows in patterns)
    assert any(not rows[0].any() for rows in patterns)
    assert any(not rows[1].any() for rows in patterns)
