"""What to leave out of many things: halves first, or there would be too many to try."""

from collections.abc import Iterator
from typing import TypeVar

T = TypeVar("T")


def shares(all_of_them: tuple[T, ...]) -> Iterator[tuple[T, ...]]:
    """All of them, then halves, quarters ...: where there are many, one at a time would take too long."""
    size = len(all_of_them)
    while size > 1:
        yield from (all_of_them[start : start + size] for start in range(0, len(all_of_them), size))
        size = -(-size // 2)
