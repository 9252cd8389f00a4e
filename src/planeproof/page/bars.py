"""One blanking as a bar, for the page: paths to scale, one for each thing that cycles go into."""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from planeproof.contract import Rational
from planeproof.judge import Violation
from planeproof.pictures.blanking import LITTLE, LONGEST, Part, Stretch, stretches
from planeproof.pictures.course import Moment
from planeproof.report.figures import cycles

LONG = 1000
"""Units that a bar is long."""

UP, DOWN = 28, 44
"""Where the middle of the bar is, and of what comes too late: lower, so that it can be told without colour."""


@dataclass(frozen=True, kw_only=True)
class Piece:
    """All that goes into one thing, as the path of an SVG: a stroke for each stretch."""

    part: str
    path: str


@dataclass(frozen=True, kw_only=True)
class Bar:
    """A bar: its pieces, where the blanking ends on it, and where the burst that breaks the rule begins, if one does.

    ``says`` is the scale in words.
    """

    pieces: tuple[Piece, ...]
    end: int
    marked: int | None
    says: str


def bars_of(moment: Moment, marked: Violation | None) -> tuple[Bar, ...]:
    """The whole blanking, and, where little of it is used, that little once more, enlarged."""
    found = stretches(moment)
    full, used = moment.machine.blank_cycles, moment.refresh.used
    last = max(stretch.end for stretch in found)
    span = max(full, min(last, math.floor(full * LONGEST)))
    burst = None if marked is None or marked.refresh != moment.refresh.number else marked.burst
    whole = _bar(found, full, span, burst, f"0 to {full} cycles" + _beyond(last, full))
    if not moment.refresh.bursts or moment.refresh.cycles < full or used * LITTLE >= span:
        return (whole,)
    written = [stretch for stretch in found if stretch.part is not Part.LEFT]
    return (whole, _bar(written, used, used, burst, f"the first {cycles(used)} cycles, enlarged"))


def _beyond(last: Rational, full: int) -> str:
    return f", and on to {cycles(last)}" if last > full else ""


def _bar(found: list[Stretch], full: Rational, span: Rational, burst: int | None, says: str) -> Bar:
    paths: dict[str, list[str]] = {}
    for stretch in found:
        for name, start, end in _laid(stretch, full, span):
            left = round(LONG * start / span)
            right = max(left + 1, round(LONG * end / span))
            paths.setdefault(name, []).append(f"M{left} {DOWN if start >= full else UP}h{right - left}")
    pieces = (Piece(part=name, path="".join(path)) for name, path in paths.items())
    return Bar(pieces=tuple(pieces), end=round(LONG * full / span), marked=_start(found, burst, span), says=says)


def _laid(stretch: Stretch, full: Rational, span: Rational) -> Iterable[tuple[str, Rational, Rational]]:
    """What of a stretch is inside the blanking, and what comes after it, which is barred besides."""
    if stretch.start < full:
        yield stretch.part.name.lower(), stretch.start, min(stretch.end, full)
    start, end = max(stretch.start, full), min(stretch.end, span)
    if start < end:
        yield stretch.part.name.lower(), start, end
        yield Part.LATE.name.lower(), start, end


def _start(found: list[Stretch], burst: int | None, span: Rational) -> int | None:
    starts = [stretch.start for stretch in found if burst is not None and stretch.burst == burst]
    return None if not starts else min(LONG, round(LONG * min(starts) / span))
