"""Your own scheduler, proved: write it as guarded steps (see `planeproof.spec.steps.form`), and `decide`."""

from planeproof.spec.steps.course import Course, Taken, Turn
from planeproof.spec.steps.deciding import Decision, Gap, decide
from planeproof.spec.steps.form import HiddenPlane, Packed, PageFlip, Steps
from planeproof.spec.steps.state import Own, Plan

__all__ = [
    "Course",
    "Decision",
    "Gap",
    "HiddenPlane",
    "Own",
    "Packed",
    "PageFlip",
    "Plan",
    "Steps",
    "Taken",
    "Turn",
    "decide",
]
