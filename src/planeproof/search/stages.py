"""The stages of a check: which units each is made of, what it is called, and what its scenes count for."""

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from planeproof.scenes.crystals import LONG as LONG_TURN
from planeproof.scenes.crystals import crystal_scenes
from planeproof.scenes.full import LONG
from planeproof.search.order import Order
from planeproof.search.tally import Tally
from planeproof.search.units import CUT_SCENES, LAW_SCENES, WHOLE_SCENES, Stage, Unit, edges_of, full_scenes

STEERED_AT_A_TIME = 250
"""Scenes of one unit of the steered search, which begins with small scenes and learns from those it has played."""

INDEPENDENT_AT_A_TIME = 100
"""Scenes of one unit that is drawn independently."""

EDGES_SHARE, CUTS_SHARE, STEERED_SHARE = 0.15, 0.3, 0.6
"""With a time limit, when each of these stages must be over, as a share of it; the rest is for independent draws."""


_FIRST = ", those that other runs have found tried first"


@dataclass(frozen=True, kw_only=True)
class Limits:
    """How much to search: ``scenes`` in all over all machines, or for ``seconds``."""

    scenes: int
    seconds: float | None

    def __post_init__(self) -> None:
        if self.scenes < 1:
            raise ValueError(f"scenes is {self.scenes}: at least 1 must be played")
        if self.seconds is not None and not 0 < self.seconds < math.inf:
            raise ValueError(f"seconds is {self.seconds}: it must be above 0")


@dataclass(frozen=True, kw_only=True)
class Plan:
    """One stage of a check.

    ``source``: what its scenes are, for the verdict; ``title``: the same in short. ``total``: how many they are, None
    where time alone limits them. ``units`` makes its units, endlessly where the total is None. ``share``: of the time,
    when it must be over; None where it is played however late it is. ``independent``: whether its scenes are drawn
    independently of one another. ``told``: whether the verdict tells the ``source`` though no scene of it was played.
    """

    stage: Stage
    title: str
    source: str
    total: int | None
    units: Callable[[], Iterator[Unit]]
    share: float | None = None
    independent: bool = False
    told: bool = False

    @property
    def searches(self) -> bool:
        """Whether there is no end to its scenes but the one it is given; the others are few, and all worth playing."""
        return self.stage in (Stage.STEERED, Stage.INDEPENDENT)

    def is_over(self, found: Tally) -> bool:
        """Whether the stage is left out after what was ``found`` before it.

        A rule that was broken is no reason to leave out the edges, the cuts and the steered search: they find smaller
        scenes, and rules that were hidden by others. Nor is a broken contract one to leave out the laws, whose scenes
        are small: one that hung is not made smaller, so it had better be found in one of these.
        """
        needless = self.stage in (Stage.INDEPENDENT, Stage.CRYSTALS)
        broken_contract = found.fault is not None and self.stage is not Stage.LAWS
        return broken_contract or (found.decided and needless)

    def ends_with(self, found: Tally) -> bool:
        """Whether a unit that has ``found`` this is the last of the stage."""
        return found.fault is not None or (found.decided and self.searches)


def plans(order: Order, limits: Limits) -> tuple[Plan, ...]:
    """The stages of a check of ``order`` within ``limits``, one after the other."""
    return (_full(order), _laws(order), _edges(order), _cuts(order), *_searched(order, limits), _crystals(order))


def _laws(order: Order) -> Plan:
    scenes = LAW_SCENES * len(order.machines)
    return Plan(
        stage=Stage.LAWS,
        title="laws of the contract",
        source=f"{_recipes(order)}, played twice to see that the candidate keeps the laws",
        total=None,
        units=lambda: iter([Unit(stage=Stage.LAWS, number=0, scenes=scenes)]),
    )


def _searched(order: Order, limits: Limits) -> tuple[Plan, Plan]:
    timed, half = limits.seconds is not None, limits.scenes // 2
    steered = Plan(
        stage=Stage.STEERED,
        title="scenes searched by Hypothesis",
        source=f"{_recipes(order)}, searched by Hypothesis{'' if order.examples is None else _FIRST}",
        total=None if timed else half,
        units=lambda: _rounds(order, None if timed else half),
        share=STEERED_SHARE,
    )
    rest = None if timed else limits.scenes - half
    independent = Plan(
        stage=Stage.INDEPENDENT,
        title="scenes drawn independently",
        source=f"{_recipes(order)}, drawn independently",
        total=rest,
        units=lambda: _parts(Stage.INDEPENDENT, rest, INDEPENDENT_AT_A_TIME),
        share=1.0,
        independent=True,
    )
    return steered, independent


def _rounds(order: Order, total: int | None) -> Iterator[Unit]:
    """Each machine in turn gets a round, all of them about as many scenes."""
    if total is None:
        yield from _parts(Stage.STEERED, None, STEERED_AT_A_TIME)
        return
    machines = len(order.machines)
    shares = [total // machines + (place < total % machines) for place in range(machines)]
    number = 0
    while any(shares):
        for place, left in enumerate(shares):
            scenes = min(left, STEERED_AT_A_TIME)
            if scenes:
                yield Unit(stage=Stage.STEERED, number=number, scenes=scenes)
            shares[place] -= scenes
            number += 1


def _parts(stage: Stage, total: int | None, size: int) -> Iterator[Unit]:
    number = 0
    while total is None or number * size < total:
        scenes = size if total is None else min(size, total - number * size)
        yield Unit(stage=stage, number=number, scenes=scenes, first=number * size)
        number += 1


def _full(order: Order) -> Plan:
    many = "" if order.as_given else f", and {LONG} pictures, on small relatives{_own(order)}"
    each = [len(full_scenes(order, machine)) for machine in order.machines]
    return Plan(
        stage=Stage.FULL,
        title="a tour of the edges, as many cells" + (", and as many pictures" if many else ""),
        source=f"a tour of the edges, then as many cells as must be shown, on the machines as given{many}",
        total=sum(each),
        units=lambda: _each(Stage.FULL, each),
    )


def _edges(order: Order) -> Plan:
    scenes = [len(edges_of(order, machine)) for machine in order.machines]
    return Plan(
        stage=Stage.EDGES,
        title="scenes at the edges",
        source=_edges_source(order, any(scenes)),
        total=sum(scenes),
        units=lambda: _each(Stage.EDGES, scenes),
        share=EDGES_SHARE,
        told=bool(order.edges.lacking),
    )


def _edges_source(order: Order, there: bool) -> str:
    """What the scenes are, if any are ``there``, and what is to be done about those that are not."""
    relatives = "" if order.as_given else f" and on small relatives{_own(order)}"
    where = f", supplied by a solver, on the machines as given{relatives}" if there or not order.edges.lacking else ""
    lacking = f"; {order.edges.lacking}" if order.edges.lacking else ""
    return f"scenes at stated edges{where}{lacking}"


def _cuts(order: Order) -> Plan:
    scenes = WHOLE_SCENES + CUT_SCENES
    return Plan(
        stage=Stage.CUTS,
        title="blankings cut at a byte",
        source=f"{_recipes(order)}, undisturbed and again with a blanking lost, or cut at a byte",
        total=None,
        units=lambda: _each(Stage.CUTS, [scenes] * len(order.machines)),
        share=CUTS_SHARE,
    )


def _each(stage: Stage, scenes: Sequence[int]) -> Iterator[Unit]:
    """A unit for each machine that has scenes."""
    return (Unit(stage=stage, number=number, scenes=many) for number, many in enumerate(scenes) if many)


def _crystals(order: Order) -> Plan:
    each = [len(crystal_scenes(machine, pictures=1, long=1)) for machine in order.machines]
    return Plan(
        stage=Stage.CRYSTALS,
        title="crystals turning",
        source=f"crystals turning, for up to {LONG_TURN} pictures, on the machines as given",
        total=sum(each),
        units=lambda: _each(Stage.CRYSTALS, each),
    )


def _recipes(order: Order) -> str:
    if order.as_given:
        return "recipes on the machines as given"
    return f"recipes on small relatives of the machines{_own(order)}"


def _own(order: Order) -> str:
    """What is otherwise on small relatives than was demanded."""
    demanded = any(machine.demands.patience is not None for machine in order.machines)
    return ", each with its own default patience, not the demanded one" if demanded else ""
