"""The view change: where it begins and ends, what is judged under which view, and rule exact-reveal."""

from dataclasses import replace

import pytest

from planeproof.contract import Burst, Colours, Machine, TileMap
from planeproof.contract.rules import EXACT_REVEAL, HIDDEN_WRITES
from tests.judge.scripted import (
    EMPTY,
    FULL,
    LEFT,
    MACHINE,
    RIGHT,
    Blanking,
    broken,
    entry,
    pattern,
    picture,
    played,
    revealed,
    sent,
)

A, B, C = picture(LEFT, EMPTY), picture(RIGHT, FULL), picture(FULL, LEFT)
TO_0, TO_1 = MACHINE.view_bursts(0, 1), MACHINE.view_bursts(1, 0)
VIEW_0, VIEW_1 = (Burst(0, MACHINE.palette_showing(side) + bytes([side])) for side in (0, 1))


def test_a_reveal_of_the_next_picture_is_exact() -> None:
    """A is prepared in one blanking and revealed in the next."""
    assert broken(played([A], [sent(A, 1), TO_1])) == set()


@pytest.mark.parametrize("missing", [0, 1])
def test_an_empty_side_revealed_too_early_is_still_the_background(missing: int) -> None:
    """Without the pattern, or the entry, nothing of A can be seen; what is sent afterwards is sent in sight."""
    half = [burst for number, burst in enumerate(sent(A, 1)) if number != missing]
    early = played([A], [[*half, *TO_1], sent(A, 1)])
    assert broken(early) == {"hidden-writes"}
    assert {violation.refresh for violation in early.violations} == {1}


def test_half_a_picture_revealed_is_the_first_breach() -> None:
    """B has two cells; one is shown without the other. The last byte of the view change is told, and its address."""
    one = played([B], [[sent(B, 1)[0], *sent(B, 1)[2:], *TO_1]])
    first = one.first(frozenset(one.counts))
    assert first is not None
    assert broken(one) == {"exact-reveal", "whole-reveal", "progress"}
    assert (first.rule, first.refresh, first.burst, first.byte, first.address) == (EXACT_REVEAL, 0, 3, 3, 4)
    assert "picture 0" in first.said
    assert "not the background or picture 0: 32 pixels" in first.said  # the half of cell 0 that lacks


def test_a_reveal_completed_in_sight_is_wrong_although_the_frame_is_right() -> None:
    """The second cell of B comes after the view change, in the same blanking."""
    one = played([B], [[*sent(B, 1)[1:], *TO_1, *sent(B, 1)[:1]]])
    assert broken(one) == {"hidden-writes", "exact-reveal"}


def test_a_reveal_put_back_in_the_same_blanking_is_no_reveal() -> None:
    """The view goes to an unfinished side and returns: old and new are the same, and show what is current."""
    there_and_back = [*TO_1, *TO_0]
    assert broken(played([A], [revealed(A, 1), [pattern(2, 0, FULL), entry(0, 0, 2), *TO_0, *TO_1]])) == set()
    assert broken(played([], [[pattern(2, 1, FULL), entry(1, 0, 2), *there_and_back]])) == set()


def test_writes_between_there_and_back_are_judged_under_the_view_it_has_at_both_ends() -> None:
    """Between, the shown page is page 1 for a moment; a write to it is hidden all the same, one to page 0 is not."""
    to_1 = played([], [[*TO_1, pattern(2, 1, FULL), entry(1, 0, 2), *TO_0]])
    to_0 = played([], [[pattern(2, 0, FULL), *TO_1, entry(0, 0, 2), *TO_0]])
    assert broken(to_1) == set()
    assert broken(to_0) == {"hidden-writes", "exact-reveal", "whole-reveal"}


def test_two_reveals_in_one_blanking_are_one_view_change() -> None:
    """A is never seen; what the view change ends with is B, which is not the next one."""
    one = played([A, B, C], [(), (), (), [*sent(A, 1), *TO_1, *sent(B, 0), *TO_0]])
    assert {"exact-reveal", "in-order"} <= broken(one)


# --- from the first to the last byte that changes a value ---------------------------------------------------


def test_view_bytes_written_as_they_stand_are_no_view_change() -> None:
    """The whole palette and the register are written anew before the work and after it: all is judged as usual."""
    hidden = [VIEW_0, pattern(1, 1, FULL), entry(1, 0, 1), VIEW_0]
    seen = [VIEW_0, pattern(1, 0, FULL), entry(0, 0, 1), VIEW_0]
    assert broken(played([], [hidden])) == set()
    assert broken(played([], [seen])) == {"hidden-writes", "whole-reveal"}


def test_work_before_a_change_may_be_preceded_by_view_bytes_that_change_nothing() -> None:
    """The palette rewritten, then the hidden side drawn on, then the reveal: it begins with the reveal."""
    assert broken(played([A], [[VIEW_0, *sent(A, 1), VIEW_1]])) == set()


def test_work_after_a_change_may_be_followed_by_view_bytes_that_change_nothing() -> None:
    """After the reveal the side that was seen is drawn on; the palette rewritten after it does not prolong it."""
    assert broken(played([A], [[*revealed(A, 1), *sent(B, 0), VIEW_1]])) == set()


def test_before_the_view_change_the_old_view_counts() -> None:
    """What is seen under the new view only may be written, what is seen under the old may not."""
    assert broken(played([A], [[*sent(A, 1), *TO_1]])) == set()
    assert broken(played([A], [[pattern(3, 0, FULL), entry(0, 1, 3), *sent(A, 1), *TO_1]])) == {"hidden-writes"}


def test_after_the_view_change_the_new_view_counts() -> None:
    """What was seen under the old view only may be written, what is seen under the new may not."""
    assert broken(played([A], [[*sent(A, 1), *TO_1, pattern(3, 0, FULL), entry(0, 1, 3)]])) == set()
    one = played([A], [[*sent(A, 1), *TO_1, pattern(1, 1, FULL)]])
    assert broken(one) == {"hidden-writes", "whole-reveal", "progress"}


PALETTE_0, PAGE_0 = Burst(0, MACHINE.palette_showing(0)), Burst(4, b"\x00")


@pytest.mark.parametrize(
    ("write", "before", "between", "after"),
    [
        (pattern(3, 0, FULL), False, False, False),  # a tile that is named nowhere
        (pattern(1, 0, FULL), False, False, False),  # named on the old page, where plane 1 is seen
        (pattern(2, 1, FULL), False, False, False),  # named on the new page, where plane 0 is seen
        (pattern(1, 1, EMPTY), True, True, False),
        (pattern(2, 0, FULL), False, True, True),
        (entry(1, 1, 1), True, True, False),
        (entry(0, 0, 2), False, True, True),
    ],
)
def test_between_the_first_and_the_last_byte_of_a_view_change_both_views_count(
    write: Burst, before: bool, between: bool, after: bool
) -> None:
    """P is seen in plane 1 of tile 1 through page 1; Q waits in plane 0 of tile 2 on page 0, in the other cell."""
    p, q = picture(FULL, EMPTY), picture(EMPTY, LEFT)
    ready: list[Blanking] = [revealed(p, 1), sent(q, 0)]
    for blanking, seen in [
        ([write, PALETTE_0, PAGE_0], before),
        ([PALETTE_0, write, PAGE_0], between),
        ([PALETTE_0, PAGE_0, write], after),
    ]:
        assert (HIDDEN_WRITES in played([p, q], [*ready, blanking]).counts) == seen


# --- registers ----------------------------------------------------------------------------------------------


def test_a_register_counts_modulo_what_there_is() -> None:
    """Page 3 of two pages is page 1, page 2 is page 0: the value changes, the view does not."""
    assert broken(played([A], [[*sent(A, 1), Burst(0, VIEW_1.data[:4] + b"\x03")]])) == set()
    assert broken(played([], [[Burst(4, b"\x02"), pattern(1, 0, FULL), entry(1, 0, 1)]])) == set()


def test_a_palette_byte_that_shows_the_same_colour_is_a_change_of_view_that_nobody_sees() -> None:
    """Palette bytes count modulo the two colours there are: 2 is background too, 3 is ink."""
    assert broken(played([A], [revealed(A, 1), [Burst(0, b"\x02\x00\x03\x01")]])) == set()


def test_a_reveal_by_the_palette_alone_on_a_machine_with_one_page() -> None:
    """Both planes, one map: entry 0 names tile 1 from the set-up on, and only colours change."""
    machine = replace(MACHINE, map=TileMap(pages=1))
    start = [*machine.view_bursts(0), entry(0, 0, 1, machine=machine)]
    blanking = [pattern(1, 1, LEFT, machine=machine), *machine.view_bursts(1, 0)]
    assert broken(played([A], [blanking], machine=machine, set_up=start)) == set()


def test_a_reveal_by_the_page_alone_on_a_machine_without_a_palette() -> None:
    """One plane, two pages: the new picture has tiles of its own."""
    machine: Machine = replace(
        MACHINE, tiles=replace(MACHINE.tiles, planes=1), colours=Colours(fixed=True), name="fixed colours"
    )
    good = revealed(A, 1, machine=machine)
    assert broken(played([A], [good], machine=machine)) == set()
    assert broken(played([A], [good, [pattern(1, 0, FULL, machine=machine)]], machine=machine)) >= {"hidden-writes"}
