"""How near a play came to each edge: by hand, edge by edge, at it and one step away; and what a thin run lacks."""

import pickle
from collections.abc import Callable, Sequence
from dataclasses import replace

import pytest

from planeproof.contract import Answer, Burst, Demands, Disturbance, Machine, Picture, Tiles, Timing, Window
from planeproof.contract.rules import IN_ORDER, RULES, TILE_CAP
from planeproof.judge import MakeScheduler, Play, play
from planeproof.judge.distances import distances
from planeproof.judge.edges import CAP, EDGES, LINE, ONE_TOO_MANY, REUSE, edge, roomy
from planeproof.judge.reached import Reached, hardly_exercised, missed
from planeproof.machines import read_machine, shipped
from planeproof.scenes.recipes import recipe
from planeproof.scenes.relatives import picture_cycles
from planeproof.scenes.source import RandomSource
from tests.candidates.meant_for import MEANT_FOR
from tests.judge.scripted import EMPTY, FULL, LEFT, MACHINE, RIGHT, entry, pattern, picture, played, revealed, sent

NOTHING, A, B = picture(EMPTY, EMPTY), picture(LEFT, EMPTY), picture(EMPTY, RIGHT)
BOTH, ALIKE = picture(LEFT, RIGHT), picture(FULL, FULL)
DOT, TWO_DOTS = picture(LEFT, [1] + [0] * 7), picture(LEFT, [3] + [0] * 7)
BUSY, TOO_BIG = Answer.BUSY, Answer.TOO_BIG
TO_1 = MACHINE.view_bursts(1, 0)
FULL_BLANKING = [Burst(MACHINE.pattern_address(3, 0), bytes(16))] * 9  # 180 of 200 cycles
TWO_TILES = replace(MACHINE, tiles=Tiles(count=5, pool=(1, 2)), demands=Demands(patience=5))
ONE_TILE = replace(MACHINE, tiles=Tiles(count=5, pool=(1,)), demands=Demands(patience=5))
LOST_FIRST, CUT_SECOND = Disturbance(0, 0), Disturbance(1, 100)


def seen(pictures: Sequence[Picture], *blankings: Sequence[Burst], **how: object) -> Callable[[], Play]:
    """A play of these blankings, to be had when it is needed."""
    return lambda: played(pictures, blankings, **how)  # type: ignore[arg-type]


CASES: list[tuple[str, Callable[[], Play], int | None]] = [
    # tiles that a view can show and the shown page does not name, at the least
    ("cap", seen([BOTH], revealed(BOTH, 1)), 1),
    ("cap", seen([BOTH], [entry(0, c, c + 1) for c in (0, 1)], machine=TWO_TILES), 0),
    ("cap", seen([BOTH], [entry(0, c, 1) for c in (0, 1)], machine=TWO_TILES), 1),
    ("cap", seen([BOTH], [entry(1, c, c + 1) for c in (0, 1)], machine=TWO_TILES), 2),
    ("cap", seen([BOTH], [entry(0, c, c + 3) for c in (0, 1)]), 2),  # tile 4 is not of the pool
    # cells too many, too few or alike
    ("must-show", seen([BOTH]), 0),
    ("must-show", seen([BOTH], answers=[TOO_BIG]), 0),
    ("must-show", seen([A]), 1),
    ("must-show", seen([ALIKE]), 1),
    ("must-show", seen([]), None),
    ("one-too-many", seen([BOTH]), 2),
    ("one-too-many", seen([BOTH], machine=ONE_TILE), 0),
    ("one-too-many", seen([ALIKE], machine=ONE_TILE), 1),
    # cycles left when a picture waited
    ("blanking-end", seen([A], FULL_BLANKING), 20),
    ("blanking-end", seen([A], FULL_BLANKING, disturbances=[Disturbance(0, 180)]), 0),
    ("blanking-end", seen([A], revealed(A, 1)), None),
    ("blanking-end", seen([A]), None),
    # bytes sent in the blanking that reveals, after one that did not
    ("one-over", seen([A], sent(A, 1), TO_1), 0),
    ("one-over", seen([A], sent(A, 1), [pattern(1, 1, LEFT), *TO_1]), 8),
    ("one-over", seen([A], revealed(A, 1)), None),
    # refreshes since a byte that is changed was seen
    ("reuse", seen([A, B], revealed(A, 1), [pattern(1, 1, FULL)]), 1),
    ("reuse", seen([A, B], revealed(A, 1), [pattern(1, 0, FULL)]), None),
    ("reuse", seen([A, B], revealed(A, 1), revealed(B, 0), [pattern(1, 1, FULL)]), 2),
    ("reuse", seen([A, B], revealed(A, 1), revealed(B, 0), [], [pattern(1, 1, FULL)]), 3),
    ("reuse", seen([A, B], revealed(A, 1), revealed(B, 0), [pattern(1, 1, LEFT)]), None),  # nothing changes
    # refreshes from a picture being seen to the offer of the next
    ("line", seen([A, B]), 0),
    ("line", seen([A, B], [], revealed(A, 1), answers=[Answer.TAKEN, BUSY]), 0),
    ("line", seen([A, B], revealed(A, 1)), 1),
    ("line", seen([A, B], revealed(A, 1), ready=[0, 4]), 4),
    ("line", seen([A]), None),
    # occupied, emptied, occupied again
    ("refilled", seen([NOTHING]), 3),
    ("refilled", seen([A]), 2),
    ("refilled", seen([A, B]), 1),
    ("refilled", seen([A, B, BOTH]), 0),
    ("refilled", seen([A, B, BOTH], answers=[TOO_BIG]), 2),
    ("refilled", seen([A, B, NOTHING]), 1),
    # cells in which a picture differs from the one before last
    ("before-last", seen([A, B, A]), 0),
    ("before-last", seen([A, BOTH, NOTHING]), 1),
    ("before-last", seen([BOTH, A, NOTHING]), 2),
    ("before-last", seen([A, A, A]), None),
    ("before-last", seen([A, B]), None),
    # bits more than one in which a picture differs from the last
    ("one-bit", seen([A, DOT]), 0),
    ("one-bit", seen([A, TWO_DOTS]), 1),
    ("one-bit", seen([A, A]), None),
    # refreshes from a disturbance to a picture that waits
    ("lost", seen([A], disturbances=[LOST_FIRST]), 0),
    ("lost", seen([A], disturbances=[LOST_FIRST], ready=[2]), 2),
    ("lost", seen([A], revealed(A, 1), disturbances=[Disturbance(2, 0)]), None),
    ("lost", seen([A], disturbances=[CUT_SECOND]), None),
    ("cut", seen([A], disturbances=[CUT_SECOND]), 0),
    ("cut", seen([A], disturbances=[CUT_SECOND], ready=[5]), 4),
    ("cut", seen([A], disturbances=[LOST_FIRST]), None),
]


@pytest.mark.parametrize(("edge_id", "one", "distance"), CASES, ids=[f"{c[0]}-{n}" for n, c in enumerate(CASES)])
def test_the_distance_to_an_edge(edge_id: str, one: Callable[[], Play], distance: int | None) -> None:
    """The least of a play; None where there is nothing to measure from."""
    assert distances(one()).get(edge(edge_id)) == distance


def test_every_edge_is_measured_above() -> None:
    """At it and away from it; none is forgotten."""
    reached = {edge_id: {distance for name, _, distance in CASES if name == edge_id} for edge_id, _, _ in CASES}
    assert set(reached) == {edge.id for edge in EDGES}
    assert all(len(found - {None}) > 1 for found in reached.values())


def test_measuring_changes_nothing() -> None:
    """The same play measured twice gives the same, whatever it wrote, outside memory too."""
    stray = played([A], [[Burst(-3, b"abc"), Burst(5000, b"abc"), *sent(A, 1)], TO_1])
    said = stray.transcript
    assert distances(stray) == distances(stray)
    assert stray.transcript == said


# --- the edges as values ----------------------------------------------------------------------------------


def test_an_edge_is_one_value() -> None:
    """Found by its id, also after pickling; every id stands once; an unknown one is refused, naming those there are."""
    assert all(edge(one.id) is one and pickle.loads(pickle.dumps(one)) is one for one in EDGES)
    assert len({one.id for one in EDGES}) == len(EDGES)
    with pytest.raises(ValueError, match="no edge 'ledge'; there are: cap, must-show"):
        edge("ledge")


def test_every_rule_has_an_edge_but_that_of_stray_bytes() -> None:
    """No edge tells where a stray byte is near."""
    assert {rule.id for rule in RULES} - {rule.id for one in EDGES for rule in one.asked_for} == {"own-memory"}


def test_a_threshold_is_reached_just_at_it() -> None:
    """Within two refreshes of having been hidden; not three."""
    assert REUSE.reached(MACHINE, 2)
    assert not REUSE.reached(MACHINE, 3)
    assert not LINE.reached(MACHINE, 1)


@pytest.mark.parametrize("name", shipped())
def test_roomy_is_where_recipes_make_small_machines_roomy(name: str) -> None:
    """The same figure decides on what a small relative has room for."""
    machine = read_machine(name)
    assert roomy(machine) == (picture_cycles(machine) <= machine.blank_cycles)


def test_what_a_machine_excludes() -> None:
    """One cell: no cell too many; a demand below the cap: no cap; no demand at all: nothing that takes a picture."""
    single = Machine(name="single", window=Window(columns=1, rows=1), tiles=Tiles(count=2, pool=(1,)))
    assert CAP.admitted(single)
    assert not ONE_TOO_MANY.admitted(single)
    assert CAP.admitted(TWO_TILES)
    assert not CAP.admitted(replace(TWO_TILES, demands=Demands(must_show=1)))
    assert not CAP.admitted(MACHINE)  # three tiles, but only two cells
    nothing = replace(TWO_TILES, demands=Demands(must_show=0))
    assert {one.id for one in EDGES if one.admitted(nothing)} == {"lost"}
    tight = replace(nothing, time=Timing(lines=23, shown=20, cycles_per_line=10, setup=4, per_byte=1))
    assert {one.id for one in EDGES if one.admitted(tight)} == {"blanking-end", "one-over", "line", "lost", "cut"}


# --- many plays -------------------------------------------------------------------------------------------


def over(*plays: Play) -> Reached:
    """The edges over all of these."""
    reached = Reached()
    for one in plays:
        reached.add(one)
    return reached


PLAYS = (
    played([BOTH, A], [[entry(0, c, c + 1) for c in (0, 1)]], machine=TWO_TILES),
    played([A, B, A], [revealed(A, 1)]),
    played([A, DOT], [], disturbances=[LOST_FIRST, CUT_SECOND]),
)


def test_they_are_counted_by_scene() -> None:
    """The least distance of all; one more for each scene that reached it; and how many could have."""
    reached = over(*PLAYS)
    assert reached.least[CAP] == 0
    assert (reached.scenes[CAP], reached.admitting[CAP]) == (1, 1)
    assert reached.scenes[edge("before-last")] == 1
    assert reached.admitting[edge("before-last")] == 3
    assert (reached.scenes[ONE_TOO_MANY], reached.admitting[ONE_TOO_MANY]) == (0, 0)


@pytest.mark.parametrize("order", [(0, 1, 2), (2, 0, 1), (1, 2, 0)])
def test_parts_add_up_in_any_order(order: tuple[int, ...]) -> None:
    """As if all had been played in one place; also when each comes from another process."""
    whole = Reached()
    for place in order:
        whole.merge(pickle.loads(pickle.dumps(over(PLAYS[place]))))
    assert vars(whole) == vars(over(*PLAYS))


def test_an_edge_is_missed_only_where_a_machine_admits_it() -> None:
    """Never the cap of a machine that demands less, never a cell too many where there are not so many cells."""
    modest = replace(TWO_TILES, demands=Demands(must_show=1, patience=5))
    demanding = over(played([A], [], machine=TWO_TILES))
    assert CAP in missed(demanding)
    assert CAP not in missed(over(played([A], [], machine=modest)))
    assert ONE_TOO_MANY not in missed(demanding)
    assert missed(Reached()) == ()


def test_rules_are_hardly_exercised_where_their_edges_are_missed() -> None:
    """Each with the edges it misses; with the edge reached the rule is not among them; those not asked for never."""
    one, other = over(played([A], [revealed(A, 1)])), over(played([A, BOTH, A], [revealed(A, 1)]))
    assert [edge.id for edge in hardly_exercised(one, RULES)[IN_ORDER]] == ["before-last"]
    assert IN_ORDER not in hardly_exercised(other, RULES)
    assert [edge.id for edge in hardly_exercised(other, [IN_ORDER], least_scenes=2)[IN_ORDER]] == ["before-last"]
    assert [edge.id for edge in hardly_exercised(one, RULES)[TILE_CAP]] == ["must-show"]
    assert set(hardly_exercised(one, [TILE_CAP])) == {TILE_CAP}


@pytest.mark.parametrize(("name", "make"), MEANT_FOR, ids=lambda value: getattr(value, "__name__", value))
def test_recipes_reach_every_edge_that_is_asked_for(name: str, make: MakeScheduler) -> None:
    """Within 400 recipes on small relatives, with every strategy on what it is meant for; the first alone does not."""
    base, reached = read_machine(name), Reached()
    reached.add(play(recipe(base, RandomSource("edges/0")), make))
    assert hardly_exercised(reached, RULES)
    for number in range(1, 400):
        reached.add(play(recipe(base, RandomSource(f"edges/{number}")), make))
        if not hardly_exercised(reached, RULES):
            return
    pytest.fail(f"missed: {missed(reached)}")
