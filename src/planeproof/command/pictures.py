"""``planeproof pictures``: draw a saved scene, as numbered PNG files."""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that --help answers at once

from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from planeproof.command.printing import show
from planeproof.command.refusing import writing
from planeproof.command.saved import candidate_for, loaded

if TYPE_CHECKING:
    from planeproof.hosts import Candidate
    from planeproof.judge import Play
    from planeproof.pictures import Course, Style, TooManyFlashes, Wanted
    from planeproof.scenes.cases import Case

KIND_NAMES = (
    "seen",
    "behind",
    "both",
    "compared",
    "unbuffered",
    "blanking",
    "pool",
    "contents",
    "changes",
    "counts",
)
"""As in `planeproof.pictures.KINDS`, which is not imported to say --help; a test compares."""

ANIMATED_NAMES = ("seen", "behind", "unbuffered")


EVENTFUL, EVERY = "eventful", "all"


class _Refreshes(click.ParamType[str | range]):
    """``3``, ``3-9``, ``all`` or ``eventful``."""

    name = "refreshes"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> str | range:  # noqa: ANN401 -- as click has it
        """A span of refreshes, or one of the two words."""
        if value in (EVENTFUL, EVERY):
            return str(value)
        first, _, last = str(value).partition("-")
        last = last or first
        if not (first.isdecimal() and last.isdecimal() and int(first) <= int(last)):
            self.fail(f"{value!r} is no refresh: give one (3), a span (3-9), {EVENTFUL} or {EVERY}", param, ctx)
        return range(int(first), int(last) + 1)


class _Ratio(click.ParamType[Fraction]):
    """``12:11``."""

    name = "width:height"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Fraction:  # noqa: ANN401 -- as click has it
        """Width by height."""
        width, _, height = str(value).partition(":")
        if not (width.isdecimal() and height.isdecimal() and int(width) and int(height)):
            self.fail(f"{value!r} is no shape: give width and height of a pixel, as in 12:11", param, ctx)
        shape = Fraction(int(width), int(height))
        if not Fraction(1, 4) <= shape <= 4:
            self.fail(f"{value!r} is too far from square: from 1:4 to 4:1", param, ctx)
        return shape


@click.command(short_help="Draw a saved scene, as numbered PNG files.")
@click.argument("case", type=click.Path(), metavar="CASE")
@click.argument("target", required=False)
@click.option("--into", required=True, type=click.Path(), metavar="DIR", help="The folder for the pictures.")
@click.option("--only", multiple=True, type=click.Choice(KIND_NAMES), help="This kind only; may be given again.")
@click.option(
    "--refreshes",
    type=_Refreshes(),
    default=EVENTFUL,
    help="3, 3-9, all, or eventful (the default).",
)
@click.option("--scale", type=click.IntRange(1, 64), metavar="N", help="Pixels down for each line of the display.")
@click.option("--pixel-shape", type=_Ratio(), help="Width and height of the display's pixels, if not as assumed.")
@click.option("--labels/--no-labels", default=True, help="With words and legends (the default), or without.")
@click.option("--animation", type=click.Path(), metavar="FILE", help="Also write an animated PNG, played once.")
@click.option("--animate", type=click.Choice(ANIMATED_NAMES), default="seen", help="What the animation shows.")
@click.option("--slower", type=click.IntRange(1, 1000), default=1, metavar="N", help="Refreshes N times as long.")
@click.option("--despite-flashes", is_flag=True, help="Write it even if it exceeds the published limits.")
def pictures(case: str, target: str | None, into: str, **options: Any) -> int:  # noqa: ANN401 -- one of each kind
    """Play the saved CASE again, against its target or another TARGET, and draw what happens into a folder.

    Nothing moves: every picture stands still. An animation is made only with --animation, and only if it keeps the
    published limits on flashes. Exit codes: 0 drawn, 4 CANDIDATE ERROR, 5 HUNG.
    """
    from planeproof.pictures import KINDS, Style, Wanted, course_of

    saved = loaded(case)
    result = _played(saved, case, candidate_for(saved, case, target, "pictures"))
    if isinstance(result, int):
        return result
    course = course_of(result)
    style = Style(labels=options["labels"], scale=options["scale"], shape=options["pixel_shape"])
    kinds = [kind for kind in KINDS if not options["only"] or kind.name in options["only"]]
    refreshes = None if options["refreshes"] == EVENTFUL else _existing(course, options["refreshes"])
    _draw(course, Path(into), Wanted(kinds=kinds, refreshes=refreshes, style=style))
    if options["animation"] is not None:
        _animate(course, Path(options["animation"]), style, options)
    return 0


def _existing(course: "Course", asked: str | range) -> "tuple[int, ...]":
    """The refreshes that are asked for, all of which were played."""
    played = len(course.moments)
    if isinstance(asked, str):
        return tuple(range(played))
    if asked.stop > played:
        raise click.ClickException(f"--refreshes asks for refresh {asked.stop - 1}: the run has 0 to {played - 1}")
    return tuple(asked)


def _draw(course: "Course", folder: Path, wanted: "Wanted") -> None:
    from planeproof.pictures import CAUTION, write_pictures
    from planeproof.report import counted

    with writing(folder, "--into"):
        written = list(write_pictures(course, folder, wanted))
    drawn = counted(len(written) - 1, "picture")
    show([f"{drawn} in {folder}; {written[-1]} says what each shows.", "", CAUTION])


def _animate(course: "Course", file: Path, style: "Style", options: dict[str, Any]) -> None:
    from planeproof.pictures import Animation, TooManyFlashes, write_animation

    wanted = Animation(
        kind=options["animate"],
        slower=options["slower"],
        style=style,
        despite_flashes=options["despite_flashes"],
    )
    try:
        with writing(file, "--animation"):
            exceeded = write_animation(course, file, wanted)
    except TooManyFlashes as refused:
        raise click.ClickException(_refusal(file, refused)) from refused
    kept = "No more flashes were found in it than WCAG 2.2, success criterion 2.3.1, allows."
    found = [f"It EXCEEDS the limits of WCAG 2.2, success criterion 2.3.1: {one}." for one in exceeded]
    show([f"{file} is an animation, played once.", *(found or [kept])])


def _refusal(file: Path, refused: "TooManyFlashes") -> str:
    lines = [
        f"{file} is not written: it would flash more than WCAG 2.2, success criterion 2.3.1, allows.",
        *(f"  {one}" for one in refused.found),
        "Show it more slowly (--slower N). Only if you know that nobody can come to harm by it: --despite-flashes.",
    ]
    return "\n".join(lines)


def _played(saved: "Case", case: str, candidate: "Candidate") -> "Play | int":
    """The play; an exit code, once it is said why, where the candidate broke a law of the contract."""
    from planeproof.judge import CandidateFault, CandidateHung, Outcome, play
    from planeproof.report import fault_page

    try:
        return play(saved.scene, candidate.make)
    except CandidateFault as fault:
        outcome = Outcome.HUNG if isinstance(fault, CandidateHung) else Outcome.CANDIDATE_ERROR
        show(fault_page(fault, target=candidate.name, outcome=outcome, case=case, scene=saved.scene))
        return int(outcome.value)
