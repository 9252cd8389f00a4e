"""Where steps that were proved meet code that runs: refutations as scenes, and candidates observed step by step."""

from planeproof.conformance.observing import Observation, Stray, observe
from planeproof.conformance.refuting import Shown, save, shown

__all__ = ["Observation", "Shown", "Stray", "observe", "save", "shown"]
