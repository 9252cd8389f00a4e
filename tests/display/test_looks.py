"""How a picture looks: what the viewer must see when it is shown whole."""

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from planeproof.contract import ByteDirection, Colours, Machine, Picture, Tiles, Window
from planeproof.display import PictureMemory, blank_frame, look_of, looks
from tests.display.both_models import lettered
from tests.display.first_model import in_colours
from tests.strategies.machines import machines


def plain_look(machine: Machine, picture: Picture) -> list[list[tuple[int, int, int]]]:
    """The picture's colours, pixel by pixel: the d-th byte row of a cell is bit d of its pixels."""
    shades = [machine.colours.background, *machine.colours.inks]
    columns, rows = machine.window.columns, machine.window.rows
    planes = picture.planes.tolist()
    frame: list[list[tuple[int, int, int]]] = []
    for y in range(rows * 8):
        frame.append([])
        for x in range(columns * 8):
            line, position = (y % 8, x % 8) if machine.tiles.byte is ByteDirection.ROW else (x % 8, y % 8)
            bits = planes[y // 8 * columns + x // 8]
            value = sum((bit[line] >> (7 - position) & 1) << d for d, bit in enumerate(bits))
            frame[-1].append(machine.colours.meaning[shades[value] % len(machine.colours.meaning)])
    return frame


@settings(max_examples=100, deadline=None)
@given(machines(), st.data())
def test_a_picture_looks_as_its_bits_say(machine: Machine, data: st.DataObject) -> None:
    """For any depth, either byte direction and any window, each pixel has the shade of its value."""
    size = machine.cells * machine.tiles.depth * 8
    held = np.frombuffer(data.draw(st.binary(min_size=size, max_size=size)), dtype=np.uint8)
    picture = Picture.from_rows(0, held.reshape(machine.cells, machine.tiles.depth, 8))
    assert in_colours(machine.colours, look_of(machine, picture)) == plain_look(machine, picture)


@settings(max_examples=100, deadline=None)
@given(machines())
def test_the_blank_frame_is_that_of_an_empty_picture_and_of_memory_before_start(machine: Machine) -> None:
    """Background all over, in the very figures, so that frames can be compared as arrays."""
    empty = Picture.from_rows(0, np.zeros((machine.cells, machine.tiles.depth, 8), dtype=np.uint8))
    for frame in (look_of(machine, empty), PictureMemory(machine).frame()):
        assert np.array_equal(frame, blank_frame(machine))


@settings(max_examples=100, deadline=None)
@given(machines())
def test_bytes_that_show_the_same_colour_have_the_same_look(machine: Machine) -> None:
    """The look of a byte is the least byte with its colour, for all 256 of them."""
    meaning = machine.colours.meaning
    shown = [meaning[byte % len(meaning)] for byte in range(256)]
    assert looks(machine.colours).tolist() == [shown.index(colour) for colour in shown]


def test_a_picture_of_two_cells_by_hand() -> None:
    """Depth 2: the first byte row of a cell is the lower bit of its pixels; cells go from left to right, then down."""
    colours = Colours(meaning=((0, 0, 0), (1, 1, 1), (2, 2, 2), (3, 3, 3)), background=0, inks=(3, 1, 2))
    tiles = Tiles(count=3, pool=(1, 2), planes=4, depth=2)
    machine = Machine(name="by hand", window=Window(columns=2, rows=1), tiles=tiles, colours=colours)
    left = [[0b10000001, *[0] * 7], [0b01000001, *[0] * 7]]
    right = [[0] * 8, [*[0] * 7, 0b00001111]]
    frame = look_of(machine, Picture.from_rows(0, [left, right]))
    rows = lettered(machine, in_colours(colours, frame))
    assert rows == ["12.....3" + "." * 8, *["." * 16] * 6, "." * 8 + "....2222"]
