"""Machines, pictures, scenes and rules as values: equal, hashed, pickled, never changed."""

import pickle
from dataclasses import FrozenInstanceError, replace
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planeproof.contract import RULES, ByteDirection, Disturbance, Kind, Machine, Picture, RuleClass, Scene, SceneError
from planeproof.contract import rule as rule_of
from planeproof.contract.picture import same_rows
from tests.contract.machines_by_hand import MACHINE
from tests.strategies.machines import machines

FULL, EMPTY, HALF = [0xFF] * 8, [0] * 8, [0xF0] * 8
A = Picture.from_rows(0, [FULL, EMPTY])


@given(machines())
def test_a_machine_is_the_same_after_pickling(machine: Machine) -> None:
    """Equal, hashed alike, with the same addresses; whatever it had worked out before."""
    assert machine.patience > 0
    twin = pickle.loads(pickle.dumps(machine))
    assert (twin, hash(twin)) == (machine, hash(machine))
    assert (twin.regions, twin.patience) == (machine.regions, machine.patience)


def test_machines_differ_by_any_part() -> None:
    """So they may be keys."""
    other = [replace(MACHINE, name="other"), replace(MACHINE, time=replace(MACHINE.time, setup=5))]
    assert len({MACHINE, replace(MACHINE), *other}) == 3


def test_nothing_of_a_machine_can_be_changed() -> None:
    """Nor of its parts."""
    machine: Any = MACHINE
    for value, field in [(machine, "name"), (machine.time, "setup"), (machine.tiles, "pool")]:
        with pytest.raises(FrozenInstanceError):
            setattr(value, field, None)


# --- rules --------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_a_rule_is_the_same_value_after_pickling(rule: object) -> None:
    """By identity, and by its id."""
    assert pickle.loads(pickle.dumps(rule)) is rule
    assert rule_of(str(rule).removeprefix("<rule ").removesuffix(">")) is rule


def test_the_rules_are_these_nine() -> None:
    """With their classes; one only must come true, the others always hold."""
    classes = {rule.id: rule.rule_class for rule in RULES}
    discipline, own, seen = RuleClass.DISCIPLINE, RuleClass.OWN, RuleClass.SEEN
    assert classes == {
        "hidden-writes": discipline,
        "exact-reveal": discipline,
        "blanking-only": discipline,
        "own-memory": own,
        "tile-cap": own,
        "whole-reveal": seen,
        "in-order": seen,
        "progress": seen,
        "fair-refusal": seen,
    }
    assert [rule.id for rule in RULES if rule.kind is Kind.EVENTUALLY] == ["progress"]
    assert all(text.endswith(".") for rule in RULES for text in (rule.statement, rule.why, rule.theorem))


def test_an_unknown_rule_is_told_with_those_there_are() -> None:
    """By their ids."""
    with pytest.raises(ValueError, match=r"no rule 'no-such'; there are: hidden-writes, .*fair-refusal"):
        rule_of("no-such")


# --- pictures -----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("rows", "allowed"),
    [
        ([0] * 8, "shape"),
        ([[0] * 7], "shape"),
        ([[0] * 9], "shape"),
        (np.zeros((0, 8), np.uint8), "shape"),
        (np.zeros((1, 1, 1, 8), np.uint8), "shape"),
        ([[256] + [0] * 7], "0 to 255"),
        ([[-1] + [0] * 7], "0 to 255"),
        ([[0.0] * 8], "0 to 255"),
        ([[True] * 8], "0 to 255"),
        ([["0"] * 8], "0 to 255"),
    ],
)
def test_a_picture_that_can_not_be_is_refused(rows: Any, allowed: str) -> None:  # noqa: ANN401 - it is all wrong
    """Shape and values are named."""
    with pytest.raises(SceneError, match=r"picture\.rows is .*") as caught:
        Picture.from_rows(0, rows)
    assert allowed in caught.value.allowed


def test_a_picture_copies_what_it_is_made_from() -> None:
    """And nobody can write to it afterwards."""
    source = np.full((2, 8), 7, dtype=np.uint8)
    picture = Picture.from_rows(0, source)
    source[:] = 9
    assert picture.rows.tolist() == [[7] * 8] * 2
    for array in (picture.rows, picture.planes, picture.rows[0]):
        with pytest.raises(ValueError, match="read-only"):
            array[...] = 1
        with pytest.raises(ValueError, match="cannot set WRITEABLE"):
            array.flags.writeable = True


@pytest.mark.parametrize("protocol", range(pickle.HIGHEST_PROTOCOL + 1))
def test_a_picture_is_the_same_after_pickling_and_still_read_only(protocol: int) -> None:
    """It may go to another process and come back."""
    twin = pickle.loads(pickle.dumps(A, protocol))
    assert same_rows([twin], [A])
    assert (twin.number, twin.occupied) == (0, (0,))
    with pytest.raises(ValueError, match="read-only"):
        twin.rows[0, 0] = 1


def test_occupied_cells_are_those_with_any_bit_of_any_plane() -> None:
    """The lowest row of one plane is enough."""
    deep = Picture.from_rows(0, [[EMPTY, EMPTY], [EMPTY, [0] * 7 + [1]], [FULL, EMPTY]])
    assert (A.occupied, A.depth, deep.occupied, deep.depth) == ((0,), 1, (1, 2), 2)
    assert deep.planes.shape == (3, 2, 8)
    assert A.planes.shape == (2, 1, 8)


@given(st.integers(1, 4), st.sampled_from(ByteDirection), st.integers(1, 3), st.randoms(use_true_random=False))
def test_pixels_and_bytes_are_the_same_picture(depth: int, direction: ByteDirection, cells: int, random: Any) -> None:  # noqa: ANN401
    """From pixels to bytes and back, a row or a column a byte."""
    pixels = np.array([random.randrange(1 << depth) for _ in range(cells * 64)], dtype=np.uint8).reshape(cells, 8, 8)
    picture = Picture.from_pixels(3, pixels, depth=depth, direction=direction)
    assert picture.rows.shape == ((cells, 8) if depth == 1 else (cells, depth, 8))
    assert (picture.pixels(direction) == pixels).all()


def test_the_leftmost_pixel_is_bit_7_and_the_topmost_of_a_column() -> None:
    """Worked by hand: one pixel at (y 2, x 5)."""
    pixels = np.zeros((1, 8, 8), dtype=np.uint8)
    pixels[0, 2, 5] = 2
    by_row = Picture.from_pixels(0, pixels, depth=2, direction=ByteDirection.ROW)
    by_column = Picture.from_pixels(0, pixels, depth=2, direction=ByteDirection.COLUMN)
    assert by_row.rows.tolist() == [[EMPTY, [0, 0, 0b100, 0, 0, 0, 0, 0]]]
    assert by_column.rows.tolist() == [[EMPTY, [0, 0, 0, 0, 0, 0b100000, 0, 0]]]


# --- scenes -------------------------------------------------------------------------------------------------------

B = Picture.from_rows(1, [EMPTY, HALF])
DEEP = Picture.from_rows(0, [[EMPTY, EMPTY]] * 2)
LARGE = Picture.from_rows(0, [EMPTY] * 3)


@pytest.mark.parametrize(
    ("fields", "field", "allowed"),
    [
        ({"pictures": (B,), "ready": (0,)}, "picture.number", "must be 0 in this place"),
        ({"pictures": (LARGE,), "ready": (0,)}, "pictures[0].rows", "shape (2, 8)"),
        ({"pictures": (DEEP,), "ready": (0,)}, "pictures[0].rows", "shape (2, 8)"),
        ({"pictures": (A, B), "ready": (0,)}, "ready", "must be 2 refreshes"),
        ({"pictures": (A,), "ready": (0, 1)}, "ready", "must be 1 refreshes"),
        ({"pictures": (A,), "ready": (-1,)}, "ready", "must be 0 or more"),
        ({"pictures": (A, B), "ready": (3, 2)}, "ready", "must not decrease"),
        ({"disturbances": (Disturbance(-1, 0),)}, "disturbances", "refresh 0 or later"),
        ({"disturbances": (Disturbance(3, 0), Disturbance(3, 5))}, "disturbances", "one a refresh"),
        ({"disturbances": (Disturbance(3, 0), Disturbance(2, 5))}, "disturbances", "in order"),
        ({"disturbances": (Disturbance(3, -1),)}, "disturbance.cycles", "0..199"),
        ({"disturbances": (Disturbance(3, 200),)}, "disturbance.cycles", "0..199"),
    ],
)
def test_a_scene_that_can_not_be_played_is_refused(fields: dict[str, Any], field: str, allowed: str) -> None:
    """Field, value and what is allowed are named."""
    with pytest.raises(SceneError) as caught:
        Scene(**{"machine": MACHINE, "pictures": (), "ready": (), **fields})
    assert caught.value.field == field
    assert allowed in caught.value.allowed
    assert repr(caught.value.value) in str(caught.value)


def test_a_scene_knows_its_blankings() -> None:
    """Shortened, lost, and the others as the machine has them."""
    scene = Scene.of(MACHINE, [B, A], [0, 0], [Disturbance(4, 0), Disturbance(1, 199)])
    assert [scene.cycles_of(refresh) for refresh in range(6)] == [200, 199, 200, 200, 0, 200]
    assert [picture.number for picture in scene.pictures] == [0, 1]
    assert scene.occupied == 2


def test_a_scene_is_the_same_after_pickling() -> None:
    """Machine, pictures, times and disturbances."""
    scene = Scene.of(MACHINE, [A, B], [0, 7], [Disturbance(4, 0)])
    twin = pickle.loads(pickle.dumps(scene))
    assert same_rows(twin.pictures, scene.pictures)
    assert (twin.machine, twin.ready, twin.disturbances) == (scene.machine, scene.ready, scene.disturbances)


def test_pictures_and_scenes_are_written_in_short() -> None:
    """Not as all their bytes, which fill the screen of whoever prints one."""
    window = replace(MACHINE.window, columns=2, rows=1, map_columns=None, map_rows=None)
    machine = replace(MACHINE, name="two-cells", window=window)
    assert repr(A) == "<picture 0: 1 of 2 cells occupied>"
    scene = Scene.of(machine, [A, A], disturbances=[Disturbance(3, 0)])
    assert repr(scene) == "<scene on two-cells: 2 pictures, 2 occupied cells, 1 disturbed>"
