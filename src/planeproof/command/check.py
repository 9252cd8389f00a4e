"""``planeproof check``: judge a scheduler, and show the smallest scene that breaks a rule."""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that --help answers at once

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from planeproof.command.campaigns import Campaign, Repeatable, campaign_options, seed_of
from planeproof.command.conforming import Conforming
from planeproof.command.interrupting import Interruption
from planeproof.command.options import (
    EDGES,
    cases_option,
    finite,
    machine_option,
    only_option,
    profile_option,
    quiet_option,
)
from planeproof.command.printing import show
from planeproof.command.progress import Progressing
from planeproof.command.refusing import refusing, writing
from planeproof.command.reporting import from_record, write_report
from planeproof.command.steps import MISSING, has_solver

if TYPE_CHECKING:
    from collections.abc import Sequence

    from planeproof.contract import Rule
    from planeproof.judge import Verdict
    from planeproof.judge.expected import Expected

SCENES = 2000
"""Scenes that are played unless something else is asked for."""

UNKNOWN = 2
"""As in `planeproof.judge.Outcome`, which is not imported before it is needed."""


@click.command(cls=Repeatable, short_help="Judge a scheduler, and show the smallest scene that breaks a rule.")
@click.argument("target")
@machine_option
@profile_option
@click.option("--scenes", type=click.IntRange(min=1), metavar="N", help=f"Scenes to play. [default: {SCENES}]")
@click.option("--seconds", type=float, callback=finite, metavar="S", help="Search that long instead.")
@click.option(
    "--seed",
    type=str,
    callback=seed_of,
    default=0,
    show_default=True,
    metavar="N|random",
    help="The same seed, the same scenes. A random one is told with the verdict.",
)
@only_option
@click.option("--as-given", is_flag=True, help="Play on the machines as they are, on none of their small relatives.")
@cases_option("the scenes that are found")
@click.option(
    "--edges",
    type=click.Path(path_type=Path, exists=True, file_okay=False),
    metavar="DIR",
    help=f"Folder in which planeproof edges keeps scenes for machines of your own. [default: {EDGES}, if there]",
)
@click.option(
    "--conforms",
    metavar="STEPS",
    help="Observe too whether it takes the steps of STEPS (package.module:Name or file.py:Name), which are proved.",
)
@click.option(
    "--report",
    type=click.Path(path_type=Path),
    metavar="DIR",
    help="Write a report too: a page to look at, the record, JUnit XML, SARIF and a summary in Markdown.",
)
@click.option(
    "--expected",
    type=click.Path(path_type=Path),
    metavar="FILE.toml",
    help="List of failures that are expected, each with rule, saved case, reason and the day until which it may stand.",
)
@campaign_options
@quiet_option
def check(  # noqa: PLR0913, PLR0917 -- an option of the command each, handed over by click
    target: str,
    machines: tuple[str, ...],
    profile: str,
    scenes: int | None,
    seconds: float | None,
    seed: int | None,
    only: tuple[str, ...],
    as_given: bool,
    cases: Path,
    edges: Path | None,
    conforms: str | None,
    report: Path | None,
    expected: Path | None,
    quiet: bool,
    **shared: Any,  # noqa: ANN401 -- of many types, as click has it
) -> int:
    """Check TARGET, which reads package.module:Name or file.py:Name.

    The exit code says what came of it: 0 PASS, 1 FAIL, 2 UNKNOWN, 3 VACUOUS, 4 CANDIDATE ERROR, 5 HUNG. With
    --conforms, a burst that is no step of STEPS makes UNKNOWN of what would pass.
    """
    _require(scenes=scenes, seconds=seconds, conforms=conforms, as_given=as_given)
    campaign = Campaign(**shared)
    rules = _rules(only)
    if conforms is not None and not has_solver():
        show(MISSING.splitlines())
        return UNKNOWN
    conforming = None if conforms is None else Conforming.to(conforms, machines)

    from planeproof.hosts import TargetError
    from planeproof.judge import Profile
    from planeproof.machines import MachineFileError
    from planeproof.report import verdict_lines
    from planeproof.scenes.edges import EdgesError
    from planeproof.search import check as search

    entries = _expected(expected)
    if report is not None:
        # Before the search: it may take hours.
        with writing(report, "--report folder"):
            report.mkdir(parents=True, exist_ok=True)
    given, verdict = (TargetError, MachineFileError, EdgesError), None
    seed = campaign.seed(seed)
    if not quiet:
        campaign.say_what_is_known()
    try:
        with (
            Interruption() as interruption,
            Progressing(quiet=quiet, between=interruption.check) as watcher,
            refusing(*given),
            writing(cases, "--cases folder"),
            campaign.refusing(),
        ):
            verdict = search(
                target,
                machines=machines,
                profile=Profile(profile),
                scenes=scenes or SCENES,
                seconds=seconds,
                seed=seed,
                only=rules,
                as_given=as_given,
                cases=cases,
                watcher=watcher,
                edges=edges or EDGES,
                expected=entries,
                **shared,
            )
    except KeyboardInterrupt:
        campaign.say_how_to_go_on()
        if verdict is None:
            raise
        click.echo(
            "planeproof: interrupted; what was found is told as it is, perhaps not in the smallest scene", err=True
        )
    besides: list[str] = []
    if conforming is not None:
        with Interruption(), writing(cases, "--cases folder"):
            verdict, besides = conforming.observed(verdict, cases)
    verdict = from_record(verdict)
    show(verdict_lines(verdict, besides=besides))
    if report is not None:
        _write(verdict, report)
    return int(verdict.outcome.value)


def _require(*, scenes: int | None, seconds: float | None, conforms: str | None, as_given: bool) -> None:
    if scenes is not None and seconds is not None:
        raise click.UsageError("--scenes and --seconds are both given: leave one of them out")
    if conforms is not None and as_given:
        raise click.UsageError("--conforms observes small relatives, and --as-given plays none: leave one of them out")


def _write(verdict: "Verdict", report: Path) -> None:
    with writing(report, "--report folder"):
        write_report(verdict, report)
    click.echo(f"planeproof: the report is in {report}: look at {report / 'index.html'}", err=True)


def _expected(file: Path | None) -> "Sequence[Expected]":
    from planeproof.search.expected import ExpectedFileError, read_expected

    with refusing(ExpectedFileError):
        return () if file is None else read_expected(file)


def _rules(names: tuple[str, ...]) -> "list[Rule]":
    from planeproof.contract import rule

    with refusing(ValueError):
        return [rule(name) for name in names]
