"""The machines that ship, and the reference schedulers that are meant for each."""

from planeproof.candidates.reference import (
    Columns,
    Delta,
    Fresh,
    InPlace,
    LazyClear,
    Library,
    Pairs,
    Queued,
    Reuse,
    Rows,
    SplitPool,
)
from planeproof.judge import MakeScheduler

MEANT_FOR: tuple[tuple[str, MakeScheduler], ...] = (
    ("vitrine-50", Fresh),
    ("vitrine-50", Delta),
    ("vitrine-50", Reuse),
    ("vitrine-60", Fresh),
    ("vitrine-60", Delta),
    ("vitrine-60", Reuse),
    ("case-label", Pairs),
    ("twin-niche", SplitPool),
    ("two-wings", SplitPool),
    ("scroll-case", SplitPool),
    ("mosaic-floor", Delta),  # two bits a pixel in four planes
    ("pigment-chart", Fresh),  # the same, interleaved
    ("drawer-front", Delta),  # packed
    ("long-frieze", Reuse),
    ("bench", InPlace),
    ("name-plate", InPlace),
    ("vitrine-50", LazyClear),
    ("vitrine-60", LazyClear),
    ("long-frieze", LazyClear),  # entries of two bytes
    ("vitrine-60", Rows),
    ("drawer-front", Rows),
    ("mosaic-floor", Rows),
    ("vitrine-50", Queued),
    ("vitrine-60", Queued),
    ("long-frieze", Queued),
    ("pigment-chart", Queued),
    ("case-label", Columns),  # bursts may step a map row
    ("twin-niche", Library),
    ("two-wings", Library),
    ("scroll-case", Library),
)
"""Pairs of a shape and a strategy that must raise no alarm on it."""
