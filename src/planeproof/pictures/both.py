"""Both sides at once, printed over each other in two colours."""

import numpy as np

from planeproof.pictures.colours import BEHIND, BLACK, GROUND
from planeproof.pictures.course import Course, Moment
from planeproof.pictures.figure import Figure, Key
from planeproof.pictures.frames import SEEN_INK, behind_frame, ink
from planeproof.pictures.marks import Mark, Shape, canvas, painted
from planeproof.pictures.shape import Enlargement

ONLY_SEEN, ONLY_BEHIND, IN_BOTH = 1, 2, 3
MARKS = {
    ONLY_SEEN: SEEN_INK,
    ONLY_BEHIND: Mark(shape=Shape.RING, colour=BEHIND),
    IN_BOTH: Mark(shape=Shape.SOLID, colour=BLACK),
}


def both_sides(moment: Moment) -> np.ndarray[tuple[int, ...], np.dtype[np.uint8]]:
    """For each pixel of the window whether it has ink on the seen side, behind it, both or neither (0)."""
    seen = ink(moment.machine, moment.refresh.frame)
    behind = ink(moment.machine, behind_frame(moment))
    return np.asarray(seen * ONLY_SEEN + behind * ONLY_BEHIND, dtype=np.uint8)


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
        ),
        pixel=by.left_over,
    )
