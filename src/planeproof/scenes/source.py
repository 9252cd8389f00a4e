"""Where a recipe's choices come from: one recipe, drawn independently at random or steered by Hypothesis."""

import random
from collections.abc import Sequence
from typing import Protocol, TypeVar

T = TypeVar("T")


class Source(Protocol):
    """Makes the choices of a recipe. Low numbers and early options are the simpler ones."""

    def number(self, low: int, high: int) -> int:
        """A whole number from ``low`` to ``high``, both included."""


def pick(source: Source, options: Sequence[T]) -> T:
    """One of ``options``, the simplest of which stands first."""
    return options[source.number(0, len(options) - 1)]


def cells_from(source: Source, cells: int, count: int) -> list[int]:
    """``count`` different numbers below ``cells``, in ascending order."""
    left = list(range(cells))
    return sorted(left.pop(source.number(0, len(left) - 1)) for _ in range(count))


class RandomSource:
    """Independent choices from a seed: the same seed makes the same scene, on any computer."""

    def __init__(self, seed: str) -> None:
        self._random = random.Random(seed)

    def number(self, low: int, high: int) -> int:
        """Every number equally likely."""
        return self._random.randint(low, high)
