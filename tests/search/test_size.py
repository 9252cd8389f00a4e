"""How big a scene is: what stands first in the order outranks everything after it."""

from dataclasses import replace
from itertools import combinations

from planeproof.contract import Disturbance, Machine, Picture, Scene, Tiles, Window
from planeproof.search.size import size

DOT, SQUARE, EMPTY = [0] * 7 + [1], [0xFF] * 8, [0] * 8


def scene(
    *,
    pictures: int = 2,
    cells: int = 2,
    window: int = 4,
    lost: tuple[int, ...] = (5,),
    pool: int = 4,
    pattern: list[int] = DOT,
    ready: int = 1,
    around: int = 1,
    cut_to: int = 0,
) -> Scene:
    """A scene of which one thing at a time can be made bigger; the occupied cells are all in picture 0."""
    machine = Machine(
        name="scales",
        window=Window(columns=window, rows=1, map_columns=window + around),
        tiles=Tiles(count=12, pool=tuple(range(1, 1 + pool))),
    )
    first = Picture.from_rows(0, [pattern] * cells + [EMPTY] * (window - cells))
    rest = [Picture.from_rows(0, [EMPTY] * window)] * (pictures - 1)
    return Scene.of(machine, [first, *rest], [0] + [ready] * (pictures - 1), [Disturbance(at, cut_to) for at in lost])


BIGGER = (
    scene(pictures=3),
    scene(cells=3),
    scene(window=5),
    scene(lost=(5, 6)),
    scene(pool=5),
    scene(pattern=SQUARE),
    scene(ready=2),
    scene(around=2),
    scene(lost=(6,)),
    scene(cut_to=1),
)
"""Each bigger than `scene()` in one thing, what counts most first."""


def test_bigger_in_anything_is_bigger() -> None:
    """One more picture, occupied cell, cell, disturbance, tile, bit of ink, refresh, cell around; later; less cut."""
    assert all(size(scene()) < size(bigger) for bigger in BIGGER)


def test_the_order_is_the_one_that_is_documented() -> None:
    """Pictures, occupied cells, window, disturbances, tiles, ink, waiting, place, times and cycles of disturbances."""
    assert [size(more) < size(other) for other, more in combinations(BIGGER, 2)] == [True] * 45


def test_what_counts_more_can_t_be_outweighed() -> None:
    """One occupied cell less outweighs a window of any size, many disturbances, and all the ink there is."""
    crowded = scene(cells=1, window=40, lost=tuple(range(10)), pool=10, pattern=SQUARE, ready=9)
    assert size(crowded) < size(scene(cells=2))


def test_what_nobody_has_to_read_does_not_count() -> None:
    """The machine's name, its colours and its addresses leave the size as it is."""
    named = replace(scene().machine, name="a much longer name")
    assert size(replace(scene(), machine=named)) == size(scene())
