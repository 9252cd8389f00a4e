"""Theorem 9 on the numpy model: each witness of the solver is played, and seen to break just what it is to break."""

import pytest

from planeproof.contract import RULES, RuleClass
from planeproof.display import PictureMemory
from planeproof.spec import Answer, prove
from planeproof.spec.theorems.independence import ANYTHING, DISCIPLINE, DROPPED, without
from planeproof.spec.witness_run import WitnessRun
from tests.spec.independence_cases import kept, played, run_of

ALL = pytest.mark.parametrize("rule", DROPPED)


def broken(rule: str) -> set[str]:
    """What is broken in the witness: the rule that was dropped, and the seen one that hangs on it."""
    return {rule, "whole-reveal"} if rule in DISCIPLINE else {rule}


def test_every_discipline_and_own_rule_is_dropped() -> None:
    """None of those rules is left out, and seen rules are not dropped: they are what the others are for."""
    assert {rule.id for rule in RULES if rule.rule_class is not RuleClass.SEEN} == DROPPED.keys()
    assert {rule.id for rule in RULES if rule.rule_class is RuleClass.DISCIPLINE} == set(DISCIPLINE)


@ALL
def test_the_kept_witness_breaks_just_the_dropped_rule(rule: str) -> None:
    """Replayed, it breaks the dropped rule and, where that is one of discipline, whole-reveal: every other is kept."""
    one = played(kept(rule))
    assert {judged.id for judged in one.counts} == broken(rule)
    assert one.shown == 1, "in the end the picture is seen"


@ALL
def test_what_the_solver_finds_now_does_the_same(rule: str) -> None:
    """The kept cases are no lucky ones: a fresh witness breaks the same rules when it is played."""
    witness = prove(without(rule, DROPPED[rule])).witness
    assert witness is not None
    one = played(run_of(witness))
    assert {judged.id for judged in one.counts} == broken(rule)
    assert one.shown == 1


@ALL
def test_a_shorter_run_is_none(rule: str) -> None:
    """In fewer refreshes, whatever is done in them, the others keep it from happening: the witness is a least one."""
    assert prove(without(rule, [ANYTHING] * (len(DROPPED[rule]) - 1))).answer is Answer.PROVED


@ALL
def test_with_the_rule_there_is_no_such_run(rule: str) -> None:
    """Asked with the dropped rule among the premises, nothing bad happens in the same refreshes: it is that rule."""
    assert prove(without(rule, DROPPED[rule], and_keep=True)).answer is Answer.PROVED


def memory_after(run: WitnessRun, blankings: int) -> PictureMemory:
    """Picture memory after the set-up and so many blankings, none of whose bytes are late."""
    memory = PictureMemory(run.scene.machine)
    for burst in (*run.set_up, *(burst for bursts in run.blankings[:blankings] for burst in bursts)):
        for address, value in zip(burst.addresses, burst.data, strict=True):
            memory.contents[address] = value
    return memory.copy()


def test_without_own_memory_a_byte_of_the_neighbours_changes() -> None:
    """The byte stands in the map, in the cell beside the window."""
    run = kept("own-memory")
    before, after = memory_after(run, 0), memory_after(run, 2)
    changed = (before.contents != after.contents).nonzero()[0].tolist()
    beside = {start + 1 for start in run.scene.machine.layout.maps}
    assert len(beside & set(changed)) == 1


def test_without_tile_cap_the_frame_hangs_on_a_byte_of_somebody_elses() -> None:
    """When the owner of tile 3 draws in it, the window shows it; without the breach it shows nothing of it."""
    for rule, hangs in (("tile-cap", True), ("own-memory", False)):
        assert hangs_on_tile_3(kept(rule)) == hangs


def hangs_on_tile_3(run: WitnessRun) -> bool:
    """Whether after the first blanking the frame changes with the bytes of tile 3."""
    memory = memory_after(run, 1)
    before, start = memory.frame(), run.scene.machine.pattern_address(3, 0)
    memory.contents[start : start + run.scene.machine.tile_bytes] = 0xFF
    return bool((before != memory.copy().frame()).any())
