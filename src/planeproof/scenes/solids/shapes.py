"""Convex solids: six crystal forms, given by their corners alone.

Faces and edges follow from the corners, so a solid cannot be listed wrongly. Lengths are in the solid's own
unit; the origin is the point it turns about.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cached_property
from itertools import combinations, product
from math import cos, pi, sin, sqrt

import numpy as np
from numpy.typing import ArrayLike, NDArray

Edge = tuple[int, int]
"""Two vertex numbers, the lower one first."""

Face = tuple[int, ...]
"""Vertex numbers, counter-clockwise as seen from outside, the lowest one first."""

_CORNERS = range(4, 65)  # every triple of corners is tried as a plane: 64 corners make 41,664 of them
_FLAT = 1e-9  # how far out of a plane, in sizes of the solid, still counts as in it
_THIN = 1e-6  # a triangle with less area, in squares of that size, does not tell its plane as exactly as that
_FACES_AT_A_CORNER = 3  # fewer, and the point is inside the solid, a face or an edge


@dataclass(frozen=True, kw_only=True, eq=False)
class Solid:
    """A convex solid. `vertices` is (corners, 3) float64 and read-only; every one of them is a true corner.

    Raises ValueError for corners that are not 4 to 64 distinct finite points in convex position.
    """

    name: str
    vertices: NDArray[np.float64]
    faces: tuple[Face, ...] = field(init=False, repr=False)
    edges: tuple[Edge, ...] = field(init=False, repr=False)

    def __post_init__(self) -> None:
        """Take a private copy of the corners and find what they span."""
        vertices = _checked(self.name, self.vertices)
        faces = _supporting_faces(vertices)
        _refuse_idle_points(self.name, vertices, faces)
        object.__setattr__(self, "vertices", vertices)
        object.__setattr__(self, "faces", faces)
        object.__setattr__(self, "edges", tuple(sorted({edge for face in faces for edge in ring(face)})))

    @cached_property
    def normals(self) -> NDArray[np.float64]:
        """Outward unit normals of the faces, (faces, 3), read-only."""
        before, corner, after = (self.vertices[[face[place] for face in self.faces]] for place in (0, 1, 2))
        normals = np.cross(corner - before, after - corner)
        return _read_only(normals / np.linalg.norm(normals, axis=1, keepdims=True))

    @cached_property
    def offsets(self) -> NDArray[np.float64]:
        """Distance of each face's plane from the origin along its normal, (faces,), read-only."""
        corners = self.vertices[[face[0] for face in self.faces]]
        return _read_only(np.sum(self.normals * corners, axis=1))

    @cached_property
    def radius(self) -> float:
        """Distance of the farthest corner from the origin."""
        return float(np.linalg.norm(self.vertices, axis=1).max())


def ring(face: Face) -> tuple[Edge, ...]:
    """Return the edges around a face, in order."""
    return tuple((min(pair), max(pair)) for pair in zip(face, face[1:] + face[:1], strict=True))


def solid(name: str) -> Solid:
    """Return the shipped solid of that name; raise ValueError, naming those there are, if there is none."""
    for candidate in SOLIDS:
        if candidate.name == name:
            return candidate
    known = ", ".join(candidate.name for candidate in SOLIDS)
    raise ValueError(f"no solid is called {name!r}; choose one of: {known}")


def _checked(name: str, corners: ArrayLike) -> NDArray[np.float64]:
    vertices = np.array(corners, dtype=np.float64)
    if vertices.ndim != 2 or vertices.shape[1] != 3 or len(vertices) not in _CORNERS:
        raise ValueError(
            f"solid {name!r}: vertices have shape {vertices.shape}; "
            f"give (n, 3) with n from {_CORNERS[0]} to {_CORNERS[-1]}"
        )
    if not np.isfinite(vertices).all():
        raise ValueError(f"solid {name!r}: a vertex is not finite; give plain numbers")
    for one, other in combinations(range(len(vertices)), 2):
        if np.array_equal(vertices[one], vertices[other]):
            raise ValueError(f"solid {name!r}: vertices {one} and {other} are the same point; drop one")
    return _read_only(vertices)


def _refuse_idle_points(name: str, vertices: NDArray[np.float64], faces: tuple[Face, ...]) -> None:
    uses = np.bincount([corner for face in faces for corner in face], minlength=len(vertices))
    idle = np.flatnonzero(uses < _FACES_AT_A_CORNER)
    if idle.size:
        first = int(idle[0])
        raise ValueError(
            f"solid {name!r}: vertex {first} at {vertices[first].tolist()} is on {uses[first]} faces, and a "
            "corner is on 3 or more; drop it if it is no corner of the convex hull; flat points have none"
        )


def _supporting_faces(vertices: NDArray[np.float64]) -> tuple[Face, ...]:
    """Every plane through three corners that has none beyond it holds a face: the corners in that plane."""
    first, second, third = (vertices[list(corners)] for corners in zip(*_triples(len(vertices)), strict=True))
    normals = np.cross(second - first, third - first)
    lengths = np.linalg.norm(normals, axis=1, keepdims=True)
    size = float(np.abs(vertices).max())
    tolerance = _FLAT * size
    spans = lengths[:, 0] > _THIN * size**2
    normals = normals[spans] / lengths[spans]
    heights = normals @ vertices.T - np.sum(normals * first[spans], axis=1)[:, np.newaxis]
    both_ways, normals = np.concatenate([heights, -heights]), np.concatenate([normals, -normals])
    supports = (both_ways <= tolerance).all(axis=1)
    in_plane, which = np.unique(both_ways[supports] >= -tolerance, axis=0, return_index=True)
    outward = normals[supports][which]
    return tuple(sorted(_wound(vertices, *plane) for plane in zip(in_plane, outward, strict=True)))


def _triples(count: int) -> list[tuple[int, int, int]]:
    return list(combinations(range(count), 3))


def _wound(vertices: NDArray[np.float64], in_plane: NDArray[np.bool_], outward: NDArray[np.float64]) -> Face:
    """Order the corners of one face by their angle about its middle, as seen from outside."""
    corners = np.flatnonzero(in_plane)
    spokes = vertices[corners] - vertices[corners].mean(axis=0)
    across = np.cross(outward, spokes[0])
    turned = corners[np.argsort(np.arctan2(spokes @ across, spokes @ spokes[0]))]
    return tuple(np.roll(turned, -int(turned.argmin())).tolist())


def _read_only(values: NDArray[np.float64]) -> NDArray[np.float64]:
    values.flags.writeable = False
    return values


def _signs(*sizes: float) -> list[tuple[float, ...]]:
    """Return the point in every combination of signs, a zero only once."""
    return list(product(*((size, -size) if size else (size,) for size in sizes)))


def _cyclic(x: float, y: float, z: float) -> list[tuple[float, ...]]:
    return [point for turned in ((x, y, z), (z, x, y), (y, z, x)) for point in _signs(*turned)]


def _shipped(name: str, corners: Sequence[tuple[float, ...]]) -> Solid:
    return Solid(name=name, vertices=np.array(corners))


_PHI = (1 + sqrt(5)) / 2
_HEXAGON = [(cos(k * pi / 3), sin(k * pi / 3)) for k in range(6)]

# Where the coordinates are from (READ-2: read in a transcription; MEM: from memory, not checked):
#   rhombic dodecahedron  READ-2: encyclopedia text at enacademic.com
#   dodecahedron          READ-2: a solutions book, badly scanned
#   icosahedron           MEM: H. S. M. Coxeter, Regular Polytopes
#   cube, octahedron      common practice, no source
#   hexagonal prism       made here: the habit of rock crystal, a prism closed by a pyramid at each end
SOLIDS: tuple[Solid, ...] = (
    _shipped("octahedron", _cyclic(1, 0, 0)),
    _shipped("cube", _signs(1, 1, 1)),
    _shipped("rhombic-dodecahedron", _signs(1, 1, 1) + _cyclic(2, 0, 0)),
    _shipped("icosahedron", _cyclic(0, 1, _PHI)),
    _shipped("dodecahedron", _signs(1, 1, 1) + _cyclic(0, 1 / _PHI, _PHI)),
    _shipped("hexagonal-prism", [(x, y, z) for z in (1, -1) for x, y in _HEXAGON] + [(0, 0, 2), (0, 0, -2)]),
)
