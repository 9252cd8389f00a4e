"""Frames as the display shows them: seen, prepared behind what is seen, and as it would be without buffering."""

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import Machine
from planeproof.display import UNDEFINED, Frame, blank_frame
from planeproof.pictures.colours import LINE, PAPER, REDDISH_PURPLE, SEEN
from planeproof.pictures.course import Course, Moment
from planeproof.pictures.figure import Figure, Key
from planeproof.pictures.marks import Canvas, Mark, Shape, canvas, painted
from planeproof.pictures.naming import seen_name
from planeproof.pictures.shape import Enlargement

NOT_KNOWN = Mark(shape=Shape.STRIPES, colour=REDDISH_PURPLE)
"""Pixels of which nothing can be said."""


def in_colours(machine: Machine, frame: Frame) -> Canvas:
    """A frame in the display's own colours, a pixel for a pixel; undefined pixels in the colour of `NOT_KNOWN`."""
    meaning = [machine.colours.look(byte) for byte in range(256)]
    table = np.array([*meaning, NOT_KNOWN.colour], dtype=np.uint8)
    return table[np.where(frame == UNDEFINED, 256, frame)]


def enlarged(picture: Canvas, by: Enlargement) -> Canvas:
    """Every pixel as a block: the nearest neighbour, nothing smoothed."""
    return picture.repeat(by.down, axis=0).repeat(by.across, axis=1)


def displayed(machine: Machine, frame: Frame, by: Enlargement) -> Canvas:
    """A frame enlarged, undefined pixels striped."""
    picture = enlarged(in_colours(machine, frame), by)
    undefined: NDArray[np.bool_] = frame == UNDEFINED
    if not undefined.any():
        return picture
    picture[np.kron(undefined, np.ones(by.size, dtype=np.bool_))] = PAPER
    return painted(undefined.astype(np.uint8), {1: NOT_KNOWN}, by.size, picture)


def behind_frame(moment: Moment) -> Frame:
    """What stands on the side behind, seen through its own view; the background where there is no such side."""
    view = moment.behind_view
    return blank_frame(moment.machine) if view is None else moment.after.frame(view)


def seen_figure(course: Course, moment: Moment, by: Enlargement) -> Figure:
    """What the viewer sees."""
    return Figure(
        title=f"Seen, {moment.name}",
        notes=(f"The viewer sees {seen_name(course, moment)}.",),
        body=displayed(moment.machine, moment.refresh.frame, by),
        legend=undefined_key(moment.refresh.frame),
        pixel=by.left_over,
    )


def behind_figure(course: Course, moment: Moment, by: Enlargement) -> Figure:
    """What is being prepared behind what the viewer sees."""
    frame = behind_frame(moment)
    if moment.behind is None:
        note = "This machine has one side only: nothing can be prepared out of sight."
        body = canvas(frame.shape[0] * by.down, frame.shape[1] * by.across, LINE)
    else:
        note = f"Nobody sees this yet: it stands on side {moment.behind}, drawn through the view it will be seen by."
        body = displayed(moment.machine, frame, by)
    return Figure(title=f"Being prepared, {moment.name}", notes=(note,), body=body, pixel=by.left_over)


def unbuffered_figure(course: Course, moment: Moment, by: Enlargement) -> Figure:
    """What the viewer would see without buffering."""
    differing = int((moment.unbuffered != moment.refresh.frame).sum())
    same = "Here it happens to look the same." if not differing else f"{differing} pixels differ from what is seen."
    note = (
        "NOT what this scheduler shows: the very same bytes, at the same cycles, written straight into the picture "
        f"that is being looked at. Neither slowed nor exaggerated. {same}"
    )
    return Figure(
        title=f"Without buffering, {moment.name}",
        notes=(note,),
        body=displayed(moment.machine, moment.unbuffered, by),
        legend=undefined_key(moment.unbuffered),
        pixel=by.left_over,
    )


def undefined_key(frame: Frame) -> tuple[Key, ...]:
    """The legend for undefined pixels, where there are any."""
    if not (frame == UNDEFINED).any():
        return ()
    return (Key(mark=NOT_KNOWN, text="undefined: a byte came too late and wrecked the rest of the frame"),)


def ink(machine: Machine, frame: Frame) -> NDArray[np.bool_]:
    """Which pixels of a frame are anything but background."""
    return np.asarray(frame != blank_frame(machine))


SEEN_INK = Mark(shape=Shape.SOLID, colour=SEEN)
"""A pixel of what is seen, in pictures of both sides."""
