"""Which bit is which pixel, worked by hand: bytes of tile 1 of a machine, and the pixel values they give."""

from planeproof.contract import Burst, ByteDirection, Colours, Machine, Storage, Tiles, Window
from tests.display.both_models import frame, pixels

EMPTY = "00000000"


def machine(storage: Storage, planes: int, byte: ByteDirection = ByteDirection.ROW) -> Machine:
    """One cell; nothing but the storage matters here."""
    tiles = Tiles(count=4, pool=(1, 2, 3), planes=planes, storage=storage, byte=byte)
    return Machine(name="one cell", window=Window(columns=1, rows=1), tiles=tiles)


def tile_1(machine: Machine, data: list[int]) -> list[Burst]:
    """Write ``data`` to the beginning of tile 1."""
    return [Burst(machine.layout.patterns + 8 * machine.tiles.planes, bytes(data))]


def test_bit_7_is_the_leftmost_pixel_and_planes_stand_one_after_the_other_in_planar_storage() -> None:
    """Byte 0 is row 0 of plane 0; byte 8 is row 0 of plane 1, whose bits count 2."""
    planar = machine(Storage.PLANAR, 2)
    writes = tile_1(planar, [0b10000001, 0b01000000, 0, 0, 0, 0, 0, 0, 0b00000011])
    assert pixels(planar, writes, 1) == ["10000023", "01000000", *[EMPTY] * 6]


def test_the_planes_of_a_row_are_neighbours_in_interleaved_storage() -> None:
    """With three planes, bytes 0, 1, 2 are row 0 of planes 0, 1, 2, and byte 3 is row 1 of plane 0."""
    interleaved = machine(Storage.INTERLEAVED, 3)
    writes = tile_1(interleaved, [0b10000001, 0b00000001, 0b01000001, 0b00100000])
    assert pixels(interleaved, writes, 1) == ["14000007", "00100000", *[EMPTY] * 6]


def test_the_leftmost_pixel_stands_in_the_high_bits_of_packed_storage() -> None:
    """With two planes a byte holds four pixels, and plane 0 is the lower bit of each."""
    packed = machine(Storage.PACKED, 2)
    assert pixels(packed, tile_1(packed, [0b00_01_10_11, 0b11_00_00_10, 0b01_00_00_00]), 1) == [
        "01233002",
        "10000000",
        *[EMPTY] * 6,
    ]


def test_packed_storage_of_four_planes_puts_two_pixels_in_a_byte() -> None:
    """The high half is the left one of the two; a row takes four bytes."""
    packed = machine(Storage.PACKED, 4)
    writes = tile_1(packed, [0x1F, 0x20, 0x00, 0x0E, 0x80])
    assert pixels(packed, writes, 1) == ["1f20000e", "80000000", *[EMPTY] * 6]


def test_packed_storage_of_one_plane_is_planar() -> None:
    """One bit a pixel leaves nothing to pack."""
    packed, planar = machine(Storage.PACKED, 1), machine(Storage.PLANAR, 1)
    data = [0b11010001, 0b00000010]
    assert pixels(packed, tile_1(packed, data), 1) == ["11010001", "00000010", *[EMPTY] * 6]
    assert pixels(planar, tile_1(planar, data), 1) == ["11010001", "00000010", *[EMPTY] * 6]


def test_a_column_byte_is_drawn_from_its_topmost_pixel_down() -> None:
    """Byte 0 is the leftmost column with bit 7 on top, byte 7 the rightmost one."""
    columns = machine(Storage.PLANAR, 1, ByteDirection.COLUMN)
    writes = tile_1(columns, [0b11000001, 0, 0, 0, 0, 0, 0, 0b10000000])
    assert pixels(columns, writes, 1) == ["10000001", "10000000", *[EMPTY] * 5, "10000000"]


def test_packed_columns_have_their_topmost_pixel_in_the_high_bits() -> None:
    """The first byte is the upper half of the leftmost column, the second its lower half, the third the next."""
    columns = machine(Storage.PACKED, 2, ByteDirection.COLUMN)
    writes = tile_1(columns, [0b00_01_10_11, 0b11_00_00_01, 0b10_00_00_00])
    assert pixels(columns, writes, 1) == [
        "02000000",
        "10000000",
        "20000000",
        "30000000",
        "30000000",
        EMPTY,
        EMPTY,
        "10000000",
    ]


def test_fixed_colours_show_each_value_in_its_own_ink() -> None:
    """Without a palette value 0 is background and value v the v-th ink, whatever is written."""
    shades = ((9, 9, 9), (1, 1, 1), (2, 2, 2), (3, 3, 3))
    fixed = Machine(
        name="no palette",
        window=Window(columns=1, rows=1),
        tiles=Tiles(count=4, pool=(1, 2, 3), planes=2, depth=2, storage=Storage.PACKED),
        colours=Colours(meaning=shades, background=2, inks=(3, 0, 1), fixed=True),
    )
    map_1 = Burst(fixed.layout.maps[0], b"\x01")
    assert frame(fixed, [map_1, *tile_1(fixed, [0b00_01_10_11])])[0] == ".123...."
