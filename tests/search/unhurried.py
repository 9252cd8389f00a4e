"""Faults whose scenes are shrunk to the end wherever this is imported, however busy the computer is.

Only the clock can make what two processes find differ, so it is taken out of the comparison.
"""

from planeproof.candidates.faults import MapBytesSwapped, PatternsToSeenPlane, PoolNotSplit
from planeproof.search import steering

__all__ = ["MapBytesSwapped", "PatternsToSeenPlane", "PoolNotSplit"]

steering.SHRINKING_SECONDS = 600.0
