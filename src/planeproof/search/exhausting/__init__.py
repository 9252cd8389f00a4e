"""Exhaustion: every scene of a stated tiny machine, within stated bounds, counted."""

from planeproof.search.exhausting.bounds import Bounds
from planeproof.search.exhausting.exhaust import exhaust
from planeproof.search.exhausting.tiny import TINY, Tiny, tiny

__all__ = ["TINY", "Bounds", "Tiny", "exhaust", "tiny"]
