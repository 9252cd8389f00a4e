"""Every address of a machine belongs to one thing, and every thing has its address."""

from dataclasses import replace
from itertools import product

import numpy as np
import pytest
from hypothesis import given

from planeproof.contract import (
    ByteDirection,
    ByteOrder,
    Colours,
    Machine,
    Memory,
    RegionKind,
    Storage,
    TileMap,
    Tiles,
    Window,
)
from planeproof.contract.layout import tile_bits
from tests.contract.machines_by_hand import MACHINE
from tests.strategies.machines import machines

LAYOUTS = [(s, p) for s, p in product(Storage, range(1, 9)) if s is not Storage.PACKED or p in (1, 2, 4)]


@pytest.mark.parametrize("direction", ByteDirection)
@pytest.mark.parametrize(("storage", "planes"), LAYOUTS)
def test_every_bit_of_a_tile_is_one_bit_of_one_pixel(storage: Storage, planes: int, direction: ByteDirection) -> None:
    """(plane, line, position) to (byte, bit) is one-to-one, and onto the 8 bytes a plane."""
    bits = tile_bits(storage, planes, direction)
    places = {(int(o), int(b)) for o, b in zip(bits.offset.flat, bits.bit.flat, strict=True)}
    assert places == set(product(range(8 * planes), range(8)))
    assert bits.offset.shape == bits.bit.shape == (planes, 8, 8)


@pytest.mark.parametrize(("storage", "planes"), LAYOUTS)
def test_a_byte_is_isolated_where_it_holds_one_plane_only(storage: Storage, planes: int) -> None:
    """Planar and interleaved always, packed with a single plane only."""
    bits = tile_bits(storage, planes, ByteDirection.ROW)
    held = [set(np.argwhere(bits.offset == offset)[:, 0].tolist()) for offset in range(8 * planes)]
    assert bits.isolated == all(len(of) == 1 for of in held)


# (plane, line, position) -> (byte, bit), worked by hand from the words of the layout.
BY_HAND = [
    (Storage.PLANAR, 2, (0, 0, 0), (0, 7)),
    (Storage.PLANAR, 2, (1, 3, 7), (11, 0)),
    (Storage.PLANAR, 4, (3, 7, 2), (31, 5)),
    (Storage.INTERLEAVED, 2, (1, 0, 0), (1, 7)),
    (Storage.INTERLEAVED, 2, (0, 3, 7), (6, 0)),
    (Storage.INTERLEAVED, 4, (3, 7, 2), (31, 5)),
    (Storage.PACKED, 2, (0, 0, 0), (0, 6)),  # the leftmost of four pixels: bits 7 and 6, plane 0 the lower
    (Storage.PACKED, 2, (1, 0, 0), (0, 7)),
    (Storage.PACKED, 2, (0, 1, 5), (3, 4)),
    (Storage.PACKED, 4, (3, 0, 0), (0, 7)),
    (Storage.PACKED, 4, (0, 2, 3), (9, 0)),
    (Storage.PACKED, 1, (0, 5, 6), (5, 1)),
]


@pytest.mark.parametrize(("storage", "planes", "pixel", "place"), BY_HAND)
def test_where_a_bit_stands(storage: Storage, planes: int, pixel: tuple[int, int, int], place: tuple[int, int]) -> None:
    """Bit 7 is the leftmost pixel."""
    assert storage.place(planes, *pixel) == place
    rows, columns = (tile_bits(storage, planes, direction) for direction in ByteDirection)
    plane, line, position = pixel
    assert (rows.offset[plane, line, position], rows.bit[plane, line, position]) == place
    assert (columns.offset[plane, position, line], columns.bit[plane, position, line]) == place


@given(machines())
def test_no_two_things_share_an_address_and_none_is_left_out(machine: Machine) -> None:
    """Each region's bytes are just those of its tiles, cells, palette entries or register."""
    packed, entry = machine.tiles.storage is Storage.PACKED, range(machine.map.entry_bytes)
    planes: list[int | None] = [None] if packed else list(range(machine.tiles.planes))
    width = range(machine.tiles.planes if packed else 1)
    patterns = [
        machine.pattern_address(tile, plane, row) + byte
        for tile in range(machine.tiles.count)
        for plane in planes
        for row in range(8)
        for byte in width
    ]
    maps = [
        machine.map_address(page, cell) + byte
        for page in range(machine.map.pages)
        for cell in range(machine.cells)
        for byte in entry
    ]
    view = [] if machine.colours.fixed else [machine.palette_address + i for i in range(1 << machine.tiles.planes)]
    view += [machine.page_address] if machine.map.pages > 1 else []
    view += [machine.bank_address] if machine.map.banks > 1 else []
    everything = patterns + maps + view
    assert len(set(everything)) == len(everything)
    (region,) = [region for region in machine.regions if region.kind is RegionKind.PATTERNS]
    assert sorted(patterns) == list(range(region.start, region.end))
    assert all(sum(address in region for region in machine.regions) == 1 for address in everything)
    assert [machine.is_view(address) for address in everything] == [False] * len(patterns + maps) + [True] * len(view)


def test_regions_without_a_layout_follow_one_another() -> None:
    """Palette, registers, maps, patterns, from 0 on."""
    machine = Machine(
        name="all of it",
        window=Window(columns=2, rows=1, origin_column=1, map_rows=3),
        tiles=Tiles(count=8, pool=(1, 5)),
        map=TileMap(banks=2, entry_bytes=2),
        colours=Colours(first_entry=2, entries=7),
    )
    by_address = sorted((region.start, region.end, region.kind.value, region.page) for region in machine.regions)
    assert by_address == [
        (0, 7, "palette", 0),
        (7, 8, "page register", 0),
        (8, 9, "bank register", 0),
        (9, 27, "tile map", 0),
        (27, 45, "tile map", 1),
        (45, 45 + 8 * 16, "patterns", 0),
    ]
    assert (machine.palette_address, machine.page_address, machine.bank_address) == (2, 7, 8)


def test_the_window_lies_in_its_map() -> None:
    """Cell (column 1, row 2) of a window at (3, 4) of a map 10 wide, two bytes an entry, from 1000 on."""
    machine = replace(
        MACHINE,
        window=Window(columns=2, rows=3, origin_column=3, origin_row=4, map_columns=10, map_rows=8),
        map=TileMap(entry_bytes=2),
        memory=Memory(palette=0, page_register=4, maps=(1000, 2000), patterns=3000),
        time=replace(MACHINE.time, shown=24),
    )
    assert machine.map_address(0, 5) == 1000 + 2 * (6 * 10 + 4)
    assert machine.map_address(1, 0) == 2000 + 2 * (4 * 10 + 3)


@pytest.mark.parametrize(("order", "data"), [(ByteOrder.LOW_FIRST, b"\x2c\x01"), (ByteOrder.HIGH_FIRST, b"\x01\x2c")])
def test_an_entry_of_two_bytes_names_a_tile_in_the_machines_order(order: ByteOrder, data: bytes) -> None:
    """Tile 300."""
    wide = TileMap(entry_bytes=2, byte_order=order)
    machine = replace(MACHINE, tiles=Tiles(count=400, pool=(300,)), map=wide)
    assert machine.map_entry(300) == data


def test_an_entry_counts_within_its_bank() -> None:
    """512 tiles in two banks with entries of one byte: tile 259 is number 3 of the second."""
    banked = replace(MACHINE, tiles=Tiles(count=512, pool=(3, 259)), map=TileMap(banks=2))
    assert (banked.map_entry(3), banked.map_entry(259), banked.tiles_per_bank) == (b"\x03", b"\x03", 256)
    assert (banked.blank_tile, banked.blank_tiles, banked.cap, banked.cap_of_view) == (0, (0, 256), 2, 1)


PACKED = replace(MACHINE, tiles=replace(MACHINE.tiles, storage=Storage.PACKED))


@pytest.mark.parametrize(
    ("ask", "said"),
    [
        (lambda: MACHINE.pattern_address(5, 0), r"tile is 5: this machine has 0\.\.4"),
        (lambda: MACHINE.pattern_address(-1, 0), r"tile is -1"),
        (lambda: MACHINE.pattern_address(1, 2), r"plane is 2: this machine has 0\.\.1"),
        (lambda: MACHINE.pattern_address(1, 0, 8), r"row is 8: this machine has 0\.\.7"),
        (lambda: MACHINE.pattern_address(1), r"plane is missing: planar storage needs one of 0\.\.1"),
        (lambda: PACKED.pattern_address(1, 0), r"plane is 0: packed storage has no plane of its own"),
        (lambda: MACHINE.map_address(2, 0), r"page is 2: this machine has 0\.\.1"),
        (lambda: MACHINE.map_address(0, 2), r"cell is 2: this machine has 0\.\.1"),
        (lambda: MACHINE.map_entry(5), r"tile is 5"),
        (lambda: MACHINE.bank_address, "this machine has no bank register"),
        (lambda: replace(MACHINE, map=TileMap(pages=1)).page_address, "this machine has no page register"),
    ],
)
def test_what_the_machine_has_not_has_no_address(ask: object, said: str) -> None:
    """The message names what was asked for and what there is."""
    assert callable(ask)
    with pytest.raises(ValueError, match=said):
        ask()
