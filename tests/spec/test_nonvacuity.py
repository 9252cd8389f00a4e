"""Theorem 10 on the numpy model: the schedule that the solver finds reveals a picture, and keeps every rule."""

from functools import lru_cache

from planeproof.display import look_of
from planeproof.spec import prove
from planeproof.spec.theorems.nonvacuity import OBLIGATIONS, REFRESHES
from planeproof.spec.witness_run import WitnessRun, run_machine
from tests.spec.independence_cases import played


@lru_cache(maxsize=1)
def found() -> WitnessRun:
    """The solver's schedule, on a machine whose window is both cells and whose pool is every tile but the blank one."""
    search = next(obligation for obligation in OBLIGATIONS if obligation.id == "rules-let-nothing-be-seen")
    witness = prove(search).witness
    assert witness is not None
    return WitnessRun.from_witness(witness, run_machine(2, (1, 2, 3)))


def test_the_schedule_that_the_solver_finds_reveals_a_picture_with_all_rules_kept() -> None:
    """Three refreshes; the picture is not empty, the last frame is the picture, and nothing is broken."""
    run = found()
    (picture,) = run.scene.pictures
    one = played(run)
    assert dict(one.counts) == {}
    assert picture.occupied
    assert one.shown == 1
    assert (one.refreshes[-1].frame == look_of(run.scene.machine, picture)).all()


def test_the_picture_is_seen_when_the_solver_says_so() -> None:
    """Not a refresh earlier: the view change is what reveals it."""
    run = found()
    look = look_of(run.scene.machine, run.scene.pictures[0])
    seen = [bool((refresh.frame == look).all()) for refresh in played(run).refreshes]
    assert seen[:REFRESHES] == [False, False, True]
    assert all(seen[REFRESHES:])
