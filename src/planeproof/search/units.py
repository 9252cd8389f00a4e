"""Units of work: a check is a list of them, stage by stage. Each is played by itself, here or elsewhere.

What a unit plays depends on the order and on the unit alone, so that a check finds the same in one process and in
many, and a unit whose process died can be played again.
"""

import math
import time
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from enum import Enum

from planeproof.contract import Machine, Scene
from planeproof.judge.distances import distances
from planeproof.scenes.crystals import crystal_scenes
from planeproof.scenes.full import full_scene, long_scene
from planeproof.scenes.tour import disturbed_tour, opening, tour
from planeproof.search.costs import cost_of
from planeproof.search.cutting import cut_scenes, undisturbed
from planeproof.search.laws import check_laws
from planeproof.search.order import Order
from planeproof.search.steering import nearness, steer
from planeproof.search.trial import Trial

LAW_SCENES = 4
"""Scenes a machine that are played twice, to see whether the candidate is deterministic."""

WHOLE_SCENES, CUT_SCENES = 100, 140
"""Scenes a machine whose blankings are cut, and scenes that are made of them by cutting one."""

GoOn = Callable[[], bool]
"""Asked before each scene; may raise KeyboardInterrupt."""


class Stage(Enum):
    """What the scenes of a unit are, in the order in which a check goes through them."""

    FULL = "full"
    LAWS = "laws"
    EDGES = "edges"
    CUTS = "cuts"
    STEERED = "steered"
    INDEPENDENT = "independent"
    CRYSTALS = "crystals"


@dataclass(frozen=True, kw_only=True)
class Unit:
    """Unit ``number`` of ``stage``, at most ``scenes`` scenes. Units take the machines of the order in turn.

    Those of `Stage.LAWS` and `Stage.INDEPENDENT` have scenes of all machines; ``first`` is the number of the first.
    """

    stage: Stage
    number: int
    scenes: int
    first: int = 0

    @property
    def key(self) -> str:
        """Names this unit among all units of an order."""
        return f"{self.stage.value} {self.number}, {self.scenes} from {self.first}"

    def machine(self, order: Order) -> Machine:
        """The machine whose turn it is."""
        return order.machines[self.number % len(order.machines)]


def run(order: Order, unit: Unit, trial: Trial, *, go_on: GoOn) -> None:
    """Play ``unit`` in ``trial``, which has not played yet; ends early when something is found or ``go_on`` says so.

    Ctrl-C ends it too, and is noted in the trial, so that what was found is not lost.
    """

    def asked_first() -> bool:
        on = go_on()
        trial.cut_short |= not on
        return on

    try:
        _RUNS[unit.stage](order, unit, trial, asked_first)
    except KeyboardInterrupt:
        trial.interrupted = True


def left_of(seconds: float | None) -> Callable[[], float]:
    """Says what is left of so many seconds from now on; of None, always more than enough."""
    if seconds is None:
        return lambda: math.inf
    end = time.monotonic() + seconds
    return lambda: max(end - time.monotonic(), 0.0)


def until(seconds: float | None) -> GoOn:
    """Says to go on for so many seconds from now; without limit if None."""
    left = left_of(seconds)
    return lambda: left() > 0


def full_scenes(order: Order, machine: Machine) -> list[Scene]:
    """Those at the size of ``machine`` itself, and a long one on a small relative unless it is to be played as given.

    The tour comes first, for most faults show in it; then what others hide there, and what only disturbances show.
    """
    as_given = [tour(machine), opening(machine), disturbed_tour(machine), full_scene(machine)]
    return as_given if order.as_given else [*as_given, long_scene(machine)]


def _full(order: Order, unit: Unit, trial: Trial, go_on: GoOn) -> None:
    _play_all(trial, full_scenes(order, unit.machine(order)), go_on)


def _laws(order: Order, unit: Unit, trial: Trial, go_on: GoOn) -> None:
    each = unit.scenes // len(order.machines)
    check_laws(trial, [order.draw(machine, "law", number) for machine in order.machines for number in range(each)])
    # They ask something else: by them alone no rule has had its chance.
    trial.exercised.clear()


def _cuts(order: Order, unit: Unit, trial: Trial, go_on: GoOn) -> None:
    wholes = []
    for number in range(WHOLE_SCENES):
        whole = trial.play(undisturbed(order.draw(unit.machine(order), "cut", number))) if go_on() else None
        if whole is None:
            return
        wholes.append(whole)
    _play_all(trial, cut_scenes(wholes, most=CUT_SCENES), go_on)


def _steered(order: Order, unit: Unit, trial: Trial, go_on: GoOn) -> None:
    steer(
        trial,
        unit.machine(order),
        as_given=order.as_given,
        most=unit.scenes,
        first_seed=order.seed * 1_000_003 + unit.number,
        go_on=go_on,
        towards=lambda: _measured(trial, climbing=unit.number // len(order.machines) % 2 == 1),
        database=order.kept(unit.machine(order), ended=lambda: trial.cut_short),
    )


def _measured(trial: Trial, *, climbing: bool) -> Mapping[str, float]:
    """How near the scene just played came to the edges, which is kept; told only where the search is to climb there.

    That is every second round of a machine: some faults are found sooner so, others later.
    """
    if trial.last is None:
        return {}
    measured = distances(trial.last)
    trial.reached.add(trial.last, measured)
    return nearness(measured) if climbing else {}


def _independent(order: Order, unit: Unit, trial: Trial, go_on: GoOn) -> None:
    machines = len(order.machines)
    for number in range(unit.first, unit.first + unit.scenes):
        if not go_on():
            return
        # In turn, not at random: with as many scenes of each machine the bound only becomes safer.
        played = trial.play(order.draw(order.machines[number % machines], "scene", number // machines))
        if played is not None:
            trial.reached.add(played)
            trial.behaviours.add(played)
        if trial.decided:
            return


def edges_of(order: Order, machine: Machine) -> list[Scene]:
    """The edge scenes of a machine, without those on small relatives where it is to be played as given."""
    scenes = order.edges.scenes(machine)
    return [scene for scene in scenes if scene.machine == machine or not order.as_given]


def _edges(order: Order, unit: Unit, trial: Trial, go_on: GoOn) -> None:
    _play_all(trial, edges_of(order, unit.machine(order)), go_on)


def _play_all(trial: Trial, scenes: Iterable[Scene], go_on: GoOn) -> None:
    """Whatever rule is broken in them; until the contract is."""
    for scene in scenes:
        if not go_on():
            return
        trial.play(scene)
        if trial.fault is not None:
            return


def _crystals(order: Order, unit: Unit, trial: Trial, go_on: GoOn) -> None:
    machine, plays = unit.machine(order), []
    for scene in crystal_scenes(machine):
        played = trial.play(scene) if go_on() else None
        if played is None or trial.decided:
            return
        plays.append(played)
    if plays:
        trial.costs.append(cost_of(machine, plays))


_RUNS: dict[Stage, Callable[[Order, Unit, Trial, GoOn], None]] = {
    Stage.FULL: _full,
    Stage.LAWS: _laws,
    Stage.EDGES: _edges,
    Stage.CUTS: _cuts,
    Stage.STEERED: _steered,
    Stage.INDEPENDENT: _independent,
    Stage.CRYSTALS: _crystals,
}
