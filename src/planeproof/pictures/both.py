"""Both sides at once, printed over each other in two colours."""

import numpy as np

from planeproof.display import UNDEFINED
from planeproof.pictures.colours import BEHIND, BLACK, GROUND
from planeproof.pictures.course import Course, Moment
from planeproof.pictures.figure import Figure, Key
from planeproof.pictures.frames import NOT_KNOWN, SEEN_INK, behind_frame, ink, undefined_key
from planeproof.pictures.marks import Mark, Shape, canvas, painted
from planeproof.pictures.shape import Enlargement

ONLY_SEEN, ONLY_BEHIND, IN_BOTH, NOBODY_KNOWS = 1, 2, 3, 4
MARKS = {
    ONLY_SEEN: SEEN_INK,
    ONLY_BEHIND: Mark(shape=Shape.RING, colour=BEHIND),
    IN_BOTH: Mark(shape=Shape.SOLID, colour=BLACK),
    NOBODY_KNOWS: NOT_KNOWN,
}


def both_sides(moment: Moment) -> np.ndarray[tuple[int, ...], np.dtype[np.uint8]]:
    """For each pixel of the window: ink on the seen side, behind it, in both, in neither (0), or undefined."""
    frame = moment.refresh.frame
    behind = ink(moment.machine, behind_frame(moment))
    values = np.asarray(ink(moment.machine, frame) * ONLY_SEEN + behind * ONLY_BEHIND, dtype=np.uint8)
    values[frame == UNDEFINED] = NOBODY_KNOWS
    return values


def both_figure(course: Course, moment: Moment, by: Enlargement) -> Figure:
    """What is seen and what is prepared behind it, in one picture."""
    values = both_sides(moment)
    ground = canvas(values.shape[0] * by.down, values.shape[1] * by.across, GROUND)
    return Figure(
        title=f"Both sides at once, {moment.name}",
        notes=("What is seen, and what is being prepared behind it, printed over each other.",),
        body=painted(values, MARKS, by.size, ground),
        legend=(
            Key(mark=MARKS[ONLY_SEEN], text="seen now"),
            Key(mark=MARKS[ONLY_BEHIND], text="behind it, not to be seen yet (hollow)"),
            Key(mark=MARKS[IN_BOTH], text="in both"),
            *undefined_key(moment.refresh.frame),
        ),
        pixel=by.left_over,
    )
