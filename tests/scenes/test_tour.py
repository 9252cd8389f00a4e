"""The tour: it comes to the edges, and a right scheduler comes through it."""

from dataclasses import replace

import numpy as np
import pytest
from numpy.typing import NDArray

from planeproof.candidates.faults.zoo import ZOO, Fault
from planeproof.candidates.reference import InPlace
from planeproof.contract import RULES, Demands, Machine
from planeproof.judge import MakeScheduler, Play, Profile, play
from planeproof.judge.distances import distances
from planeproof.judge.edges import EDGES
from planeproof.machines import read_machine, shipped
from planeproof.scenes.tour import DISTURBED, disturbed_tour, opening, tour
from tests.candidates.meant_for import MEANT_FOR

NEED_A_DISTURBANCE = {
    "cut-not-noticed",
    "full-blanking-assumed",
    "lost-blanking-counted",
    "one-cycle-more",
    "pending-replaced",
    "shadow-ahead",
    "split-in-place",
}
"""Faults that do not show in the tour, but in the disturbed one."""

NOT_SHOWN = {
    "column-goes-on-along-the-row",
    "pairs-without-release",
    "palette-before-page",
    "passed-over-blanked",
    "reveals-counted-in-a-byte",
    "takes-more-than-half",
    "view-charged-as-memory",
}
"""Faults that show in neither."""


def plays(name: str, make: MakeScheduler) -> tuple[Play, Play]:
    """Both tours, played on a machine as it ships."""
    machine = read_machine(name)
    return play(tour(machine), make), play(disturbed_tour(machine), make)


@pytest.mark.parametrize(("name", "make"), MEANT_FOR, ids=lambda value: getattr(value, "__name__", value))
def test_a_right_scheduler_comes_through_it_to_all_edges(name: str, make: MakeScheduler) -> None:
    """Every edge that is asked of generated scenes and that the machine admits; and no rule is broken."""
    machine = read_machine(name)
    profile = Profile.SEEN if make is InPlace else Profile.STRICT
    reached = set()
    for one in plays(name, make):
        assert one.first(frozenset(rule for rule in RULES if profile.fails_on(rule))) is None
        reached |= {edge for edge, distance in distances(one).items() if edge.reached(machine, distance)}
    assert {edge for edge in EDGES if edge.asked_for and edge.admitted(machine)} <= reached


@pytest.mark.parametrize("name", shipped())
def test_only_the_second_one_is_disturbed(name: str) -> None:
    """The same pictures, all ready at once; of every seventh disturbed blanking nothing is left, of the others some."""
    machine = read_machine(name)
    one, other = tour(machine), disturbed_tour(machine)
    assert not one.disturbances
    assert [picture.rows.tobytes() for picture in one.pictures] == [p.rows.tobytes() for p in other.pictures]
    assert set(one.ready) == set(other.ready) == {0}
    left = {disturbance.refresh: disturbance.cycles for disturbance in other.disturbances}
    assert list(left) == list(range(1, DISTURBED, 2))
    assert {refresh for refresh, cycles in left.items() if not cycles} == {n for n in left if n % 7 == 0}
    assert len(set(left.values())) > len(left) / 2


@pytest.mark.parametrize("name", shipped())
def test_the_opening_is_two_pictures_at_the_limit_a_bit_apart(name: str) -> None:
    """Those that the tour begins with, and nothing after them."""
    machine = read_machine(name)
    one, other = opening(machine).pictures
    assert [one.rows.tobytes(), other.rows.tobytes()] == [p.rows.tobytes() for p in tour(machine).pictures[:2]]
    assert len(one.occupied) == machine.must_show
    assert np.unpackbits(one.rows ^ other.rows).sum() == 1


@pytest.mark.parametrize("name", shipped())
def test_what_is_full_has_as_many_patterns_as_cells(name: str) -> None:
    """Of the biggest pictures, those at the limit and the one beyond it; the last is one pattern in as many cells."""
    machine = read_machine(name)
    *pictures, alike = tour(machine).pictures
    assert all(patterns(machine, picture.rows) == len(picture.occupied) for picture in pictures)
    sizes = [len(picture.occupied) for picture in pictures]
    assert max(sizes) == min(machine.cap_of_view + 1, machine.cells)
    assert sizes.count(machine.must_show) >= 9
    assert (patterns(machine, alike.rows), len(alike.occupied)) == (1, machine.must_show)


def patterns(machine: Machine, rows: NDArray[np.uint8]) -> int:
    """Different patterns of a picture, the empty one not counted."""
    cells = rows.reshape(machine.cells, -1)
    return len({cell.tobytes() for cell in cells if cell.any()})


def test_with_two_bits_a_pixel_planes_are_empty_and_patterns_differ_in_one_only() -> None:
    """In the first picture: some cells lack the first plane, some the last, and some share the first."""
    machine = read_machine("mosaic-floor")
    rows = tour(machine).pictures[0].rows[: machine.must_show]
    inked = [tuple(bool(plane.any()) for plane in cell) for cell in rows]
    assert set(inked) == {(True, True), (True, False), (False, True)}
    firsts = [cell[0].tobytes() for cell, planes in zip(rows, inked, strict=True) if all(planes)]
    assert len(set(firsts)) < len(firsts)


def test_a_machine_that_need_show_nothing_has_a_tour_too() -> None:
    """All pictures but those that may be declined are empty then."""
    machine = replace(read_machine("vitrine-50"), demands=Demands(must_show=0))
    assert sorted({len(picture.occupied) for picture in tour(machine).pictures}) == [0, 1, machine.cap_of_view + 1]


@pytest.mark.parametrize("fault", ZOO, ids=lambda fault: fault.id)
def test_most_faults_show_in_it(fault: Fault) -> None:
    """All of the zoo but those listed, by whatever rule."""
    undisturbed, disturbed = plays(fault.machine, fault.make)
    assert (undisturbed.first(frozenset(RULES)) is None) is (fault.id in NEED_A_DISTURBANCE | NOT_SHOWN)
    if fault.id in NEED_A_DISTURBANCE | NOT_SHOWN:
        assert (disturbed.first(frozenset(RULES)) is None) is (fault.id in NOT_SHOWN)
