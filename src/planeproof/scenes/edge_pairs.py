"""Pairs of goals: two of one picture, or of two pictures that follow one another, in that order.

A goal looks back over two pictures, so whether a pair can be met at all is a question about three pictures, or four.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum
from itertools import combinations, pairwise, product

from planeproof.scenes.edge_goals import GOALS


class Joint(Enum):
    """How the two goals of a pair are joined: met by the same picture, or by one and the next."""

    TOGETHER = "together"
    IN_TURN = "in turn"


@dataclass(frozen=True, kw_only=True)
class GoalPair:
    """Two goals by their ids; in the order of `GOALS` where they are met ``TOGETHER``."""

    joint: Joint
    first: str
    second: str

    def __str__(self) -> str:
        return f"{self.first} {'and' if self.joint is Joint.TOGETHER else 'then'} {self.second}"


_IDS = tuple(goal.id for goal in GOALS)

PAIRS: tuple[GoalPair, ...] = (
    *(GoalPair(joint=Joint.TOGETHER, first=a, second=b) for a, b in combinations(_IDS, 2)),
    *(GoalPair(joint=Joint.IN_TURN, first=a, second=b) for a, b in product(_IDS, repeat=2)),
)
"""Every pair of goals."""


def pairs_met(met: Sequence[frozenset[str]]) -> frozenset[GoalPair]:
    """The pairs that a scene holds whose pictures meet the goals ``met``, one set a picture."""
    together = (
        GoalPair(joint=Joint.TOGETHER, first=a, second=b)
        for goals in met
        for a, b in combinations(sorted(goals, key=_IDS.index), 2)
    )
    in_turn = (
        GoalPair(joint=Joint.IN_TURN, first=a, second=b) for one, next_ in pairwise(met) for a, b in product(one, next_)
    )
    return frozenset((*together, *in_turn))
