"""One blanking as a bar: its cycles to scale, every burst in it, what is left, and what comes too late."""

import math
from dataclasses import dataclass, replace
from enum import Enum

from planeproof.contract import Burst, Machine, Rational, RegionKind
from planeproof.pictures.colours import BLACK, BLUE, BLUISH_GREEN, LINE, ORANGE, REDDISH_PURPLE, TEXT, VERMILLION
from planeproof.pictures.course import Course, Moment
from planeproof.pictures.figure import Figure, Key, stacked
from planeproof.pictures.lettering import Word
from planeproof.pictures.marks import Canvas, Mark, Shape, canvas, fill
from planeproof.pictures.shape import Enlargement
from planeproof.report.figures import counted, cycles

WIDTH, LEFT, RIGHT = 1680, 40, 1640
TOP, BAR, DROP = 64, 130, 44
HEIGHT = TOP + BAR + DROP + 90
LETTER = 26
ROOM_FOR_A_NUMBER = 100

LITTLE = 4
"""A blanking of which less than this part is used is shown enlarged as well."""

LONGEST = 1.5
"""How much of what comes too late is drawn, in blankings; the rest is told."""


class Part(Enum):
    """What the cycles of a stretch of the bar go into."""

    LOST = "lost: this blanking was cut short, or taken up by late bytes of the one before"
    SET_UP = "setting up a burst"
    PATTERNS = "bytes of patterns"
    MAP = "bytes of the tile map"
    VIEW = "bytes of the view: colours, page, bank (a reveal)"
    NOWHERE = "bytes to where there is no picture memory"
    LEFT = "left over: nothing is written"
    LATE = "too late: the display is being drawn already (the bar drops)"


MARKS = {
    Part.LOST: Mark(shape=Shape.RING, colour=LINE),
    Part.SET_UP: Mark(shape=Shape.SOLID, colour=TEXT),
    Part.PATTERNS: Mark(shape=Shape.SOLID, colour=BLUE),
    Part.MAP: Mark(shape=Shape.STRIPES, colour=ORANGE),
    Part.VIEW: Mark(shape=Shape.CROSS, colour=REDDISH_PURPLE),
    Part.NOWHERE: Mark(shape=Shape.DOT, colour=BLACK),
    Part.LEFT: Mark(shape=Shape.DOT, colour=BLUISH_GREEN),
    Part.LATE: Mark(shape=Shape.BARS, colour=VERMILLION),
}


@dataclass(frozen=True, kw_only=True)
class Stretch:
    """Cycles from ``start`` to ``end`` of a blanking, counted from when it would begin if nothing were lost.

    ``burst`` is the number of the burst whose they are, None for what is lost or left.
    """

    start: Rational
    end: Rational
    part: Part
    burst: int | None = None


def stretches(moment: Moment) -> list[Stretch]:
    """The whole blanking, and what is written after its end."""
    machine, refresh = moment.machine, moment.refresh
    full = machine.blank_cycles
    at: Rational = full - refresh.cycles
    found = [Stretch(start=0, end=at, part=Part.LOST)] if at else []
    for number, burst in enumerate(refresh.bursts):
        set_up, per_byte = machine.rates(view=machine.is_view(burst.address))
        for part, length in [(Part.SET_UP, set_up), *((p, n * per_byte) for p, n in _parts(machine, burst))]:
            if length:
                found.append(Stretch(start=at, end=at + length, part=part, burst=number))
                at += length
    return [*found, Stretch(start=at, end=full, part=Part.LEFT)] if at < full else found


@dataclass(frozen=True, kw_only=True)
class Closer:
    """A part of a blanking to be enlarged: its ``stretches``, from the cycle ``begin`` of the whole on.

    It has ``span`` cycles; the blanking, or what is used of it, ends after ``end`` of them.
    """

    stretches: list[Stretch]
    begin: Rational
    end: Rational
    span: Rational
    says: str


def closer(moment: Moment) -> Closer | None:
    """The cycles that are used, or that there were where the blanking was cut; None where they are no small part."""
    refresh, full = moment.refresh, moment.machine.blank_cycles
    begin: Rational = full - refresh.cycles
    end: Rational = refresh.cycles if begin else refresh.used
    span = max(end, refresh.used)
    if not refresh.bursts or span * LITTLE >= max(full, refresh.used):
        return None
    kept = [stretch for stretch in stretches(moment) if begin <= stretch.start < begin + span]
    moved = [replace(stretch, start=stretch.start - begin, end=stretch.end - begin) for stretch in kept]
    said = f"the {cycles(end)} cycles that there were" if begin else f"the first {cycles(end)} cycles"
    return Closer(stretches=moved, begin=begin, end=end, span=span, says=f"{said}, enlarged")


def blanking_figure(course: Course, moment: Moment, by: Enlargement) -> Figure:
    """The bar of one refresh, and, where little of it is used, that little once more, enlarged."""
    found = stretches(moment)
    machine, refresh = moment.machine, moment.refresh
    span = _span(machine, found)
    present = [part for part in Part if part is not Part.LATE and any(one.part is part for one in found)]
    late = [Part.LATE] if refresh.used > refresh.cycles else []
    body, words = bar(found, machine.blank_cycles, span), _words(found, machine, span)
    near = closer(moment)
    if near is not None:
        body, words = _with_enlarged(body, words, near)
    return Figure(
        title=f"The blanking, {moment.name}",
        notes=(_told(moment),),
        body=body,
        words=words,
        legend=tuple(Key(mark=MARKS[part], text=part.value) for part in [*present, *late]),
    )


def _with_enlarged(body: Canvas, words: tuple[Word, ...], near: Closer) -> tuple[Canvas, tuple[Word, ...]]:
    top = body.shape[0]
    said = Word(text=near.says, at=(LEFT, top + TOP - 30), size=LETTER, anchor="lb")
    more = (said, *_numbers(near.stretches, near.span, top))
    return stacked([body, bar(near.stretches, near.end, near.span)], 0), (*words, *more)


def bar(found: list[Stretch], full: Rational, span: Rational) -> Canvas:
    """The bar itself; ``span`` cycles are as long as it can be, the blanking ends after ``full``."""
    picture = canvas(HEIGHT, WIDTH)
    for stretch in found:
        if stretch.start < full:
            _lay(picture, stretch, stretch.start, min(stretch.end, full), span, 0)
        if stretch.end > full:
            _lay(picture, stretch, max(stretch.start, full), min(stretch.end, span), span, DROP)
    left, right = _x(0, span), _x(full, span)
    picture[TOP - 2 : TOP, left:right] = TEXT
    picture[TOP + BAR : TOP + BAR + 2, left:right] = TEXT
    for x in (left - 2, right):
        picture[TOP - 24 : TOP + BAR + DROP + 24, x : x + 3] = TEXT
    return picture


def _lay(picture: Canvas, stretch: Stretch, start: Rational, end: Rational, span: Rational, drop: int) -> None:
    left, right = _x(start, span), _x(end, span)
    rows = slice(TOP + drop, TOP + drop + BAR)
    if right - left > 4 and stretch.part is Part.SET_UP and start == stretch.start:
        left += 2  # a gap of paper before each burst
    fill(picture, (rows, slice(left, right)), MARKS[stretch.part])
    if drop:
        band = (slice(TOP + BAR + drop - BAR // 4, TOP + BAR + drop), slice(left, right))
        fill(picture, band, MARKS[Part.LATE])


def _x(at: Rational, span: Rational) -> int:
    return LEFT + math.floor((RIGHT - LEFT) * at / span)


def _span(machine: Machine, found: list[Stretch]) -> Rational:
    last = max(stretch.end for stretch in found)
    return max(machine.blank_cycles, min(last, math.floor(machine.blank_cycles * LONGEST)))


def _parts(machine: Machine, burst: Burst) -> list[tuple[Part, int]]:
    """What the bytes of a burst are, in runs."""
    runs: list[tuple[Part, int]] = []
    for address in burst.addresses:
        part = _part_of(machine, address)
        if runs and runs[-1][0] is part:
            runs[-1] = (part, runs[-1][1] + 1)
        else:
            runs.append((part, 1))
    return runs


def _part_of(machine: Machine, address: int) -> Part:
    region = next((region for region in machine.regions if address in region), None)
    if region is None:
        return Part.NOWHERE
    if region.kind.is_view:
        return Part.VIEW
    return Part.MAP if region.kind is RegionKind.MAP else Part.PATTERNS


def _told(moment: Moment) -> str:
    refresh, full = moment.refresh, moment.machine.blank_cycles
    if not refresh.cycles:
        return "This blanking was not had at all: nothing could be written."
    whole = f"of {full} cycles" if refresh.cycles == full else f"of {refresh.cycles} cycles instead of {full}"
    if not refresh.bursts:
        return f"A blanking {whole}, in which nothing is written."
    written = f"{counted(len(refresh.bursts), 'burst')} in a blanking {whole}: {cycles(refresh.used)} cycles are used"
    over = refresh.used - refresh.cycles
    return f"{written}, {cycles(over)} TOO MANY." if over > 0 else f"{written}, {cycles(-over)} are left."


def _words(found: list[Stretch], machine: Machine, span: Rational) -> tuple[Word, ...]:
    full = machine.blank_cycles
    end = _x(full, span)
    below = TOP + BAR + DROP + 30
    words = [
        Word(text="the beam leaves the picture", at=(LEFT, TOP - 30), size=LETTER, anchor="lb"),
        Word(text="the display begins again", at=(min(end, RIGHT), TOP - 30), size=LETTER, anchor="rb"),
        Word(text="0", at=(LEFT, below), size=LETTER),
        Word(text=f"{full} cycles", at=(min(end, RIGHT), below), size=LETTER, anchor="rt"),
    ]
    last = max(stretch.end for stretch in found)
    if last > span:
        text = f"goes on to cycle {cycles(last)}"
        words.append(Word(text=text, at=(RIGHT, below + 34), size=LETTER, anchor="rt"))
    return (*words, *_numbers([stretch for stretch in found if stretch.end <= full], span, 0))


def _numbers(found: list[Stretch], span: Rational, top: int) -> list[Word]:
    """The number of each burst below its bytes, where there is room for it."""
    words = []
    for stretch in found:
        left, right = _x(stretch.start, span), _x(stretch.end, span)
        if stretch.part is not Part.SET_UP and stretch.burst is not None and right - left > ROOM_FOR_A_NUMBER:
            at = ((left + right) / 2, top + TOP + BAR + 10)
            words.append(Word(text=f"burst {stretch.burst}", at=at, size=LETTER, anchor="mt"))
    return words
