from pathlib import Path

import pytest

from planeproof.conformance import save, shown
from planeproof.conformance.refuting import searched_machine
from planeproof.hosts import load
from planeproof.judge import play
from planeproof.scenes.cases import load_case
from planeproof.spec.steps import Steps, decide
from planeproof.spec.steps.addresses import Addresses
from planeproof.spec.steps.guards import without
from planeproof.spec.steps.reference import REFERENCES, Delta
from tests.command.running import run
from tests.spec.own_schedulers import EmptiedCellKeepsEntry, PendingForgotten

MODULE = "tests.spec.own_schedulers"


@pytest.mark.parametrize("steps", [EmptiedCellKeepsEntry(), PendingForgotten()], ids=lambda steps: str(steps.name))
def test_a_refutation_is_a_case_that_replay_shows(steps: Steps, tmp_path: Path) -> None:
    """The saved case fails when it is replayed, by the rule and in the refresh that it was saved for."""
    refutation = shown(decide(steps))
    case = save(refutation, f"{MODULE}:{steps.name}", tmp_path)
    result = run("replay", str(case))
    assert result.exit_code == 1
    assert result.stdout.startswith("FAIL")
    found = load_case(case).found
    assert found is not None
    assert found.rule == refutation.violation.rule.id
    assert found.rule in result.stdout
    replayed = play(load_case(case).scene, load(found.target).make)
    assert replayed.transcript == refutation.play.transcript


def test_a_lost_blanking_is_part_of_the_scene() -> None:
    """The course of a scheduler that miscounts a lost blanking becomes a scene with a disturbance."""
    refutation = shown(decide(PendingForgotten()))
    assert [(d.refresh, d.cycles) for d in refutation.scene.disturbances] == [(0, 0)]


def test_the_guard_that_is_missing_can_be_read_from_the_play() -> None:
    """Without the guard of being idle, a second picture is taken before the first was shown, and is shown first."""
    refutation = shown(decide(without(Delta(), "it is idle")))
    answers = [refresh.answer.value for refresh in refutation.play.refreshes[:2] if refresh.answer is not None]
    assert answers == ["taken", "taken"]
    assert refutation.violation.refresh == 1


@pytest.mark.parametrize("steps", REFERENCES, ids=lambda steps: str(steps.name))
def test_pictures_are_units_and_back(steps: Steps) -> None:
    """A picture's bytes, made units and made bytes again, are the same, whichever way the sides share memory."""
    machine = searched_machine(steps.sharing)
    addresses = Addresses(machine=machine, sharing=steps.sharing)
    units = tuple(
        tuple((7 * row + 3 * cell) % (1 << steps.sharing.unit_bits) for row in range(steps.sharing.rows))
        for cell in range(machine.cells)
    )
    picture = addresses.picture(0, units)
    assert tuple(tuple(line) for line in addresses.units(picture)) == units
