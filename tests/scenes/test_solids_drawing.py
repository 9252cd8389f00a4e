from math import inf, sqrt
from typing import Any

import numpy as np
import pytest
import skimage.draw
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray

from planeproof.scenes.solids import SOLIDS, Camera, Solid, draw, solid, turn
from planeproof.scenes.solids.turning import rotation
from tests.scenes.convex_hulls import hull_faces, outline, rotations

UPRIGHT = np.eye(3)
each_solid = pytest.mark.parametrize("body", SOLIDS, ids=lambda body: body.name)


def picture(text: str) -> NDArray[np.uint8]:
    """Read a picture from rows of marks: a dot is 0."""
    return np.array([[".123".index(mark) for mark in row] for row in text.split()], dtype=np.uint8)


def test_an_octahedron_straight_on_is_a_diamond_with_a_cross() -> None:
    """By hand, at depth 2: corners in the middle and at the tips; the outline in 3, inner edges in 1."""
    camera = Camera(width=9, height=9, depth=2, eye=inf, margin=0)
    expected = picture(
        """
        ....3....
        ...313...
        ..3.1.3..
        .3..1..3.
        311111113
        .3..1..3.
        ..3.1.3..
        ...313...
        ....3....
        """
    )
    assert np.array_equal(draw(solid("octahedron"), UPRIGHT, camera), expected)
    flat = draw(solid("octahedron"), UPRIGHT, Camera(width=9, height=9, eye=inf, margin=0))
    assert np.array_equal(flat, expected > 0)


def test_a_cube_straight_on_is_a_square_of_the_right_size() -> None:
    """By hand, at eye distance e radii, r = sqrt 3: the front, at z = 1, is magnified er / (er - 1).

    The sphere around the cube, magnified e / sqrt(e^2 - 1), just fills the half width of 100 pixels.
    """
    eye = 3.0
    front = eye * sqrt(3) / (eye * sqrt(3) - 1)
    half = round(100 * front / (sqrt(3) * eye / sqrt(eye**2 - 1)))
    expected = np.zeros((201, 201), dtype=np.uint8)
    expected[100 - half : 101 + half, 100 - half : 101 + half] = 1
    expected[101 - half : 100 + half, 101 - half : 100 + half] = 0
    assert np.array_equal(draw(solid("cube"), UPRIGHT, Camera(width=201, height=201, eye=eye, margin=0)), expected)


@settings(deadline=None)
@given(
    body=st.sampled_from(SOLIDS),
    turned=rotations(),
    width=st.integers(min_value=8, max_value=90),
    height=st.integers(min_value=8, max_value=90),
    zoom=st.floats(min_value=0.5, max_value=3),
    depth=st.integers(min_value=1, max_value=3),
)
def test_a_drawing_is_the_one_put_together_from_other_libraries(
    body: Solid, turned: NDArray[np.float64], width: int, height: int, zoom: float, depth: int
) -> None:
    """Qhull says which edges are seen and which are the outline, scikit-image draws the lines (RUN)."""
    eye, margin = 4.0, 1
    corners = body.vertices @ turned.T
    radius = np.linalg.norm(corners, axis=1).max()
    faces = hull_faces(corners)
    heights = [float(face.normal @ (0, 0, eye * radius) - face.offset) for face in faces]
    assume(min(map(abs, heights)) > 1e-4)
    flat = corners[:, :2] * eye * radius / (eye * radius - corners[:, 2:])
    half_side = (min(width, height) - 1) / 2 - margin
    scale = zoom * half_side / (eye * radius / sqrt(eye**2 - 1))
    exact = np.column_stack([(height - 1) / 2 - scale * flat[:, 1], (width - 1) / 2 + scale * flat[:, 0]])
    assume((np.abs(exact % 1 - 0.5) > 1e-5).all())  # such ties are decided by the last bit

    places = np.rint(exact).astype(int).tolist()
    wide = np.zeros((height + 600, width + 600), dtype=np.uint8)
    seen = [face.corners for face, above in zip(faces, heights, strict=True) if above > 0]
    inner = {frozenset(edge) for edge in body.edges if sum(face.issuperset(edge) for face in seen) == 2}
    for edges, value in ((inner, 1), (outline(flat), 2**depth - 1)):
        for edge in edges:
            upper, lower = sorted(places[corner] for corner in edge)
            rows, columns = skimage.draw.line(*upper, *lower)  # type: ignore[no-untyped-call]
            wide[rows + 300, columns + 300] = value

    drawing = draw(body, turned, Camera(width=width, height=height, zoom=zoom, depth=depth, eye=eye, margin=margin))
    assert drawing.dtype == np.uint8
    assert np.array_equal(drawing, wide[300:-300, 300:-300])


@settings(deadline=None)
@given(
    body=st.sampled_from(SOLIDS),
    turned=rotations(),
    width=st.integers(min_value=7, max_value=60),
    height=st.integers(min_value=7, max_value=60),
    eye=st.just(inf) | st.floats(min_value=1.05, max_value=20),
    margin=st.integers(min_value=0, max_value=2),
)
def test_a_solid_stays_inside_the_margin_however_it_is_turned(
    body: Solid, turned: NDArray[np.float64], width: int, height: int, eye: float, margin: int
) -> None:
    """At zoom 1 no line is cut off or comes into the margin, and there is a drawing."""
    drawing = draw(body, turned, Camera(width=width, height=height, eye=eye, margin=margin))
    inside = drawing[margin : height - margin, margin : width - margin]
    assert inside.any()
    assert inside.sum() == drawing.sum()


def test_the_last_bit_does_not_decide_a_tie() -> None:
    """By hand: the middle of eight pixels, 3.5, goes right and down, also when a sine is off by a bit."""
    camera = Camera(width=8, height=8, eye=inf, margin=0)
    for off in (-1e-12, 0, 1e-12):
        assert camera.pixels(np.array([[off, off]]), 1.0) == [(4, 4)]


@each_solid
def test_zoom_takes_a_solid_past_the_edge(body: Solid) -> None:
    """At zoom 1 the window's rim is empty; at zoom 2 lines are cut off at it."""
    for zoom, reaches_rim in ((1, False), (2, True)):
        drawing = turn(body, pictures=1, width=64, height=64, zoom=zoom)[0]
        rim = np.concatenate([drawing[0], drawing[-1], drawing[:, 0], drawing[:, -1]])
        assert rim.any() == reaches_rim


def test_numbering_of_the_corners_does_not_matter() -> None:
    """The same solid with its corners listed backwards is drawn alike, although lines are not symmetric."""
    for body in SOLIDS:
        backwards = Solid(name="backwards", vertices=body.vertices[::-1])
        turned = rotation((1, 2, 3), 40)
        camera = Camera(width=70, height=50, depth=2)
        assert np.array_equal(draw(body, turned, camera), draw(backwards, turned, camera))


@pytest.mark.parametrize(
    ("name", "step", "same_after", "sides"),
    [("cube", 30, 3, 3), ("octahedron", 45, 2, 2), ("hexagonal-prism", 20, 3, 3), ("icosahedron", 60, 3, 3)],
)
def test_a_turn_onto_itself_shows_the_same_picture(name: str, step: float, same_after: int, sides: int) -> None:
    """A turn by the solid's own symmetry about its z axis shows the same pixels, and the ones between differ.

    By hand: quarter turns for cube and octahedron, a sixth for the prism, a half for the icosahedron.
    """
    pictures = turn(solid(name), pictures=2 * same_after, width=320, height=136, step_degrees=step, depth=2)
    for k in range(same_after):
        assert np.array_equal(pictures[k], pictures[k + same_after])
    assert len({drawing.tobytes() for drawing in pictures}) == sides


def test_a_solid_stands_upright_on_its_z_axis() -> None:
    """By hand: the prism's tips are one above the other; tilted by 90 degrees, one is at the viewer."""
    prism = solid("hexagonal-prism")
    rows, columns = np.nonzero(turn(prism, pictures=1, width=101, height=101, tilt_degrees=0)[0])
    assert set(columns[rows == rows.min()]) == set(columns[rows == rows.max()]) == {50}
    assert rows.min() + rows.max() == 100
    from_above = turn(prism, pictures=1, width=101, height=101, tilt_degrees=90, depth=2)[0]
    assert from_above[50, 50] == 1


def test_a_solid_leans_towards_the_viewer() -> None:
    """By hand: tilted by 20 degrees a cube shows its top, so an inner edge runs across its upper half."""
    rows, _ = np.nonzero(turn(solid("cube"), pictures=1, width=101, height=101, depth=2)[0] == 1)
    assert rows.size > 0
    assert rows.max() < 50


def test_what_is_at_the_viewer_moves_to_the_right() -> None:
    """By hand: a cube's near edge is in the middle after 45 degrees, and right of it after 60."""
    lowest = []
    for drawing in turn(solid("cube"), pictures=5, width=101, height=101, step_degrees=15)[3:]:
        rows, columns = np.nonzero(drawing)
        lowest.append(int(columns[rows.argmax()]))
    assert lowest[0] == 50
    assert lowest[1] > 55


def test_turning_is_deterministic_and_its_pictures_are_read_only() -> None:
    """Twice the same arguments give the same pictures, in number, shape and kind as asked for."""
    first, second = (turn(solid("dodecahedron"), pictures=9, width=72, height=56, depth=2) for _ in range(2))
    assert isinstance(first, tuple)
    assert len(first) == 9
    for one, other in zip(first, second, strict=True):
        assert one.shape == (56, 72)
        assert one.dtype == np.uint8
        assert np.array_equal(one, other)
        with pytest.raises(ValueError, match="read-only"):
            one[0, 0] = 1


@pytest.mark.parametrize("depth", range(1, 9))
def test_values_fill_the_depth(depth: int) -> None:
    """Nothing is 0, an inner edge 1, the silhouette the highest value that the depth can hold."""
    drawing = turn(solid("icosahedron"), pictures=1, width=64, height=64, depth=depth)[0]
    assert set(np.unique(drawing).tolist()) == {0, 1, 2**depth - 1}


def test_the_smallest_window_holds_a_drawing() -> None:
    """One pixel of margin and three across: something is drawn, and no more than those nine pixels."""
    for body in SOLIDS:
        drawing = turn(body, pictures=1, width=5, height=5)[0]
        assert 0 < drawing.sum() == drawing[1:4, 1:4].sum()


@pytest.mark.parametrize(
    ("wrong", "complaint"),
    [
        ({"width": 4}, "width is 4 pixels; with a margin of 1 give at least 5"),
        ({"height": 0}, "height is 0 pixels; with a margin of 1 give at least 5"),
        ({"width": 8, "margin": 3}, "width is 8 pixels; with a margin of 3 give at least 9"),
        ({"margin": -1}, "margin is -1"),
        ({"depth": 0}, "depth is 0 bits per pixel; give 1 to 8"),
        ({"depth": 9}, "depth is 9 bits per pixel"),
        ({"zoom": 0.0}, "zoom is 0.0; give more than 0"),
        ({"zoom": 101.0}, "zoom is 101.0"),
        ({"zoom": float("nan")}, "zoom is nan"),
        ({"eye": 1.0}, "eye is 1.0 radii"),
    ],
)
def test_a_camera_out_of_range_is_refused(wrong: dict[str, Any], complaint: str) -> None:
    """The message names the field, its value and the bound."""
    with pytest.raises(ValueError, match=complaint):
        Camera(**{"width": 64, "height": 64, **wrong})


def test_a_turn_in_too_small_a_window_or_of_no_pictures_is_refused() -> None:
    """The same messages reach who asks for a turn."""
    with pytest.raises(ValueError, match="width is 4 pixels"):
        turn(solid("cube"), pictures=3, width=4, height=40)
    with pytest.raises(ValueError, match="pictures is 0; give at least 1"):
        turn(solid("cube"), pictures=0, width=40, height=40)
