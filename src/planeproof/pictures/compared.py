"""Expected, seen and what differs, side by side."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import Answer
from planeproof.display import UNDEFINED, Frame, blank_frame, look_of
from planeproof.pictures.colours import BLUE, GROUND, REDDISH_PURPLE, VERMILLION
from planeproof.pictures.course import Course, Moment
from planeproof.pictures.figure import Figure, Key, side_by_side
from planeproof.pictures.frames import displayed, ink
from planeproof.pictures.marks import Mark, Shape, canvas, painted
from planeproof.pictures.naming import picture_name
from planeproof.pictures.shape import Enlargement

MISSING, TOO_MUCH, ANOTHER = 1, 2, 3
MARKS = {
    MISSING: Mark(shape=Shape.RING, colour=BLUE),
    TOO_MUCH: Mark(shape=Shape.SOLID, colour=VERMILLION),
    ANOTHER: Mark(shape=Shape.STRIPES, colour=REDDISH_PURPLE),
}
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
    """Expected, seen, and the pixels that differ."""
    right = expected(moment)
    values = differences(moment, right.frame)
    wrong = int((values > 0).sum())
    ground = canvas(values.shape[0] * by.down, values.shape[1] * by.across, GROUND)
    body, words = side_by_side(
        [
            (f"expected: {picture_name(right.number)}", displayed(moment.machine, right.frame, by)),
            ("seen", displayed(moment.machine, moment.refresh.frame, by)),
            (f"{wrong} pixels differ" if wrong != 1 else "1 pixel differs", painted(values, MARKS, by.size, ground)),
        ]
    )
    verdict = "What is seen is what is expected." if not wrong else "What is seen is not what is expected."
    return Figure(
        title=f"Expected and seen, {moment.name}",
        notes=(verdict,),
        body=body,
        words=words,
        legend=tuple(Key(mark=MARKS[value], text=WORDS[value]) for value in MARKS if (values == value).any()),
        pixel=by.left_over,
    )


def _due(moment: Moment) -> list[int]:
    before, refresh = moment.previous, moment.refresh
    current = -1 if before is None else before.current
    upcoming = None if before is None else before.upcoming
    if upcoming is None and refresh.answer is Answer.TAKEN:
        upcoming = refresh.offered
    return [current] if upcoming is None else [current, upcoming]
