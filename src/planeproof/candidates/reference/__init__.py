"""Reference schedulers: each a real strategy of its own, right on every machine that has what it needs.

`TwoSides` is what most of them are made from: it waits, sends and reveals, and leaves the strategy to a subclass.
"""

from planeproof.candidates.reference.delta import Delta
from planeproof.candidates.reference.fresh import Fresh
from planeproof.candidates.reference.in_place import InPlace
from planeproof.candidates.reference.pairs import Pairs
from planeproof.candidates.reference.reuse import Reuse
from planeproof.candidates.reference.split_pool import SplitPool
from planeproof.candidates.reference.two_sides import TwoSides

__all__ = ["Delta", "Fresh", "InPlace", "Pairs", "Reuse", "SplitPool", "TwoSides"]
