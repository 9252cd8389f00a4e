"""Rule hidden-writes, byte by byte, in scenes worked by hand."""

from dataclasses import replace

import pytest

from planeproof.contract import (
    Burst,
    ByteDirection,
    Colours,
    Machine,
    Memory,
    Picture,
    Storage,
    TileMap,
    Tiles,
    Window,
)
from planeproof.contract.rules import HIDDEN_WRITES
from planeproof.judge import Play, not_applicable
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

A, B = picture(LEFT, EMPTY), picture(FULL, EMPTY)
SHOWN = revealed(A, 1)  # A stands in tile 1, plane 1, named on page 1


def after_a(*blanking: Burst, machine: Machine = MACHINE) -> Play:
    """Picture A is shown by one blanking; then comes ``blanking``."""
    return played([A], [revealed(A, 1, machine=machine), blanking], machine=machine)


def test_work_on_the_hidden_side_is_hidden() -> None:
    """Hidden planes of tiles that are being seen, unseen tiles in both planes, and the hidden page."""
    writes = [pattern(1, 0, FULL), pattern(2, 0, FULL), pattern(2, 1, FULL), entry(0, 0, 2), entry(0, 1, 1)]
    assert broken(after_a(*writes)) == set()


def test_a_pattern_byte_of_a_tile_that_is_seen_breaks_it() -> None:
    """One byte turns the right half of row 5 of cell 0 into ink: burst, byte, address, cell and pixels are told."""
    one = after_a(pattern(2, 0, FULL), pattern(1, 1, [0xF0, 0xF0, 0xFF, 0xF0], row=3))
    violation = one.first(frozenset({HIDDEN_WRITES}))
    assert violation is not None
    told = (violation.refresh, violation.burst, violation.byte, violation.address, violation.cell)
    assert told == (1, 1, 2, 9 + 16 + 8 + 5, 0)
    assert violation.pixels is not None
    assert [(y, x) for y, x in zip(*violation.pixels.nonzero(), strict=True)] == [(5, x) for x in range(4, 8)]
    assert violation.pixel_count == 4


def test_a_pattern_seen_in_two_cells_is_counted_in_both() -> None:
    """Tile 1 stands in both cells: sixteen pixels of two cells for one byte."""
    twice = [pattern(1, 1, LEFT), entry(1, 0, 1), entry(1, 1, 1), *MACHINE.view_bursts(1, 0)]
    one = played([picture(LEFT, LEFT)], [twice, [pattern(1, 1, [0x0F])]])
    assert broken(one) == {"hidden-writes", "whole-reveal"}
    assert one.violations[0].pixel_count == 16


def test_a_map_entry_of_the_shown_page_breaks_it() -> None:
    """Cell 1, which named the blank tile, names tile 1: the 32 inked pixels of A's half."""
    one = after_a(entry(1, 1, 1))
    violation = one.violations[0]
    assert (violation.rule, violation.cell, violation.pixel_count) == (HIDDEN_WRITES, 1, 32)
    assert (violation.burst, violation.byte, violation.address) == (0, 0, 8)


def test_each_byte_that_changes_a_pixel_is_one_violation_and_the_others_are_none() -> None:
    """Of eight bytes written to a seen plane, three differ from what stands there."""
    data = [0xF0, 0xF1, 0xF0, 0xF3, 0xF0, 0xF0, 0xF7, 0xF0]
    one = after_a(pattern(1, 1, data))
    hidden = [violation for violation in one.violations if violation.rule is HIDDEN_WRITES]
    assert [(violation.byte, violation.pixel_count) for violation in hidden] == [(1, 1), (3, 2), (6, 3)]


@pytest.mark.parametrize("write", [pattern(1, 1, LEFT), entry(1, 0, 1), entry(1, 1, 0)])
def test_writing_what_stands_there_changes_nothing(write: Burst) -> None:
    """The same byte again, in what is being seen, is no breach."""
    assert broken(after_a(write)) == set()


def test_an_entry_that_names_another_tile_of_the_same_look_changes_nothing() -> None:
    """Judged by pixels: tile 2 is filled like tile 1 in the seen plane, and not at all in the hidden one."""
    assert broken(after_a(pattern(1, 0, FULL), pattern(2, 1, LEFT), entry(1, 0, 2))) == set()


def test_a_burst_that_runs_from_the_hidden_page_into_the_shown_one_breaks_it() -> None:
    """Page 0 ends where page 1 begins. Both its last entry and page 1's first are named anew by one burst."""
    one = after_a(Burst(MACHINE.map_address(0, 1), bytes([2, 2])))
    assert broken(one) == {"hidden-writes", "in-order"}  # tile 2 is empty: the background comes back
    assert (one.violations[0].byte, one.violations[0].cell) == (1, 0)


def test_a_burst_that_runs_from_the_shown_page_into_the_hidden_one_is_judged_by_the_shown_part() -> None:
    """Page 0 is seen; cell 1 of it is written as it stands, cell 0 of page 1 is nobody's business."""
    assert broken(played([], [[Burst(MACHINE.map_address(0, 1), bytes([0, 2]))]])) == set()


# --- put right again: what frames can't show ----------------------------------------------------------------

NEVER_SEEN: dict[str, Blanking] = {
    "a plane changed and changed back": [pattern(1, 1, FULL), pattern(1, 1, LEFT)],
    "an entry changed and changed back": [entry(1, 0, 2), entry(1, 0, 1)],
    "first the entry, then the tile it names, no byte twice": [entry(1, 0, 2), pattern(2, 1, LEFT)],
}


@pytest.mark.parametrize("blanking", NEVER_SEEN.values(), ids=NEVER_SEEN.keys())
def test_put_right_again_within_one_blanking_breaks_it_although_no_frame_shows_it(blanking: Blanking) -> None:
    """Every frame is whole, and would not be if the blanking were cut in between."""
    one = after_a(*blanking)
    assert broken(one) == {"hidden-writes"}
    assert one.violations[0].refresh == 1


def test_two_plane_bytes_through_a_palette_that_shows_two_values_alike() -> None:
    """Values 01 and 10 look alike; a pixel goes from one to the other by way of 00, no byte written twice."""
    alike = [pattern(1, 0, FULL), entry(0, 0, 1), Burst(0, bytes([0, 1, 1, 0]))]
    both = played([B], [alike, [pattern(1, 0, EMPTY), pattern(1, 1, FULL)]], set_up=())
    assert broken(both) == {"hidden-writes"}
    assert both.counts[HIDDEN_WRITES] == 16


def test_the_planes_of_a_tile_in_one_burst_are_written_one_after_the_other() -> None:
    """The same sixteen bytes in one burst, plane 0 before plane 1: each of them is seen."""
    alike = [pattern(1, 0, FULL), entry(0, 0, 1), Burst(0, bytes([0, 1, 1, 0]))]
    one = played([B], [alike, [pattern(1, 0, EMPTY + FULL)]], set_up=())
    assert [violation.byte for violation in one.violations] == list(range(16))
    assert broken(one) == {"hidden-writes"}


def test_the_same_two_bytes_are_hidden_where_no_pixel_changes_its_colour() -> None:
    """With 00, 01 and 11 alike too, nothing that is written can be seen: the rule is about colours, not planes."""
    dark = Burst(0, bytes([0, 0, 0, 0]))
    assert broken(played([], [[dark], [entry(0, 0, 1)], [pattern(1, 0, FULL)], [pattern(1, 1, FULL)]])) == set()


# --- storage ------------------------------------------------------------------------------------------------


def stored(storage: Storage) -> Machine:
    """The machine with another storage."""
    return replace(MACHINE, tiles=replace(MACHINE.tiles, storage=storage))


def test_interleaved_storage_isolates_a_byte_but_not_a_burst() -> None:
    """From plane 1 of row 0 on, byte 1 of a burst belongs to the seen plane of row 1."""
    machine = stored(Storage.INTERLEAVED)
    seen = [Burst(machine.pattern_address(1, 0), bytes([0xF0, 0] * 8)), entry(0, 0, 1)]
    to_plane_1 = [Burst(machine.pattern_address(1, 1, row), b"\xff") for row in range(8)]
    bytewise = played([A], [[*machine.view_bursts(0), *seen], to_plane_1], machine=machine)
    burst = played([A], [seen, [Burst(machine.pattern_address(1, 1), b"\xff" * 3)]], machine=machine)
    unchanged = played([A], [seen, [Burst(machine.pattern_address(1, 1), b"\xff\xf0\xff")]], machine=machine)
    assert [violation.byte for violation in burst.violations if violation.refresh == 1][:1] == [1]
    first = [violation for violation in bytewise.violations if violation.refresh == 1]
    assert (first, [v for v in unchanged.violations if v.refresh == 1]) == ([], [])


def test_packed_storage_needs_the_seen_bits_written_as_they_stand() -> None:
    """A byte holds both planes of four pixels: with plane 0 kept it is hidden, with plane 0 cleared it is not."""
    machine = stored(Storage.PACKED)
    row = machine.pattern_address(1)
    seen = [Burst(row, b"\x55"), entry(0, 0, 1)]  # value 1 in the first four pixels of row 0
    a_row = Picture.from_rows(0, [[0xF0, *[0] * 7], EMPTY])
    kept = played([a_row], [seen, [Burst(row, b"\xff")]], machine=machine)
    cleared = played([a_row], [seen, [Burst(row, b"\xaa")]], machine=machine)
    assert [violation for violation in kept.violations if violation.refresh == 1] == []
    (violation, *_) = [violation for violation in cleared.violations if violation.refresh == 1]
    assert (violation.rule, violation.pixel_count) == (HIDDEN_WRITES, 4)


def test_where_bytes_are_columns_the_pixels_are_those_of_a_column() -> None:
    """Byte 2 of a tile is its third column of pixels, bit 7 the topmost."""
    machine = replace(MACHINE, tiles=replace(MACHINE.tiles, byte=ByteDirection.COLUMN))
    one = played([A], [revealed(A, 1, machine=machine), [pattern(1, 1, [0xF8], row=2)]], machine=machine)
    pixels = one.violations[0].pixels
    assert pixels is not None
    assert [(y, x) for y, x in zip(*pixels.nonzero(), strict=True)] == [(4, 2)]


# --- entries of two bytes -----------------------------------------------------------------------------------

WIDE = Machine(
    name="two bytes an entry",
    window=Window(columns=1, rows=1),
    tiles=Tiles(count=300, pool=(255, 256, 257)),
    map=TileMap(entry_bytes=2),
    time=MACHINE.time,
    demands=MACHINE.demands,
)
ONE_CELL = Picture.from_rows(0, [FULL])
IN_BOTH = [pattern(tile, 1, FULL, machine=WIDE) for tile in (255, 256)]
WIDE_SHOWN = [*IN_BOTH, entry(1, 0, 255, machine=WIDE), *WIDE.view_bursts(1, 0)]


def test_the_bytes_of_an_entry_in_one_burst_are_one_write() -> None:
    """From 0x00ff to 0x0100 by way of 0x0000, the blank tile: nobody sees it, and no blanking is cut there."""
    assert broken(played([ONE_CELL], [WIDE_SHOWN, [entry(1, 0, 256, machine=WIDE)]], machine=WIDE)) == set()


def test_the_bytes_of_an_entry_in_two_bursts_are_two_writes() -> None:
    """The same two bytes, one burst each."""
    address, data = WIDE.map_address(1, 0), WIDE.map_entry(256)
    halves = [Burst(address, data[:1]), Burst(address + 1, data[1:])]
    assert broken(played([ONE_CELL], [WIDE_SHOWN, halves], machine=WIDE)) == {"hidden-writes"}


def test_an_entry_torn_over_two_blankings_is_found_on_the_shown_page() -> None:
    """Its low byte alone names the blank tile for a whole frame."""
    address, data = WIDE.map_address(1, 0), WIDE.map_entry(256)
    torn = played([ONE_CELL], [WIDE_SHOWN, [Burst(address, data[:1])], [Burst(address + 1, data[1:])]], machine=WIDE)
    assert {"hidden-writes", "in-order"} <= broken(torn)  # an empty cell is the background, brought back


def test_an_entry_torn_over_two_blankings_is_harmless_on_the_hidden_page() -> None:
    """For one frame page 0 names tile 0x0101 = 257 of the pool, then 299 + more, which is no tile; nobody sees it."""
    address = WIDE.map_address(0, 0)
    torn = [[Burst(address, b"\xff")], [Burst(address + 1, b"\x01")], [Burst(address, b"\x01\x01")]]
    assert broken(played([ONE_CELL], [WIDE_SHOWN, *torn], machine=WIDE)) == set()


# --- where it does not apply --------------------------------------------------------------------------------


def test_on_a_machine_with_one_side_it_does_not_apply() -> None:
    """With one plane and one page everything that is drawn is drawn in sight; frames alone are judged."""
    single = Machine(
        name="one side",
        window=Window(columns=1, rows=1),
        tiles=Tiles(count=3, pool=(1, 2), planes=1),
        map=TileMap(pages=1),
        time=MACHINE.time,
    )
    one = played([ONE_CELL], [[entry(0, 0, 1, machine=single), pattern(1, 0, FULL, machine=single)]], machine=single)
    assert (single.sides, broken(one)) == (1, set())
    assert not_applicable(one.scene) == frozenset({HIDDEN_WRITES})
    assert HIDDEN_WRITES not in one.exercised
    assert not_applicable(after_a().scene) == frozenset()


def test_banks_are_a_side_too() -> None:
    """One plane, one page, two banks: tile 1 of the hidden bank is hidden, tile 1 of the shown one is not."""
    banked = Machine(
        name="two banks",
        window=Window(columns=1, rows=1),
        tiles=Tiles(count=6, pool=(1, 2, 4, 5), planes=1),
        map=TileMap(pages=1, banks=2),
        time=MACHINE.time,
        demands=MACHINE.demands,
        colours=Colours(fixed=True),
        memory=Memory(maps=(0,), bank_register=1, patterns=2),
    )
    draw = [pattern(4, 0, FULL, machine=banked), Burst(1, b"\x01")]
    hidden = played([ONE_CELL], [[Burst(0, b"\x01")], draw], machine=banked)
    shown = played([ONE_CELL], [[Burst(0, b"\x01")], [pattern(1, 0, FULL, machine=banked)]], machine=banked)
    assert (broken(hidden), broken(shown)) == (set(), {"hidden-writes"})


def test_the_set_up_is_free_of_it() -> None:
    """The display is off: what is written while it would be seen is nobody's sight."""
    drawn = [*MACHINE.view_bursts(0), *sent(picture(RIGHT, FULL), 0), pattern(1, 0, EMPTY), pattern(2, 0, EMPTY)]
    assert broken(played([], [], set_up=drawn)) == set()
