"""``planeproof prove``: have every statement that the rules rest on proved again, on this computer."""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that --help answers at once

import difflib
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

import click

from planeproof.command.interrupting import Interruption
from planeproof.command.options import cases_option, quiet_option
from planeproof.command.printing import show
from planeproof.command.progress import Progressing
from planeproof.command.proving_own import prove_own
from planeproof.command.steps import MISSING, has_solver

if TYPE_CHECKING:
    from planeproof.spec import Obligation, Report, Result
    from planeproof.spec.other_solvers import OtherSolver

UNKNOWN = 2


@click.command(short_help="Have the rules proved again, or your own scheduler, written as steps.")
@click.argument("target", required=False)
@click.option("--only", multiple=True, metavar="THEOREM|ID", help="Ask for these only, and tell all of each.")
@click.option(
    "--with",
    "others",
    multiple=True,
    type=click.Choice(["cvc5", "bitwuzla"]),
    help="After z3, have this solver confirm the same statements from their text; may be given twice.",
)
@click.option("--rlimit", type=click.IntRange(min=1), metavar="N", help="z3's resource units for one statement.")
@cases_option("the scene that refutes TARGET")
@quiet_option
def prove(
    target: str | None, only: tuple[str, ...], others: tuple[str, ...], rlimit: int | None, cases: Path, quiet: bool
) -> int:
    """Ask z3 for every obligation of the ten theorems, and show what it answers.

    The exit code is that of the weakest answer: 0 all as wanted, 1 one is contrary, 2 one is unknown: a limit that
    was reached, or a solver that is missing.

    With TARGET (package.module:Name or file.py:Name) decide a scheduler of yours that is written as steps: 0 PROVED,
    1 REFUTED, with a scene to replay, 2 UNKNOWN. Begin with `planeproof new --steps mine.py`.
    """
    if target is not None and (only or others):
        raise click.UsageError(f"--only and --with are about the ten theorems, not about {target}: leave them out")
    if not has_solver():
        show(MISSING.splitlines())
        return UNKNOWN

    from planeproof import spec

    limit = spec.RLIMIT if rlimit is None else rlimit
    if target is not None:
        return prove_own(target, limit, cases)
    chosen = _chosen(only, spec.OBLIGATIONS)
    with Interruption() as interruption, Progressing(quiet=quiet, between=interruption.check) as watcher:
        asked = partial(_asked, watcher, chosen)
        proved = asked("z3", partial(spec.prove, rlimit=limit))
        confirmed = [(solver, asked(solver.name, solver.confirm)) for solver in _solvers(others)]
    show(spec.report_lines(proved, full=bool(only)))
    for solver, report in confirmed:
        show(["", *spec.confirmation_lines(report, unit=solver.unit)])
    show(_out_of_reach(others, chosen))
    reports = [proved, *(report for _, report in confirmed)]
    return max(map(_code, reports), key=(0, UNKNOWN, 1).index)


def _chosen(names: Sequence[str], obligations: "Sequence[Obligation]") -> "list[Obligation]":
    for name in names:
        known = {word for obligation in obligations for word in (obligation.id, str(obligation.theorem))}
        if name not in known:
            near = [one for one in sorted(known) if name in one] or difflib.get_close_matches(name, sorted(known))
            hint = f"the nearest are {', '.join(near[:5])}" if near else "give a theorem by its number, or an id"
            raise click.BadParameter(f"there is no theorem or obligation {name!r}: {hint}", param_hint="--only")
    return [one for one in obligations if not names or {one.id, str(one.theorem)} & set(names)]


def _asked(
    watcher: Progressing, chosen: "Sequence[Obligation]", name: str, ask: "Callable[[Obligation], Result]"
) -> "Report":
    from planeproof.spec import prove_all
    from planeproof.spec.other_solvers import OUT_OF_REACH

    within = [obligation for obligation in chosen if obligation.id not in OUT_OF_REACH.get(name, {})]
    watcher.stage(f"asking {name}", len(within))
    done: list[Result] = []

    def answered(result: "Result") -> None:
        # z3 takes Ctrl-C for itself while it is at work, and calls it a reason.
        if result.reason is not None and "interrupted" in result.reason:
            raise KeyboardInterrupt
        done.append(result)
        watcher.step(len(done))

    return prove_all(within, answered, ask)


def _solvers(names: Sequence[str]) -> "Iterator[OtherSolver]":
    from planeproof.spec.other_solvers import SOLVERS

    return (solver for solver in SOLVERS if solver.name in names)


def _out_of_reach(names: Sequence[str], chosen: "Sequence[Obligation]") -> list[str]:
    """What a solver was not asked, and why: a gap is told, never left out in silence."""
    from planeproof.report import wrapped
    from planeproof.spec.other_solvers import OUT_OF_REACH

    ids = {obligation.id for obligation in chosen}
    gaps = [
        line
        for name in dict.fromkeys(names)
        for one, why in OUT_OF_REACH[name].items()
        if one in ids
        for line in wrapped(f"{name} was not asked {one}, which is out of its reach: {why}", 2)
    ]
    return ["", "Not confirmed by every solver", *gaps] if gaps else []


def _code(report: "Report") -> int:
    from planeproof.spec import Outcome

    return {Outcome.AS_WANTED: 0, Outcome.CONTRARY: 1, Outcome.OPEN: UNKNOWN}[report.outcome]
