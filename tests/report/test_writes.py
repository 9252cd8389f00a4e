import pytest
from hypothesis import given
from hypothesis import strategies as st

from planeproof.contract import Burst, Machine, TileMap, Tiles, Window
from planeproof.machines import read_machine, shipped
from planeproof.report.writes import in_hex, place_of, said
from tests.report.stories import NICHE


@pytest.mark.parametrize("name", shipped())
def test_a_pattern_is_named_by_tile_plane_and_rows(name: str) -> None:
    """On every shape of machine the words give back the tile, plane and row that the address was made from."""
    machine = read_machine(name)
    tile, packed = machine.pool[-1], machine.tiles.storage.value == "packed"
    line = "column" if name == "scroll-case" else "row"
    for plane in [None] if packed else range(machine.tiles.planes):
        for row in range(8):
            planes = f"planes 0-{machine.tiles.planes - 1}" if packed else f"plane {plane}"
            wanted = f"pattern of tile {tile}, {planes}, {line} {row}"
            assert place_of(machine, machine.pattern_address(tile, plane, row)) == wanted


@pytest.mark.parametrize("name", shipped())
def test_a_map_entry_is_named_by_page_cell_and_tile(name: str) -> None:
    """The words give back page, cell and tile; with several banks, the tile within its bank."""
    machine = read_machine(name)
    page, cell, tile = machine.map.pages - 1, machine.cells - 1, machine.pool[-1]
    bank = " of its bank" if machine.map.banks > 1 else ""
    named = f"tile {tile % machine.tiles_per_bank}{bank}"
    burst = Burst(machine.map_address(page, cell), machine.map_entry(tile))
    assert said(machine, burst) == f"map page {page}, cell {cell} names {named}"
    empty = Burst(machine.map_address(page, cell), machine.map_entry(machine.blank_tile))
    assert said(machine, empty) == f"map page {page}, cell {cell} names the blank tile"


@pytest.mark.parametrize("name", shipped())
def test_a_view_change_is_told_in_full(name: str) -> None:
    """The reveal of side 1 names each register that it sets."""
    machine = read_machine(name)
    text = "; ".join(said(machine, burst) for burst in machine.view_bursts(1 % machine.sides, 0))
    assert ("page register: page 1 is shown" in text) == (machine.map.pages > 1)
    assert ("bank register: bank 1 is shown" in text) == (machine.map.banks > 1)
    assert ("colours" in text) == (machine.tiles.planes > machine.tiles.depth)


def test_what_is_not_the_windows_is_said_to_be_not() -> None:
    """Map cells around the window, colours of the panel, and addresses past the end."""
    machine = read_machine("vitrine-50")
    assert said(machine, Burst(0, bytes(2))) == "2 colours of the rest of the screen"
    around = Burst(machine.map_address(0, 0) - 1, bytes(2))
    assert said(machine, around) == (
        "map page 0, outside the window (column 0, row 6 of the map); map page 0, cell 0 names the blank tile"
    )
    end = max(region.end for region in machine.regions)
    assert said(machine, Burst(end - 1, bytes(3))) == (
        f"pattern of tile 239, plane 1, row 7; addresses {end}-{end + 1}, where there is no picture memory"
    )
    assert place_of(machine, end) == "no picture memory"


def test_half_of_an_entry_and_an_entry_that_names_nothing() -> None:
    """One byte of two is named low or high; a number past the last tile names no tile."""
    tiles, two = Tiles(count=5, pool=(1, 2)), TileMap(entry_bytes=2)
    machine = Machine(name="two bytes", window=Window(columns=2, rows=1), tiles=tiles, map=two)
    first = machine.map_address(0, 0)
    assert said(machine, Burst(first + 1, b"\x00")) == "map page 0, high byte of cell 0 becomes 00"
    assert said(machine, Burst(first, b"\x07\x00")) == "map page 0, cell 0 names no tile (7)"
    # Four bytes are two cells.
    assert said(machine, Burst(first, b"\x01\x00\x00\x00")) == "map page 0, cells 0-1 name tiles 1, blank"


def test_the_blank_tile_is_told_by_number_and_by_name() -> None:
    """A pattern that nobody may write is told from one of the pool, alone and among others, in every bank."""
    first = NICHE.pattern_address(0, 0)
    assert said(NICHE, Burst(first, bytes(8))) == "pattern of tile 0, the blank tile, plane 0, rows 0-7"
    assert said(NICHE, Burst(first, bytes(32))) == "patterns of tiles 0-1 (0 blank), planes 0-1, rows 0-7"
    assert place_of(NICHE, first) == "pattern of tile 0, the blank tile, plane 0, row 0"
    banked = read_machine("two-wings")
    assert banked.blank_tiles[1] > 0
    for tile in banked.blank_tiles:
        assert (
            place_of(banked, banked.pattern_address(tile, 0))
            == f"pattern of tile {tile}, the blank tile, plane 0, row 0"
        )


def test_whole_tiles_in_one_burst_are_drawn_together() -> None:
    """Three tiles written in one go are one phrase; a burst that stops within a plane says where."""
    first = NICHE.pattern_address(1, 0)
    assert said(NICHE, Burst(first, bytes(48))) == "patterns of tiles 1-3, planes 0-1, rows 0-7"
    assert said(NICHE, Burst(first, bytes(11))) == "pattern of tile 1, plane 0 row 0 to plane 1 row 2"


@given(st.binary(min_size=1, max_size=40), st.data())
def test_the_marked_byte_is_always_shown(data: bytes, draw: st.DataObject) -> None:
    """However long the burst, the marked byte stands in brackets among its neighbours."""
    marked = draw.draw(st.integers(0, len(data) - 1))
    text = in_hex(Burst(0, data), marked)
    shown = text.replace("...", "").split()
    place = shown.index(f"[{data[marked]:02x}]")
    left = [int(byte, 16) for byte in shown[:place]]
    right = [int(byte, 16) for byte in shown[place + 1 :]]
    assert list(data[marked - len(left) : marked]) == left
    assert list(data[marked + 1 : marked + 1 + len(right)]) == right
    assert len(shown) == min(len(data), 12)
    assert text.endswith("...") == (marked + 1 + len(right) < len(data))
