"""Turning a solid before the eye: rotation, perspective, and what of the solid is then seen.

The picture's x points right, y up and z at the viewer. The eye is on the z axis, `eye` radii of the solid
away from its centre; an infinitely far eye sees it in parallel projection. A convex solid hides no face from
the eye by another face, so a face is seen if and only if the eye is on its outer side.
"""

from collections import Counter
from dataclasses import dataclass
from math import cos, radians, sin

import numpy as np
from numpy.typing import NDArray

from planeproof.scenes.solids.shapes import Edge, Solid, ring

_EDGE_ON = 1e-9  # the eye so near a face's plane sees it as a line: not seen, whatever the last bit of a sine says
_ORTHONORMAL = 1e-9


@dataclass(frozen=True, kw_only=True, eq=False)
class Sight:
    """What the eye sees of a turned solid.

    `points` (corners, 2) are the corners' places in the picture plane through the centre, in the solid's
    unit, x right and y up, read-only. `faces` are the numbers of the seen faces; `edges` lie on one or two of
    them, and `silhouette` are the edges that lie on exactly one. All are sorted.
    """

    points: NDArray[np.float64]
    faces: tuple[int, ...]
    edges: tuple[Edge, ...]
    silhouette: tuple[Edge, ...]


def rotation(axis: tuple[float, float, float], degrees: float) -> NDArray[np.float64]:
    """Return the (3, 3) matrix that turns column vectors about `axis`, right-handed.

    Rodrigues' formula (from memory). Raises ValueError for an axis without a direction or an angle that is
    not finite.
    """
    length = float(np.linalg.norm(axis))
    if not (np.isfinite(length) and length > 0 and np.isfinite(degrees)):
        raise ValueError(f"no rotation about axis {axis} by {degrees} degrees; give a non-zero axis and finite numbers")
    x, y, z = np.asarray(axis, dtype=np.float64) / length
    cross = np.array([[0, -z, y], [z, 0, -x], [-y, x, 0]])
    angle = radians(degrees % 360)
    return np.asarray(np.eye(3) + sin(angle) * cross + (1 - cos(angle)) * (cross @ cross))


def look(solid: Solid, orientation: NDArray[np.float64], *, eye: float) -> Sight:
    """Return what is seen of `solid`, turned by the rotation matrix `orientation`, from `eye` radii away.

    Raises ValueError for a matrix that is not a rotation, and for an eye that is not outside the solid.
    """
    _refuse_blind_eye(eye)
    _refuse_distortion(orientation)
    distance = eye * solid.radius
    turned = solid.vertices @ orientation.T
    points = turned[:, :2] / (1 - turned[:, 2:] / distance)
    points.flags.writeable = False
    facing = solid.normals @ orientation[2] - solid.offsets / distance
    faces = np.flatnonzero(facing > _EDGE_ON).tolist()
    on_seen_faces = Counter(edge for face in faces for edge in ring(solid.faces[face]))
    return Sight(
        points=points,
        faces=tuple(faces),
        edges=tuple(sorted(on_seen_faces)),
        silhouette=tuple(sorted(edge for edge, seen in on_seen_faces.items() if seen == 1)),
    )


def reach(eye: float) -> float:
    """Return how far from the picture's centre the solid can come, however turned, in radii of it.

    The circle in which the cone from the eye around the solid's sphere cuts the picture plane.
    """
    _refuse_blind_eye(eye)
    return float(1 / np.sqrt(1 - eye**-2))


def _refuse_blind_eye(eye: float) -> None:
    if not eye > 1:
        raise ValueError(f"eye is {eye} radii from the centre; it must be outside the solid: more than 1")


def _refuse_distortion(orientation: NDArray[np.float64]) -> None:
    if orientation.shape != (3, 3):
        raise ValueError(f"orientation has shape {orientation.shape}; give a (3, 3) rotation matrix")
    stretch = np.abs(orientation @ orientation.T - np.eye(3)).max()
    if not (stretch < _ORTHONORMAL and np.linalg.det(orientation) > 0):
        raise ValueError(f"orientation {orientation.tolist()} is no rotation; it stretches or mirrors the solid")
