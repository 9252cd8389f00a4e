"""How many scenes there are: counted by the tree, by published numbers, and one by one."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations, product
from math import comb
from random import Random
from typing import Any

import numpy as np
import pytest

from planeproof.candidates.reference import Fresh
from planeproof.contract import Disturbance, Machine, Scene
from planeproof.search.exhausting import TINY, Bounds, tiny
from planeproof.search.exhausting.letters import Letters
from planeproof.search.exhausting.tree import SceneTree
from planeproof.search.exhausting.walking import Walk
from planeproof.search.size import size
from tests.candidates.small import small

BELL = (1, 1, 2, 5, 15, 52, 203, 877, 4140, 21147)
"""Partitions of a set of n elements: OEIS A000110. MEM; a recurrence below gives the same (RUN)."""

PINNED = {
    "one-cell": (5862, 5610, 66049),
    "two-cells": (5610, 5610, 65537),
    "scarce": (5610, 5610, 65537),
    "four-cells": (21200, 21200, 257),
    "one-page": (5610, 5610, 65537),
    "one-plane": (5862, 5610, 66049),
    "two-banks": (5862, 5610, 66049),
    "columns": (5610, 5610, 65537),
    "wide-entries": (5862, 5610, 66049),
    "two-bits": (5610, 5610, 65537),
    "interleaved": (5610, 5610, 65537),
    "packed": (138, 138, 4369),
    "one-side": (5862, 5610, 65793),
    "roomy": (5862, 5610, 66049),
}
"""Scenes of each tiny machine, by what is taken for granted of a candidate: patterns, bytes, nothing."""


def bell(elements: int) -> int:
    """Bell's triangle: a row begins with the end of the one before, and each number adds the one above its left."""
    row = [1]
    for _ in range(elements):
        following = [row[-1]]
        for above in row:
            following.append(following[-1] + above)
        row = following
    return row[0]


def expected(machine: Machine, bounds: Bounds, letters: Letters) -> int:
    """By a formula that knows nothing of a tree: drawings x gaps x disturbances."""
    a_cell = machine.tiles.depth * (1 if letters is Letters.PATTERNS else bounds.parts)
    disturbances = sum(comb(bounds.within, n) * len(bounds.left) ** n for n in range(bounds.disturbed + 1))
    total = 0
    for pictures in range(bounds.pictures + 1):
        drawn = sum(number not in bounds.empty for number in range(pictures))
        slots = drawn * machine.cells * a_cell
        drawings = bounds.values**slots if letters is Letters.VALUES else bell(slots + 1)
        total += drawings * len(bounds.gaps) ** pictures * disturbances
    return total


def test_bells_numbers_are_those_published() -> None:
    """The recurrence of this file against the table."""
    assert tuple(map(bell, range(len(BELL)))) == BELL


@pytest.mark.parametrize("one", TINY, ids=lambda one: one.name)
def test_the_number_of_scenes_is_pinned(one: object) -> None:
    """Each tiny machine has just so many scenes, and a formula gives the same."""
    each = tiny(one.name)  # type: ignore[attr-defined]
    totals = tuple(SceneTree(each.machine, each.bounds(letters), letters).total for letters in Letters)
    assert totals == PINNED[each.name]
    assert totals == tuple(expected(each.machine, each.bounds(letters), letters) for letters in Letters)


# --- one by one ---------------------------------------------------------------------------------------------

Drawing = tuple[bytes, ...]
Key = tuple[Drawing, tuple[int, ...], tuple[Disturbance, ...]]


def renamed(word: tuple[int, ...]) -> tuple[int, ...]:
    """The word with its letters in the order in which they come, 0 apart."""
    names = {0: 0}
    return tuple(names.setdefault(letter, len(names)) for letter in word)


def plain_scenes(machine: Machine, bounds: Bounds) -> Iterator[Key]:
    """Every scene: all words over as many letters as slots, of which those alike up to renaming count once."""
    for pictures in range(bounds.pictures + 1):
        slots = range(pictures * machine.cells)
        words = {renamed(word) for word in product(range(len(slots) + 1), repeat=len(slots))}
        for word, gaps in product(sorted(words), product(bounds.gaps, repeat=pictures)):
            drawing = tuple(bytes(word[at : at + machine.cells]) for at in range(0, len(word), machine.cells))
            ready = tuple(np.cumsum(gaps).tolist()) if gaps else ()
            for number in range(bounds.disturbed + 1):
                for struck in combinations(range(bounds.within), number):
                    for left in product(bounds.left, repeat=number):
                        yield drawing, ready, tuple(map(Disturbance, struck, left))


def key(scene: Scene) -> Key:
    """A scene up to the names of its patterns."""
    patterns = [picture.rows[cell].tobytes() for picture in scene.pictures for cell in range(scene.machine.cells)]
    names = {bytes(8): 0}
    word = [names.setdefault(pattern, len(names)) for pattern in patterns]
    cells = scene.machine.cells
    return (
        tuple(bytes(word[at : at + cells]) for at in range(0, len(word), cells)),
        scene.ready,
        scene.disturbances,
    )


BOUNDS = Bounds(pictures=2, gaps=(0, 2), disturbed=2, within=3, left=(0, 5))
TREES = [
    SceneTree(small("vitrine-50"), BOUNDS, Letters.PATTERNS),
    SceneTree(small("vitrine-60", 2, tiles=3, pool=(1, 2)), replace(BOUNDS, gaps=(1,), disturbed=1), Letters.BYTES),
]


@pytest.mark.parametrize("tree", TREES, ids=["1 cell", "2 cells"])
def test_every_scene_is_walked_and_none_twice(tree: SceneTree) -> None:
    """The plays are scenes within the bounds, all different, and each counts those that are the same play with it."""
    every = list(plain_scenes(tree.machine, tree.bounds))
    assert len(every) == len(set(every)) == tree.total
    walked, counted = [], 0
    walk = Walk(tree=tree, make=Fresh, call_seconds=5)
    for level in tree.levels:
        leaves = list(walk.leaves(level))
        assert sum(leaf.scenes for leaf in leaves) == tree.count(level)
        assert {size(leaf.scene)[:2] for leaf in leaves} <= {(level.pictures, level.cells)}
        assert {len(leaf.scene.disturbances) for leaf in leaves} <= {level.disturbed}
        walked += [key(leaf.scene) for leaf in leaves]
        counted += sum(leaf.scenes for leaf in leaves)
    assert len(set(walked)) == len(walked)
    assert set(walked) <= set(every)
    assert {drawing for drawing, _, _ in walked} == {drawing for drawing, _, _ in every}
    assert {cut for _, _, cut in walked} == {cut for _, _, cut in every}
    assert counted == tree.total


def test_levels_come_in_order_of_size() -> None:
    """Pictures first, then occupied cells, then disturbances: what is found first is smallest."""
    levels = [(level.pictures, level.cells, level.disturbed) for level in TREES[1].levels]
    assert levels == sorted(levels)


def test_drawn_scenes_are_of_the_tree() -> None:
    """What premises are tried on are scenes within the bounds."""
    for tree in TREES:
        every = {(drawing, ready, cut) for drawing, ready, cut in plain_scenes(tree.machine, tree.bounds)}
        assert {key(tree.drawn(Random(seed))) for seed in range(50)} <= every


def test_tokens_have_no_byte_in_common() -> None:
    """As many as the largest tree needs, all of them in all rows different."""
    for letters, most in ((Letters.PATTERNS, 12), (Letters.BYTES, 96)):
        bytes_of = [set(letters.pattern((token,)).tolist()) for token in range(1, most + 1)]
        assert sum(map(len, bytes_of)) == len(set().union(*bytes_of))
        assert 0 not in set().union(*bytes_of)
        assert not letters.pattern((0,)).any()


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ({"pictures": 0}, "pictures is 0: it must be at least 1"),
        ({"pictures": 1, "gaps": (2, 0)}, "gaps is"),
        ({"pictures": 1, "gaps": ()}, "gaps is"),
        ({"pictures": 1, "disturbed": 2, "within": 1}, "disturbed is 2: it must be 0 to within, 1"),
        ({"pictures": 1, "left": (0, 0)}, "left is"),
        ({"pictures": 1, "parts": 3}, "parts is 3"),
        ({"pictures": 1, "values": 257}, "values is 257"),
        ({"pictures": 1, "empty": (1, 0)}, "empty is"),
    ],
)
def test_bounds_that_can_not_be_are_refused(wrong: dict[str, Any], said: str) -> None:
    """With the field, the value and what is allowed."""
    with pytest.raises(ValueError, match=said):
        Bounds(**wrong)


def test_a_blanking_can_not_have_all_its_cycles_left_and_be_disturbed() -> None:
    """Refused by name of the machine."""
    machine = small("vitrine-50")
    with pytest.raises(ValueError, match=f"left is .*'vitrine-50, small' has 0 to {machine.blank_cycles - 1}"):
        SceneTree(machine, Bounds(pictures=1, left=(machine.blank_cycles,)), Letters.BYTES)
