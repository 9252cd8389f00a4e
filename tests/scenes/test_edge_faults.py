"""The cached edge scenes against candidates: which faults of the zoo they find, and that they raise no false alarm."""

from functools import cache

import pytest

from planeproof.candidates.faults.zoo import ZOO, Fault
from planeproof.candidates.reference import InPlace
from planeproof.contract import RULES, Rule
from planeproof.contract.rules import HIDDEN_WRITES
from planeproof.judge import MakeScheduler, not_applicable, play
from planeproof.machines import read_machine
from planeproof.scenes.edges import EdgeScene, edge_scenes
from tests.candidates.meant_for import MEANT_FOR

NEED_A_DISTURBANCE = {
    "cut-not-noticed",
    "full-blanking-assumed",
    "lost-blanking-counted",
    "palette-before-page",
    "pending-replaced",
    "shadow-ahead",
}
"""Faults that show where a blanking is cut short or lost: every blanking of an edge scene is whole."""

OTHER_RULE_FIRST = {
    "high-byte-forgotten",
    "low-byte-only",
    "queue-overrun",
    "row-compared-by-its-ends",
}
"""Faults that are found, but of which no edge scene breaks that rule first which the least scene breaks."""

NOT_FOUND = {
    "column-goes-on-along-the-row",
    "one-cycle-more",
    "passed-over-blanked",
    "reveals-counted-in-a-byte",
    "split-in-place",
    "takes-more-than-half",
    "view-charged-as-memory",
}
"""Faults that no goal leads to."""

WITHIN = 50
"""Scenes, of those of its machine, within which each of the others is found by its own rule, the smallest first."""


@cache
def scenes_of(shape: str) -> tuple[EdgeScene, ...]:
    """The edge scenes of a shipped machine."""
    return edge_scenes(read_machine(shape))


def broken_first(edge: EdgeScene, make: MakeScheduler) -> Rule | None:
    """The rule that is broken first in the scene, if any is."""
    first = play(edge.scene, make).first(frozenset(RULES) - not_applicable(edge.scene))
    return None if first is None else first.rule


@pytest.mark.parametrize("fault", ZOO, ids=lambda fault: fault.id)
def test_which_faults_are_found(fault: Fault) -> None:
    """A fault is found by its own rule within the stated number of scenes, or is listed with the reason why not."""
    broken = [broken_first(edge, fault.make) for edge in scenes_of(fault.machine)]
    found = fault.rule in broken[:WITHIN]
    assert found is (fault.id not in NEED_A_DISTURBANCE | OTHER_RULE_FIRST | NOT_FOUND), broken
    if not found:
        assert fault.rule not in broken
        assert any(broken) is (fault.id in OTHER_RULE_FIRST), broken


def test_the_lists_are_of_the_zoo() -> None:
    """Nothing stale is listed, nothing twice, and all but a few faults are found."""
    lists = (NEED_A_DISTURBANCE, OTHER_RULE_FIRST, NOT_FOUND)
    assert len(frozenset().union(*lists)) == sum(map(len, lists)) <= len(ZOO) // 4
    assert frozenset().union(*lists) <= {fault.id for fault in ZOO}


@pytest.mark.parametrize(("shape", "make"), MEANT_FOR)
def test_no_false_alarm(shape: str, make: MakeScheduler) -> None:
    """No reference scheduler breaks a rule in any edge scene of a machine that it is meant for.

    But for the one that writes to what is being seen on a machine of two sides, by intention: it breaks just that rule.
    """
    plays = [(edge.name, play(edge.scene, make)) for edge in scenes_of(shape)]
    broken = {rule for _, found in plays for rule in found.counts}
    assert broken == ({HIDDEN_WRITES} if (shape, make) == ("bench", InPlace) else set())
    assert len(plays) > 30
    assert sum(found.shown for _, found in plays) > len(plays)
