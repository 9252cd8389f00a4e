"""Frames that follow one another in one file, an animated PNG: made only when asked for, and looked through first."""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from pathlib import Path

from PIL import Image
from PIL.PngImagePlugin import PngInfo

from planeproof.contract import Machine
from planeproof.display import Frame
from planeproof.pictures.caution import CAUTION
from planeproof.pictures.course import Course, Moment
from planeproof.pictures.figure import Figure, composed
from planeproof.pictures.flashes import Excess, excesses
from planeproof.pictures.frames import behind_frame, enlarged, in_colours
from planeproof.pictures.marks import Canvas
from planeproof.pictures.style import Style

WIDEST = 1280
"""Pixels that an animation may be wide, unless a scale is asked for."""

ANIMATED = {
    "seen": "Seen",
    "behind": "Being prepared",
    "unbuffered": "Without buffering: NOT what this scheduler shows",
}
"""The kinds of picture that can be animated, and what they are called."""

_PERIODS = {"625": Fraction(1, 50), "525": Fraction(1, 60)}


class TooManyFlashes(ValueError):
    """An animation that is not made, for it would flash more than the published limits allow."""

    def __init__(self, found: Sequence[Excess]) -> None:
        super().__init__("; ".join(map(str, found)))
        self.found = tuple(found)


@dataclass(frozen=True, kw_only=True)
class Animation:
    """What is asked for: a ``kind`` of `ANIMATED`, every refresh ``slower`` times as long as on the display.

    ``despite_flashes`` has it made even where it exceeds the limits.
    """

    kind: str = "seen"
    slower: int = 1
    style: Style = field(default_factory=Style)
    despite_flashes: bool = False


def refresh_seconds(machine: Machine) -> Fraction:
    """How long a refresh takes, by the line standard's nominal rate; the shorter of the two where it is neither."""
    return _PERIODS.get(machine.time.standard[:3], min(_PERIODS.values()))


def frames_of(course: Course, kind: str) -> list[Canvas]:
    """The frames of all refreshes, a pixel for a pixel of the display. Raises `KeyError` for another kind."""
    return [in_colours(course.machine, _TAKEN[kind](moment)) for moment in course.moments]


_TAKEN: dict[str, Callable[[Moment], Frame]] = {
    "seen": lambda moment: moment.refresh.frame,
    "behind": behind_frame,
    "unbuffered": lambda moment: moment.unbuffered,
}


def write_animation(course: Course, path: Path, wanted: Animation) -> tuple[Excess, ...]:
    """Write the animation, played once, and say by what it exceeds the limits.

    Raises `TooManyFlashes`, before anything is written, if it exceeds them and is not wanted despite that; `OSError`.
    """
    frames = frames_of(course, wanted.kind)
    period = refresh_seconds(course.machine) * wanted.slower
    found = excesses(frames, period)
    if found and not wanted.despite_flashes:
        raise TooManyFlashes(found)
    about = PngInfo()
    about.add_text("Title", ANIMATED[wanted.kind])
    about.add_text("Warning", " ".join([CAUTION, *(f"This animation EXCEEDS the limits: {one}." for one in found)]))
    first, *others = _images(course, wanted, frames, found)
    # A file holds whole milliseconds: rounded up, for a picture that comes sooner could flash more than was looked for.
    duration = math.ceil(1000 * period)
    first.save(
        path, "PNG", save_all=True, append_images=others, duration=duration, loop=1, pnginfo=about, default_image=False
    )
    return found


def _images(course: Course, wanted: Animation, frames: Sequence[Canvas], found: Sequence[Excess]) -> list[Image.Image]:
    by = wanted.style.enlargement(course.machine, widest=WIDEST)
    slower = f", {wanted.slower} times slower" if wanted.slower > 1 else ""
    exceeds = ("This animation EXCEEDS the limits.",) if found else ()
    return [
        composed(
            Figure(
                title=f"{ANIMATED[wanted.kind]}{slower}",
                notes=(CAUTION, *exceeds),
                body=enlarged(frame, by),
            ),
            labels=wanted.style.labels,
        )
        for frame in frames
    ]
