import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from planeproof.contract import Machine, Picture, Tiles, Window
from planeproof.display import UNDEFINED, blank_frame, look_of
from planeproof.machines import read_machine
from planeproof.report.strip import (
    Cut,
    Panel,
    cell_panel,
    cells_of,
    cut_round,
    frame_panel,
    legend,
    mask_panel,
    side_by_side,
)
from tests.report.stories import EMPTY, NICHE, SLOPE, SQUARE


def pixels_in(panel: Panel) -> str:
    """Everything in a panel but the boxes."""
    return "".join(sign for line in panel.lines for sign in line if sign not in "┌┬┐├┼┤└┴┘─│")


def test_every_pixel_is_drawn_with_a_sign_of_its_own() -> None:
    """A square and a slope, a character a pixel, each cell in its box."""
    frame = look_of(NICHE, Picture.from_rows(0, [SQUARE, SLOPE]))
    panel = frame_panel(NICHE, "both", frame, cut_round(NICHE, ()))
    assert panel.lines[0] == "┌────────┬────────┐"
    assert panel.lines[1] == "│████████│·······█│"
    assert panel.lines[8] == "│████████│█·······│"
    assert panel.lines[2] == "│█······█│······█·│"
    assert len(panel.lines) == 10


def test_inks_undefined_and_strange_colours_are_told_apart() -> None:
    """Background, three inks, a colour that no picture has and undefined are six signs, and the legend names them."""
    machine = read_machine("pigment-chart")
    frame = blank_frame(machine)
    frame[0, :6] = [0, 1, 2, 3, 5, UNDEFINED]
    panel = frame_panel(machine, "", frame, Cut(left=0, top=0, right=0, bottom=0))
    assert panel.lines[1] == "│·█▓▒b?··│"
    said = legend(machine, [frame], mask=True)
    for part in ("· background", "█ ink 1", "▓ ink 2", "▒ ink 3", "b a pixel in colour 5", "? undefined", "X differs"):
        assert part in said
    assert "ink 2" not in legend(machine, [blank_frame(machine)], mask=False)


@given(st.integers(1, 40), st.integers(1, 17), st.data())
def test_a_cut_holds_the_first_cell_concerned_and_fits(columns: int, rows: int, draw: st.DataObject) -> None:
    """Whatever the window, the cut lies in it, holds the first cell concerned and leaves room for three panels."""
    machine = Machine(
        name="any",
        window=Window(columns=columns, rows=rows),
        tiles=Tiles(count=4, pool=(1, 2)),
    )
    cells = draw.draw(st.sets(st.integers(0, machine.cells - 1), min_size=1))
    cut = cut_round(machine, cells)
    row, column = divmod(min(cells), columns)
    assert (column, row) in cut
    assert 0 <= cut.left <= cut.right < columns
    assert 0 <= cut.top <= cut.bottom < rows
    assert (cut.right - cut.left + 1) * (cut.bottom - cut.top + 1) <= 12
    assert (cut.within(machine) == "") == ((cut.right - cut.left + 1, cut.bottom - cut.top + 1) == (columns, rows))


@given(st.sets(st.tuples(st.integers(0, 79), st.integers(0, 191)), max_size=5))
def test_the_cells_of_a_mask_are_those_with_a_pixel_in_it(pixels: set[tuple[int, int]]) -> None:
    """Compared with each pixel's own cell, and with the signs of the mask's panel."""
    machine = read_machine("pigment-chart")
    mask = np.zeros((80, 192), dtype=np.bool_)
    for y, x in pixels:
        mask[y, x] = True
    assert cells_of(machine, mask) == sorted({y // 8 * 24 + x // 8 for y, x in pixels})
    whole = mask_panel("", mask, Cut(left=0, top=0, right=23, bottom=9))
    assert pixels_in(whole).count("X") == len(pixels)


def test_panels_that_do_not_fit_side_by_side_stand_below() -> None:
    """Strips never exceed the page, and no panel is lost."""
    panels = [Panel(title=f"panel {n}", lines=("#" * 40, "#")) for n in range(5)]
    lines = side_by_side(panels, indent=2)
    assert max(map(len, lines)) <= 100
    assert [line.split("panel ")[1:] for line in lines if "panel" in line] == [
        ["0" + " " * 36, "1"],
        ["2" + " " * 36, "3"],
        ["4"],
    ]


def test_a_character_a_cell() -> None:
    """The whole window, with the marked cells in their places; beyond a page it is cut."""
    machine = read_machine("drawer-front")
    panel = cell_panel(machine, "", [0, 21], "#")
    assert panel.lines[:3] == ("#" + "·" * 19, "·#" + "·" * 18, "·" * 20)
    wide = Machine(name="wide", window=Window(columns=200, rows=1), tiles=Tiles(count=4, pool=(1,)))
    assert cell_panel(wide, "", [], "#").width <= 100
    assert frame_panel(NICHE, "t", look_of(NICHE, Picture.from_rows(0, [EMPTY, EMPTY])), cut_round(NICHE, ())).width
