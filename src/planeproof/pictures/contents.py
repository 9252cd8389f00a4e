"""What is in the pool, plane by plane: the planes of a tile stand below one another, like the staves of a score."""

import math

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import TILE_SIDE
from planeproof.pictures.colours import BEHIND, BLUE, GROUND, SEEN
from planeproof.pictures.course import Course, Moment
from planeproof.pictures.figure import Figure, Key
from planeproof.pictures.lettering import Word, width_of
from planeproof.pictures.marks import Canvas, Mark, Shape, canvas
from planeproof.pictures.shape import Enlargement
from planeproof.report.figures import counted

WIDTH = 1680
MOST_A_ROW, LARGEST_BIT = 22, 12
GAP, BETWEEN_STAVES, BETWEEN_SYSTEMS = 1, 1, 4
"""In bits: paper between two tiles, between two planes of a tile, and between two rows of tiles."""

LETTER = 22
MARKS = {
    "seen": Mark(shape=Shape.SOLID, colour=SEEN),
    "behind": Mark(shape=Shape.SOLID, colour=BEHIND),
    "neither": Mark(shape=Shape.SOLID, colour=BLUE),
}
WORDS = {
    "seen": "S  a plane of the side that is seen now",
    "behind": "N  a plane of the side behind it",
    "neither": "a plane of neither",
}
_LETTERS = {"seen": " S", "behind": " N", "neither": ""}


def bits(moment: Moment, plane: int) -> NDArray[np.bool_]:
    """The bits of one plane of every tile of the pool, in the pool's order; shape (pool, 8, 8)."""
    values = moment.after.pixels(np.array(moment.machine.pool))
    return np.asarray(values >> plane & 1, dtype=np.bool_)


def role(moment: Moment, plane: int) -> str:
    """Whose plane it is now: that of the side that is seen, of the one behind, or of neither."""
    machine = moment.machine
    if moment.seen is not None and plane in machine.planes_of(moment.seen):
        return "seen"
    return "behind" if moment.behind is not None and plane in machine.planes_of(moment.behind) else "neither"


def contents_figure(course: Course, moment: Moment, by: Enlargement) -> Figure:
    """Every tile of the pool, its planes below one another."""
    pool = moment.machine.pool
    roles = [role(moment, plane) for plane in range(moment.machine.tiles.planes)]
    used = int(moment.after.pixels(np.array(pool)).any(axis=(1, 2)).sum())
    tiles = f"{counted(len(pool), 'tile')}, {used} of them with anything in them"
    return Figure(
        title=f"What is in the pool, {moment.name}",
        notes=(f"{tiles}; the planes of a tile stand below one another.",),
        body=staves([bits(moment, plane) for plane in range(len(roles))], [MARKS[name] for name in roles]),
        words=_words(pool, roles),
        legend=tuple(Key(mark=MARKS[name], text=WORDS[name]) for name in MARKS if name in roles),
    )


def staves(planes: list[NDArray[np.bool_]], marks: list[Mark]) -> Canvas:
    """Rows of tiles, each of them with a line for every plane; ``planes`` have shape (tiles, 8, 8)."""
    count = len(planes[0])
    a_row, bit, margin = _sizes(count, len(planes))
    system = _system(len(planes)) * bit
    rows = math.ceil(count / a_row)
    picture = canvas(rows * system - BETWEEN_SYSTEMS * bit, margin + (a_row * (TILE_SIDE + GAP) - GAP) * bit)
    side = TILE_SIDE * bit
    for plane, (tiles, mark) in enumerate(zip(planes, marks, strict=True)):
        for number, tile in enumerate(tiles):
            y = number // a_row * system + plane * (TILE_SIDE + BETWEEN_STAVES) * bit
            x = margin + number % a_row * (TILE_SIDE + GAP) * bit
            part = picture[y : y + side, x : x + side]
            part[:] = GROUND
            part[tile.repeat(bit, axis=0).repeat(bit, axis=1)] = mark.colour
    return picture


def _system(planes: int) -> int:
    """Bits from one row of tiles to the next."""
    return planes * (TILE_SIDE + BETWEEN_STAVES) - BETWEEN_STAVES + BETWEEN_SYSTEMS


def _sizes(tiles: int, planes: int) -> tuple[int, int, int]:
    """Tiles in a row, pixels of a bit, and pixels of the margin in which the planes are named."""
    a_row = min(MOST_A_ROW, tiles)
    margin = width_of("tile 00000, plane 0 S", LETTER) + 12
    return a_row, max(2, min(LARGEST_BIT, (WIDTH - margin) // (a_row * (TILE_SIDE + GAP)))), margin


def _words(pool: tuple[int, ...], roles: list[str]) -> tuple[Word, ...]:
    a_row, bit, margin = _sizes(len(pool), len(roles))
    words = []
    for first in range(0, len(pool), a_row):
        for plane, name in enumerate(roles):
            top = first // a_row * _system(len(roles)) + plane * (TILE_SIDE + BETWEEN_STAVES)
            first_of_row = "" if plane else f"tile {pool[first]}, "
            text = f"{first_of_row}plane {plane}{_LETTERS[name]}"
            at = (margin - 10, (top + TILE_SIDE / 2) * bit)
            words.append(Word(text=text, at=at, size=LETTER, anchor="rm"))
    return tuple(words)
