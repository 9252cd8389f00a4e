"""Expected, seen and what differs, side by side."""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import TILE_SIDE, Answer, Machine
from planeproof.display import UNDEFINED, Frame, blank_frame, look_of
from planeproof.pictures.colours import BLUE, GROUND, LINE, REDDISH_PURPLE, VERMILLION
from planeproof.pictures.course import Course, Moment
from planeproof.pictures.figure import Figure, Key, letter_of, side_by_side, stacked
from planeproof.pictures.frames import displayed, ink
from planeproof.pictures.lettering import Word
from planeproof.pictures.marks import Canvas, Mark, Shape, canvas, painted
from planeproof.pictures.naming import picture_name
from planeproof.pictures.shape import Enlargement, fitting
from planeproof.report.figures import counted
from planeproof.report.strip import cells_of, cut_round

Values = NDArray[np.uint8]
Labelled = tuple[Canvas, tuple[Word, ...]]

PANELS = 3
MISSING, TOO_MUCH, ANOTHER = 1, 2, 3
MARKS = {
    MISSING: Mark(shape=Shape.RING, colour=BLUE),
    TOO_MUCH: Mark(shape=Shape.SOLID, colour=VERMILLION),
    ANOTHER: Mark(shape=Shape.STRIPES, colour=REDDISH_PURPLE),
}
SHADED = Mark(shape=Shape.SOLID, colour=LINE)
WORDS = {
    MISSING: "missing: should be drawn, is not (hollow)",
    TOO_MUCH: "too much: is drawn, should not be (solid)",
    ANOTHER: "another colour, or undefined (striped)",
}


@dataclass(frozen=True, kw_only=True, eq=False)
class Expected:
    """The picture due in a refresh that the frame is most like, by its number (-1: the background), and its frame."""

    number: int
    frame: Frame


def expected(moment: Moment) -> Expected:
    """What should be seen: the picture seen before or the next one taken, whichever the frame is more like."""
    machine, pictures = moment.machine, moment.scene.pictures
    looks = {n: blank_frame(machine) if n < 0 else look_of(machine, pictures[n]) for n in _due(moment)}
    unlike = {number: int((look != moment.refresh.frame).sum()) for number, look in looks.items()}
    number = min(reversed(unlike), key=unlike.__getitem__)  # of two as like, the next: that is what was meant
    return Expected(number=number, frame=looks[number])


def differences(moment: Moment, right: Frame) -> NDArray[np.uint8]:
    """For each pixel of the window how the frame differs from ``right``: one of the marks above, or 0."""
    seen, machine = moment.refresh.frame, moment.machine
    drawn, wanted = ink(machine, seen), ink(machine, right)
    values = np.where(seen != right, ANOTHER, 0)
    values[wanted & ~drawn] = MISSING
    values[drawn & ~wanted] = TOO_MUCH
    values[seen == UNDEFINED] = ANOTHER
    return values.astype(np.uint8)


def compared_figure(course: Course, moment: Moment, by: Enlargement) -> Figure:
    """Expected, seen, and the pixels that differ; in a large window some of those once more, enlarged."""
    right = expected(moment)
    values = differences(moment, right.frame)
    wrong = int((values > 0).sum())
    titles = (f"expected: {picture_name(right.number)}", "seen", f"{counted(wrong, 'pixel')} unlike")
    frames = (right.frame, moment.refresh.frame)
    body, words = side_by_side(list(zip(titles, _panels(moment.machine, frames, values, by), strict=True)))
    body, words = _with_enlarged(moment.machine, frames, values, by, (body, words))
    shaded = [Key(mark=SHADED, text="a cell with any difference")] if wrong else []
    marks = [Key(mark=MARKS[value], text=WORDS[value]) for value in MARKS if (values == value).any()]
    return Figure(
        title=f"Expected and seen, {moment.name}",
        notes=("What is seen is not what is expected." if wrong else "What is seen is what is expected.",),
        body=body,
        words=words,
        legend=(*marks, *shaded),
        pixel=by.left_over,
    )


def _panels(machine: Machine, frames: tuple[Frame, Frame], values: Values, by: Enlargement) -> list[Canvas]:
    """Two frames, and what differs between them on a ground that is darker in the cells concerned."""
    ground = canvas(values.shape[0] * by.down, values.shape[1] * by.across, GROUND)
    rows, columns = (size // TILE_SIDE for size in values.shape)
    concerned = values.reshape(rows, TILE_SIDE, columns, TILE_SIDE).any(axis=(1, 3))
    side = (TILE_SIDE * by.down, TILE_SIDE * by.across)
    ground[np.kron(concerned, np.ones(side, dtype=np.bool_))] = SHADED.colour
    return [*(displayed(machine, frame, by) for frame in frames), painted(values, MARKS, by.size, ground)]


def _with_enlarged(
    machine: Machine, frames: tuple[Frame, Frame], values: Values, by: Enlargement, above: Labelled
) -> Labelled:
    """The cells of the first difference below ``above``, larger, if there is one and the window is large."""
    body, words = above
    cut = cut_round(machine, cells_of(machine, values > 0))
    if not (values > 0).any() or not cut.within(machine):
        return above
    rows = slice(cut.top * TILE_SIDE, (cut.bottom + 1) * TILE_SIDE)
    columns = slice(cut.left * TILE_SIDE, (cut.right + 1) * TILE_SIDE)
    near = (frames[0][rows, columns], frames[1][rows, columns])
    room = body.shape[1] * 2 // 3
    larger = fitting(near[0].shape[1] * PANELS, by.shape, room, room)
    titles = (f"enlarged: {cut.within(machine)}", "", "")
    panels = _panels(machine, near, values[rows, columns], larger)
    below, more = side_by_side(list(zip(titles, panels, strict=True)), letter=letter_of(body.shape[1]))
    gap = letter_of(body.shape[1])
    moved = [replace(word, at=(word.at[0], word.at[1] + body.shape[0] + gap)) for word in more]
    return stacked([body, below], gap), (*words, *moved)


def _due(moment: Moment) -> list[int]:
    before, refresh = moment.previous, moment.refresh
    current = -1 if before is None else before.current
    upcoming = None if before is None else before.upcoming
    if upcoming is None and refresh.answer is Answer.TAKEN:
        upcoming = refresh.offered
    return [current] if upcoming is None else [current, upcoming]
