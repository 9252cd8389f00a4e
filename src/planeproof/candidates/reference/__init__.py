"""Reference schedulers: each a real strategy of its own, right on every machine that has what it needs.

`TwoSides` is what most of them are made from: it waits, sends and reveals, and leaves the strategy to a subclass.
"""

from planeproof.candidates.reference.columns import Columns
from planeproof.candidates.reference.delta import Delta
from planeproof.candidates.reference.fresh import Fresh
from planeproof.candidates.reference.in_place import InPlace
from planeproof.candidates.reference.lazy_clear import LazyClear
from planeproof.candidates.reference.library import Library
from planeproof.candidates.reference.pairs import Pairs
from planeproof.candidates.reference.queued import Queued
from planeproof.candidates.reference.reuse import Reuse
from planeproof.candidates.reference.rows import Rows
from planeproof.candidates.reference.split_pool import SplitPool
from planeproof.candidates.reference.two_sides import TwoSides

__all__ = [
    "Columns",
    "Delta",
    "Fresh",
    "InPlace",
    "LazyClear",
    "Library",
    "Pairs",
    "Queued",
    "Reuse",
    "Rows",
    "SplitPool",
    "TwoSides",
]
