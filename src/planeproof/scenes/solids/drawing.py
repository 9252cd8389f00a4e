"""Line drawings of a turning solid, hidden edges removed, as pixel values."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from planeproof.scenes.solids.raster import Pixel, trace
from planeproof.scenes.solids.shapes import Edge, Solid
from planeproof.scenes.solids.turning import look, reach, rotation

_LEAST = 3  # pixels across: fewer than a cross of a middle and its neighbours is no drawing
_DEPTHS = range(1, 9)  # pixel values are bytes
_LARGEST_ZOOM = 100.0  # beyond it nearly every drawing is empty, and its edges are millions of pixels long
_DECIMALS = 6  # of a pixel, see `Camera.pixels`


@dataclass(frozen=True, kw_only=True)
class Camera:
    """Where the eye is and what it draws on. Raises ValueError, naming the field, for values out of range.

    `width` and `height` of the window and the `margin` inside it are in pixels. `eye` is the distance of the
    eye in radii of the solid, more than 1, or `math.inf`. At `zoom` 1 the solid just fits inside the margin
    however it is turned; more than 1 may take it past the window's edge, where it is cut off. `depth` is in
    bits per pixel.
    """

    width: int
    height: int
    depth: int = 1
    eye: float = 4.0
    zoom: float = 1.0
    margin: int = 1

    def __post_init__(self) -> None:
        """Refuse what cannot be drawn."""
        if self.margin < 0:
            raise ValueError(f"margin is {self.margin} pixels; it cannot be negative")
        least = 2 * self.margin + _LEAST
        for side, pixels in (("width", self.width), ("height", self.height)):
            if pixels < least:
                raise ValueError(f"{side} is {pixels} pixels; with a margin of {self.margin} give at least {least}")
        if self.depth not in _DEPTHS:
            raise ValueError(f"depth is {self.depth} bits per pixel; give {_DEPTHS[0]} to {_DEPTHS[-1]}")
        if not 0 < self.zoom <= _LARGEST_ZOOM:
            raise ValueError(f"zoom is {self.zoom}; give more than 0 and at most {_LARGEST_ZOOM:g}")
        if not self.eye > 1:
            raise ValueError(f"eye is {self.eye} radii from the centre; it must be outside the solid: more than 1")

    def pixels(self, points: NDArray[np.float64], radius: float) -> list[Pixel]:
        """Return the pixels at points of the picture plane, (n, 2), for a solid of that radius.

        Rounded to a millionth of a pixel first, so that the last bit of a sine, which may differ between two
        computers, does not decide a tie.
        """
        half = np.array([self.height - 1, self.width - 1]) / 2
        scale = self.zoom * (half.min() - self.margin) / (radius * reach(self.eye))
        places = half + scale * points[:, ::-1] * (-1, 1)
        nearest = np.floor(np.round(places, _DECIMALS) + 0.5).astype(int)
        return [(row, column) for row, column in nearest.tolist()]


def draw(solid: Solid, orientation: NDArray[np.float64], camera: Camera) -> NDArray[np.uint8]:
    """Return the drawing, (height, width): 0 for no line, 1 for an edge, 2**depth - 1 for the silhouette.

    At depth 1 the two are the same. Where lines cross, the silhouette wins. `orientation` is a (3, 3)
    rotation matrix, refused with ValueError if it is none.
    """
    sight = look(solid, orientation, eye=camera.eye)
    corners = camera.pixels(sight.points, solid.radius)
    canvas = np.zeros((camera.height, camera.width), dtype=np.uint8)
    _trace_edges(canvas, corners, sight.edges, 1)
    _trace_edges(canvas, corners, sight.silhouette, 2**camera.depth - 1)
    return canvas


def turn(  # noqa: PLR0913 - the knobs of one recipe, all by keyword
    solid: Solid,
    *,
    pictures: int,
    width: int,
    height: int,
    step_degrees: float = 5.0,
    axis: tuple[float, float, float] = (0.0, 0.0, 1.0),
    tilt_degrees: float = 20.0,
    zoom: float = 1.0,
    depth: int = 1,
) -> tuple[NDArray[np.uint8], ...]:
    """Return `pictures` drawings (height, width) of the solid turning on its stand, read-only.

    Picture k has the solid turned by k x `step_degrees` about `axis` (in its own coordinates), then stood up
    so that its z axis points up in the picture and leans `tilt_degrees` towards the viewer. The scale is the
    same in all. In a small window neighbouring pictures may be equal. Raises ValueError for values out of
    range.
    """
    if pictures < 1:
        raise ValueError(f"pictures is {pictures}; give at least 1")
    camera = Camera(width=width, height=height, zoom=zoom, depth=depth)
    stand = rotation((1.0, 0.0, 0.0), tilt_degrees - 90)
    drawings = tuple(draw(solid, stand @ rotation(axis, k * step_degrees), camera) for k in range(pictures))
    for drawing in drawings:
        drawing.flags.writeable = False
    return drawings


def _trace_edges(canvas: NDArray[np.uint8], corners: list[Pixel], edges: tuple[Edge, ...], value: int) -> None:
    """Draw each edge from its upper, then left end, so that the numbering of the corners does not show."""
    for edge in edges:
        start, end = sorted(corners[corner] for corner in edge)
        trace(canvas, start, end, value)
