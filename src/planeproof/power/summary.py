"""What many hunts come to: for each fault and engine, for each engine, and for our engines beside the baselines."""

import math
from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from statistics import median

from planeproof.power.detection import Detection, Outcome, SceneSize
from planeproof.power.engines import ENGINES, Engine, engine_named

YARDSTICK = "recipes"
"""The engine that the baselines are held against."""

ENOUGH = 0.95
"""The share of the seeds that must catch a fault: 1 of 1, 10 of 10, 95 of 100."""


@dataclass(frozen=True, kw_only=True)
class FaultRow:
    """One fault hunted by one engine, with ``seeds`` seeds.

    ``caught``, ``strayed``, ``wrong``: with how many of them it was caught by its own rule, left the proved steps, was
    caught by other rules only. ``others``: other rules seen. ``scenes``, ``seconds``: median and worst over the seeds
    that caught it (or in which it strayed); None where none did. ``tried``: the most scenes that a seed played without
    finding it, None where all found it. ``smallest``: the smallest scene over all seeds. ``note``: why the engine had
    nothing to ask.
    """

    fault: str
    wanted: str
    engine: str
    seeds: int
    caught: int
    strayed: int
    wrong: int
    others: tuple[str, ...]
    scenes: float | None
    worst_scenes: int | None
    seconds: float | None
    worst_seconds: float | None
    tried: int | None
    smallest: SceneSize | None
    note: str

    @property
    def found(self) -> int:
        """Seeds that showed something of this fault that the engine is there to show."""
        return self.caught + self.strayed

    @property
    def asked(self) -> bool:
        """Whether the engine had something to ask of this fault."""
        return not self.note

    @property
    def enough(self) -> bool:
        """Whether enough of the seeds found it."""
        return self.found >= math.ceil(ENOUGH * self.seeds)


@dataclass(frozen=True, kw_only=True)
class EngineRow:
    """One engine over all faults that it was asked about: medians and worsts over the faults that it found.

    A fault counts with its median over the seeds; the worsts are over all hunts that found something. Faults that not
    enough seeds found are ``wrong`` where some seed caught them by other rules only, else ``survivors``.
    """

    engine: str
    asked: int
    found: int
    scenes: float | None
    worst_scenes: int | None
    seconds: float | None
    worst_seconds: float | None
    survivors: tuple[str, ...]
    wrong: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class Beside:
    """A baseline beside `YARDSTICK`: how many times as many scenes it takes.

    ``found``: faults of those asked that it finds at all. ``ratio``: median over these of its scenes by ours,
    ``slower``: of its seconds by ours. ``at_most``: median of its scenes over the same faults, which is the ratio where
    ours needs one scene for each, and no search needs less. ``at_least``: median of the scenes by ours over all faults,
    where one that it does not find counts with the scenes that it has tried, so that the true figure is no less.
    """

    engine: str
    asked: int
    found: int
    ratio: float | None
    slower: float | None
    at_most: float | None
    at_least: float | None


@dataclass(frozen=True, kw_only=True)
class Summary:
    """All of it. ``survivors`` and ``wrong`` are of the engines that must find every fault."""

    faults: tuple[FaultRow, ...]
    engines: tuple[EngineRow, ...]
    beside: tuple[Beside, ...]

    @property
    def must(self) -> tuple[EngineRow, ...]:
        """The engines that must find every fault."""
        return tuple(row for row in self.engines if engine_named(row.engine).must)

    @property
    def survivors(self) -> tuple[str, ...]:
        """Faults that an engine that must find them has not found with enough seeds."""
        return tuple(dict.fromkeys(fault for row in self.must for fault in row.survivors))

    @property
    def wrong(self) -> tuple[str, ...]:
        """Faults that such an engine has, with too many seeds, caught by other rules only."""
        return tuple(dict.fromkeys(fault for row in self.must for fault in row.wrong))


def summary_of(detections: Sequence[Detection]) -> Summary:
    """What ``detections`` come to; faults in their order, engines in that of `ENGINES`."""
    hunts: dict[tuple[str, str], list[Detection]] = defaultdict(list)
    for detection in detections:
        hunts[detection.fault, detection.engine].append(detection)
    rows = tuple(_fault_row(hunt) for hunt in hunts.values())
    present = [engine for engine in ENGINES if any(row.engine == engine.name for row in rows)]
    return Summary(
        faults=rows,
        engines=tuple(_engine_row(engine, [row for row in rows if row.engine == engine.name]) for engine in present),
        beside=tuple(_beside(engine, detections, rows) for engine in present if not engine.ours),
    )


def _fault_row(hunts: Sequence[Detection]) -> FaultRow:
    one = hunts[0]
    found = [hunt for hunt in hunts if hunt.outcome in {Outcome.CAUGHT, Outcome.STRAYED}]
    scenes, seconds = [hunt.scenes for hunt in found], [hunt.seconds for hunt in found]
    sizes = [hunt.smallest for hunt in found if hunt.smallest is not None]
    return FaultRow(
        fault=one.fault,
        wanted=one.wanted,
        engine=one.engine,
        seeds=len(hunts),
        caught=_count(hunts, Outcome.CAUGHT),
        strayed=_count(hunts, Outcome.STRAYED),
        wrong=_count(hunts, Outcome.WRONG_RULE),
        others=tuple(dict.fromkeys(rule for hunt in hunts for rule in hunt.rules if rule != hunt.wanted)),
        scenes=_median(scenes),
        worst_scenes=max(scenes, default=None),
        seconds=_median(seconds),
        worst_seconds=max(seconds, default=None),
        tried=max((hunt.scenes for hunt in hunts if hunt.fails), default=None),
        smallest=min(sizes, key=lambda size: size.key, default=None),
        note=next((hunt.note for hunt in hunts if hunt.outcome is Outcome.NOT_FOR), ""),
    )


def _engine_row(engine: Engine, rows: Sequence[FaultRow]) -> EngineRow:
    asked = [row for row in rows if row.asked]
    found = [row for row in asked if row.found]
    return EngineRow(
        engine=engine.name,
        asked=len(asked),
        found=len(found),
        scenes=_median([row.scenes for row in found if row.scenes is not None]),
        worst_scenes=max((row.worst_scenes for row in found if row.worst_scenes is not None), default=None),
        seconds=_median([row.seconds for row in found if row.seconds is not None]),
        worst_seconds=max((row.worst_seconds for row in found if row.worst_seconds is not None), default=None),
        survivors=tuple(row.fault for row in asked if not (row.enough or row.wrong)),
        wrong=tuple(row.fault for row in asked if row.wrong and not row.enough),
    )


def _beside(engine: Engine, detections: Sequence[Detection], rows: Sequence[FaultRow]) -> Beside:
    ours = {row.fault: row for row in rows if row.engine == YARDSTICK and row.found}
    theirs = [row for row in rows if row.engine == engine.name]
    pairs = [(row, ours[row.fault]) for row in theirs if row.fault in ours]
    tried = [(_median(_scenes(detections, row)), our) for row, our in pairs]
    return Beside(
        engine=engine.name,
        asked=len(theirs),
        found=sum(row.found > 0 for row in theirs),
        ratio=_median([row.scenes / our.scenes for row, our in pairs if row.scenes and our.scenes]),
        slower=_median([row.seconds / our.seconds for row, our in pairs if row.seconds and our.seconds]),
        at_most=_median([row.scenes for row, _ in pairs if row.scenes]),
        at_least=_median([scenes / our.scenes for scenes, our in tried if scenes and our.scenes]),
    )


def _scenes(detections: Iterable[Detection], row: FaultRow) -> list[int]:
    return [hunt.scenes for hunt in detections if (hunt.fault, hunt.engine) == (row.fault, row.engine)]


def _count(hunts: Iterable[Detection], outcome: Outcome) -> int:
    return sum(hunt.outcome is outcome for hunt in hunts)


def _median(values: Sequence[float]) -> float | None:
    return float(median(values)) if values else None
