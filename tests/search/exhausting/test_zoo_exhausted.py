"""Faults of the zoo, found by exhaustion in their least scene: what is found first needs no minimising."""

import pytest

from planeproof.candidates.faults import ZOO, Fault
from planeproof.contract import RULES
from planeproof.judge import Outcome, Strength, play
from planeproof.search.exhausting import exhaust

FAULTS = {fault.id: fault for fault in ZOO}

FOUND = {
    # the tiny machine, and how many scenes were played up to the first that showed it
    "patterns-to-seen-plane": ("one-cell", 13),
    "wrong-pitch": ("four-cells", 2),
    "panel-tile-for-blank": ("scarce", 7),
    "seen-plane-too": ("one-page", 13),
    "pool-not-split": ("one-plane", 92),
    "tile-index-wraps": ("wide-entries", 19),
    "packed-written-whole": ("packed", 37),
    "interleaved-as-planar": ("interleaved", 13),
    "stale-entry": ("one-cell", 208),
    "old-ink-left": ("one-cell", 472),
    "empty-plane-left": ("two-bits", 472),
    "palette-entry-forgotten": ("one-cell", 92),
    "checksum-for-compare": ("one-cell", 472),
    "tile-in-use-reused": ("two-cells", 592),
    "shadow-ahead": ("one-cell", 75),
    "found-in-other-bank": ("two-banks", 91),
    "page-a-refresh-late": ("two-cells", 72),
    "order-swapped": ("one-cell", 71),
}


@pytest.mark.parametrize("name", FOUND)
def test_a_fault_is_found_in_its_least_scene(name: str) -> None:
    """By its own rule, in as few pictures and occupied cells as the zoo states; the number of scenes is pinned.

    Nothing minimises what is found. The base of the fault breaks no rule in that scene.
    """
    fault: Fault = FAULTS[name]
    machine, scenes = FOUND[name]
    verdict = exhaust(fault.make, machines=machine)
    assert verdict.outcomes == (Outcome.FAIL,)
    first = verdict.findings[0]
    assert first.rule is fault.rule
    assert (len(first.play.scene.pictures), first.play.scene.occupied) == (fault.pictures, fault.cells)
    (basis,) = verdict.basis
    assert (basis.strength, basis.failed, basis.scenes) == (Strength.EXHAUSTED, True, scenes)
    assert play(first.play.scene, fault.base).first(frozenset(RULES)) is None


def test_the_list_names_faults_and_most_rules() -> None:
    """Every rule that a right order of sizes could hide is among those that these faults break."""
    missing = {rule.id for rule in RULES} - {FAULTS[name].rule.id for name in FOUND}
    assert missing == {"blanking-only", "whole-reveal", "in-order", "fair-refusal"}
