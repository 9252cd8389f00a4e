"""The search against the zoo: every planted fault is found by its own rule, in the least scene or as near as stated."""

import pytest

from planeproof.candidates.faults.zoo import ZOO, Fault
from planeproof.judge import Outcome
from planeproof.search import check, checking, steering

MISSES = {
    # A cell less costs less, so that another cut of the blanking would show it, and two things must change at once.
    "cleared-as-far-as-it-goes": (3, 2),
    "rest-of-burst-dropped": (1, 2),
    "one-cycle-more": (1, 1),
    # Three pictures would do, but only with two lost blankings in place of the fourth.
    "queue-overrun": (4, 4),
    # As found: nothing is taken away.
    "reveals-counted-in-a-byte": (300, 300),
}
"""Faults whose least scene is not always reached, and the pictures and occupied cells of the one that is."""


AS_FOUND = ("reveals-counted-in-a-byte",)
"""Faults whose scene is not made smaller here: of 300 pictures too many could be left out."""


@pytest.fixture(autouse=True)
def _time_enough(monkeypatch: pytest.MonkeyPatch) -> None:
    """A slow computer must not make the scenes bigger."""
    monkeypatch.setattr(checking, "SMALLER_SECONDS", 600.0)
    monkeypatch.setattr(steering, "SHRINKING_SECONDS", 600.0)
    monkeypatch.setattr(checking, "GIVEN_SHARE", 0.0)


@pytest.mark.parametrize("fault", ZOO, ids=[fault.id for fault in ZOO])
def test_every_fault_is_found_by_its_own_rule_in_the_least_scene(fault: Fault) -> None:
    """`check` as it comes, on the machine of the fault: FAIL, its rule among the findings, and the scene that small."""
    seconds = 0.0 if fault.id in AS_FOUND else None
    verdict = check(fault.target, machines=[fault.machine], smaller_seconds=seconds)
    assert verdict.outcome is Outcome.FAIL
    found = {finding.rule: finding.play.scene for finding in verdict.findings}
    assert fault.rule in found, f"caught by {sorted(rule.id for rule in found)} instead"
    scene = found[fault.rule]
    least = (fault.pictures, fault.cells)
    assert least <= (len(scene.pictures), scene.occupied) <= MISSES.get(fault.id, least)


def test_the_misses_are_of_the_zoo() -> None:
    """Nothing stale is listed, and what is listed is a miss."""
    least = {fault.id: (fault.pictures, fault.cells) for fault in ZOO}
    assert all(least[fault] < found for fault, found in MISSES.items())
