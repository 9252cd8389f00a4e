"""Every pair of goals in a few scenes: what can follow what is for the solver to say, so it chooses the rows itself.

A pair that no scene so far holds is asked for; the scene is then made longer, picture by picture, by goals that make
further pairs with what is there. What counts as covered is what the checks find in the scenes, asked for or not.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import islice

from planeproof.contract import Machine, Scene
from planeproof.scenes.edge_goals import goals_met
from planeproof.scenes.edge_pairs import PAIRS, GoalPair, Joint, pairs_met
from planeproof.spec.edges.asking import RLIMIT, Demands, ask, scene_meeting
from planeproof.spec.obligation import Answer

LONGEST = 9
"""Pictures in a scene at the most: the longer, the fewer scenes."""

TRIES = 6
"""Continuations of a scene that are asked for before it is left as it is."""


@dataclass(frozen=True, kw_only=True, eq=False)
class Cover:
    """Scenes that hold every pair but those ``impossible``, which is proved, and those left ``open`` by the solver."""

    scenes: tuple[Scene, ...]
    impossible: tuple[GoalPair, ...]
    open: tuple[GoalPair, ...]


def cover(machine: Machine, pairs: Iterable[GoalPair] = PAIRS, *, rlimit: int = RLIMIT) -> Cover:
    """Scenes on ``machine`` that hold every one of ``pairs`` which can be met there."""
    found = {pair: scene_meeting(machine, _demands(pair), rlimit=rlimit) for pair in pairs}
    wanted = {pair: there.scene for pair, there in found.items() if there.scene is not None}
    scenes: list[Scene] = []
    while wanted:
        pair, shortest = next(iter(wanted.items()))
        scenes.append(_lengthened(shortest, _demands(pair), list(wanted), rlimit))
        for met in pairs_met(goals_met(scenes[-1])):
            wanted.pop(met, None)
    return Cover(
        scenes=tuple(scenes),
        impossible=tuple(pair for pair, there in found.items() if there.answer is Answer.PROVED),
        open=tuple(pair for pair, there in found.items() if there.answer is Answer.UNKNOWN),
    )


def _demands(pair: GoalPair) -> Demands:
    if pair.joint is Joint.TOGETHER:
        return [frozenset({pair.first, pair.second})]
    return [frozenset({pair.first}), frozenset({pair.second})]


def _lengthened(scene: Scene, demands: Demands, wanted: list[GoalPair], rlimit: int) -> Scene:
    """``scene``, whose last pictures meet ``demands``, and after them as many pictures as make further pairs."""
    demands = [frozenset()] * (len(scene.pictures) - len(demands)) + list(demands)
    while len(demands) < LONGEST:
        held = pairs_met(goals_met(scene))
        for longer in islice(_continued(demands, [pair for pair in wanted if pair not in held]), TRIES):
            found = ask(scene.machine, longer, rlimit=rlimit, limit=scene.machine.must_show)
            if found.scene is not None:
                scene, demands = found.scene, longer
                break
        else:
            return scene
    return scene


def _continued(demands: Demands, wanted: list[GoalPair]) -> Iterator[Demands]:
    """The demands and one more picture's: first what makes a pair with the last one's, then two together."""
    for pair in wanted:
        if pair.joint is Joint.IN_TURN and pair.first in demands[-1]:
            yield [*demands, frozenset({pair.second})]
    for pair in wanted:
        if pair.joint is Joint.TOGETHER:
            yield [*demands, frozenset({pair.first, pair.second})]
