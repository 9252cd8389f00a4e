"""What a play keeps: refreshes, violations and counts, and which violation is named first."""

from dataclasses import replace

import pytest

from planeproof.contract import Burst, Disturbance, Outside, Timing
from planeproof.contract.rules import (
    BLANKING_ONLY,
    EXACT_REVEAL,
    FAIR_REFUSAL,
    HIDDEN_WRITES,
    IN_ORDER,
    OWN_MEMORY,
    PROGRESS,
    RULES,
    TILE_CAP,
    WHOLE_REVEAL,
)
from planeproof.judge import Play
from planeproof.judge.play import KEPT_OF_A_RULE
from tests.judge.scripted import EMPTY, FULL, LEFT, MACHINE, Blanking, entry, pattern, picture, played, revealed

A, B = picture(LEFT, EMPTY), picture(EMPTY, FULL)
TO_0, TO_1 = MACHINE.view_bursts(0, 1), MACHINE.view_bursts(1, 0)


@pytest.mark.parametrize("bytes_each", [63, 64, 65, 130])
def test_of_a_rule_only_the_first_violations_are_kept_and_all_are_counted(bytes_each: int) -> None:
    """Bytes past the end of memory, in bursts of 10 and what is left."""
    end = 9 + 5 * 16
    sizes = [10] * (bytes_each // 10) + ([bytes_each % 10] if bytes_each % 10 else [])
    one = played([], [[Burst(end, bytes(size)) for size in sizes]], set_up=[])
    assert one.counts == {OWN_MEMORY: bytes_each}
    assert len(one.violations) == min(bytes_each, KEPT_OF_A_RULE)
    assert [v.byte for v in one.violations[:11]] == [*range(10), 0]


def test_the_violations_of_one_rule_do_not_crowd_out_those_of_another() -> None:
    """Hundreds of stray bytes, then one in sight."""
    stray = [Burst(89, bytes(60))] * 3
    one = played([A], [revealed(A, 1), stray, [entry(1, 1, 1)]])
    assert one.counts[OWN_MEMORY] == 180
    assert [v.refresh for v in one.violations if v.rule is HIDDEN_WRITES] == [2]


def test_a_refresh_tells_what_was_offered_told_written_and_used() -> None:
    """A view change of four bytes takes 8 of the 150 cycles that this blanking had."""
    one = played([A], [revealed(A, 1)], disturbances=[Disturbance(0, 150)])
    first = one.refreshes[0]
    assert (first.number, first.offered, first.cycles, first.used) == (0, 0, 150, 30)
    assert first.bursts == tuple(revealed(A, 1))
    assert one.set_up == MACHINE.view_bursts(0)


def test_the_transcript_is_everything_that_the_candidate_said() -> None:
    """Set-up, answers and bursts: it differs where any of them does."""
    plain = played([A], [revealed(A, 1)])
    again = played([A], [revealed(A, 1)])
    other_bursts = played([A], [[*revealed(A, 1), entry(0, 0, 0)]])
    other_set_up = played([A], [revealed(A, 1)], set_up=[*MACHINE.view_bursts(0), entry(0, 0, 0)])
    assert plain.transcript == again.transcript
    assert plain.transcript not in (other_bursts.transcript, other_set_up.transcript)


def test_frames_of_a_play_stay_as_they_were() -> None:
    """A later refresh does not write into an earlier one's frame."""
    machine = replace(MACHINE, outside=Outside.LANDS)
    one = played([A, B], [revealed(A, 1), revealed(B, 0)], machine=machine)
    background, first, second = played([], []).refreshes[0].frame, one.refreshes[0].frame, one.refreshes[1].frame
    assert [(frame != background).sum() for frame in (first, second)] == [32, 64]


# --- for every rule a scene that breaks it first ------------------------------------------------------------

SLOW = replace(
    MACHINE,
    outside=Outside.LANDS,
    time=Timing(lines=40, shown=20, cycles_per_line=10, setup=192, per_byte=1, view_setup=4),
)
HALF = [pattern(1, 1, [0xF0]), entry(1, 0, 1), *TO_1]

FIRST_BROKEN: dict[str, tuple[Play, set[object]]] = {
    "hidden-writes": (played([A], [revealed(A, 1), [pattern(1, 1, FULL), pattern(1, 1, LEFT)]]), {HIDDEN_WRITES}),
    "exact-reveal": (played([A], [HALF]), {EXACT_REVEAL, WHOLE_REVEAL, PROGRESS}),
    "blanking-only": (played([], [[Burst(MACHINE.pattern_address(1, 1), bytes(9))]], machine=SLOW), {BLANKING_ONLY}),
    "own-memory": (played([], [[pattern(4, 0, EMPTY)]]), {OWN_MEMORY}),
    "tile-cap": (played([], [[entry(0, 0, 4)]]), {TILE_CAP}),
    "whole-reveal": (
        played([], [], set_up=[pattern(1, 0, FULL), entry(0, 0, 1), *MACHINE.view_bursts(0)]),
        {WHOLE_REVEAL},
    ),
    "progress": (played([A], []), {PROGRESS}),
}


@pytest.mark.parametrize("rule_id", FIRST_BROKEN)
def test_a_scene_breaks_this_rule_first(rule_id: str) -> None:
    """And just these others with it."""
    one, expected = FIRST_BROKEN[rule_id]
    first = one.first(frozenset(RULES))
    assert first is not None
    assert (first.rule.id, set(one.counts)) == (rule_id, expected)


def test_of_one_refresh_the_cause_is_named_before_the_effect() -> None:
    """Turning the view back breaks exact-reveal by a write, and in-order by the frame."""
    one = played([A], [revealed(A, 1), TO_0])
    assert set(one.counts) == {EXACT_REVEAL, IN_ORDER}
    assert [one.first(frozenset(chosen)) for chosen in ({EXACT_REVEAL, IN_ORDER}, {IN_ORDER, PROGRESS})] == [
        next(v for v in one.violations if v.rule is rule) for rule in (EXACT_REVEAL, IN_ORDER)
    ]
    assert one.first(frozenset({FAIR_REFUSAL})) is None


def test_an_earlier_refresh_comes_before_a_cause() -> None:
    """In-order in refresh 1 comes before the hidden write of refresh 2."""
    blankings: list[Blanking] = [revealed(A, 1), TO_0, [pattern(1, 0, FULL), entry(0, 0, 1)]]
    one = played([A], blankings)
    first = one.first(frozenset({HIDDEN_WRITES, IN_ORDER}))
    assert first is not None
    assert (first.rule, first.refresh) == (IN_ORDER, 1)
