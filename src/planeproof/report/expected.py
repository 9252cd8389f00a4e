"""Expected failures in words: those that are let be, and entries of the list that can't stand."""

from collections.abc import Iterable

from planeproof.judge.expected import Expected
from planeproof.report.figures import wrapped


def expected_lines(entries: Iterable[Expected], indent: int = 2) -> list[str]:
    """A paragraph for each entry."""
    return [line for entry in entries for line in wrapped(expected_sentence(entry), indent)]


def expected_sentence(entry: Expected) -> str:
    """What became of one entry."""
    if entry.wrong is not None:
        return f"{entry.place} ({entry.rule.id}) fails the check: {entry.wrong}."
    return f"{entry.rule.id} is broken, which is let be until {entry.expires}: {entry.reason} ({entry.place})"
