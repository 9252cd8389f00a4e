from math import inf, sqrt

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray
from scipy.spatial.transform import Rotation

from planeproof.scenes.solids import SOLIDS, Solid, solid
from planeproof.scenes.solids.turning import look, reach, rotation
from tests.scenes.convex_hulls import hull_faces, outline, rotation_towards, rotations

# Seen faces, seen edges and silhouette edges from direction (.3, .5, .81) in parallel projection.
# RUN: computed beforehand with scipy; a face is seen if and only if its outward normal . d > 0.
SEEN = {
    "octahedron": (4, 8, 4),
    "cube": (3, 9, 6),
    "rhombic-dodecahedron": (6, 16, 8),
    "icosahedron": (10, 19, 8),
    "dodecahedron": (6, 21, 12),
    "hexagonal-prism": (9, 19, 8),
}
UPRIGHT = np.eye(3)
bodies = st.sampled_from(SOLIDS)
eyes = st.just(inf) | st.floats(min_value=1.05, max_value=40)
angles = st.floats(min_value=-1000, max_value=1000)


@pytest.mark.parametrize("body", SOLIDS, ids=lambda body: body.name)
def test_what_is_seen_from_one_direction_is_as_published(body: Solid) -> None:
    """The three counts of the table (RUN)."""
    sight = look(body, rotation_towards((0.3, 0.5, 0.81)), eye=inf)
    assert (len(sight.faces), len(sight.edges), len(sight.silhouette)) == SEEN[body.name]


@settings(deadline=None)
@given(body=bodies, turned=rotations(), eye=eyes)
def test_hidden_faces_and_silhouette_are_those_of_the_hulls(
    body: Solid, turned: NDArray[np.float64], eye: float
) -> None:
    """Seen faces are Qhull's with the eye in front; the silhouette is the 2-D hull of the projection (RUN).

    Views with a face within a millionth of edge-on are left out: there the two may round differently.
    """
    corners = body.vertices @ turned.T
    faces = hull_faces(corners)
    assert len(faces) == len(body.faces)
    # Height of the eye over a face, divided by its distance, which may be infinite.
    distance = eye * np.linalg.norm(corners, axis=1).max()
    heights = [float(face.normal[2] - face.offset / distance) for face in faces]
    assume(min(map(abs, heights)) > 2e-6)
    seen = {face.corners for face, height in zip(faces, heights, strict=True) if height > 0}

    sight = look(body, turned, eye=eye)

    assert {frozenset(body.faces[face]) for face in sight.faces} == seen
    assert set(map(frozenset, sight.edges)) == {
        frozenset(edge) for edge in body.edges if any(face.issuperset(edge) for face in seen)
    }
    assert set(map(frozenset, sight.silhouette)) == outline(sight.points)


@given(body=bodies, turned=rotations(), eye=eyes)
def test_points_are_where_the_sight_lines_pierce_the_picture_plane(
    body: Solid, turned: NDArray[np.float64], eye: float
) -> None:
    """Corner, its point in the plane z = 0, and the eye are in one line (definition of perspective, MEM)."""
    assume(eye < inf)
    corners = body.vertices @ turned.T
    sight = look(body, turned, eye=eye)
    at = np.array([0.0, 0.0, eye * body.radius])
    pierced = np.column_stack([sight.points, np.zeros(len(corners))])
    off_the_line = np.linalg.norm(np.cross(corners - at, pierced - at), axis=1)
    assert off_the_line / np.linalg.norm(corners - at, axis=1) == pytest.approx(0, abs=1e-9)
    assert np.linalg.norm(sight.points, axis=1).max() <= reach(eye) * body.radius * (1 + 1e-9)


def test_a_near_eye_hides_what_a_far_one_sees() -> None:
    """A cube turned by 20 degrees shows its side to a far eye, and hides it from one 1.5 radii away.

    By hand: the side's height under the eye is sin 20 = 0.342 far off, and sin 20 - 1/(1.5 sqrt 3) = -0.043
    near.
    """
    turned = rotation((0, 1, 0), 20)
    assert len(look(solid("cube"), turned, eye=inf).faces) == 2
    assert len(look(solid("cube"), turned, eye=1.5).faces) == 1


def test_edge_on_faces_are_not_seen() -> None:
    """A cube seen straight on in parallel projection is one square; its sides are neither front nor back."""
    sight = look(solid("cube"), UPRIGHT, eye=inf)
    assert len(sight.faces) == 1
    assert sight.edges == sight.silhouette
    assert len(sight.edges) == 4


def test_a_quarter_turn_leaves_no_face_half_seen() -> None:
    """After quarter turns the cube is again one square, whatever the sine of 90 degrees rounds to."""
    for axis in np.eye(3):
        for quarters in range(-5, 6):
            sight = look(solid("cube"), rotation(tuple(axis), 90 * quarters), eye=inf)
            assert len(sight.faces) == 1


@given(axis=st.tuples(angles, angles, angles), degrees=angles)
def test_rotation_is_that_of_scipy(axis: tuple[float, float, float], degrees: float) -> None:
    """Equal to scipy's rotation vectors (RUN), for an axis of any length."""
    length = float(np.linalg.norm(axis))
    assume(length > 1e-3)
    theirs = Rotation.from_rotvec(np.array(axis) / length * degrees, degrees=True).as_matrix()
    assert rotation(axis, degrees) == pytest.approx(theirs, abs=1e-9)


def test_rotation_is_right_handed() -> None:
    """A quarter turn about y brings what points at the viewer to the right."""
    assert rotation((0, 2, 0), 90) @ (0, 0, 1) == pytest.approx(np.array([1, 0, 0]))


def test_reach_is_the_circle_around_the_projected_sphere() -> None:
    """By hand: an eye two radii away sees the sphere under 30 degrees, 2 tan 30; a far one its radius."""
    assert reach(2) == pytest.approx(2 / sqrt(3))
    assert reach(inf) == 1


@pytest.mark.parametrize("eye", [1, 0, -3, float("nan")])
def test_an_eye_inside_the_solid_is_refused(eye: float) -> None:
    """The message gives the value and the bound."""
    with pytest.raises(ValueError, match=rf"eye is {eye} radii .* more than 1"):
        look(solid("cube"), UPRIGHT, eye=eye)
    with pytest.raises(ValueError, match="eye is"):
        reach(eye)


@pytest.mark.parametrize(
    ("matrix", "complaint"),
    [
        (2 * UPRIGHT, "no rotation"),
        (np.diag([1.0, 1.0, -1.0]), "no rotation"),
        (np.full((3, 3), np.nan), "no rotation"),
        (np.eye(2), r"shape \(2, 2\)"),
    ],
    ids=["stretched", "mirrored", "not a number", "2-D"],
)
def test_a_matrix_that_is_no_rotation_is_refused(matrix: NDArray[np.float64], complaint: str) -> None:
    """A stretched, mirrored or unfit matrix would draw another solid."""
    with pytest.raises(ValueError, match=complaint):
        look(solid("cube"), matrix, eye=4)


@pytest.mark.parametrize(
    ("axis", "degrees"), [((0, 0, 0), 10), ((inf, 0, 0), 10), ((0, 0, 1), inf), ((0, 0, 1), float("nan"))]
)
def test_a_rotation_without_axis_or_angle_is_refused(axis: tuple[float, float, float], degrees: float) -> None:
    """The message gives both."""
    with pytest.raises(ValueError, match=r"no rotation about axis .* by .* degrees"):
        rotation(axis, degrees)
