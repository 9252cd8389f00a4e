"""Convex hulls by Qhull, through scipy: the oracle of the solids, which know nothing of it.

Qhull cuts faces into triangles, so facets with equal plane equations are merged first.
"""

from dataclasses import dataclass

import numpy as np
from hypothesis import strategies as st
from numpy.typing import NDArray
from scipy.spatial import ConvexHull
from scipy.spatial.transform import Rotation

Corners = frozenset[int]


@dataclass(frozen=True, kw_only=True)
class HullFace:
    """One face of a hull: its corners, its outward unit normal, its distance from the origin."""

    corners: Corners
    normal: NDArray[np.float64]
    offset: float


def hull_faces(points: NDArray[np.float64]) -> list[HullFace]:
    """Return the faces of the hull of (n, 3) points, coplanar facets merged."""
    hull = ConvexHull(points)
    merged: dict[tuple[float, ...], set[int]] = {}
    for plane, triangle in zip(np.round(hull.equations, 6) + 0.0, hull.simplices, strict=True):
        merged.setdefault(tuple(plane.tolist()), set()).update(triangle.tolist())
    return [
        HullFace(corners=frozenset(corners), normal=np.array(plane[:3]), offset=-plane[3])
        for plane, corners in merged.items()
    ]


def outline(points: NDArray[np.float64]) -> set[Corners]:
    """Return the edges of the hull of (n, 2) points, as pairs of point numbers."""
    return {frozenset(edge) for edge in ConvexHull(points).simplices.tolist()}


def hull_volume(points: NDArray[np.float64]) -> float:
    """Return the volume of the hull of (n, 3) points."""
    return float(ConvexHull(points).volume)


def rotation_towards(direction: tuple[float, float, float]) -> NDArray[np.float64]:
    """Return a rotation matrix that brings `direction` onto the z axis."""
    turn, _ = Rotation.align_vectors([[0.0, 0.0, 1.0]], [direction])
    return np.asarray(turn.as_matrix())


def rotations() -> st.SearchStrategy[NDArray[np.float64]]:
    """Draw rotation matrices."""
    angle = st.floats(min_value=0, max_value=360, allow_nan=False, exclude_max=True)
    return st.tuples(angle, angle, angle).map(
        lambda angles: np.asarray(Rotation.from_euler("zyz", angles, degrees=True).as_matrix())
    )
