"""Figures in words: cycles, spans, counts and shares, each written one way everywhere."""

import math
from collections.abc import Iterable, Sequence

from planeproof.contract import Rational


def cycles(amount: Rational) -> str:
    """``amount`` with at most two decimals: 76, 1520.25, about 3320.18."""
    return f"{float(amount):.2f}".rstrip("0").rstrip(".")


def counted(number: int, one: str, many: str = "") -> str:
    """``1 cell``, ``3 cells``; ``many`` where it is not ``one`` with an s."""
    return f"{number} {one if number == 1 else many or one + 's'}"


def spans(numbers: Iterable[int]) -> str:
    """Whole numbers with runs drawn together: ``1, 3-5, 9``."""
    runs: list[list[int]] = []
    for number in sorted(set(numbers)):
        if runs and runs[-1][1] == number - 1:
            runs[-1][1] = number
        else:
            runs.append([number, number])
    return ", ".join(str(a) if a == b else f"{a}-{b}" for a, b in runs)


def listed(words: Sequence[str]) -> str:
    """``a``, ``a and b``, ``a, b and c``."""
    return " and ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words)


def share_at_most(share: float) -> str:
    """A share above 0 and below 0.99 in per cent, rounded up to two digits: never less is said than is known."""
    percent = 100 * share
    step = 10.0 ** (math.floor(math.log10(percent)) - 1)
    return f"{math.ceil(percent / step) * step:#.2g}".rstrip(".") + " %"


def wrapped(text: str, indent: int, width: int = 100) -> list[str]:
    """``text`` in lines of at most ``width`` columns, all indented by ``indent``; a longer word stands alone."""
    lines, line = [], ""
    for word in text.split():
        if line and indent + len(line) + 1 + len(word) > width:
            lines.append(line)
            line = word
        else:
            line = f"{line} {word}" if line else word
    return [" " * indent + line for line in [*lines, line]]
