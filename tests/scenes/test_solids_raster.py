import numpy as np
import pytest
import skimage.draw
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image, ImageDraw

from planeproof.scenes.solids.raster import Pixel, line, trace

ALL_ENDS = [(row, column) for row in range(-16, 17) for column in range(-16, 17)]
places = st.integers(min_value=-300, max_value=300)
pixels = st.tuples(places, places)


def path(start: Pixel, end: Pixel) -> list[Pixel]:
    """Return our line as a list of pixels."""
    rows, columns = line(start, end)
    return list(zip(rows.tolist(), columns.tolist(), strict=True))


def oracle(start: Pixel, end: Pixel) -> list[Pixel]:
    """Return scikit-image's line; its documentation states no tie rule, so it was found by trying (RUN)."""
    rows, columns = skimage.draw.line(*start, *end)  # type: ignore[no-untyped-call]
    return list(zip(rows.tolist(), columns.tolist(), strict=True))


def test_lines_are_those_of_scikit_image() -> None:
    """Equal pixels in equal order for all 1,089 ends in [-16, 16] squared (RUN)."""
    assert len(ALL_ENDS) == 1089
    assert [end for end in ALL_ENDS if path((0, 0), end) != oracle((0, 0), end)] == []


@given(start=pixels, end=pixels)
def test_lines_are_those_of_scikit_image_from_anywhere(start: Pixel, end: Pixel) -> None:
    """Equal pixels in equal order, for other starts and longer lines (RUN)."""
    assert path(start, end) == oracle(start, end)


def test_lines_are_those_of_pillow_in_the_first_quadrant() -> None:
    """A second oracle, on the 289 ends in [0, 16] squared (RUN)."""
    for row in range(17):
        for column in range(17):
            image = Image.new("L", (17, 17))
            ImageDraw.Draw(image).line((0, 0, column, row), fill=1)
            canvas = np.zeros((17, 17), dtype=np.uint8)
            trace(canvas, (0, 0), (row, column), 1)
            assert np.array_equal(canvas, np.asarray(image)), (row, column)


@pytest.mark.parametrize(
    ("start", "end", "expected"),
    [
        ((0, 0), (2, 5), [(0, 0), (0, 1), (1, 2), (1, 3), (2, 4), (2, 5)]),
        ((0, 0), (1, 2), [(0, 0), (1, 1), (1, 2)]),
        ((1, 2), (0, 0), [(1, 2), (0, 1), (0, 0)]),
        ((3, 4), (3, 4), [(3, 4)]),
        ((0, 0), (2, 2), [(0, 0), (1, 1), (2, 2)]),
    ],
)
def test_examples(start: Pixel, end: Pixel, expected: list[Pixel]) -> None:
    """Row first; a tie goes away from the start (the first three RUN on scikit-image; the others by hand)."""
    assert path(start, end) == expected


def test_a_line_and_its_reverse_may_differ() -> None:
    """Swapping the ends changes the set of pixels for 400 of the 1,089 ends (RUN)."""
    differing = [end for end in ALL_ENDS if set(path((0, 0), end)) != set(path(end, (0, 0)))]
    assert len(differing) == 400


@given(start=pixels, end=pixels)
def test_a_line_is_whole_and_near_the_ideal_one(start: Pixel, end: Pixel) -> None:
    """From end to end in king's moves, a pixel a step of the longer axis, half a pixel off at most."""
    steps = np.array(path(start, end))
    rise, run = np.subtract(end, start).tolist()
    length = max(abs(rise), abs(run))
    assert len(steps) == length + 1
    assert (tuple(steps[0]), tuple(steps[-1])) == (start, end)
    assert (np.abs(np.diff(steps, axis=0)).max(axis=1) == 1).all()
    # Distance along the shorter axis, times the length, in whole numbers: at most half of the length.
    off = np.abs((steps[:, 0] - start[0]) * run - (steps[:, 1] - start[1]) * rise)
    assert (2 * off <= length).all()


@given(
    start=st.tuples(st.integers(-40, 60), st.integers(-40, 60)),
    end=st.tuples(st.integers(-40, 60), st.integers(-40, 60)),
    height=st.integers(1, 20),
    width=st.integers(1, 20),
    value=st.integers(1, 255),
)
def test_a_clipped_line_is_the_whole_line_seen_through_a_window(
    start: Pixel, end: Pixel, height: int, width: int, value: int
) -> None:
    """Clipping drops pixels and moves none: scikit-image's line on a large canvas, cut (RUN)."""
    wide = np.zeros((101, 101), dtype=np.uint8)
    for row, column in oracle(start, end):
        wide[row + 40, column + 40] = value
    canvas = np.zeros((height, width), dtype=np.uint8)
    trace(canvas, start, end, value)
    assert np.array_equal(canvas, wide[40 : 40 + height, 40 : 40 + width])


def test_a_line_outside_the_canvas_leaves_it_alone() -> None:
    """No pixel wraps round to the other side, for lines past each of the four edges."""
    canvas = np.full((4, 6), 7, dtype=np.uint8)
    for start, end in [((-1, 0), (-1, 5)), ((4, 0), (4, 5)), ((0, -1), (3, -1)), ((0, 6), (3, 6))]:
        trace(canvas, start, end, 1)
    assert (canvas == 7).all()


def test_a_line_across_the_canvas_is_cut_at_both_sides() -> None:
    """By hand: the diagonal of a 3 x 3 canvas, drawn from far outside to far outside."""
    canvas = np.zeros((3, 3), dtype=np.uint8)
    trace(canvas, (-5, -5), (9, 9), 2)
    assert np.array_equal(canvas, 2 * np.eye(3))
