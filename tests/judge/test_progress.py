"""Rule progress: what counts as a blanking had, from when, and for whom."""

from dataclasses import replace

import pytest

from planeproof.contract import Answer, Burst, Disturbance, Outside
from planeproof.contract.rules import PROGRESS
from planeproof.judge import Play
from tests.judge.scripted import (
    EMPTY,
    FULL,
    LEFT,
    MACHINE,
    RIGHT,
    Blanking,
    broken,
    only,
    picture,
    played,
    revealed,
)

A, B, C = picture(LEFT, EMPTY), picture(RIGHT, FULL), picture(FULL, LEFT)
PATIENCE = MACHINE.patience
BUSY, TAKEN = Answer.BUSY, Answer.TAKEN


def idle(refreshes: int) -> list[Blanking]:
    """So many blankings in which nothing is written."""
    return [()] * refreshes


def gave_up_in(one: Play) -> int | None:
    """The refresh in which progress was found broken, None if it was kept."""
    return next((violation.refresh for violation in one.violations if violation.rule is PROGRESS), None)


def test_the_patience_of_this_display_is_five() -> None:
    """The scenes below count on it."""
    assert PATIENCE == 5


def test_a_picture_seen_in_the_last_blanking_of_the_patience_is_in_time() -> None:
    """Taken in refresh 0, seen in refresh 4: that is the fifth blanking it could have used."""
    one = played([A], [*idle(4), revealed(A, 1)])
    assert (broken(one), one.longest_wait) == (set(), 5)


def test_a_picture_seen_one_blanking_later_is_too_late() -> None:
    """In refresh 5 it has had six blankings, which is more than the patience of five."""
    one = played([A], [*idle(5), revealed(A, 1)])
    assert one.longest_wait == 6
    assert broken(one) == {"progress"}


def test_a_picture_that_is_never_seen_is_given_up() -> None:
    """The run ends there, and the violation names the picture and the figures."""
    one = played([A], [])
    assert broken(one) == {"progress"}
    assert only(one).picture == 0
    assert "patience is 5" in only(one).said
    assert len(one.refreshes) == only(one).refresh + 1


def test_a_run_goes_on_for_the_patience_after_the_last_answer() -> None:
    """What comes then is still judged: the background is brought back five refreshes after the picture was seen."""
    back: list[Blanking] = [revealed(A, 1), *idle(PATIENCE - 1), MACHINE.view_bursts(0, 1)]
    one = played([A], back)
    assert len(one.refreshes) == PATIENCE + 1
    assert broken(one) == {"exact-reveal", "in-order"}


# --- which blankings count ----------------------------------------------------------------------------------


@pytest.mark.parametrize("cycles", [0, 199])
def test_a_lost_or_shortened_blanking_is_not_counted(cycles: int) -> None:
    """Three of the first eight were not had whole, so the picture has still had five of them in refresh 7."""
    cut = [Disturbance(refresh, cycles) for refresh in (1, 2, 6)]
    scripts = [*idle(4 if cycles == 0 else 7), revealed(A, 1)]
    one = played([A], scripts, disturbances=cut)
    assert [refresh.number for refresh in one.refreshes if refresh.bursts] == [7]
    assert (broken(one), one.longest_wait) == (set(), 5)


@pytest.mark.parametrize("cycles", [0, 199])
def test_the_run_after_the_last_answer_counts_whole_blankings_too(cycles: int) -> None:
    """Two blankings that are not had make it two refreshes longer."""
    plain, cut = played([], []), played([], [], disturbances=[Disturbance(2, cycles), Disturbance(4, cycles)])
    assert len(cut.refreshes) == len(plain.refreshes) + 2


def test_a_blanking_that_the_scheduler_itself_made_shorter_is_counted() -> None:
    """Bytes that spill into every next blanking must not keep the viewer waiting for ever."""
    machine = replace(MACHINE, outside=Outside.LOST)
    spill = [Burst(MACHINE.pattern_address(3, 0), bytes(16))] * 22  # 440 cycles: 40 of the next blanking
    one = played([A], [spill] * 20, machine=machine)
    assert one.refreshes[1].cycles < MACHINE.blank_cycles
    assert gave_up_in(one) == PATIENCE


# --- from when ----------------------------------------------------------------------------------------------


def test_the_wait_begins_when_the_predecessor_is_seen() -> None:
    """A, B and C are taken at once and seen four refreshes apart: nobody is charged for the queue."""
    scripts = [*idle(3), revealed(A, 1), *idle(3), revealed(B, 0), *idle(3), revealed(C, 1)]
    one = played([A, B, C], scripts)
    assert (broken(one), one.longest_wait, one.shown) == (set(), 4, 3)


def test_the_wait_begins_when_the_picture_is_taken() -> None:
    """A is seen at once; B comes long after, and is seen five blankings after that."""
    one = played([A, B], [revealed(A, 1), *idle(13), revealed(B, 0)], ready=[0, 10])
    assert (broken(one), one.longest_wait) == (set(), 5)


def test_an_offer_is_made_whether_or_not_the_blanking_is_had() -> None:
    """Taken in refresh 0, whose blanking is lost."""
    one = played([A, B], [revealed(A, 1)], disturbances=[Disturbance(0, 0)])
    assert [(refresh.offered, refresh.answer) for refresh in one.refreshes[:3]] == [
        (0, TAKEN),
        (1, TAKEN),
        (None, None),
    ]


def test_at_most_one_offer_a_refresh_and_none_before_it_is_ready() -> None:
    """B and C are ready together in refresh 2."""
    one = played([A, B, C], [], ready=[0, 2, 2])
    assert [refresh.offered for refresh in one.refreshes[:5]] == [0, None, 1, 2, None]


# --- BUSY ---------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("times", "expected"), [(5, set()), (6, {"progress"})])
def test_busy_must_end_within_the_patience(times: int, expected: set[str]) -> None:
    """Answered BUSY five times, the picture is taken after five blankings; the sixth is one too many."""
    one = played([A], [*idle(times), revealed(A, 1)], answers=[BUSY] * times)
    assert broken(one) == expected
    assert [refresh.answer for refresh in one.refreshes[:times]] == [BUSY] * times


def test_busy_that_is_too_long_names_no_picture_taken() -> None:
    """Nothing was taken, so no taken picture is named."""
    one = played([A], [], answers=[BUSY] * 99)
    assert (only(one).picture, gave_up_in(one)) == (None, PATIENCE)
    assert "BUSY" in only(one).said


def test_the_same_picture_is_offered_again_until_it_is_answered() -> None:
    """And only then the next."""
    one = played([A, B], [], answers=[BUSY, BUSY, TAKEN, BUSY])
    assert [refresh.offered for refresh in one.refreshes[:5]] == [0, 0, 0, 1, 1]


def test_busy_is_counted_from_when_the_last_picture_was_seen() -> None:
    """A is seen in refresh 4; B, put off ever since refresh 1, may be put off for five more blankings."""
    answers = [TAKEN, *[BUSY] * 9]
    in_time = played([A, B], [*idle(4), revealed(A, 1), *idle(5), revealed(B, 0)], answers=answers[:10])
    too_long = played([A, B], [*idle(4), revealed(A, 1)], answers=[*answers, BUSY])
    assert (broken(in_time), broken(too_long), gave_up_in(too_long)) == (set(), {"progress"}, 10)


def test_a_taken_picture_is_waited_for_first() -> None:
    """While A is due, A is what the viewer waits for, whatever is answered to B."""
    one = played([A, B], [], answers=[TAKEN, *[BUSY] * 99])
    assert only(one).picture == 0


def test_declining_ends_busy() -> None:
    """The wait for B begins anew with its own first BUSY."""
    answers = [*[BUSY] * 4, Answer.TOO_BIG, *[BUSY] * 5]
    hard = picture(FULL, LEFT)
    machine = replace(MACHINE, demands=replace(MACHINE.demands, must_show=1))
    one = played([hard, A], [*idle(10), revealed(A, 1)], machine=machine, answers=answers)
    assert broken(one) == set()
