"""What a frame is called: the background, a picture, or what is wrong with it."""

from planeproof.pictures.course import Course, Moment
from planeproof.report.refreshes import Names


def seen_name(course: Course, moment: Moment) -> str:
    """What the viewer sees in words."""
    return Names(course.play).of(moment.refresh)


def picture_name(number: int) -> str:
    """``picture 3``, or the background."""
    return "the background" if number < 0 else f"picture {number}"
