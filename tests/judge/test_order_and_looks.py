"""What the viewer may see next: rules whole-reveal, in-order and fair-refusal, and pictures that look alike."""

from dataclasses import replace

import pytest

from planeproof.contract import Answer, Burst, Colours, Picture, Tiles
from planeproof.contract.rules import FAIR_REFUSAL, IN_ORDER, WHOLE_REVEAL
from planeproof.display import look_of
from tests.judge.scripted import (
    EMPTY,
    FULL,
    LEFT,
    MACHINE,
    RIGHT,
    broken,
    entry,
    only,
    pattern,
    picture,
    played,
    revealed,
    sent,
)

A, B, C = picture(LEFT, EMPTY), picture(RIGHT, FULL), picture(FULL, LEFT)
NOTHING = picture(EMPTY, EMPTY)
TO_0, TO_1 = MACHINE.view_bursts(0, 1), MACHINE.view_bursts(1, 0)


def test_pictures_in_their_order_are_in_order() -> None:
    """Each to the side that is hidden."""
    one = played([A, B, C], [revealed(A, 1), revealed(B, 0), revealed(C, 1)])
    assert (broken(one), one.shown) == (set(), 3)
    assert [refresh.current for refresh in one.refreshes[:4]] == [0, 1, 2, 2]


def test_frames_are_recorded_as_they_were_seen() -> None:
    """Background, A, then B, while the upcoming picture is told beside them."""
    one = played([A, B], [(), revealed(A, 1), revealed(B, 0)])
    wanted = [look_of(MACHINE, shown).tolist() for shown in (NOTHING, A, B)]
    assert [refresh.frame.tolist() for refresh in one.refreshes[:3]] == wanted
    assert [refresh.upcoming for refresh in one.refreshes[:3]] == [0, 1, None]


# --- whole frames out of order ------------------------------------------------------------------------------


def test_a_picture_brought_back_is_out_of_order() -> None:
    """A, B, and then A again by turning the view: whole, but not new."""
    one = played([A, B], [revealed(A, 1), revealed(B, 0), TO_1])
    assert broken(one) == {"exact-reveal", "in-order"}
    back = [violation for violation in one.violations if violation.rule is IN_ORDER]
    assert (back[0].refresh, back[0].picture) == (2, 1)
    assert "picture 0 while picture 1 is current" in back[0].said


def test_the_background_after_a_picture_is_out_of_order() -> None:
    """Side 0 still holds nothing."""
    one = played([A], [revealed(A, 1), TO_0])
    assert broken(one) == {"exact-reveal", "in-order"}


def test_an_empty_picture_after_a_picture_is_in_order() -> None:
    """The same frames, where a picture that looks so was taken."""
    assert broken(played([A, NOTHING], [revealed(A, 1), TO_0])) == set()


def test_a_picture_skipped_is_out_of_order_and_named_once() -> None:
    """A, B and C are taken; C is seen after A. From then on C is current, and B is not waited for."""
    one = played([A, B, C], [(), (), revealed(A, 1), revealed(C, 0)])
    assert broken(one) == {"exact-reveal", "in-order"}
    assert [v.refresh for v in one.violations if v.rule is IN_ORDER] == [3]
    assert one.refreshes[3].current == 2
    assert "picture 1 is due" in one.violations[-1].said


def test_what_looks_like_a_picture_before_and_one_to_come_is_the_one_to_come() -> None:
    """A, B, C and A again are taken; after B comes what looks like A: C is skipped, and nothing is brought back."""
    one = played([A, B, C, A], [(), (), (), revealed(A, 1), revealed(B, 0), revealed(A, 1)])
    assert [refresh.current for refresh in one.refreshes[3:6]] == [0, 1, 3]
    assert "picture 3 while picture 1 is current, and picture 2 is due" in one.violations[-1].said


def test_in_order_alone() -> None:
    """In the frame of the very blanking that prepared it, on the one side of a machine that has no other."""
    single = replace(MACHINE, tiles=Tiles(count=5, pool=(1, 2, 3), planes=1), map=replace(MACHINE.map, pages=1))
    drawn = [[entry(0, 0, tile, machine=single)] for tile in (1, 2, 1)]
    start = [*single.view_bursts(0), pattern(1, 0, LEFT, machine=single), pattern(2, 0, FULL, machine=single)]
    one = played([A, picture(FULL, EMPTY)], drawn, machine=single, set_up=start)
    assert {violation.rule for violation in one.violations} == {IN_ORDER}


def test_a_picture_that_nobody_has_taken_yet_breaks_whole_reveal() -> None:
    """B is shown while it is still put off: it is no picture that was taken."""
    answers = [Answer.TAKEN, Answer.BUSY, Answer.BUSY]
    one = played([A, B], [revealed(A, 1), revealed(B, 0)], answers=answers)
    assert broken(one) == {"exact-reveal", "whole-reveal"}


# --- declined -----------------------------------------------------------------------------------------------


def test_a_declined_picture_that_is_shown_breaks_whole_reveal() -> None:
    """It may be declined (two occupied cells, one must be shown), but then it must not be seen."""
    machine = replace(MACHINE, demands=replace(MACHINE.demands, must_show=1))
    one = played([B], [revealed(B, 1)], machine=machine, answers=[Answer.TOO_BIG])
    assert broken(one) == {"exact-reveal", "whole-reveal"}


def test_a_declined_picture_that_looks_like_a_taken_one_may_be_seen() -> None:
    """The viewer can't tell them apart."""
    machine = replace(MACHINE, demands=replace(MACHINE.demands, must_show=1))
    one = played([B, B], [(), revealed(B, 1)], machine=machine, answers=[Answer.TOO_BIG, Answer.TAKEN])
    assert broken(one) == set()


@pytest.mark.parametrize(
    ("must_show", "expected"), [(0, set()), (1, set()), (2, {"fair-refusal"}), (3, {"fair-refusal"})]
)
def test_up_to_must_show_cells_may_not_be_declined(must_show: int, expected: set[str]) -> None:
    """B has two occupied cells."""
    machine = replace(MACHINE, demands=replace(MACHINE.demands, must_show=must_show))
    one = played([B], [], machine=machine, answers=[Answer.TOO_BIG])
    assert broken(one) == expected
    for violation in one.violations:
        assert (violation.rule, violation.refresh, violation.picture) == (FAIR_REFUSAL, 0, 0)
        assert "2 occupied cells" in violation.said


def test_one_occupied_cell_is_told_as_one() -> None:
    """A has one."""
    one = played([A], [], answers=[Answer.TOO_BIG])
    assert only(one).said.startswith("picture 0 was declined with 1 occupied cell; up to ")


def test_more_than_must_show_cells_may_be_declined_though_few_tiles_would_do() -> None:
    """Both cells are alike, so one tile is enough; must_show counts cells."""
    machine = replace(MACHINE, demands=replace(MACHINE.demands, must_show=1))
    assert broken(played([picture(FULL, FULL)], [], machine=machine, answers=[Answer.TOO_BIG])) == set()


def test_nothing_is_owed_for_a_declined_picture() -> None:
    """A is declined, B taken and seen: in order."""
    machine = replace(MACHINE, demands=replace(MACHINE.demands, must_show=0))
    one = played([A, B], [(), revealed(B, 1)], machine=machine, answers=[Answer.TOO_BIG])
    assert (broken(one), one.refreshes[1].current) == (set(), 1)


# --- the beginning ------------------------------------------------------------------------------------------


def test_before_the_first_picture_every_frame_is_background() -> None:
    """A set-up that shows ink is seen in frame 0."""
    one = played([], [], set_up=[pattern(1, 0, FULL), entry(0, 0, 1), *MACHINE.view_bursts(0)])
    assert broken(one) == {"whole-reveal"}
    first, *others = one.violations
    assert (first.refresh, first.picture, first.pixel_count) == (0, -1, 64)
    assert [violation.refresh for violation in others] == [1, 2, 3, 4, 5]  # one for each frame


def test_before_the_set_up_the_blank_tile_and_the_background_colour_are_all_there_is() -> None:
    """Where the blank tile is number 4 and the background is palette byte 1, a scheduler may do nothing at all."""
    odd = replace(
        MACHINE,
        tiles=Tiles(count=5, pool=(0, 1, 2), blank=4),
        colours=Colours(background=1, inks=(0,)),
    )
    assert broken(played([], [], machine=odd, set_up=())) == set()
    assert broken(played([A], [revealed(A, 1, machine=odd)], machine=odd)) == set()


# --- look-alikes --------------------------------------------------------------------------------------------


def test_a_picture_that_looks_like_the_current_one_is_seen_at_once() -> None:
    """A twice, then B: nothing need be sent for the second A."""
    one = played([A, A, B], [revealed(A, 1), (), revealed(B, 0)])
    assert (broken(one), [refresh.current for refresh in one.refreshes[:3]]) == (set(), [0, 1, 2])


def test_an_empty_first_picture_is_seen_at_once() -> None:
    """It looks like the background."""
    one = played([NOTHING], [])
    assert (broken(one), one.refreshes[0].current, one.longest_wait) == (set(), 0, 0)


def test_queued_pictures_that_look_alike_are_seen_together() -> None:
    """A, A and B are all taken before anything is seen: after A comes B."""
    one = played([A, A, B], [(), (), revealed(A, 1), revealed(B, 0)])
    assert broken(one) == set()
    assert [(refresh.current, refresh.upcoming) for refresh in one.refreshes[2:4]] == [(1, 2), (2, None)]


def test_looks_are_what_counts_not_palette_bytes() -> None:
    """Two of four palette bytes show the same ink: a picture of value 1 looks like one of value 2? No: inks differ."""
    shades = ((0, 0, 0), (255, 255, 255), (255, 255, 255), (9, 9, 9))
    machine = replace(MACHINE, colours=Colours(meaning=shades))
    other_ink = Burst(0, bytes([0, 0, 2, 2]))
    one = played([A], [[*sent(A, 1, machine=machine), other_ink, Burst(4, b"\x01")]], machine=machine)
    wrong_ink = Burst(0, bytes([0, 0, 3, 3]))
    two = played([A], [[*sent(A, 1, machine=machine), wrong_ink, Burst(4, b"\x01")]], machine=machine)
    assert (broken(one), broken(two)) == (set(), {"exact-reveal", "whole-reveal", "progress"})


def test_a_picture_never_shown_between_two_that_look_alike_is_a_matter_of_progress() -> None:
    """A, B, A, and B is never shown: that can't be told from doing nothing, so it is waited for in vain."""
    one = played([A, B, A], [revealed(A, 1)])
    assert broken(one) == {"progress"}
    assert only(one).picture == 1


def test_a_picture_that_returns_later_in_the_queue_is_no_skip() -> None:
    """A, B, A, C: each in its turn."""
    scripts = [revealed(A, 1), revealed(B, 0), revealed(A, 1), revealed(C, 0)]
    assert broken(played([A, B, A, C], scripts)) == set()


def test_a_wrong_frame_is_compared_with_the_nearest_of_current_and_next() -> None:
    """One pixel row of B is missing: 4 pixels, told as a mask of the window."""
    short = [burst if burst.data != bytes(RIGHT) else Burst(burst.address, burst.data[:7]) for burst in revealed(B, 1)]
    one = played([B], [short])
    wrong = next(violation for violation in one.violations if violation.rule is WHOLE_REVEAL)
    assert wrong.pixels is not None
    assert [(y, x) for y, x in zip(*wrong.pixels.nonzero(), strict=True)] == [(7, x) for x in range(4, 8)]
    assert "4 pixels differ from picture 0" in wrong.said


def test_two_bits_a_pixel() -> None:
    """A picture of depth 2 is seen in three inks, and a wrong bit is a wrong colour."""
    shades = ((0, 0, 0), (9, 0, 0), (0, 9, 0), (0, 0, 9))
    deep = replace(
        MACHINE,
        tiles=Tiles(count=5, pool=(1, 2, 3), planes=4, depth=2),
        colours=Colours(meaning=shades, inks=(1, 2, 3)),
    )
    coloured = Picture.from_rows(0, [[LEFT, FULL], [EMPTY, EMPTY]])
    good = [pattern(1, 2, LEFT, machine=deep), pattern(1, 3, FULL, machine=deep), entry(1, 0, 1, machine=deep)]
    swapped = [pattern(1, 3, LEFT, machine=deep), pattern(1, 2, FULL, machine=deep), entry(1, 0, 1, machine=deep)]
    view = deep.view_bursts(1, 0)
    assert broken(played([coloured], [[*good, *view]], machine=deep)) == set()
    assert {"exact-reveal", "whole-reveal"} <= broken(played([coloured], [[*swapped, *view]], machine=deep))
