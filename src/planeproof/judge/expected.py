"""A failure that is known and let be until a date: one entry of a list, and what is wrong with the entry itself."""

from dataclasses import dataclass
from datetime import date

from planeproof.contract import Rule


@dataclass(frozen=True, kw_only=True)
class Expected:
    """``target`` is expected to break ``rule``, before any other, in the saved scene ``case``, until ``expires``.

    ``reason`` says why that is let be, ``place`` which entry of which file this is. ``wrong``: why the entry can't
    stand, and what to do; such an entry fails the check and excuses nothing. None once the scene was played again and
    showed just what the entry says, or while that has not been tried.
    """

    place: str
    target: str
    rule: Rule
    case: str
    reason: str
    expires: date
    wrong: str | None = None
