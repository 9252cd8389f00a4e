"""The real thing: convex crystal solids turning under perspective, drawn in lines, hidden edges removed.

shapes (the solids) <- turning (what the eye sees) <- drawing (pixel values) -> raster (lines).
"""

from planeproof.scenes.solids.drawing import Camera, draw, turn
from planeproof.scenes.solids.shapes import SOLIDS, Solid, solid

__all__ = ["SOLIDS", "Camera", "Solid", "draw", "solid", "turn"]
