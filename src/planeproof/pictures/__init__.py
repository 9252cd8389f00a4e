"""Pictures of a play: pure functions from its values to images, and PNG files of them.

    course = course_of(play)
    png_of(course, 3, kind_named("pool"))            # the bytes of a PNG
    list(write_pictures(course, Path("here"), Wanted()))

writing, animation <- kinds, flashes <- frames, both, compared, blanking, pool, contents, cells <- course, figure <-
unbuffered, sides, lettering, marks, shape, colours, caution.
"""

from planeproof.pictures.animation import ANIMATED, Animation, TooManyFlashes, write_animation
from planeproof.pictures.caution import CAUTION
from planeproof.pictures.course import Course, Moment, course_of
from planeproof.pictures.figure import Figure, composed, png
from planeproof.pictures.flashes import Excess, excesses
from planeproof.pictures.kinds import KINDS, Kind, kind_named
from planeproof.pictures.style import Style
from planeproof.pictures.writing import Wanted, figure_of, png_of, write_pictures

__all__ = [
    "ANIMATED",
    "CAUTION",
    "KINDS",
    "Animation",
    "Course",
    "Excess",
    "Figure",
    "Kind",
    "Moment",
    "Style",
    "TooManyFlashes",
    "Wanted",
    "composed",
    "course_of",
    "excesses",
    "figure_of",
    "kind_named",
    "png",
    "png_of",
    "write_animation",
    "write_pictures",
]
