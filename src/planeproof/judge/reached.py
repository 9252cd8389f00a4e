"""Which edges were reached, over many plays; and which rules have had no real chance because too few were."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from planeproof.contract import Rational, Rule
from planeproof.judge.distances import Distances, distances
from planeproof.judge.edges import EDGES, Edge
from planeproof.judge.play import Play

LEAST_SCENES = 1
"""Generated scenes that must have reached an edge, for the rules that it is asked for by to count as exercised."""


@dataclass(kw_only=True, eq=False)
class Reached:
    """The edges over the plays so far. Two of these add up to one, in any order, wherever they were made.

    ``least``: the least distance to each edge, in its own unit; missing where there was nothing to measure.
    ``scenes``: how many reached it. ``admitting``: how many were on a machine that lets a right scheduler reach it.
    """

    least: dict[Edge, Rational] = field(default_factory=dict)
    scenes: dict[Edge, int] = field(default_factory=lambda: dict.fromkeys(EDGES, 0))
    admitting: dict[Edge, int] = field(default_factory=lambda: dict.fromkeys(EDGES, 0))

    def add(self, play: Play, measured: Distances | None = None) -> None:
        """Add one play; ``measured`` are its `distances`, where they are known already."""
        machine = play.scene.machine
        for edge, distance in (distances(play) if measured is None else measured).items():
            self._near(edge, distance)
            self.scenes[edge] += edge.reached(machine, distance)
        for edge in EDGES:
            self.admitting[edge] += edge.admitted(machine)

    def merge(self, other: "Reached") -> None:
        """Add all that ``other`` has."""
        for edge, distance in other.least.items():
            self._near(edge, distance)
        for edge in EDGES:
            self.scenes[edge] += other.scenes[edge]
            self.admitting[edge] += other.admitting[edge]

    def _near(self, edge: Edge, distance: Rational) -> None:
        self.least[edge] = min(self.least.get(edge, distance), distance)


def missed(reached: Reached, *, least_scenes: int = LEAST_SCENES) -> tuple[Edge, ...]:
    """The edges that some scene's machine admits and fewer than ``least_scenes`` scenes have reached.

    An edge that the size or the demands of every machine exclude is never among them, whoever made the scenes.
    """
    return tuple(edge for edge in EDGES if reached.admitting[edge] and reached.scenes[edge] < least_scenes)


def hardly_exercised(
    reached: Reached, asked: Iterable[Rule], *, least_scenes: int = LEAST_SCENES
) -> Mapping[Rule, tuple[Edge, ...]]:
    """Of the rules ``asked`` for, those that count as not exercised, each with the edges that it misses.

    For runs of generated scenes. Of scenes that a user supplies nothing is asked but each rule's own witness.
    """
    absent = missed(reached, least_scenes=least_scenes)
    found = {rule: tuple(edge for edge in absent if rule in edge.asked_for) for rule in asked}
    return {rule: edges for rule, edges in found.items() if edges}
