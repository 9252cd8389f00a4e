"""What an answer rests on, in words."""

import pytest

from planeproof.contract import Rational
from planeproof.contract.rules import EXACT_REVEAL, IN_ORDER
from planeproof.judge import Basis, EdgeReport, Outcome, RuleReport, RuleStatus, Strength
from planeproof.judge.edges import EDGES
from planeproof.report.evidence import basis_sentence, distance, rule_state
from tests.report.schedulers import Early
from tests.report.stories import findings, niche_scene, verdict


def test_what_no_scene_was_played_of_claims_nothing() -> None:
    """Neither that nothing failed, nor why there is no bound; what is to be done stands in the source."""
    basis = Basis(source="scenes at edges; have them solved", scenes=0, strength=Strength.SAMPLED, failed=False)
    for clean in (True, False):
        assert basis_sentence(basis, clean=clean) == "sampled: no scene (scenes at edges; have them solved)"


def test_a_rule_that_was_never_broken_first_says_so() -> None:
    """It has no finding to look at, so it is not told like those that have."""
    found = findings(niche_scene(), Early, EXACT_REVEAL)
    broken = {rule: RuleReport(rule=rule, status=RuleStatus.BROKEN) for rule in (EXACT_REVEAL, IN_ORDER)}
    told = verdict(Outcome.FAIL, found=found, statuses=broken)
    states = {report.rule: rule_state(told, report) for report in told.rules}
    assert states[EXACT_REVEAL] == "BROKEN"
    assert states[IN_ORDER] == "broken too, in a scene where another rule was broken first"


@pytest.mark.parametrize(("least", "told"), [(1, "1 cell"), (2, "2 cells"), (0, "0 cells"), (None, "")])
def test_one_of_something_is_not_many(least: Rational | None, told: str) -> None:
    """A distance of one, and others."""
    edge = next(edge for edge in EDGES if edge.unit == "cells")
    assert distance(EdgeReport(edge=edge, scenes=0, admitting=3, least=least)) == told
