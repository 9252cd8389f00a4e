"""Turning crystals as scenes: the drawing pixel for pixel, cut into cells, at the pace of a renderer."""

from dataclasses import replace

import numpy as np
import pytest
from numpy.typing import NDArray

from planeproof.contract import ByteDirection, Colours, Machine, Picture, Tiles, Window
from planeproof.display.looks import look_of
from planeproof.machines import read_machine, shipped
from planeproof.scenes.crystals import LEAST_CELLS, LONG, PACE, crystal_scenes, turning
from planeproof.scenes.solids import SOLIDS, solid, turn

SHADES = ((0, 0, 0), (90, 90, 90), (180, 180, 180), (255, 255, 255))


def machine_of(columns: int, rows: int, *, depth: int = 1, byte: ByteDirection = ByteDirection.ROW) -> Machine:
    """A machine with that window."""
    inks = tuple(range(1, 1 << depth))
    return Machine(
        name="easel",
        window=Window(columns=columns, rows=rows),
        tiles=Tiles(count=64, pool=tuple(range(1, 60)), planes=2 * depth, depth=depth, byte=byte),
        colours=Colours(meaning=SHADES, inks=inks),
    )


def put_together(machine: Machine, picture: Picture) -> NDArray[np.uint8]:
    """The picture's pixels (height, width), each read as the contract says: bit 7 leftmost, or topmost."""
    width, height = machine.window.columns * 8, machine.window.rows * 8
    drawing = np.zeros((height, width), dtype=np.uint8)
    for y, x in np.ndindex(height, width):
        cell = y // 8 * machine.window.columns + x // 8
        line, position = (y % 8, x % 8) if machine.tiles.byte is ByteDirection.ROW else (x % 8, y % 8)
        bits = [int(picture.planes[cell, bit, line]) >> (7 - position) & 1 for bit in range(picture.depth)]
        drawing[y, x] = sum(bit << place for place, bit in enumerate(bits))
    return drawing


@pytest.mark.parametrize("byte", ByteDirection)
@pytest.mark.parametrize("depth", [1, 2])
@pytest.mark.parametrize(("columns", "rows"), [(5, 3), (3, 4)])
def test_cut_into_cells_and_put_together_it_is_the_drawing(
    columns: int, rows: int, depth: int, byte: ByteDirection
) -> None:
    """In windows wider and higher than square, bytes as rows and as columns of pixels, one and two bits a pixel."""
    machine = machine_of(columns, rows, depth=depth, byte=byte)
    body = solid("dodecahedron")
    scene = turning(machine, body, pictures=3, step_degrees=11.0)
    drawings = turn(body, pictures=3, width=columns * 8, height=rows * 8, step_degrees=11.0, depth=depth)
    for picture, drawing in zip(scene.pictures, drawings, strict=True):
        assert drawing.max() == (1 << depth) - 1
        assert np.array_equal(put_together(machine, picture), drawing)


def test_the_display_shows_the_drawing() -> None:
    """On the mosaic floor, two bits a pixel: what a frame of the picture looks like is the drawing in its inks."""
    machine = read_machine("mosaic-floor")
    (drawing,) = turn(SOLIDS[0], pictures=1, width=24 * 8, height=12 * 8, depth=2)
    scene = turning(machine, SOLIDS[0], pictures=1)
    look = look_of(machine, scene.pictures[0])
    for value, ink in enumerate((machine.colours.background, *machine.colours.inks)):
        shown = np.unique(look[drawing == value])
        assert len(shown) == (drawing == value).any()
        assert set(shown.tolist()) <= {ink}


@pytest.mark.parametrize("name", shipped())
def test_every_solid_turns_on_every_machine(name: str) -> None:
    """One scene a solid, at the renderer's pace, undisturbed; each step changes the drawing."""
    scenes = crystal_scenes(read_machine(name), pictures=4, long=4)
    assert len(scenes) == len(SOLIDS) == 6
    for scene in scenes:
        assert scene.ready == (0, PACE, 2 * PACE, 3 * PACE)
        assert scene.disturbances == ()
        pairs = zip(scene.pictures, scene.pictures[1:], strict=False)
        assert all(picture.occupied for picture in scene.pictures)
        assert all((one.rows != other.rows).any() for one, other in pairs)


def test_one_solid_turns_for_long() -> None:
    """What goes wrong every now and then, or leaks slowly, has forty pictures to show in; the others have few."""
    lengths = [len(scene.pictures) for scene in crystal_scenes(read_machine("bench"))]
    assert lengths == [6, 6, 6, 6, 6, LONG]
    assert LONG == 40


def test_a_window_too_small_for_a_drawing_gets_none() -> None:
    """Two cells across is a blot; three by three is drawn on."""
    least = LEAST_CELLS
    assert crystal_scenes(machine_of(least - 1, 9)) == crystal_scenes(machine_of(9, least - 1)) == ()
    assert len(crystal_scenes(machine_of(least, least))) == 6


def test_the_pictures_are_those_asked_for() -> None:
    """As many as asked for, and a longer scene begins with the same pictures."""
    machine = replace(machine_of(6, 6), name="other")
    short, long = (turning(machine, SOLIDS[3], pictures=pictures) for pictures in (2, 5))
    assert len(long.pictures) == 5
    assert all(np.array_equal(a.rows, b.rows) for a, b in zip(short.pictures, long.pictures, strict=False))
