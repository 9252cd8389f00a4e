"""Which tile stands in a cell, and in which colours, worked by hand.

Tile t of these machines is told from the others by row 0 of its plane 0, so a frame's first row says it.
"""

import numpy as np
import pytest

from planeproof.contract import Burst, ByteOrder, Colours, Machine, TileMap, Tiles, Window
from planeproof.display import PictureMemory
from tests.display.both_models import frame

WINDOW = Window(columns=1, rows=1)
INK_IN_PLANE_0 = b"\x00\x01\x00\x01"
FIRST_ROW = {tile: f"{tile:08b}".replace("0", ".") for tile in range(256)}


def machine(count: int, tile_map: TileMap, window: Window = WINDOW) -> Machine:
    """``count`` tiles, two planes, and the default memory: palette at 0, then registers, maps, patterns."""
    pool = tuple(range(1, count, count // tile_map.banks))  # one tile of every bank will do
    return Machine(name="small", window=window, tiles=Tiles(count=count, pool=pool[: tile_map.banks]), map=tile_map)


def numbered(machine: Machine, palette: bytes = INK_IN_PLANE_0) -> list[Burst]:
    """The palette, and the number of each tile (its low byte) in row 0 of its plane 0."""
    base = machine.layout.patterns
    tiles = [Burst(base + 16 * tile, bytes([tile % 256])) for tile in range(machine.tiles.count)]
    return [Burst(machine.palette_address, palette), *tiles]


@pytest.mark.parametrize(("entry", "tile"), [(0, 0), (3, 3), (4, 4), (8, 0), (9, 1), (12, 4), (0xFC, 4)])
def test_an_entry_counts_modulo_the_power_of_two_above_the_tiles(entry: int, tile: int) -> None:
    """Five tiles: modulo eight, so entry 9 is tile 1."""
    five = machine(5, TileMap(pages=1))
    assert frame(five, [*numbered(five), Burst(five.layout.maps[0], bytes([entry]))])[0] == FIRST_ROW[tile]


@pytest.mark.parametrize("entry", [5, 6, 7, 13, 0xFF])
def test_an_entry_that_names_no_tile_shows_background_whatever_the_palette(entry: int) -> None:
    """Five tiles, entries 5 to 7: background, even where value 0, which an empty tile is full of, shows ink."""
    five = machine(5, TileMap(pages=1))
    inked = numbered(five, palette=b"\x01\x01\x01\x01")
    assert frame(five, [*inked, Burst(five.layout.maps[0], bytes([entry]))]) == ["........"] * 8
    assert frame(five, [*inked, Burst(five.layout.maps[0], b"\x04")]) == ["11111111"] * 8


def test_where_the_tiles_are_a_power_of_two_every_entry_names_one() -> None:
    """Four tiles: modulo four exactly."""
    four = machine(4, TileMap(pages=1))
    assert frame(four, [*numbered(four), Burst(four.layout.maps[0], b"\x07")])[0] == FIRST_ROW[3]


@pytest.mark.parametrize(("order", "tile"), [(ByteOrder.LOW_FIRST, 0x102), (ByteOrder.HIGH_FIRST, 0x201 - 0x200)])
def test_a_two_byte_entry_is_read_in_its_byte_order(order: ByteOrder, tile: int) -> None:
    """Bytes 02 01 are 0x102 with the low byte first, 0x201 with the high one; 300 tiles count modulo 0x200."""
    many = machine(300, TileMap(pages=1, entry_bytes=2, byte_order=order))
    writes = [Burst(0, INK_IN_PLANE_0), Burst(many.layout.maps[0], b"\x02\x01")]
    marked = Burst(many.layout.patterns + 16 * tile, b"\xa5")
    assert frame(many, [*writes, marked])[0] == "1.1..1.1"
    assert frame(many, writes)[0] == "........"


def test_before_start_two_byte_entries_name_the_blank_tile_in_their_byte_order() -> None:
    """Blank tile 0x101 of 300, in a map larger than the window; the last three tiles are marked in vain."""
    tile_map = TileMap(pages=2, entry_bytes=2, byte_order=ByteOrder.HIGH_FIRST)
    window = Window(columns=1, rows=1, map_columns=2, map_rows=1)
    tiles = Tiles(count=300, pool=(1,), blank=0x102)
    many = Machine(name="blank beyond a byte", window=window, tiles=tiles, map=tile_map)
    first, end = many.layout.maps[0], many.layout.patterns
    assert PictureMemory(many).contents[first:end].tobytes() == b"\x01\x02" * 4
    blank = Burst(many.layout.patterns + 16 * 0x102, b"\xff")
    assert frame(many, [Burst(0, INK_IN_PLANE_0), blank])[0] == "11111111"


@pytest.mark.parametrize(("register", "entry", "tile"), [(0, 1, 1), (1, 1, 4), (3, 2, 5), (2, 2, 2), (1, 5, 4)])
def test_an_entry_counts_within_the_shown_bank(register: int, entry: int, tile: int) -> None:
    """Two banks of three: modulo four within the bank, and the bank register modulo two."""
    banked = machine(6, TileMap(pages=1, banks=2))
    writes = [Burst(banked.bank_address, bytes([register])), Burst(banked.layout.maps[0], bytes([entry]))]
    assert frame(banked, [*numbered(banked), *writes])[0] == FIRST_ROW[tile]


def test_the_fourth_entry_of_a_bank_of_three_names_no_tile() -> None:
    """Not the first tile of the bank above."""
    banked = machine(6, TileMap(pages=1, banks=2))
    writes = [*numbered(banked, palette=b"\x01\x01\x01\x01"), Burst(banked.layout.maps[0], b"\x03")]
    assert frame(banked, writes) == ["........"] * 8


@pytest.mark.parametrize(("register", "tile"), [(0, 1), (1, 2), (2, 1), (255, 2)])
def test_the_page_register_counts_modulo_the_pages(register: int, tile: int) -> None:
    """Two pages: even is the first, odd the second."""
    paged = machine(4, TileMap(pages=2))
    maps = [Burst(base, bytes([entry])) for base, entry in zip(paged.layout.maps, (1, 2), strict=True)]
    writes = [*numbered(paged), *maps, Burst(paged.page_address, bytes([register]))]
    assert frame(paged, writes)[0] == FIRST_ROW[tile]


def test_the_window_is_cut_out_of_a_larger_map() -> None:
    """A window of 2 x 2 at column 1, row 1 of a map of 4 x 3 takes places 5, 6, 9 and 10."""
    window = Window(columns=2, rows=2, map_columns=4, map_rows=3, origin_column=1, origin_row=1)
    larger = machine(16, TileMap(pages=1), window)
    rows = frame(larger, [*numbered(larger), Burst(larger.layout.maps[0], bytes(range(12)))])
    assert (rows[0], rows[8]) == (FIRST_ROW[5] + FIRST_ROW[6], FIRST_ROW[9] + FIRST_ROW[10])


def test_a_burst_with_the_step_of_a_map_row_goes_down_a_column() -> None:
    """Four cells further for every byte, in a map of four columns."""
    window = Window(columns=2, rows=2, map_columns=4)
    larger = machine(16, TileMap(pages=1), window)
    rows = frame(larger, [*numbered(larger), Burst(larger.layout.maps[0] + 1, b"\x07\x0b", step=4)])
    assert (rows[0], rows[8]) == (FIRST_ROW[0] + FIRST_ROW[7], FIRST_ROW[0] + FIRST_ROW[11])


def test_the_window_has_its_own_share_of_the_palette() -> None:
    """Four entries from the third on: what stands before and after them is not seen."""
    colours = Colours(first_entry=2, entries=8)
    shared = Machine(name="shared", window=WINDOW, tiles=Tiles(count=4, pool=(1,)), colours=colours)
    palette = shared.layout.palette
    assert palette is not None
    seen = [Burst(shared.layout.maps[0], b"\x01"), Burst(shared.layout.patterns + 16, b"\x0f")]
    assert frame(shared, [*seen, Burst(palette, b"\x01\x01\x00\x01\x00\x00\x01\x01")])[0] == "....1111"


def test_two_bytes_that_show_the_same_colour_make_the_same_frame() -> None:
    """Four meanings, bytes 1 and 3 alike: byte 3, and 7 which counts as 3, can't be told from 1."""
    colours = Colours(meaning=((0, 0, 0), (5, 5, 5), (9, 9, 9), (5, 5, 5)), background=0, inks=(1,))
    alike = Machine(name="alike", window=WINDOW, tiles=Tiles(count=4, pool=(1,)), colours=colours)
    shown = []
    for byte in (1, 3, 7, 2):
        memory = PictureMemory(alike)
        memory.store(np.array([alike.palette_address]), np.array([byte], dtype=np.uint8))
        shown.append(memory.frame())
    assert (shown[0] == shown[1]).all()
    assert (shown[0] == shown[2]).all()
    assert (shown[0] != shown[3]).all()
