from dataclasses import FrozenInstanceError
from math import sqrt

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray

from planeproof.scenes.solids import SOLIDS, Solid, solid
from planeproof.scenes.solids.shapes import ring
from tests.scenes.convex_hulls import hull_faces, hull_volume, rotations

PHI = (1 + sqrt(5)) / 2

# V, E, F; volume; edge lengths. RUN: scipy's ConvexHull with coplanar facets merged, and trimesh, agreed on
# these figures beforehand. READ-2: rhombic dodecahedron 14, 24, 12 and 16/9 sqrt 3 a^3 with a = sqrt 3 (R. W.
# Gray, Encyclopedia Polyhedra). MEM: the closed forms for the icosahedron, 5/12 (3 + sqrt 5) a^3, and the
# dodecahedron, (15 + 7 sqrt 5)/4 a^3.
FIGURES: dict[str, tuple[tuple[int, int, int], float, list[float]]] = {
    "octahedron": ((6, 12, 8), 4 / 3, [sqrt(2)]),
    "cube": ((8, 12, 6), 8, [2]),
    "rhombic-dodecahedron": ((14, 24, 12), 16, [sqrt(3)]),
    "icosahedron": ((12, 30, 20), 5 / 12 * (3 + sqrt(5)) * 2**3, [2]),
    "dodecahedron": ((20, 30, 12), (15 + 7 * sqrt(5)) / 4 * (2 / PHI) ** 3, [2 / PHI]),
    "hexagonal-prism": ((14, 30, 18), 4 * sqrt(3), [1, sqrt(2), 2]),
}

# Every lattice point at distance 9 from the origin: corners in convex position with many coplanar fours and
# more.
ON_A_SPHERE = [
    (x, y, z) for x in range(-9, 10) for y in range(-9, 10) for z in range(-9, 10) if x * x + y * y + z * z == 81
]
OCTAHEDRON_OF_NINE = [point for point in ON_A_SPHERE if 9 in map(abs, point)]

each_solid = pytest.mark.parametrize("body", SOLIDS, ids=lambda body: body.name)


def lengths(body: Solid) -> list[float]:
    """Return the length of every edge."""
    return [float(np.linalg.norm(body.vertices[one] - body.vertices[other])) for one, other in body.edges]


def test_the_six_solids_ship() -> None:
    """The table of figures and the shipped solids name the same six."""
    assert {body.name for body in SOLIDS} == set(FIGURES)
    assert len(SOLIDS) == 6


@each_solid
def test_corners_edges_and_faces_are_as_many_as_published(body: Solid) -> None:
    """V, E and F are those of the table, and V - E + F = 2 (Euler's formula, MEM)."""
    counts = len(body.vertices), len(body.edges), len(body.faces)
    assert counts == FIGURES[body.name][0]
    assert counts[0] - counts[1] + counts[2] == 2


@each_solid
def test_edge_lengths_are_as_published(body: Solid) -> None:
    """Every edge has one of the lengths of the table, and every length occurs (RUN)."""
    assert sorted({round(length, 9) for length in lengths(body)}) == pytest.approx(FIGURES[body.name][2])


@each_solid
def test_volume_from_the_faces_is_as_published(body: Solid) -> None:
    """Pyramids from the origin over the faces add up to the table's volume, and to Qhull's (RUN).

    A face wound inward, missing, or with corners out of order would take volume away.
    """
    fans = [
        np.linalg.det(body.vertices[[face[0], face[k], face[k + 1]]])
        for face in body.faces
        for k in range(1, len(face) - 1)
    ]
    assert all(fan > 0 for fan in fans)
    assert sum(fans) / 6 == pytest.approx(FIGURES[body.name][1], rel=1e-12)
    assert sum(fans) / 6 == pytest.approx(hull_volume(body.vertices), rel=1e-12)


@each_solid
def test_planes_face_outward_and_hold_their_corners(body: Solid) -> None:
    """A face's corners are in its plane, all others behind it, and the planes are those of Qhull (RUN)."""
    heights = body.vertices @ body.normals.T - body.offsets
    for face, column in zip(body.faces, heights.T, strict=True):
        assert column[list(face)] == pytest.approx(0, abs=1e-12)
        assert np.delete(column, face).max() < -0.1
    ours = np.column_stack([body.normals, body.offsets])
    theirs = np.array([[*face.normal, face.offset] for face in hull_faces(body.vertices)])
    distances = np.abs(ours[:, np.newaxis] - theirs).max(axis=2)
    assert sorted(distances.argmin(axis=1)) == list(range(len(theirs)))
    assert distances.min(axis=1).max() < 1e-5


@each_solid
def test_every_edge_is_run_along_once_each_way(body: Solid) -> None:
    """The faces close the surface and are wound alike: each edge belongs to two, in opposite directions."""
    directed = [pair for face in body.faces for pair in zip(face, face[1:] + face[:1], strict=True)]
    assert len(directed) == len(set(directed)) == 2 * len(body.edges)
    assert {(end, start) for start, end in directed} == set(directed)
    assert set(body.edges) == {edge for face in body.faces for edge in ring(face)}
    assert all(start < end for start, end in body.edges)


@settings(deadline=None)
@given(more=st.sets(st.sampled_from(ON_A_SPHERE), max_size=10))
def test_faces_of_any_convex_solid_are_those_of_its_hull(more: set[tuple[int, int, int]]) -> None:
    """Faces found from planes through three corners are Qhull's with coplanar facets merged (RUN)."""
    corners = np.array(sorted({*OCTAHEDRON_OF_NINE, *more}), dtype=np.float64)
    body = Solid(name="lattice", vertices=corners)
    assert len(body.faces) == len({frozenset(face) for face in body.faces})
    assert {frozenset(face) for face in body.faces} == {face.corners for face in hull_faces(corners)}
    assert len(body.vertices) - len(body.edges) + len(body.faces) == 2


def test_a_solid_is_a_value() -> None:
    """A solid keeps its own copy of the corners, and nothing in it can be changed."""
    corners = np.array(solid("cube").vertices)
    body = Solid(name="mine", vertices=corners)
    corners[0] = 7
    assert np.array_equal(body.vertices, solid("cube").vertices)
    assert body.radius == pytest.approx(sqrt(3))
    for values in (body.vertices, body.normals, body.offsets):
        with pytest.raises(ValueError, match="read-only"):
            values[0] = 0
    with pytest.raises(FrozenInstanceError):
        body.name = "yours"  # type: ignore[misc]


def test_an_unknown_solid_is_refused_with_the_known_ones() -> None:
    """The message quotes what was asked for and lists every name there is."""
    with pytest.raises(ValueError, match="no solid is called 'sphere'") as refusal:
        solid("sphere")
    assert all(body.name in str(refusal.value) for body in SOLIDS)


CUBE = solid("cube").vertices


@pytest.mark.parametrize(
    ("corners", "complaint"),
    [
        (CUBE[:3], r"shape \(3, 3\).*n from 4 to 64"),
        (np.ones((65, 3)), r"shape \(65, 3\)"),
        (CUBE[:, :2], r"shape \(8, 2\)"),
        (CUBE.ravel(), r"shape \(24,\)"),
        (np.where(CUBE > 0, CUBE, np.inf), "not finite"),
        (np.vstack([CUBE, CUBE[2:3]]), "vertices 2 and 8 are the same point"),
        (np.vstack([CUBE, [[0, 0, 0]]]), "vertex 8 at .* is on 0 faces"),
        (np.vstack([CUBE, [[0, 0, 1]]]), "vertex 8 at .* is on 1 faces"),
        (np.vstack([CUBE, [[0, 1, 1]]]), "vertex 8 at .* is on 2 faces"),
        (np.array([[0, 0, 0], [1, 0, 0], [0, 1, 0], [1, 1, 0]]), "flat points have none"),
        (np.array([[0, 0, 0], [1, 1, 1], [2, 2, 2], [3, 3, 3]]), "vertex 0 at .* is on 0 faces"),
    ],
    ids=[
        "few",
        "many",
        "2-D",
        "1-D",
        "infinite",
        "double",
        "inside",
        "in a face",
        "on an edge",
        "flat",
        "in a row",
    ],
)
def test_corners_that_span_no_convex_solid_are_refused(corners: NDArray[np.float64], complaint: str) -> None:
    """Each kind of bad corner list is named in the message."""
    with pytest.raises(ValueError, match=complaint):
        Solid(name="bad", vertices=corners)


@given(turned=rotations(), along=st.floats(min_value=-0.99, max_value=0.99))
def test_a_point_on_an_edge_is_refused_however_it_rounds(turned: NDArray[np.float64], along: float) -> None:
    """A point of a cube's edge is no corner, although turning moves it off the edge by a rounding error."""
    with pytest.raises(ValueError, match=r"vertex 8 at .* is on 2 faces"):
        Solid(name="bad", vertices=np.vstack([CUBE, [[along, 1, 1]]]) @ turned.T)
