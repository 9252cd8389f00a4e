"""The machines that ship, and the reference schedulers that are meant for each."""

from planeproof.candidates.reference import Delta, Fresh, InPlace, Pairs, Reuse, SplitPool
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
)
"""Pairs of a shape and a strategy that must raise no alarm on it."""
