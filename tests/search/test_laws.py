"""What a candidate does wrong in itself is said to be its own, in its own words, and is never raised from a check."""

from typing import Any

import pytest

from planeproof.candidates.reference import Fresh
from planeproof.contract import RULES, Machine, Picture, Scene
from planeproof.contract.rules import FAIR_REFUSAL
from planeproof.judge import CandidateFault, CandidateHung, MakeScheduler, Outcome, Profile, RuleStatus, Verdict, play
from planeproof.machines import read_machine
from planeproof.search import check
from planeproof.search.size import size
from planeproof.search.trial import Trial
from planeproof.search.verdicts import verdict_of
from tests.search.wrong import (
    BurstsWithoutEnd,
    CountsInClass,
    DeclinesOnce,
    DeclinesSecond,
    DefaultArgument,
    FailsAndHangs,
    HangsInBlank,
    LooksAtIds,
    LooksAtTheClock,
    OrderOfASet,
    RaisesAndHangs,
    RaisesInBlank,
    RaisesInOffer,
    RaisesInStart,
    RaisesWhenMade,
    RenamesTheMachine,
    StealsTheTime,
)

VITRINE = read_machine("vitrine-50")
UNSTEADY = (CountsInClass, DefaultArgument, LooksAtTheClock, LooksAtIds, OrderOfASet)
RAISING: tuple[tuple[MakeScheduler, str, str, int], ...] = (
    (RaisesWhenMade, "the candidate itself", "raised KeyError: 'no such setting'", 0),
    (RaisesInStart, "start", "raised OSError: no such device", 0),
    (RaisesInOffer, "offer", "raised IndexError: list index out of range", 2),
    (RaisesInBlank, "blank", "raised ZeroDivisionError: division by zero", 1),
)


@pytest.fixture(autouse=True)
def little_time_for_shrinking(monkeypatch: pytest.MonkeyPatch) -> None:
    """A second is plenty for these; and what does not repeat is not shrunk however long it takes."""
    monkeypatch.setattr("planeproof.search.checking.SMALLER_SECONDS", 1.0)
    monkeypatch.setattr("planeproof.search.steering.SHRINKING_SECONDS", 1.0)


@pytest.mark.parametrize("candidate", UNSTEADY)
def test_a_candidate_that_is_not_deterministic_is_at_fault(candidate: MakeScheduler) -> None:
    """State kept in the class or in a default argument, the clock, ids, the order of a set: each is noticed."""
    verdict = check(candidate, machines=[VITRINE], scenes=60)
    assert verdict.outcome is Outcome.CANDIDATE_ERROR
    assert verdict.fault is not None
    assert verdict.fault.said == "wrote something else when the same scene was played again"
    assert "deterministic" in verdict.fault.advice
    assert verdict.fault.method in ("start", "offer or blank")
    assert verdict.findings == ()


@pytest.mark.parametrize("as_given", [False, True])
def test_a_candidate_that_changes_the_machine_is_at_fault(as_given: bool) -> None:
    """Frozen or not, it can be done; but to its own copy, and it is said to be its own fault."""
    own = Machine(name="own", window=VITRINE.window, tiles=VITRINE.tiles)
    verdict = check(RenamesTheMachine, machines=[own], scenes=20, as_given=as_given)
    assert verdict.outcomes == (Outcome.CANDIDATE_ERROR,)
    assert verdict.fault is not None
    assert verdict.fault.said == "changed the machine it was given"
    assert own.name == "own"


def test_a_machine_made_useless_is_the_candidates_fault() -> None:
    """Whatever a candidate takes from the machine, the check goes on to a verdict and does not raise."""
    verdict = check(StealsTheTime, machines=[VITRINE], scenes=10)
    assert verdict.outcomes == (Outcome.CANDIDATE_ERROR,)


@pytest.mark.parametrize(("candidate", "method", "said", "cells"), RAISING)
def test_an_exception_is_the_candidates(candidate: MakeScheduler, method: str, said: str, cells: int) -> None:
    """The method, the exception, and the traceback down to the candidate's own file."""
    verdict = check(candidate, machines=[VITRINE], scenes=60)
    assert verdict.outcomes == (Outcome.CANDIDATE_ERROR,)
    fault = verdict.fault
    assert fault is not None
    assert (fault.method, fault.said) == (method, said)
    assert "wrong.py" in fault.trace


@pytest.mark.parametrize(("candidate", "method", "said", "cells"), RAISING)
def test_the_scene_of_an_exception_is_small(
    candidate: MakeScheduler, method: str, said: str, cells: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """At most one picture, with no more occupied cells than it takes to show it."""
    kept = smallest_fault(candidate, monkeypatch)
    assert kept[:2] <= (1, cells)
    assert kept[2] == max(cells, 1)


def smallest_fault(candidate: MakeScheduler, monkeypatch: pytest.MonkeyPatch) -> tuple[int, ...]:
    """The size of the scene that is kept with the fault."""
    trials: list[Trial] = []

    def noting(trial: Trial, **rest: Any) -> Verdict:  # noqa: ANN401 - handed on as it is
        trials.append(trial)
        return verdict_of(trial, **rest)

    monkeypatch.setattr("planeproof.search.checking.verdict_of", noting)
    check(candidate, machines=[VITRINE], scenes=60)
    scene = trials[0].fault_scene
    assert scene is not None
    return size(scene)


@pytest.mark.parametrize(
    ("candidate", "said"), [(HangsInBlank, "did not return in 0.05 s"), (BurstsWithoutEnd, "bytes")]
)
def test_a_call_that_does_not_return_is_hung(candidate: MakeScheduler, said: str) -> None:
    """In the first scene, and once more in a small one, which is what is told; it is not made smaller at that price."""
    made: list[int] = []

    def make() -> object:
        made.append(1)
        return candidate()

    verdict = check(make, machines=[VITRINE], scenes=60, call_seconds=0.05)  # type: ignore[arg-type]
    assert verdict.outcomes == (Outcome.HUNG,)
    assert isinstance(verdict.fault, CandidateHung)
    assert said in verdict.fault.said
    assert len(made) == 2
    assert verdict.fault_scene is not None
    assert verdict.fault_scene.machine.name == "small relative of vitrine-50"


def test_the_most_serious_outcome_comes_first() -> None:
    """A candidate that breaks a rule, and hangs in the scene that would be simplest: HUNG, then FAIL."""
    verdict = check(FailsAndHangs, machines=[VITRINE], scenes=60, call_seconds=0.05)
    assert verdict.outcomes == (Outcome.HUNG, Outcome.FAIL)
    assert verdict.outcome is Outcome.HUNG
    assert {report.rule for report in verdict.rules if report.status is RuleStatus.BROKEN} == {FAIR_REFUSAL}


def test_that_it_hangs_is_not_hidden_by_another_fault() -> None:
    """It raises nearly everywhere, and in the smallest scenes it hangs: HUNG, though that was found later."""
    verdict = check(RaisesAndHangs, machines=[VITRINE], scenes=60, call_seconds=0.05)
    assert verdict.outcomes == (Outcome.HUNG,)
    assert isinstance(verdict.fault, CandidateHung)


@pytest.mark.parametrize("hung_first", [True, False])
@pytest.mark.parametrize("hung_smaller", [True, False])
def test_the_more_serious_fault_is_kept(*, hung_first: bool, hung_smaller: bool) -> None:
    """Whichever came first, and in whichever scene; among equals it is the smaller scene."""
    small = Scene.of(VITRINE, [])
    big = Scene.of(VITRINE, [Picture.from_rows(0, [[1] * 8] * VITRINE.cells)])
    trial = Trial(name="", make=Fresh, asked=frozenset(RULES), profile=Profile.STRICT, call_seconds=1)
    hung = (CandidateHung("blank", 0, "hung", ""), small if hung_smaller else big)
    other = (CandidateFault("blank", 0, "raised", ""), big if hung_smaller else small)
    for fault, scene in (hung, other) if hung_first else (other, hung):
        trial.blame(fault, scene)
    assert (trial.fault, trial.fault_scene) == hung
    again = CandidateHung("offer", 0, "hung", "")
    trial.blame(again, small)
    assert trial.fault_scene is small


def test_a_finding_that_can_t_be_seen_again_is_no_finding() -> None:
    """It broke a rule in one scene and never again: that is the candidate's fault, not a scene to be shown."""
    DeclinesOnce.made = 0
    verdict = check(DeclinesOnce, machines=[VITRINE], scenes=100)
    assert verdict.outcome is Outcome.CANDIDATE_ERROR


def test_every_finding_can_be_seen_again() -> None:
    """Played once more, its scene breaks the same rule, first of all."""
    (finding,) = check(DeclinesSecond, machines=[VITRINE], scenes=60).findings
    again = play(finding.play.scene, DeclinesSecond)
    first = again.first(frozenset([finding.rule]))
    assert first is not None
    assert first.said == finding.violation.said
    assert again.transcript == finding.play.transcript
