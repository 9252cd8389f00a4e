"""The kinds of picture, as a tuple that can be read."""

from collections.abc import Callable
from dataclasses import dataclass

from planeproof.pictures.blanking import blanking_figure
from planeproof.pictures.both import both_figure
from planeproof.pictures.cells import changes_figure, counts_figure
from planeproof.pictures.compared import compared_figure
from planeproof.pictures.contents import contents_figure
from planeproof.pictures.course import Course, Moment
from planeproof.pictures.figure import Figure
from planeproof.pictures.frames import behind_figure, seen_figure, unbuffered_figure
from planeproof.pictures.pool import pool_figure
from planeproof.pictures.shape import Enlargement

Draw = Callable[[Course, Moment, Enlargement], Figure]


@dataclass(frozen=True, kw_only=True)
class Kind:
    """One kind of picture: its name on the command line and in file names, what it shows, and how it is drawn.

    ``panels`` is how many windows stand beside one another in it, 0 if it shows none and has a size of its own.
    """

    name: str
    shows: str
    draw: Draw
    panels: int = 0


KINDS: tuple[Kind, ...] = (
    Kind(name="seen", shows="what the viewer sees", draw=seen_figure, panels=1),
    Kind(name="behind", shows="what is being prepared behind it", draw=behind_figure, panels=1),
    Kind(name="both", shows="both sides at once, in two colours", draw=both_figure, panels=1),
    Kind(name="compared", shows="expected, seen and the pixels that differ", draw=compared_figure, panels=3),
    Kind(name="unbuffered", shows="what would be seen without any buffering", draw=unbuffered_figure, panels=1),
    Kind(name="blanking", shows="the blanking as a bar, with each burst in it", draw=blanking_figure),
    Kind(name="pool", shows="the pool as a strip: seen, next, to be re-used, free", draw=pool_figure),
    Kind(name="contents", shows="what is in the pool, plane by plane", draw=contents_figure),
    Kind(name="changes", shows="which cells moved, were redrawn, both or neither", draw=changes_figure),
    Kind(name="counts", shows="cells, occupied, different, and the pool", draw=counts_figure),
)


def kind_named(name: str) -> Kind:
    """The kind of that name. Raises `KeyError`."""
    return {kind.name: kind for kind in KINDS}[name]
