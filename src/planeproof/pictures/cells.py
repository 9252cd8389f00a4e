"""The window cell by cell: which moved or were redrawn in a refresh, and how many different ones a picture has."""

from enum import Enum

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import Machine
from planeproof.display import UNDEFINED, PictureMemory, View
from planeproof.display.plan import NOBODY
from planeproof.pictures.colours import BLACK, BLUE, LINE, ORANGE, PAPER, REDDISH_PURPLE, TEXT
from planeproof.pictures.course import Course, Moment
from planeproof.pictures.figure import Figure, Key
from planeproof.pictures.lettering import Word
from planeproof.pictures.marks import Canvas, Mark, Shape, canvas, fill
from planeproof.pictures.naming import seen_name
from planeproof.pictures.shape import Enlargement
from planeproof.report.figures import counted

WIDTH, LARGEST, SMALLEST, GAP = 1680, 120, 8, 2
ROOM_FOR_LETTERS = 22
NOTHING = Mark(shape=Shape.RING, colour=LINE)


class Change(Enum):
    """What became of a cell of the side behind in one refresh: its letter."""

    NEITHER = ""
    MOVED = "M"
    REDRAWN = "R"
    BOTH = "B"


CHANGES = {
    Change.MOVED: Mark(shape=Shape.STRIPES, colour=ORANGE),
    Change.REDRAWN: Mark(shape=Shape.SOLID, colour=BLUE),
    Change.BOTH: Mark(shape=Shape.SOLID, colour=BLACK),
    Change.NEITHER: NOTHING,
}
CHANGE_WORDS = {
    Change.MOVED: "M  moved: the map names another tile here",
    Change.REDRAWN: "R  redrawn: the pattern of its tile was changed",
    Change.BOTH: "B  both",
    Change.NEITHER: "neither",
}


class Cell(Enum):
    """What a cell of a picture holds: its letter."""

    EMPTY = ""
    UNDEFINED = "?"
    FIRST = "1"
    REPEATED = "="


CELLS = {
    Cell.FIRST: Mark(shape=Shape.SOLID, colour=BLUE),
    Cell.REPEATED: Mark(shape=Shape.STRIPES, colour=ORANGE),
    Cell.UNDEFINED: Mark(shape=Shape.CROSS, colour=REDDISH_PURPLE),
    Cell.EMPTY: NOTHING,
}
CELL_WORDS = {
    Cell.FIRST: "1  the first cell with this pattern: it needs a tile",
    Cell.REPEATED: "=  the same pattern again: it can share that tile",
    Cell.UNDEFINED: "undefined: wrecked by a byte that came too late",
    Cell.EMPTY: "empty: the blank tile does for it",
}
_LETTERS_ON = {Shape.SOLID: PAPER}


def changes(moment: Moment) -> list[Change]:
    """For each cell of the window whether the refresh moved it, redrew it, both or neither.

    Looked at through the view that was behind at the end of the refresh before, or, if this refresh revealed it, is
    now seen; on a machine with one side through the view there is.
    """
    machine, view = moment.machine, _worked_on(moment)
    before, after = (memory.tiles_named(view.page, view.bank) for memory in (moment.before, moment.after))
    moved = before != after
    redrawn = (_shown(moment.before, after, view) != _shown(moment.after, after, view)).any(axis=(1, 2))
    kinds = {(True, True): Change.BOTH, (True, False): Change.MOVED, (False, True): Change.REDRAWN}
    return [kinds.get((bool(moved[c]), bool(redrawn[c])), Change.NEITHER) for c in range(machine.cells)]


def contents_of_cells(moment: Moment) -> list[Cell]:
    """For each cell of the frame whether it is empty, undefined, the first of its look, or one of a look before it."""
    frame, machine = moment.refresh.frame, moment.machine
    rows, columns = machine.window.rows, machine.window.columns
    grid = frame.reshape(rows, 8, columns, 8).transpose(0, 2, 1, 3).reshape(machine.cells, 64)
    background = moment.after.shown_cells(np.array([NOBODY]), moment.after.view).reshape(64)
    met: set[bytes] = set()
    found = []
    for cell in grid:
        found.append(_kind(cell, background, met))
        met.add(cell.tobytes())
    return found


def _kind(cell: NDArray[np.int16], background: NDArray[np.int16], met: set[bytes]) -> Cell:
    if (cell == UNDEFINED).any():
        return Cell.UNDEFINED
    if (cell == background).all():
        return Cell.EMPTY
    return Cell.REPEATED if cell.tobytes() in met else Cell.FIRST


def changes_figure(course: Course, moment: Moment, by: Enlargement) -> Figure:
    """What the refresh did to each cell."""
    found = changes(moment)
    counts = {change: found.count(change) for change in Change}
    touched = len(found) - counts[Change.NEITHER]
    where = "the side being prepared" if moment.machine.sides > 1 else "the only side there is"
    return Figure(
        title=f"What was done to each cell, {moment.name}",
        notes=(f"{touched} of {counted(len(found), 'cell')} of {where} changed in this refresh.",),
        body=grid(moment.machine, [CHANGES[change] for change in found]),
        words=_letters(moment.machine, [(c.value, CHANGES[c]) for c in found]),
        legend=tuple(Key(mark=CHANGES[c], text=f"{CHANGE_WORDS[c]}: {counts[c]}") for c in CHANGES),
    )


def counts_figure(course: Course, moment: Moment, by: Enlargement) -> Figure:
    """How many cells there are, are occupied and are different, and how many tiles there are for them."""
    found = contents_of_cells(moment)
    counts = {kind: found.count(kind) for kind in Cell}
    occupied = counts[Cell.FIRST] + counts[Cell.REPEATED]
    figures = f"{counted(len(found), 'cell')}, {occupied} occupied, {counts[Cell.FIRST]} different"
    return Figure(
        title=f"Counted, {moment.name}: {figures}, {counted(moment.machine.cap, 'tile')} in the pool",
        notes=(f"What is seen now, cell by cell: {seen_name(course, moment)}.",),
        body=grid(moment.machine, [CELLS[kind] for kind in found]),
        words=_letters(moment.machine, [(kind.value, CELLS[kind]) for kind in found]),
        legend=tuple(Key(mark=CELLS[kind], text=f"{CELL_WORDS[kind]}: {counts[kind]}") for kind in _told(counts)),
    )


def _told(counts: dict[Cell, int]) -> list[Cell]:
    """What the legend lists: undefined cells only where there are any."""
    return [kind for kind in CELLS if kind is not Cell.UNDEFINED or counts[kind]]


def grid(machine: Machine, marks: list[Mark]) -> Canvas:
    """A square a cell, in the window's rows and columns."""
    side = _side(machine)
    window = machine.window
    picture = canvas(window.rows * (side + GAP) - GAP, window.columns * (side + GAP) - GAP)
    for cell, mark in enumerate(marks):
        row, column = divmod(cell, window.columns)
        y, x = row * (side + GAP), column * (side + GAP)
        fill(picture, (slice(y, y + side), slice(x, x + side)), mark)
    return picture


def _side(machine: Machine) -> int:
    return max(SMALLEST, min(LARGEST, (WIDTH + GAP) // machine.window.columns - GAP))


def _letters(machine: Machine, cells: list[tuple[str, Mark]]) -> tuple[Word, ...]:
    side = _side(machine)
    if side < ROOM_FOR_LETTERS:
        return ()
    words = []
    for cell, (text, mark) in enumerate(cells):
        row, column = divmod(cell, machine.window.columns)
        at = (column * (side + GAP) + side / 2, row * (side + GAP) + side / 2)
        if text and mark.shape is Shape.SOLID:
            colour = _LETTERS_ON.get(mark.shape, TEXT)
            words.append(Word(text=text, at=at, size=round(side * 0.6), anchor="mm", colour=colour))
    return tuple(words)


def _worked_on(moment: Moment) -> View:
    """The view of the side that the refresh had behind it when it began."""
    revealed = moment.seen is not None and not _same_view(moment.before, moment.after)
    if revealed or moment.behind_view is None:
        return moment.after.view
    return moment.behind_view


def _same_view(before: PictureMemory, after: PictureMemory) -> bool:
    return before.view == after.view


def _shown(memory: PictureMemory, tiles: NDArray[np.intp], view: View) -> NDArray[np.int16]:
    return memory.shown_cells(tiles, view)
