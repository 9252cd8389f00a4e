"""One blanking as a bar, for the page: paths to scale, one for each thing that cycles go into."""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from planeproof.contract import Rational
from planeproof.judge import Violation
from planeproof.pictures.blanking import LONGEST, Part, Stretch, closer, stretches
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
    """A bar: its pieces, where the blanking ends on it, and where the byte that breaks the rule is, if one does.

    ``says`` is the scale in words.
    """

    pieces: tuple[Piece, ...]
    end: int
    marked: int | None
    says: str


def bars_of(moment: Moment, marked: Violation | None) -> tuple[Bar, ...]:
    """The whole blanking, and, where little of it is used or was had, that little once more, enlarged."""
    found = stretches(moment)
    full = moment.machine.blank_cycles
    last = max(stretch.end for stretch in found)
    span = max(full, min(last, math.floor(full * LONGEST)))
    here = None if marked is None or marked.refresh != moment.refresh.number else _begin(moment, found, marked)
    whole = _bar(found, full, span, here, f"0 to {full} cycles" + _beyond(last, full))
    near = closer(moment)
    if near is None:
        return (whole,)
    marked_near = None if here is None else here - near.begin
    return (whole, _bar(near.stretches, near.end, near.span, marked_near, near.says))


def _beyond(last: Rational, full: int) -> str:
    return f", and on to {cycles(last)}" if last > full else ""


def _bar(found: list[Stretch], full: Rational, span: Rational, marked: Rational | None, says: str) -> Bar:
    paths: dict[str, list[str]] = {}
    for stretch in found:
        for name, start, end in _laid(stretch, full, span):
            left = round(LONG * start / span)
            right = max(left + 1, round(LONG * end / span))
            paths.setdefault(name, []).append(f"M{left} {DOWN if start >= full else UP}h{right - left}")
    pieces = (Piece(part=name, path="".join(path)) for name, path in paths.items())
    place = None if marked is None else min(LONG, round(LONG * marked / span))
    return Bar(pieces=tuple(pieces), end=round(LONG * full / span), marked=place, says=says)


def _laid(stretch: Stretch, full: Rational, span: Rational) -> Iterable[tuple[str, Rational, Rational]]:
    """What of a stretch is inside the blanking, and what comes after it, which is barred besides."""
    if stretch.start < full:
        yield stretch.part.name.lower(), stretch.start, min(stretch.end, full)
    start, end = max(stretch.start, full), min(stretch.end, span)
    if start < end:
        yield stretch.part.name.lower(), start, end
        yield Part.LATE.name.lower(), start, end


def _begin(moment: Moment, found: list[Stretch], marked: Violation) -> Rational | None:
    """The cycle at which the byte that breaks the rule begins to be written."""
    if marked.burst is None:
        return None
    start = next(stretch.start for stretch in found if stretch.burst == marked.burst)
    address = moment.refresh.bursts[marked.burst].address
    set_up, per_byte = moment.machine.rates(view=moment.machine.is_view(address))
    return start + set_up + (marked.byte or 0) * per_byte
