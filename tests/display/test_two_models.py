"""The display, told twice: in arrays by the package, and pixel by pixel by an oracle that shares no code with it.

Nothing is known of either but the rules, so where they differ one of them is wrong.
"""

from collections.abc import Callable
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import Phase, find, given, settings
from hypothesis import strategies as st

from planeproof.contract import Machine, Outside
from planeproof.display import PictureMemory, View, set_up
from tests.display.both_models import plain_pixels, plainly_filled, plainly_played
from tests.display.first_model import filled, in_colours, play_first, write
from tests.oracle.described import described
from tests.oracle.plain_display import Memory, Seen, memory_before_start, still_frame, whole_blanking
from tests.strategies.machines import machines
from tests.strategies.sessions import Session, bursts, sessions

THOROUGH = settings(max_examples=250, deadline=None)


def as_contents(memory: Memory, extent: int) -> bytes:
    """The oracle's memory as one row of bytes; what was never written is 0."""
    return bytes(memory.get(address, 0) for address in range(extent))


@THOROUGH
@given(machines())
def test_both_begin_with_the_same_memory_and_a_frame_of_background(machine: Machine) -> None:
    """Before start every pattern byte is 0, every entry the blank tile, every colour background, registers 0."""
    first, second = PictureMemory(machine), memory_before_start(described(machine))
    assert first.contents.tobytes() == as_contents(second, len(first.contents))
    background = machine.colours.meaning[machine.colours.background % len(machine.colours.meaning)]
    frame = in_colours(machine.colours, first.frame())
    assert frame == still_frame(described(machine), second)
    assert {colour for row in frame for colour in row} == {background}


@THOROUGH
@given(machines())
def test_both_count_the_same_cycles_in_a_blanking(machine: Machine) -> None:
    """What is left of the blanking lines, less what other work takes, in whole cycles."""
    assert machine.blank_cycles == whole_blanking(described(machine))


@THOROUGH
@given(sessions(most_refreshes=0))
def test_both_show_the_same_frame_for_any_contents(session: Session) -> None:
    """Whatever stands in patterns, map, palette and registers, every pixel has the same colour in both."""
    machine = session.machine
    frame = in_colours(machine.colours, filled(machine, session.fills).frame())
    assert frame == still_frame(described(machine), plainly_filled(machine, session.fills))


@THOROUGH
@given(sessions(most_refreshes=0), st.data())
def test_both_show_the_same_frame_through_any_other_view(session: Session, data: st.DataObject) -> None:
    """A frame asked for through a view is the frame of a memory that holds that view."""
    machine, display = session.machine, described(session.machine)
    colours = 0 if machine.colours.fixed else 2**machine.tiles.planes
    palette = data.draw(st.binary(min_size=colours, max_size=colours))
    page, bank = data.draw(st.integers(0, machine.map.pages - 1)), data.draw(st.integers(0, machine.map.banks - 1))
    plain = plainly_filled(machine, session.fills)
    for register, value in ((display.page_register, page), (display.bank_register, bank)):
        plain |= {} if register is None else {register: value}
    if display.palette_base is not None:
        plain |= {display.palette_base + display.first_entry + i: byte for i, byte in enumerate(palette)}
    view = View(palette if colours else machine.palette_showing(0), page, bank)
    frame = filled(machine, session.fills).frame(view)
    assert in_colours(machine.colours, frame) == still_frame(display, plain)


@THOROUGH
@given(st.data())
def test_both_read_the_same_pixels_out_of_a_tile(data: st.DataObject) -> None:
    """Bit by bit, before and after each write, in a copy too: what old bytes gave is not shown again."""
    machine = data.draw(machines())
    memory, plain = PictureMemory(machine), memory_before_start(described(machine))
    tile = data.draw(st.integers(0, machine.tiles.count - 1))
    for burst in data.draw(st.lists(bursts(machine), min_size=1, max_size=3)):
        write(memory, *set_up([burst]))
        plain |= dict(zip(burst.addresses, burst.data, strict=True))
        expected = plain_pixels(machine, plain, tile)
        assert memory.pixels(np.array([tile]))[0].tolist() == expected
        assert memory.copy().pixels(np.array([tile]))[0].tolist() == expected


@THOROUGH
@given(sessions())
def test_both_land_show_and_keep_the_same_bytes(session: Session) -> None:
    """Refresh by refresh: where and in which order bytes land, which are late, the frame; and memory at the end."""
    memory = filled(session.machine, session.fills)
    first = play_first(memory, session.refreshes)
    plain, second = plainly_played(session.machine, session.fills, session.refreshes)
    assert [told.landed for told in first] == [seen.landed for seen in second]
    assert [told.late for told in first] == [seen.late for seen in second]
    left_over = [[(byte.address, byte.value, byte.time) for byte in seen.overdue] for seen in second]
    assert [told.overdue for told in first] == left_over
    assert [told.frame for told in first] == [seen.frame for seen in second]
    assert first[-1].contents == as_contents(plain, len(memory.contents))


# --- what the sessions reach: were one of these out of reach, the comparison above would say less than it seems ---


def seen_in(session: Session) -> list[Seen]:
    """The refreshes of a session as the oracle sees them."""
    return plainly_played(session.machine, session.fills, session.refreshes)[1]


def lines_hit(session: Session) -> list[int]:
    """The displayed lines on which bytes landed in the whole session."""
    return [line for seen in seen_in(session) for _, _, line in seen.landed if line is not None]


def above_the_window(session: Session) -> bool:
    """A byte on a displayed line above the window."""
    return any(line < session.machine.window.first_line for line in lines_hit(session))


def below_the_window(session: Session) -> bool:
    """A byte on a displayed line below the window."""
    window = session.machine.window
    return any(line >= window.first_line + 8 * window.rows for line in lines_hit(session))


def lost(session: Session) -> bool:
    """Bytes on displayed lines of a machine that loses them."""
    return session.machine.outside is Outside.LOST and len(lines_hit(session)) > 1


def half_undefined(session: Session) -> bool:
    """A frame with undefined rows below good ones."""
    return any(seen.frame[0][0] is not None and seen.frame[-1][0] is None for seen in seen_in(session))


def torn(session: Session) -> bool:
    """A frame that neither memory before nor memory after it would show."""
    if session.machine.outside is not Outside.LANDS:
        return False
    machine, display = session.machine, described(session.machine)
    before = still_frame(display, plainly_filled(machine, session.fills))
    after, seen = plainly_played(machine, session.fills, session.refreshes[:1])
    return seen[0].frame not in (before, still_frame(display, after))


def twice_put_off(session: Session) -> bool:
    """Bytes left over that are later than a whole refresh even counted from the next blanking."""
    machine = session.machine
    refresh = machine.blank_cycles + machine.time.shown * machine.time.cycles_per_line
    return any(byte.time > refresh for seen in seen_in(session) for byte in seen.overdue)


def shared_blanking(session: Session) -> bool:
    """A blanking in which both bytes from before and new ones land."""
    seen = seen_in(session)
    return any(
        before.overdue and [line for _, _, line in after.landed].count(None) > len(before.overdue)
        for before, after in pairwise(seen)
    )


def just_inside(session: Session) -> bool:
    """A burst whose last byte comes exactly at the end of its blanking."""
    cut, written = session.refreshes[0]
    return bool(written) and session.machine.cost(written[0]) == session.machine.blank_cycles - cut


def names_no_tile(session: Session) -> bool:
    """Entries that name no tile beside others that do."""
    memory = filled(session.machine, session.fills)
    named = memory.tiles_named(memory.view.page, memory.view.bank)
    return bool((named < 0).any() and (named >= 0).any())


def registers_beyond_range(session: Session) -> bool:
    """Registers that hold more than there is of what they count, and don't come down to the first."""
    memory, layout, tile_map = filled(session.machine, session.fills), session.machine.layout, session.machine.map
    held = [(layout.page_register, tile_map.pages), (layout.bank_register, tile_map.banks)]
    return all(at is not None and memory.contents[at] > count and memory.contents[at] % count for at, count in held)


REACHED = [
    above_the_window,
    below_the_window,
    lost,
    half_undefined,
    torn,
    twice_put_off,
    shared_blanking,
    just_inside,
    names_no_tile,
    registers_beyond_range,
]


@pytest.mark.parametrize("reached", REACHED, ids=lambda reached: reached.__name__)
def test_the_sessions_reach(reached: Callable[[Session], bool]) -> None:
    """Each of the situations that the rules tell apart does come up among the sessions drawn."""
    seeking = settings(max_examples=2000, deadline=None, derandomize=True, database=None, phases=[Phase.generate])
    assert reached(find(sessions(), reached, settings=seeking))
