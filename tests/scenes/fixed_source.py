"""A recipe's choices made in advance, for asking exactly for one move."""

from collections.abc import Iterable


class FixedSource:
    """Gives ``numbers`` one after the other, and the lowest allowed once they have run out.

    A number out of the range that is asked for is a mistake of the test, and fails it.
    """

    def __init__(self, numbers: Iterable[int] = ()) -> None:
        self._numbers = iter(numbers)
        self.asked: list[tuple[int, int]] = []

    def number(self, low: int, high: int) -> int:
        """The next number."""
        self.asked.append((low, high))
        number = next(self._numbers, low)
        assert low <= number <= high, f"choice {len(self.asked) - 1} is {number}, but {low}..{high} is asked for"
        return number
