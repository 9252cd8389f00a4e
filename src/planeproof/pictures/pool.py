"""The pool as a strip: which of its tiles the seen picture uses, which the next one, which are free.

The strip is like a paper roll with three tracks, a column for every tile: what a tile is used for is told by where its
column is filled, and only then by colour and pattern.
"""

import math
from enum import Enum

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import Machine
from planeproof.display import PictureMemory, View, looks
from planeproof.display.plan import NOBODY
from planeproof.pictures.colours import BEHIND, BLACK, GROUND, SEEN
from planeproof.pictures.course import Course, Moment
from planeproof.pictures.figure import Figure, Key
from planeproof.pictures.lettering import Word
from planeproof.pictures.marks import Canvas, Mark, Shape, canvas, fill
from planeproof.pictures.shape import Enlargement
from planeproof.report.figures import counted

WIDTH, MARGIN = 1680, 230
MOST_A_ROW, WIDEST_COLUMN = 88, 60
TRACK, GAP, BETWEEN, LETTER = 34, 2, 30, 22
"""Pixels: a track, paper between tracks and columns, paper between rows, lettering."""


class Use(Enum):
    """What a tile of the pool is used for in one refresh."""

    SEEN = "seen"
    NEXT = "next"
    BOTH = "both"
    AGAIN = "to be re-used"
    FREE = "free"


MARKS = {
    Use.SEEN: Mark(shape=Shape.SOLID, colour=SEEN),
    Use.NEXT: Mark(shape=Shape.STRIPES, colour=BEHIND),
    Use.AGAIN: Mark(shape=Shape.DOT, colour=BLACK),
}
TRACKS = ((Use.SEEN, Use.BOTH), (Use.NEXT, Use.BOTH), (Use.AGAIN,))
"""The uses that fill each of the three tracks, the first of them the one that the track is named after."""

TRACK_NAMES = ("seen", "next", "old")
ROW = len(TRACKS) * TRACK - GAP
WORDS = {
    Use.SEEN: "used by the picture seen now only",
    Use.NEXT: "used by the next picture only",
    Use.BOTH: "used by both: both tracks are filled",
    Use.AGAIN: "old, to be re-used: in neither picture, but an earlier picture's lines are still in it",
    Use.FREE: "free: in neither, and empty: no track is filled",
}


def uses(moment: Moment) -> list[Use]:
    """What each tile of the pool is used for, in the pool's order.

    A tile is the seen picture's if the shown page names it, and the next one's if the page that is shown at the next
    reveal of this run names it then. Where both are seen through the same page, it is a picture's if it also has ink
    in the planes that the picture is seen through. If the run reveals nothing more, the side behind counts as it is.
    """
    machine, now = moment.machine, moment.after
    seen = now.view
    behind, then = moment.behind_view, moment.reveal or now
    shared = behind is not None and (seen.page, seen.bank) == (behind.page, behind.bank)
    by_seen = used_through(now, seen, with_ink=shared)
    nothing = np.zeros(machine.tiles.count, dtype=np.bool_)
    by_next = nothing if behind is None else used_through(then, behind, with_ink=shared)
    holds = np.asarray(now.pixels(np.arange(machine.tiles.count)).any(axis=(1, 2)))
    return [_use(bool(by_seen[t]), bool(by_next[t]), bool(holds[t])) for t in machine.pool]


def _use(seen: bool, following: bool, holds: bool) -> Use:
    if seen and following:
        return Use.BOTH
    if seen or following:
        return Use.SEEN if seen else Use.NEXT
    return Use.AGAIN if holds else Use.FREE


def used_through(memory: PictureMemory, view: View, *, with_ink: bool) -> NDArray[np.bool_]:
    """Which tiles are named on the page of ``view``, and show anything but background, if that counts; (tiles,)."""
    machine = memory.machine
    named = memory.tiles_named(view.page, view.bank)
    used = np.zeros(machine.tiles.count, dtype=np.bool_)
    used[named[named != NOBODY]] = True
    if with_ink:
        background = looks(machine.colours)[machine.colours.background]
        shades = memory.shades(view)[memory.pixels(np.arange(machine.tiles.count))]
        used &= (shades != background).any(axis=(1, 2))
    return used


def pool_figure(course: Course, moment: Moment, by: Enlargement) -> Figure:
    """The strip of one refresh."""
    found = uses(moment)
    counts = {use: found.count(use) for use in Use}
    taken = len(found) - counts[Use.FREE] - counts[Use.AGAIN]
    note = f"The window may use {counted(len(found), 'tile')}, a column each. In use in this refresh: {taken}."
    return Figure(
        title=f"The pool, {moment.name}",
        notes=(note,),
        body=strip(found),
        words=_words(moment.machine, found),
        legend=tuple(Key(mark=MARKS.get(use), text=f"{WORDS[use]}: {counts[use]}") for use in Use),
    )


def strip(found: list[Use]) -> Canvas:
    """A column a tile, with three tracks that are filled or not, on as many rows as there must be."""
    column, a_row = _columns(len(found))
    rows = math.ceil(len(found) / a_row)
    picture = canvas(rows * (ROW + BETWEEN) - BETWEEN, MARGIN + a_row * column)
    for number, use in enumerate(found):
        row, place = divmod(number, a_row)
        x = MARGIN + place * column
        for track, filled in enumerate(TRACKS):
            y = row * (ROW + BETWEEN) + track * TRACK
            picture[y : y + TRACK - GAP, x : x + column - GAP] = GROUND
            if use in filled:
                fill(picture, (slice(y, y + TRACK - GAP), slice(x, x + column - GAP)), MARKS[filled[0]])
    return picture


def _columns(count: int) -> tuple[int, int]:
    """Pixels from one tile to the next, and tiles in a row."""
    a_row = min(count, MOST_A_ROW)
    return min(WIDEST_COLUMN, (WIDTH - MARGIN) // a_row), a_row


def _words(machine: Machine, found: list[Use]) -> tuple[Word, ...]:
    _, a_row = _columns(len(found))
    words = []
    for first in range(0, len(found), a_row):
        top = first // a_row * (ROW + BETWEEN)
        words.append(Word(text=f"from tile {machine.pool[first]}", at=(0, top + ROW / 2), size=LETTER, anchor="lm"))
        for track, text in enumerate(TRACK_NAMES):
            middle = top + track * TRACK + (TRACK - GAP) / 2
            words.append(Word(text=text, at=(MARGIN - 10, middle), size=LETTER, anchor="rm"))
    return tuple(words)
