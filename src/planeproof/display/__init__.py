"""The reference model: picture memory, and the frame that the viewer sees."""

from planeproof.display.landing import Arrivals, Piece, land, set_up
from planeproof.display.looks import UNDEFINED, Frame, blank_frame, look_of, looks
from planeproof.display.memory import PictureMemory, View
from planeproof.display.plan import Plan, plan_of
from planeproof.display.raster import active_display

__all__ = [
    "UNDEFINED",
    "Arrivals",
    "Frame",
    "PictureMemory",
    "Piece",
    "Plan",
    "View",
    "active_display",
    "blank_frame",
    "land",
    "look_of",
    "looks",
    "plan_of",
    "set_up",
]
