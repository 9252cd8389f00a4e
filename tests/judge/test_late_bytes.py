"""Rule blanking-only, and what a late byte does to the other rules, in scenes worked by hand.

On the machine of most scenes a byte of a pattern takes 10 cycles and a burst 1, so that few bytes fill a
blanking of 200; a view change takes 4 + 4. The scripts fill it until the view change is as late as the scene wants.
"""

from dataclasses import replace
from fractions import Fraction

import pytest

from planeproof.contract import Burst, Disturbance, Machine, Outside, Timing
from planeproof.contract.rules import BLANKING_ONLY, EXACT_REVEAL, HIDDEN_WRITES, TILE_CAP
from planeproof.judge import Play
from tests.judge.scripted import (
    EMPTY,
    FULL,
    LEFT,
    MACHINE,
    Blanking,
    broken,
    cost,
    entry,
    only,
    pattern,
    picture,
    played,
    revealed,
    sent,
    with_outside,
)

A, B = picture(LEFT, EMPTY), picture(EMPTY, FULL)
TO_1 = MACHINE.view_bursts(1, 0)
ALL = list(Outside)


SLOW = replace(MACHINE, time=replace(MACHINE.time, setup=1, per_byte=10, view_setup=4, view_per_byte=1))


def filler(cycles: int) -> list[Burst]:
    """Bursts that take just so many cycles (from 130 on) and change nothing: zeros for the unseen tile 3."""
    number = cycles % 10 + 10 * (cycles % 10 < 3)
    sizes = [len(range(place, (cycles - number) // 10, number)) for place in range(number)]
    return [Burst(SLOW.pattern_address(3, 0), bytes(size)) for size in sizes]


@pytest.mark.parametrize("cycles", [130, 188, 192, 193, 199, 200, 201, 287, 360, 395])
def test_the_filler_takes_what_it_says(cycles: int) -> None:
    """Otherwise nothing below would be as late as it says."""
    assert cost(filler(cycles), SLOW) == cycles


def shown_late(lateness: int, machine: Machine = SLOW) -> Play:
    """A is prepared in refresh 0; in refresh 1 the last byte of the view change is ``lateness`` cycles late."""
    last = [*filler(200 - 8 + lateness), *TO_1]
    return played([A], [sent(A, 1), last], machine=machine)


@pytest.mark.parametrize("outside", ALL)
def test_a_byte_exactly_at_the_end_is_inside(outside: Outside) -> None:
    """The last byte of the view change is written at cycle 200 of 200."""
    one = shown_late(0, with_outside(outside, machine=SLOW))
    assert (broken(one), one.refreshes[1].used) == (set(), 200)


@pytest.mark.parametrize("outside", ALL)
def test_a_byte_one_cycle_after_the_end_is_late(outside: Outside) -> None:
    """The page register comes at 201: burst, byte and address are told, and the line it lands on."""
    one = shown_late(1, with_outside(outside, machine=SLOW))
    late = one.first(frozenset({BLANKING_ONLY}))
    assert late is not None
    told = (late.refresh, late.burst, late.byte, late.address, late.margin)
    assert told == (1, len(filler(193)), 3, 4, 0)
    assert "displayed line 0" in late.said
    assert one.counts[BLANKING_ONLY] == 1


def test_every_late_byte_is_counted() -> None:
    """Six cycles too late, the whole view change is: four bytes at 203, 204, 205, 206."""
    assert shown_late(6).counts[BLANKING_ONLY] == 4


def test_times_are_exact_rationals() -> None:
    """600 bursts of 1/3 of a cycle make 200 exactly; one more byte of 1/3 is late."""
    third = replace(MACHINE.time, setup=0, per_byte=Fraction(1, 3), view_setup=4, view_per_byte=1)
    machine = replace(MACHINE, time=third)
    row = Burst(machine.pattern_address(3, 0), bytes(16))
    machine = with_outside(Outside.LANDS, machine=machine)
    exactly = [row] * 37 + [Burst(row.address, bytes(8))]
    fits = played([], [exactly], machine=machine)
    over = played([], [[*exactly, Burst(row.address, b"\0")]], machine=machine)
    assert (fits.refreshes[0].used, broken(fits)) == (200, set())
    assert (over.refreshes[0].used, broken(over)) == (Fraction(601, 3), {"blanking-only"})


# --- what the viewer sees of it -----------------------------------------------------------------------------

# The window's eight rows are drawn on lines 6 to 13; a byte 10 L + 1 to 10 L + 9 cycles late lands on line L.
ABOVE, WITHIN, BELOW = 25, 95, 165


def below_six(outside: Outside) -> Machine:
    """The machine, its window from displayed line 6 on."""
    return with_outside(outside, machine=SLOW, first_line=6)


@pytest.mark.parametrize(
    ("outside", "lateness", "expected"),
    [
        (Outside.LANDS, ABOVE, {"blanking-only"}),  # it comes before the window is drawn
        (Outside.LANDS, WITHIN, {"blanking-only", "whole-reveal"}),  # old above, new below
        (Outside.LANDS, BELOW, {"blanking-only"}),  # the window is drawn: A comes a refresh later
        (Outside.WRECKS, ABOVE, {"blanking-only", "whole-reveal"}),  # nothing is known of any row
        (Outside.WRECKS, WITHIN, {"blanking-only", "whole-reveal"}),
        (Outside.WRECKS, BELOW, {"blanking-only", "whole-reveal"}),  # what fills the blanking is late and within it
        (Outside.LOST, ABOVE, {"blanking-only", "progress"}),  # it never comes
        (Outside.LOST, WITHIN, {"blanking-only", "progress"}),
        (Outside.LOST, BELOW, {"blanking-only", "progress"}),
    ],
)
def test_where_a_late_view_change_is_seen(outside: Outside, lateness: int, expected: set[str]) -> None:
    """Above the window, within it and below it, for each thing that a late byte may do."""
    assert broken(shown_late(lateness, below_six(outside))) == expected


@pytest.mark.parametrize(("lateness", "margin"), [(1, 59), (59, 1), (60, 0), (61, 0)])
def test_a_late_byte_is_spared_for_as_long_as_the_window_is_not_drawn(lateness: int, margin: int) -> None:
    """Line 6 is drawn 60 cycles after the blanking."""
    one = shown_late(lateness, below_six(Outside.LANDS))
    assert {violation.margin for violation in one.violations if violation.rule is BLANKING_ONLY} == {margin}


@pytest.mark.parametrize(("told", "expected"), [(52, {"blanking-only", "whole-reveal"}), (51, {"blanking-only"})])
def test_a_late_byte_below_the_window_wrecks_nothing_of_it(told: int, expected: set[str]) -> None:
    """The page register, written as it stands at 191 cycles: on line 13, the window's last, or on line 14."""
    far = replace(below_six(Outside.WRECKS), time=replace(SLOW.time, view_setup=190))
    one = played([], [[Burst(4, b"\0")]], machine=far, disturbances=[Disturbance(0, told)])
    assert broken(one) == expected


def test_after_a_torn_frame_the_current_picture_stays_and_the_next_frame_is_judged_as_any() -> None:
    """The line within which the view turns is torn; A is whole, and in order, in the refresh after it."""
    one = shown_late(WITHIN, below_six(Outside.LANDS))
    assert [refresh.current for refresh in one.refreshes[:4]] == [-1, -1, 0, 0]
    assert [violation.refresh for violation in one.violations if violation.rule.id == "whole-reveal"] == [1]


def test_a_late_byte_is_judged_for_hidden_writes_as_any_other() -> None:
    """A pattern byte of what is seen lands below the window: late, in sight, and seen a refresh later."""
    machine = below_six(Outside.LANDS)
    one = played([A], [revealed(A, 1), [*filler(360), pattern(1, 1, [0xFF])]], machine=machine)
    assert broken(one) == {"blanking-only", "hidden-writes", "whole-reveal"}
    assert {violation.refresh for violation in one.violations if violation.rule.id == "whole-reveal"} >= {2}


def test_a_late_byte_is_told_by_its_number_in_its_burst() -> None:
    """Rows 0 to 2 of what is seen, the last two of them late and changed."""
    last = [*filler(189), pattern(1, 1, [0xF0, 0xF1, 0xF3])]
    one = played([A], [revealed(A, 1), last], machine=below_six(Outside.LANDS))
    found = [(v.burst, v.byte, v.address) for v in one.violations if v.rule is HIDDEN_WRITES]
    assert found == [(len(last) - 1, 1, 34), (len(last) - 1, 2, 35)]


@pytest.mark.parametrize(
    ("outside", "expected"), [(Outside.LANDS, True), (Outside.WRECKS, True), (Outside.LOST, False)]
)
def test_a_late_view_change_is_one_where_it_takes_effect(outside: Outside, expected: bool) -> None:
    """It turns to a side on which only half of the picture is."""
    half = [pattern(1, 1, [0xF0]), entry(1, 0, 1)]
    one = played([A], [half, [*filler(210), *TO_1]], machine=below_six(outside))
    assert (EXACT_REVEAL in one.counts) == expected


def test_of_a_view_change_that_is_lost_in_part_the_rest_is_judged() -> None:
    """The palette is turned in time, the register is lost: plane 1 is seen through page 0, which no picture is."""
    also_named = [*sent(A, 1), entry(0, 1, 1)]
    one = played([A], [also_named, [*filler(193), *TO_1]], machine=below_six(Outside.LOST))
    found = [(v.refresh, v.byte, v.address) for v in one.violations if v.rule is EXACT_REVEAL]
    assert found == [(1, 1, 2)]  # entry 3 is written as it stands


def test_a_late_entry_is_judged_for_tile_cap_in_the_frame_in_which_it_lands() -> None:
    """Below the window, so that it is seen of nothing until the next frame; the same entry is reported once."""
    one = played([], [[*filler(360), entry(0, 0, 4)]], machine=below_six(Outside.LANDS))
    assert [violation.refresh for violation in one.violations if violation.rule is TILE_CAP] == [0]


def test_in_a_blanking_that_is_overrun_the_time_until_the_window_is_drawn_is_the_margin() -> None:
    """The register, written as it stands, comes 20 cycles late; 40 more pass until line 6."""
    again = [pattern(1, 1, [0xFF]), pattern(1, 1, [0xF0]), *filler(193), Burst(4, b"\1")]
    one = played([A], [revealed(A, 1), again], machine=below_six(Outside.LANDS))
    assert one.refreshes[1].used == 220
    assert {(v.rule, v.margin) for v in one.violations} == {(HIDDEN_WRITES, 40), (BLANKING_ONLY, 40)}


def test_a_lost_byte_changes_nothing() -> None:
    """The same byte where late bytes are lost: nothing but late."""
    one = played([A], [revealed(A, 1), [*filler(360), pattern(1, 1, [0xFF])]], machine=below_six(Outside.LOST))
    assert broken(one) == {"blanking-only"}
    assert "is lost" in one.violations[-1].said


# --- past the last displayed line ---------------------------------------------------------------------------


@pytest.mark.parametrize("outside", ALL)
def test_past_the_display_a_byte_lands_in_the_next_blanking_and_takes_its_time(outside: Outside) -> None:
    """The page register is written at 403 cycles of 200: 3 cycles after 20 lines of 10 were shown."""
    one = shown_late(203, with_outside(outside, machine=SLOW))
    assert [refresh.cycles for refresh in one.refreshes[:4]] == [200, 200, 197, 200]
    assert one.refreshes[1].used == 403
    late = [violation for violation in one.violations if violation.rule is BLANKING_ONLY]
    assert ["in the next blanking" in violation.said for violation in late] == [False] * (len(late) - 4) + [True] * 4
    assert {violation.refresh for violation in late} == {1}


def test_what_is_written_in_such_a_blanking_comes_after_and_has_less_time() -> None:
    """Told 197, a scheduler that writes 198 cycles is late by one."""
    machine = with_outside(Outside.LANDS, machine=SLOW)
    blankings: list[Blanking] = [sent(A, 1), [*filler(395), *TO_1], filler(198)]
    one = played([A], blankings, machine=machine)
    late = [violation for violation in one.violations if violation.rule is BLANKING_ONLY]
    assert [violation.refresh for violation in late if violation.refresh != 1] == [2]
    in_time = played([A], [*blankings[:2], filler(197)], machine=machine)
    assert {violation.refresh for violation in in_time.violations if violation.rule is BLANKING_ONLY} == {1}


# --- shortened and lost blankings ---------------------------------------------------------------------------


@pytest.mark.parametrize(("cycles", "expected"), [(30, set()), (29, {"blanking-only"})])
def test_a_shortened_blanking_is_judged_by_its_own_cycles(cycles: int, expected: set[str]) -> None:
    """The whole of A and its view change take 4 + 8, twice 4 + 1 and 4 + 4, which is 30 cycles."""
    assert cost(revealed(A, 1)) == 30
    one = played([A], [revealed(A, 1)], machine=with_outside(Outside.LANDS), disturbances=[Disturbance(0, cycles)])
    assert (broken(one), one.refreshes[0].cycles) == (expected, cycles)


def test_in_a_lost_blanking_nobody_is_asked() -> None:
    """The first script is used up in refresh 1, for refresh 0 has no blanking; its frame is what stood there."""
    one = played([A], [revealed(A, 1)], disturbances=[Disturbance(0, 0)])
    assert [len(refresh.bursts) for refresh in one.refreshes[:3]] == [0, 4, 0]
    assert (one.refreshes[0].cycles, one.refreshes[0].offered, broken(one)) == (0, 0, set())


def test_margins_are_the_cycles_that_the_blanking_had_left() -> None:
    """A plane put right again within 2 x 12 of 200 cycles: 176 spared the viewer, for each of sixteen bytes."""
    again = [pattern(1, 1, FULL), pattern(1, 1, LEFT)]
    one = played([A], [revealed(A, 1), again])
    assert [violation.margin for violation in one.violations] == [176] * 16
    assert broken(one) == {"hidden-writes"}


def test_margins_are_those_of_the_blanking_that_was_had() -> None:
    """The same in a blanking shortened to 25 cycles: one was left."""
    again = [pattern(1, 1, [0xFF]), pattern(1, 1, [0xF0])]
    one = played([A], [revealed(A, 1), again], disturbances=[Disturbance(1, 11)])
    assert [violation.margin for violation in one.violations] == [1, 1]


def test_seen_rules_have_no_margin() -> None:
    """What a frame shows, nothing has spared."""
    one = played([A], [revealed(A, 1), [entry(1, 1, 1)]])
    assert {violation.rule.id: violation.margin for violation in one.violations} == {
        "hidden-writes": 195,
        "whole-reveal": None,
    }


def test_blanking_only_alone() -> None:
    """One byte of the hidden side, late: nothing else is wrong."""
    slow = Timing(lines=40, shown=20, cycles_per_line=10, setup=192, per_byte=1, view_setup=4)
    machine = replace(MACHINE, time=slow, outside=Outside.LANDS)
    assert only(played([], [[Burst(MACHINE.pattern_address(1, 1), bytes(9))]], machine=machine)).byte == 8
    assert broken(played([B], [sent(B, 1), (), TO_1], machine=machine)) >= {"blanking-only"}
