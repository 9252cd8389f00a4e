"""The edges: places where schedulers go wrong, each with a distance that says how near a scene came to it.

A search that never comes near an edge says little about the rules that break there. Edges that only the scene decides
on, or that every right scheduler comes to, are asked of generated scenes (`Edge.asked_for`); the others are counted.
Read the tuple `EDGES`; `planeproof.judge.distances` measures.
"""

from collections.abc import Callable
from dataclasses import dataclass

from planeproof.contract import TILE_SIDE, Machine, Rational, Rule, Storage
from planeproof.contract.rules import (
    BLANKING_ONLY,
    EXACT_REVEAL,
    FAIR_REFUSAL,
    HIDDEN_WRITES,
    IN_ORDER,
    PROGRESS,
    TILE_CAP,
    WHOLE_REVEAL,
)


def _always(_machine: Machine) -> bool:
    return True


def _exactly(_machine: Machine) -> Rational:
    return 0


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Edge:
    """One edge: ``statement`` says when it is reached, ``unit`` what its distance is counted in.

    ``within``: it is reached at this distance of a machine or nearer. ``admitted``: whether a machine, by its size and
    its demands, lets a right scheduler get there. ``asked_for``: the rules that a run of generated scenes has not
    exercised unless it reached this edge; empty where it is the candidate's own choice to come near.

    There is one value for each edge, so edges are compared by identity, also after pickling.
    """

    id: str
    statement: str
    unit: str
    within: Callable[[Machine], Rational] = _exactly
    admitted: Callable[[Machine], bool] = _always
    asked_for: frozenset[Rule] = frozenset()

    def reached(self, machine: Machine, distance: Rational) -> bool:
        """Whether a scene on ``machine`` that came so near has reached it."""
        return distance <= self.within(machine)

    def __repr__(self) -> str:
        return f"<edge {self.id}>"

    def __reduce__(self) -> tuple[object, tuple[str]]:
        return edge, (self.id,)


def hardest(machine: Machine) -> int:
    """Occupied cells of the biggest picture that may not be declined."""
    return min(machine.must_show, machine.cells)


def roomy(machine: Machine) -> bool:
    """Whether any picture fits one blanking, each pattern and each cell in a burst of its own.

    Then nothing is left for a second blanking, unless the first one is disturbed.
    """
    patterns = machine.cap * machine.tiles.depth * machine.burst_cycles(TILE_SIDE)
    return patterns + machine.cells * machine.burst_cycles(machine.map.entry_bytes) <= machine.blank_cycles


def _one_pattern(machine: Machine) -> int:
    """Bytes of one pattern as it is sent."""
    return machine.tile_bytes if machine.tiles.storage is Storage.PACKED else TILE_SIDE * machine.tiles.depth


def _cap_is_demanded(machine: Machine) -> bool:
    return hardest(machine) >= machine.cap_of_view


def _something_is_demanded(machine: Machine) -> bool:
    return hardest(machine) > 0


def _more_cells_than_tiles(machine: Machine) -> bool:
    return machine.cells > machine.cap_of_view


def _takes_more_than_one(machine: Machine) -> bool:
    return not roomy(machine)


CAP = Edge(
    id="cap",
    statement="the shown page names every tile that a view can show",
    unit="tiles",
    admitted=_cap_is_demanded,
)
MUST_SHOW = Edge(
    id="must-show",
    statement="a picture was offered with exactly as many cells as must be shown, all different",
    unit="cells",
    admitted=_something_is_demanded,
    asked_for=frozenset({TILE_CAP, FAIR_REFUSAL}),
)
ONE_TOO_MANY = Edge(
    id="one-too-many",
    statement="a picture was offered with one different cell more than a view has tiles",
    unit="cells",
    admitted=_more_cells_than_tiles,
    asked_for=frozenset({TILE_CAP}),
)
BLANKING_END = Edge(
    id="blanking-end",
    statement="a blanking that was used ended, with a picture waiting, too late for one more 8-byte burst",
    unit="cycles",
    within=lambda machine: machine.burst_cycles(TILE_SIDE),
    admitted=_takes_more_than_one,
    asked_for=frozenset({BLANKING_ONLY}),
)
ONE_OVER = Edge(
    id="one-over",
    statement="the blanking that revealed a picture had at most one pattern left to send",
    unit="bytes",
    within=_one_pattern,
    admitted=_takes_more_than_one,
)
REUSE = Edge(
    id="reuse",
    statement="a pattern byte was written anew in the blanking after the one that hid it, or sooner",
    unit="refreshes",
    within=lambda _machine: 2,
    admitted=_something_is_demanded,
)
LINE = Edge(
    id="line",
    statement="a picture was offered while one taken before was still to be seen",
    unit="refreshes",
    admitted=_takes_more_than_one,
    asked_for=frozenset({IN_ORDER, PROGRESS}),
)
REFILLED = Edge(
    id="refilled",
    statement="a cell was occupied, then empty, then occupied again, in pictures that were taken",
    unit="steps",
    admitted=_something_is_demanded,
    asked_for=frozenset({EXACT_REVEAL, WHOLE_REVEAL}),
)
BEFORE_LAST = Edge(
    id="before-last",
    statement="a picture was taken that equals the one before last, and not the last",
    unit="cells",
    admitted=_something_is_demanded,
    asked_for=frozenset({EXACT_REVEAL, IN_ORDER}),
)
ONE_BIT = Edge(
    id="one-bit",
    statement="a picture was taken that differs from the last in a single bit",
    unit="bits",
    admitted=_something_is_demanded,
    asked_for=frozenset({EXACT_REVEAL, WHOLE_REVEAL}),
)
LOST = Edge(
    id="lost",
    statement="a blanking was lost while a picture waited",
    unit="refreshes",
    asked_for=frozenset({HIDDEN_WRITES, PROGRESS}),
)
CUT = Edge(
    id="cut",
    statement="a blanking was shortened, and a picture had to wait for another one",
    unit="refreshes",
    admitted=_takes_more_than_one,
    asked_for=frozenset({BLANKING_ONLY, HIDDEN_WRITES}),
)

EDGES: tuple[Edge, ...] = (
    CAP,
    MUST_SHOW,
    ONE_TOO_MANY,
    BLANKING_END,
    ONE_OVER,
    REUSE,
    LINE,
    REFILLED,
    BEFORE_LAST,
    ONE_BIT,
    LOST,
    CUT,
)
"""All edges: of size, of time, of history, of disturbance."""


def edge(edge_id: str) -> Edge:
    """The edge of that id. Raises `ValueError`, naming those there are."""
    for candidate in EDGES:
        if candidate.id == edge_id:
            return candidate
    raise ValueError(f"there is no edge {edge_id!r}; there are: {', '.join(edge.id for edge in EDGES)}")
