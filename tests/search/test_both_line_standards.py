"""Every strategy on both vitrines, at the capacity that it has there."""

from dataclasses import replace

import pytest

from planeproof.candidates.reference import InPlace, Pairs, SplitPool
from planeproof.contract import Demands, Machine
from planeproof.contract.rules import HIDDEN_WRITES
from planeproof.judge import MakeScheduler, Outcome, Profile, RuleStatus
from planeproof.machines import read_machine
from planeproof.search import check

VITRINES = ("vitrine-50", "vitrine-60")

HALF_THE_POOL = 88
"""What a strategy without a hidden plane, or with one map page, can show of a pool of 176: its ``must_show``."""

IN_ONE_BLANKING = {"vitrine-50": 64, "vitrine-60": 27}
"""Occupied cells of which any two pictures in a row differ by no more than fits one blanking.

At worst n cells are emptied, n others filled and n patterns sent: n x (2 x 22 + 78) cycles at 14 a burst and 8 a
byte, so 64 at 7,824 cycles and 27 at 3,321.
"""


def vitrine(name: str, must_show: int) -> Machine:
    """A vitrine whose owner asks for pictures of up to ``must_show`` cells."""
    return replace(read_machine(name), demands=Demands(must_show=must_show))


@pytest.mark.parametrize("name", VITRINES)
@pytest.mark.parametrize("strategy", [SplitPool, Pairs])
def test_half_the_pool_can_be_shown_without_planes_or_pages_of_ones_own(name: str, strategy: MakeScheduler) -> None:
    """With ``must_show`` stated as half the pool both strategies pass; with the vitrine's own they decline too much."""
    verdict = check(strategy, machines=vitrine(name, HALF_THE_POOL), scenes=200)
    assert verdict.outcomes == (Outcome.PASS,)
    assert all(report.status is RuleStatus.KEPT for report in verdict.rules)
    assert verdict.costs[0].shown > 10
    refused = check(strategy, machines=name, scenes=200)
    assert {finding.rule.id for finding in refused.findings} == {"fair-refusal"}


@pytest.mark.parametrize("name", VITRINES)
def test_in_place_is_right_to_the_eye_up_to_what_fits_one_blanking(name: str) -> None:
    """At full size, by profile `seen`: PASS up to that many cells, EXPOSED; one cell more need not fit any more."""
    machine = vitrine(name, IN_ONE_BLANKING[name])
    verdict = check(InPlace, machines=machine, profile=Profile.SEEN, scenes=400, as_given=True)
    assert verdict.outcomes == (Outcome.PASS,)
    (exposed,) = [report for report in verdict.rules if report.rule is HIDDEN_WRITES]
    assert exposed.status is RuleStatus.EXPOSED
    worst = IN_ONE_BLANKING[name] * (2 * machine.burst_cycles(1) + machine.burst_cycles(8))
    assert worst <= machine.blank_cycles < worst + 2 * machine.burst_cycles(1) + machine.burst_cycles(8)
