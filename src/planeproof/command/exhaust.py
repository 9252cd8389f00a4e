"""``planeproof exhaust``: play every scene of a tiny machine, and say how many there were."""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that --help answers at once

from pathlib import Path

import click

from planeproof.command.interrupting import Interruption
from planeproof.command.options import cases_option, finite, only_option, profile_option, quiet_option
from planeproof.command.printing import show
from planeproof.command.progress import Progressing
from planeproof.command.refusing import refusing, writing


def _listed(context: click.Context, _option: click.Parameter, value: bool) -> None:
    if value and not context.resilient_parsing:
        from planeproof.search.exhausting.telling import tiny_lines

        show(tiny_lines())
        context.exit()


@click.command(short_help="Play every scene of a tiny machine.")
@click.argument("target")
@click.option(
    "--machine",
    "machines",
    multiple=True,
    default=["one-cell"],
    show_default=True,
    metavar="NAME",
    help="A tiny machine; may be given several times.",
)
@click.option(
    "--list", is_flag=True, is_eager=True, expose_value=False, callback=_listed, help="The tiny machines, and exit."
)
@click.option("--seconds", type=float, callback=finite, metavar="S", help="What is not finished by then is UNKNOWN.")
@profile_option
@only_option
@cases_option("the scenes that are found")
@quiet_option
def exhaust(
    target: str,
    machines: tuple[str, ...],
    seconds: float | None,
    profile: str,
    only: tuple[str, ...],
    cases: Path,
    quiet: bool,
) -> int:
    """Play every scene of tiny machines against TARGET, which reads package.module:Name or file.py:Name.

    The smallest scenes come first, and the first that breaks a rule ends it. The exit code says what came of it:
    0 PASS, 1 FAIL, 2 UNKNOWN (not finished), 3 VACUOUS, 4 CANDIDATE ERROR, 5 HUNG.
    """
    from planeproof.contract import rule
    from planeproof.hosts import TargetError
    from planeproof.judge import Profile
    from planeproof.report import verdict_lines
    from planeproof.search.exhausting import exhaust as play_all
    from planeproof.search.exhausting import tiny

    with refusing(ValueError):
        rules, chosen = [rule(name) for name in only], [tiny(name) for name in machines]
    verdict = None
    try:
        with (
            Interruption() as interruption,
            Progressing(quiet=quiet, between=interruption.check) as watcher,
            refusing(TargetError),
            writing(cases, "--cases folder"),
        ):
            verdict = play_all(
                target,
                machines=chosen,
                profile=Profile(profile),
                only=rules,
                seconds=seconds,
                cases=cases,
                watcher=watcher,
            )
    except KeyboardInterrupt:
        if verdict is None:
            raise
        click.echo("planeproof: interrupted; what was found by then is told", err=True)
    show(verdict_lines(verdict))
    return int(verdict.outcome.value)
