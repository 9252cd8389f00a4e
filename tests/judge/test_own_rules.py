"""Rules own-memory and tile-cap: what belongs to the rest of the screen."""

from dataclasses import replace

import pytest

from planeproof.contract import Burst, Colours, Machine, Memory, TileMap, Tiles, Window
from planeproof.contract.rules import OWN_MEMORY, TILE_CAP
from planeproof.judge import Play, Violation
from tests.judge.scripted import EMPTY, LEFT, MACHINE, broken, entry, only, pattern, picture, played, revealed

# Two cells in the middle of a map of 4 x 3, six palette entries of which the window has the middle four, a gap after
# each region: palette 0-5, register 10, maps 20-31 and 40-51, patterns 60-139 (16 a tile).
ROOMY = replace(
    MACHINE,
    window=Window(columns=2, rows=1, origin_column=1, origin_row=1, map_columns=4, map_rows=3),
    colours=Colours(first_entry=1, entries=6),
    memory=Memory(palette=0, page_register=10, maps=(20, 40), patterns=60),
)
A = picture(LEFT, EMPTY)


def writing(address: int, data: bytes = b"\0", *, machine: Machine = ROOMY) -> Play:
    """What comes of one burst in the first blanking."""
    return played([], [[Burst(address, data)]], machine=machine)


OWNED = [1, 2, 3, 4, 10, 25, 26, 45, 46, 76, 91, 92, 107, 108, 123]
OTHERS = {
    0: "not the window's",
    5: "not the window's",
    6: "not the window's",
    11: "not the window's",
    20: "map page 0 outside the window",
    24: "map page 0 outside the window",
    27: "map page 0 outside the window",
    31: "map page 0 outside the window",
    32: "not the window's",
    44: "map page 1 outside the window",
    60: "tile 0, which is the blank tile",
    75: "tile 0, which is the blank tile",
    124: "tile 4, which is not of the pool",
    139: "tile 4, which is not of the pool",
    140: "no picture memory (it ends at 139)",
    10**6: "no picture memory (it ends at 139)",
    -1: "no picture memory (it ends at 139)",
    -140: "no picture memory (it ends at 139)",
}


@pytest.mark.parametrize("address", OWNED)
def test_what_the_window_owns_may_be_written(address: int) -> None:
    """Its palette entries, the register, its cells of both pages, the first and last bytes of its tiles."""
    assert OWN_MEMORY not in writing(address).counts


@pytest.mark.parametrize(("address", "place"), OTHERS.items())
def test_what_somebody_else_owns_may_not(address: int, place: str) -> None:
    """Not even with the byte that stands there; the place is named."""
    standing = bytes(writing(140).scene.machine.map_entry(0))
    one = writing(address, standing)
    violation = only(one)
    assert (violation.rule, violation.refresh, violation.burst, violation.byte) == (OWN_MEMORY, 0, 0, 0)
    assert violation.address == address
    assert place in violation.said


@pytest.mark.parametrize("address", [1 << 20, 1 << 31, 1 << 40, -(1 << 40)])
def test_an_address_beyond_all_reach_is_nobodys_too(address: int) -> None:
    """However far, it is the scheduler's fault and not a fault of the judge."""
    assert broken(writing(address)) == {"own-memory"}


def test_a_burst_that_runs_past_the_end_writes_what_lies_inside_and_names_the_rest() -> None:
    """Three bytes of tile 4, the last of memory, and two of nothing."""
    one = writing(137, bytes(5))
    assert [(violation.byte, violation.address) for violation in one.violations] == [(i, 137 + i) for i in range(5)]
    assert ["no picture memory" in violation.said for violation in one.violations] == [False] * 3 + [True] * 2


def test_a_burst_from_below_address_0_reaches_the_window() -> None:
    """Bytes at -1 and 0 are nobody's, the one at 1 turns value 0 into ink."""
    one = writing(-1, b"\1\1\1")
    assert [v.address for v in one.violations if v.rule is OWN_MEMORY] == [-1, 0]
    assert "whole-reveal" in broken(one)


def test_a_burst_down_a_column_of_cells_steps_over_what_is_not_its_own() -> None:
    """With a step of a map row, the cells above and below the window are the rest of the screen's."""
    machine = replace(ROOMY, memory=Memory(palette=0, page_register=10, maps=(20, 40), patterns=60, steps=(1, 4)))
    one = played([], [[Burst(21, bytes(3), 4)]], machine=machine)
    assert [violation.address for violation in one.violations] == [21, 29]


def test_the_set_up_must_keep_the_own_rules_and_no_others() -> None:
    """Refresh -1 is the set-up."""
    one = played([], [], machine=ROOMY, set_up=[Burst(24, b"\0"), Burst(124, b"\1")])
    assert [(v.rule, v.refresh, v.address) for v in one.violations] == [
        (OWN_MEMORY, -1, 24),
        (OWN_MEMORY, -1, 124),
        (TILE_CAP, -1, 124),
    ]


def test_each_byte_of_anothers_is_counted() -> None:
    """Two whole patterns of tile 4, of which only one byte changes a value."""
    one = writing(124, bytes(15) + b"\1")
    assert (one.counts[OWN_MEMORY], one.counts[TILE_CAP]) == (16, 1)


# --- tile-cap -----------------------------------------------------------------------------------------------


def caps(one: Play) -> list[Violation]:
    """The breaches of tile-cap."""
    return [violation for violation in one.violations if violation.rule is TILE_CAP]


def test_a_shown_entry_that_names_a_tile_outside_the_pool_breaks_it() -> None:
    """Tile 4 is empty, so nothing is seen of it: tile-cap alone. The cell is named."""
    one = played([], [[entry(0, 1, 4)]])
    assert broken(one) == {"tile-cap"}
    assert (only(one).refresh, only(one).cell) == (0, 1)
    assert "tile 4 in cell 1" in only(one).said


def test_on_the_hidden_page_it_does_not() -> None:
    """Only what is shown counts, until it is shown."""
    hidden = played([], [[entry(1, 1, 4)]])
    shown = played([], [[entry(1, 1, 4)], MACHINE.view_bursts(1, 0)])
    assert (broken(hidden), broken(shown)) == (set(), {"tile-cap"})
    assert only(shown).refresh == 1


def test_the_blank_tile_may_be_mapped() -> None:
    """It is outside the pool and shown from the beginning."""
    assert broken(played([], [[entry(0, 0, 0), entry(0, 1, 0)]])) == set()


def test_a_pattern_byte_outside_the_pool_that_changes_breaks_it() -> None:
    """One byte of eight does; own-memory, which comes first, counts all eight."""
    one = played([], [[pattern(4, 0, [0, 0, 0, 7, 0, 0, 0, 0])]])
    (violation,) = caps(one)
    assert (violation.burst, violation.byte, violation.address) == (0, 3, 9 + 64 + 3)
    assert broken(one) == {"own-memory", "tile-cap"}
    assert one.first(frozenset(one.counts)) is not violation


@pytest.mark.parametrize("named", [5, 6, 7])
def test_an_entry_that_names_no_tile_is_background_and_breaks_it(named: int) -> None:
    """Five tiles are numbered 0 to 4 in three bits; nothing is seen of numbers 5 to 7, so tile-cap alone is broken."""
    one = played([], [[Burst(MACHINE.map_address(0, 0), bytes([named]))]])
    assert broken(one) == {"tile-cap"}
    assert "no tile at all in cell 0" in only(one).said


@pytest.mark.parametrize(("written", "tile"), [(8, 0), (9, 1), (0xFB, 3), (0xF9, 1)])
def test_an_entry_counts_modulo_the_least_power_of_two(written: int, tile: int) -> None:
    """Of eight bits three count here."""
    drawn = [pattern(1, 1, LEFT), Burst(MACHINE.map_address(1, 0), bytes([written])), *MACHINE.view_bursts(1, 0)]
    one = played([A], [drawn])
    assert broken(one) == (set() if tile == 1 else {"progress"})


def test_the_blank_tile_of_every_bank_may_be_shown_and_no_tile_of_another_bank_counts() -> None:
    """Eight tiles in two banks of four: entry 0 is blank in both, entry 3 is outside the pool in the second only."""
    banked = replace(
        MACHINE,
        tiles=Tiles(count=8, pool=(1, 2, 3, 5), planes=1),
        map=TileMap(pages=1, banks=2),
    )
    to_bank = [Burst(banked.bank_address, b"\1")]
    start = [*banked.view_bursts(0), entry(0, 0, 3, machine=banked)]
    one = played([], [(), to_bank], machine=banked, set_up=start)
    assert [(violation.refresh, violation.cell) for violation in caps(one)] == [(1, 0)]
    assert "tile 7 in cell 0" in caps(one)[0].said


def test_it_is_judged_at_each_frame_not_at_each_write() -> None:
    """An entry that names tile 4, which is as empty as what it was, is put right within the blanking: never shown."""
    assert broken(played([A], [revealed(A, 1), [entry(1, 1, 4), entry(1, 1, 0)]])) == set()
