"""Where late bytes land and what they do, worked by hand.

The display has 12 lines of 10 cycles, the window lines 2 to 9 of them, and a blanking of 200 cycles. One burst turns
value 0, and so the whole window, into ink; its only byte is written after 150 + 1 = 151 cycles.
"""

from fractions import Fraction

import pytest

from planeproof.contract import Burst, Machine, Memory, Outside, TileMap, Tiles, Timing, Window
from planeproof.display import land
from planeproof.display.landing import taken_by
from tests.display.both_models import frames, landing_lines

ALL_OUTSIDES = list(Outside)
INK = Burst(0, b"\x01")  # the first palette entry
PLAIN, INKED, UNDEFINED = "." * 8, "1" * 8, "?" * 8


def machine(outside: Outside = Outside.WRECKS, *, shown: int = 12, view_per_byte: int | Fraction = 1) -> Machine:
    """The machine of the module's docstring; pattern bytes take 20 cycles and no set-up."""
    return Machine(
        name="by hand",
        window=Window(columns=1, rows=1, first_line=2),
        tiles=Tiles(count=8, pool=(1, 2, 3)),
        map=TileMap(pages=1),
        memory=Memory(palette=0, maps=(9,), patterns=16),
        time=Timing(
            lines=shown + 20,
            shown=shown,
            cycles_per_line=10,
            setup=0,
            per_byte=20,
            view_setup=150,
            view_per_byte=view_per_byte,
        ),
        outside=outside,
    )


def rows_seen(outside: Outside, told: int) -> tuple[list[str], list[str]]:
    """The window in the refresh whose blanking had ``told`` cycles, and in the next one."""
    first, second = frames(machine(outside), (), [(200 - told, (INK,)), (0, ())])
    return first, second


@pytest.mark.parametrize("outside", ALL_OUTSIDES)
def test_a_byte_exactly_at_the_end_is_inside(outside: Outside) -> None:
    """T = cycles = 151: in time for every line."""
    assert rows_seen(outside, told=151) == ([INKED] * 8, [INKED] * 8)


@pytest.mark.parametrize(
    ("told", "line"),
    [(150, 0), (142, 0), (141, 1), (131, 2), (122, 2), (121, 3), (61, 9), (52, 9), (51, 10), (32, 11)],
)
def test_the_line_is_the_late_time_in_whole_lines(told: int, line: int) -> None:
    """151 - told cycles late, ten cycles a line: a byte at the very beginning of a line counts for that line."""
    assert landing_lines(machine(), [(200 - told, (INK,))]) == [[line]]


# Told, and how many of the window's rows are drawn before the byte.
ABOVE, ON_THE_FIRST, WITHIN, ON_THE_LAST, BELOW = (150, 0), (130, 0), (91, 4), (61, 7), (51, 8)
PLACES = [ABOVE, ON_THE_FIRST, WITHIN, ON_THE_LAST, BELOW]


@pytest.mark.parametrize(("told", "before"), PLACES)
def test_where_late_bytes_land_the_line_being_drawn_is_new(told: int, before: int) -> None:
    """Rows above the line are old, the line and all below are new, and the next frame is new."""
    assert rows_seen(Outside.LANDS, told) == ([PLAIN] * before + [INKED] * (8 - before), [INKED] * 8)


@pytest.mark.parametrize(("told", "before"), PLACES)
def test_where_late_bytes_wreck_the_rest_of_the_frame_is_undefined(told: int, before: int) -> None:
    """From the line on nothing can be said of this frame; memory is written, so the next one is good, and new."""
    assert rows_seen(Outside.WRECKS, told) == ([PLAIN] * before + [UNDEFINED] * (8 - before), [INKED] * 8)


@pytest.mark.parametrize("told", [told for told, _ in PLACES])
def test_where_late_bytes_are_lost_nothing_happens(told: int) -> None:
    """Neither in this frame nor in the next."""
    assert rows_seen(Outside.LOST, told) == ([PLAIN] * 8, [PLAIN] * 8)


@pytest.mark.parametrize("outside", ALL_OUTSIDES)
def test_past_the_last_displayed_line_a_byte_lands_in_the_next_blanking(outside: Outside) -> None:
    """120 cycles late is line 12, and there are 12: unseen now, wholly seen next, whatever late bytes do."""
    assert rows_seen(outside, told=31) == ([PLAIN] * 8, [INKED] * 8)


def test_such_a_byte_is_still_late() -> None:
    """It lands inside a blanking, but not inside its own."""
    arrivals = land(machine(), 0, [INK], 31)
    (later,) = land(machine(), 1, [], 200, arrivals.overdue).pieces
    assert (arrivals.pieces, later.line, later.late, later.refresh) == ((), None, True, 0)


@pytest.mark.parametrize(("told", "taken"), [(31, 0), (30, 1), (1, 30)])
def test_its_time_is_taken_off_that_blanking(told: int, taken: int) -> None:
    """151 - told - 120 cycles of the next blanking are gone."""
    assert taken_by(machine(), land(machine(), 0, [INK], told).overdue) == taken


def test_what_is_left_of_a_blanking_is_whole_cycles() -> None:
    """A byte at 150 + 3/2, told 1: 30 1/2 cycles of the next blanking are gone, so 169 of 200 are left."""
    halves = machine(view_per_byte=Fraction(3, 2))
    assert taken_by(halves, land(halves, 0, [INK], 1).overdue) == 31


def test_in_what_is_left_the_next_bursts_count_from_where_it_begins() -> None:
    """170 cycles are left: eight pattern bytes fit (160), the ninth is ten cycles late, on line 1."""
    nine = Burst(16, bytes(9))
    assert landing_lines(machine(), [(199, (INK,)), (0, (nine,))]) == [[], [None] * 9 + [1]]


def test_bytes_may_be_late_by_more_than_a_refresh() -> None:
    """Forty bytes, 20 cycles each, from one blanking of 200: byte i is written at 20 (i + 1).

    Ten are inside; five land on every other line from 2 to 10; the next is 120 cycles late, so at 0 of the next
    blanking, where it and ten more land, the last exactly at the end; then five on lines again, and nine in the third.
    """
    forty = Burst(16, bytes(40))
    lines: list[int | None] = [2, 4, 6, 8, 10]
    inside: list[list[int | None]] = [[None] * 10, [None] * 11, [None] * 9]
    expected = [inside[0] + lines, inside[1] + lines, inside[2]]
    assert landing_lines(machine(), [(0, (forty,)), (0, ()), (0, ())]) == expected


def test_a_blanking_that_late_bytes_fill_is_lost_and_one_that_they_enter_is_shorter() -> None:
    """The forty bytes leave 0 of the second blanking and 200 - 160 = 40 cycles of the third: two bytes fit."""
    forty, three = Burst(16, bytes(40)), Burst(16, bytes(3))
    played = landing_lines(machine(), [(0, (forty,)), (0, (three,)), (0, (three,))])
    assert played[1:] == [[None] * 11 + [2, 4, 6, 8, 10], [None] * 9 + [None, None, 2]]


def test_a_shortened_blanking_ends_on_time_for_bytes_from_before_too() -> None:
    """Told 10 cycles, a scheduler gets half a byte in; the byte from before came at 30 of all 200, inside."""
    one = Burst(16, bytes(1))
    assert landing_lines(machine(), [(199, (INK,)), (160, (one,))]) == [[], [None, 1]]


def test_only_the_bytes_after_the_end_are_late() -> None:
    """A burst is cut byte by byte: told 40, two of four bytes are in, the others 20 and 40 cycles late."""
    assert landing_lines(machine(), [(160, (Burst(16, bytes(4)),))]) == [[None, None, 2, 4]]


def test_a_late_pattern_is_seen_from_its_line_on_only() -> None:
    """Rows 0 to 3 of an empty tile are inked, at 20, 40, 60 and 80 cycles.

    Told 40: rows 2 and 3 land on lines 2 and 4, where the window's rows 0 and 2 are drawn: all in time. Told 1: they
    land on lines 1, 3, 5 and 7, where rows -1, 1, 3 and 5 are drawn: rows 2 and 3 come after they were drawn.
    """
    lands = machine(Outside.LANDS)
    in_view = [Burst(0, b"\x00\x01\x00\x01"), Burst(9, b"\x01")]
    late_rows = Burst(16 + 16, b"\xff" * 4)
    early, late = (frames(lands, in_view, [(200 - told, (late_rows,)), (0, ())]) for told in (40, 1))
    whole = [INKED] * 4 + [PLAIN] * 4
    assert early == [whole, whole]
    assert late == [[INKED] * 2 + [PLAIN] * 6, whole]
