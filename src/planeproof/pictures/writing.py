"""The pictures of a run on disk: numbered PNG files, and a page of text that says what each of them shows."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from planeproof.contract import Machine
from planeproof.pictures.caution import CAUTION
from planeproof.pictures.colours import PALETTE_NAME
from planeproof.pictures.course import Course
from planeproof.pictures.figure import Figure, png
from planeproof.pictures.kinds import KINDS, Kind
from planeproof.pictures.shape import ASSUMED
from planeproof.pictures.style import Style

INDEX = "index.txt"


@dataclass(frozen=True, kw_only=True)
class Wanted:
    """Which pictures: the kinds, and the refreshes (None: those in which anything happens)."""

    kinds: Sequence[Kind] = KINDS
    refreshes: Sequence[int] | None = None
    style: Style = field(default_factory=Style)


def figure_of(course: Course, refresh: int, kind: Kind, style: Style) -> Figure:
    """One picture, not yet put together with its words. Raises `IndexError` for a refresh that was not played."""
    return kind.draw(course, course.moments[refresh], style.enlargement(course.machine, kind.panels))


def png_of(course: Course, refresh: int, kind: Kind, style: Style | None = None) -> bytes:
    """One picture as the bytes of a PNG file. Raises `IndexError` for a refresh that was not played."""
    made = Style() if style is None else style
    return png(figure_of(course, refresh, kind, made), labels=made.labels)


def write_pictures(course: Course, folder: Path, wanted: Wanted) -> Iterator[Path]:
    """Write the pictures, then the index; the path of each file once it is there. Raises `OSError`.

    Files are numbered in the order of the run: ``0007-refresh-003-pool.png``. Files that are there already under the
    same names are written over, others are left alone.
    """
    folder.mkdir(parents=True, exist_ok=True)
    refreshes = course.eventful if wanted.refreshes is None else wanted.refreshes
    told = []
    for number, (refresh, kind) in enumerate(((r, k) for r in refreshes for k in wanted.kinds), 1):
        path = folder / f"{number:04d}-refresh-{refresh:03d}-{kind.name}.png"
        figure = figure_of(course, refresh, kind, wanted.style)
        path.write_bytes(png(figure, labels=wanted.style.labels))
        told.append((path.name, figure))
        yield path
    index = folder / INDEX
    index.write_text("\n".join(_index(course, wanted, refreshes, told)) + "\n", "utf-8")
    yield index


def _index(
    course: Course, wanted: Wanted, refreshes: Sequence[int], told: Sequence[tuple[str, Figure]]
) -> Iterator[str]:
    played = f"{len(course.moments)} refreshes, {len(refreshes)} of them drawn"
    yield f"Pictures of a run on {course.machine.name}: {played}."
    if wanted.refreshes is None:
        yield "Left out are refreshes in which nothing was written, answered or seen to change."
    yield ""
    yield f"Colours: {PALETTE_NAME}; what the display shows is in the colours of the machine."
    yield from _shapes(course.machine, wanted)
    yield CAUTION
    for name, figure in told:
        yield ""
        yield name
        yield from (f"  {line}" for line in (figure.title, *figure.notes, *(key.text for key in figure.legend)))


def _shapes(machine: Machine, wanted: Wanted) -> Iterator[str]:
    shown = [kind for kind in wanted.kinds if kind.panels]
    if not shown:
        return
    if wanted.style.shape is None:
        yield f"Shape of a pixel: that of line standard {machine.time.standard} at {ASSUMED}."
    else:
        yield "Shape of a pixel: as it was asked for."
    for kind in shown:
        yield f"  {kind.name}: {wanted.style.enlargement(machine, kind.panels)}."
