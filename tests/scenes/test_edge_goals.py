"""The goals: each is met in a scene made by hand, and missed by the least change of it."""

from dataclasses import replace

import numpy as np
import pytest

from planeproof.contract import Picture, Scene
from planeproof.scenes.edge_goals import GOALS, goal, goals_met
from planeproof.scenes.edge_pairs import PAIRS, GoalPair, Joint, pairs_met
from planeproof.scenes.relatives import with_blanking
from tests.candidates.small import scene, small

CASE = small("vitrine-50", 4, tiles=4, pool=(1, 2))
"""Four cells, two tiles, two sides; both tiles' cells must be shown."""

PLATE = small("name-plate", 4, tiles=9, pool=(1, 2, 3, 4))
"""Four cells, one side."""

MET = [
    ("at-the-limit", CASE, ["A..B"]),
    ("shared-tiles", CASE, ["AB.A"]),
    ("before-last", CASE, ["A...", ".B..", "A..."]),
    ("before-last", PLATE, ["A...", ".B..", "A..."]),
    ("same-again", CASE, ["A...", "A..."]),
    ("moved", CASE, ["AB..", "BA.."]),
    ("hidden-moved", CASE, ["AB..", "....", "..AB"]),
    ("hidden-moved", PLATE, ["AB..", "..AB"]),
    ("emptied", CASE, ["A..B", "...."]),
    ("refilled", CASE, ["A..B", "...B", "C..."]),
]

MISSED = [
    ("at-the-limit", CASE, ["A..A"]),
    ("at-the-limit", CASE, ["A..."]),
    ("shared-tiles", CASE, ["AB.C"]),
    ("shared-tiles", CASE, ["AA.."]),
    ("shared-tiles", CASE, ["AABB"]),
    ("before-last", CASE, ["A...", "A...", "A..."]),
    ("before-last", CASE, ["....", "A...", "...."]),
    ("same-again", CASE, ["A...", "B..."]),
    ("same-again", CASE, ["....", "...."]),
    ("moved", CASE, ["AB..", "AB.."]),
    ("moved", CASE, ["AB..", "BC.."]),
    ("moved", CASE, ["AA..", ".A.."]),
    ("moved", CASE, ["AAB.", ".BA."]),
    ("hidden-moved", CASE, ["AB..", "..AB"]),
    ("hidden-moved", PLATE, ["AB..", "....", "..AB"]),
    ("emptied", CASE, ["A..B", "...B"]),
    ("emptied", CASE, ["...."]),
    ("refilled", CASE, ["A..B", "...B", "A..."]),
    ("refilled", CASE, ["A..B", "B..B", "C..."]),
]


def met_last(scenario: Scene) -> frozenset[str]:
    """The goals that the last picture meets."""
    return goals_met(scenario)[-1]


@pytest.mark.parametrize(("goal_id", "machine", "pictures"), MET)
def test_met(goal_id: str, machine: object, pictures: list[str]) -> None:
    """The last picture meets the goal."""
    assert goal_id in met_last(scene(machine, pictures))  # type: ignore[arg-type]


@pytest.mark.parametrize(("goal_id", "machine", "pictures"), MISSED)
def test_missed(goal_id: str, machine: object, pictures: list[str]) -> None:
    """The last picture does not meet the goal."""
    assert goal_id not in met_last(scene(machine, pictures))  # type: ignore[arg-type]


def with_rows(scenario: Scene, cell: int, row: int, flip: int) -> Picture:
    """The last picture with bits of one byte flipped."""
    rows = scenario.pictures[-1].rows.copy()
    rows[cell, row] ^= flip
    return Picture.from_rows(0, rows)


@pytest.mark.parametrize(
    ("cell", "row", "flip", "one"),
    [(3, 7, 0x10, True), (3, 7, 0x18, False), (3, 6, 0x10, False), (2, 7, 0x10, False), (3, 7, 0, False)],
)
def test_one_bit_of_the_last_byte_of_the_last_cell(cell: int, row: int, flip: int, one: bool) -> None:
    """Just one bit, just there, and nothing else."""
    scenario = scene(CASE, ["A..B"])
    longer = Scene.of(CASE, [*scenario.pictures, with_rows(scenario, cell, row, flip)])
    assert ("one-bit" in met_last(longer)) is one
    between = Scene.of(CASE, [*scenario.pictures, *scene(CASE, ["..C."]).pictures, longer.pictures[-1]])
    assert ("one-bit-hidden" in met_last(between)) is one
    assert "one-bit" not in met_last(between)


def test_a_blanking_filled_and_a_byte_over() -> None:
    """Two patterns (78 cycles each), two entries (22) and the reveal (46) fill 246 cycles; 245 to 238 want a byte."""
    assert [met_of_blanking(cycles) for cycles in (247, 246, 245, 238, 237)] == [
        set(),
        {"fills-blankings"},
        {"a-byte-over"},
        {"a-byte-over"},
        set(),
    ]


def met_of_blanking(cycles: int) -> set[str]:
    """Of the two goals of time those met by two new cells, where a blanking has so many cycles."""
    machine = with_blanking(CASE, cycles, time=CASE.time)
    return set(met_last(scene(machine, ["AB.."]))) & {"fills-blankings", "a-byte-over"}


def test_what_may_be_declined_fills_nothing() -> None:
    """A picture of more cells than must be shown, or on a side that holds one, meets no goal of time."""
    roomy = replace(CASE, name="roomy")
    machine = with_blanking(roomy, 3 * 78 + 3 * 22 + 46, time=CASE.time)
    assert not {"fills-blankings", "a-byte-over"} & met_last(scene(machine, ["ABC."]))


def test_goals_are_found_by_id() -> None:
    """Each goal by its id, and a slip is told with what there is."""
    assert [goal(one.id) for one in GOALS] == list(GOALS)
    with pytest.raises(ValueError, match=r"no goal 'moves'; there are: at-the-limit, .*moved"):
        goal("moves")


def test_sentences_are_sentences() -> None:
    """Each goal is told in one sentence, and no two alike."""
    assert len({one.sentence for one in GOALS}) == len(GOALS)
    assert all(one.sentence.endswith(".") for one in GOALS)


def test_all_pairs() -> None:
    """Any two different goals together, and any two in either order, one with itself included."""
    size = len(GOALS)
    assert len(set(PAIRS)) == len(PAIRS) == size * (size - 1) // 2 + size * size


def test_pairs_of_a_scene() -> None:
    """Together: of one picture, in the order of the goals. In turn: of one picture and the next, not the one after."""
    met = [frozenset({"moved", "at-the-limit"}), frozenset({"emptied"}), frozenset({"refilled"})]
    assert pairs_met(met) == {
        GoalPair(joint=Joint.TOGETHER, first="at-the-limit", second="moved"),
        GoalPair(joint=Joint.IN_TURN, first="at-the-limit", second="emptied"),
        GoalPair(joint=Joint.IN_TURN, first="moved", second="emptied"),
        GoalPair(joint=Joint.IN_TURN, first="emptied", second="refilled"),
    }


def test_any_scene_can_be_asked() -> None:
    """A scene without pictures meets nothing, and one of two bits a pixel is read as it stands."""
    assert goals_met(Scene.of(CASE, [])) == ()
    mosaic = small("mosaic-floor", 2)
    one = np.zeros((2, 2, 8), dtype=np.uint8)
    one[1, 1, 7] = 4
    assert "one-bit" in met_last(Scene.of(mosaic, [Picture.from_rows(0, one)]))
