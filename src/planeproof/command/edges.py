"""``planeproof edges``: have the edge scenes of a machine of one's own solved, and kept for its checks."""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that --help answers at once

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import TYPE_CHECKING

import click

from planeproof.command.interrupting import Interruption
from planeproof.command.options import EDGES, quiet_option
from planeproof.command.printing import show
from planeproof.command.progress import Progressing
from planeproof.command.refusing import refusing, writing
from planeproof.command.steps import MISSING, has_solver

if TYPE_CHECKING:
    from planeproof.contract import Machine
    from planeproof.scenes.edges import Edges

UNKNOWN = 2
"""As in `planeproof.judge.Outcome`, which is not imported before it is needed."""


@click.command(short_help="Have scenes at the edges of a machine of yours solved.")
@click.argument("machine", metavar="FILE.toml")
@click.option(
    "--into",
    type=click.Path(path_type=Path, file_okay=False),
    default=EDGES,
    show_default=True,
    metavar="DIR",
    help="Folder to keep them in, a folder of its own for each machine.",
)
@click.option("--rlimit", type=click.IntRange(min=1), metavar="N", help="z3's resource units for one question.")
@quiet_option
def edges(machine: str, into: Path, rlimit: int | None, quiet: bool) -> int:
    """Have z3 find scenes at the edges of the machine in FILE.toml, and keep them for its checks.

    Such as: as many cells as must be shown, an upload one byte too long for a blanking, a picture brought back, and
    every two of these in one scene. `planeproof check` plays them on that very machine; one that is altered has to be
    solved anew. It takes a minute or two. For the machines that ship it is done. The exit code is 0, or 2 if z3 is
    missing.
    """
    from planeproof.machines import MachineFileError, read_machine
    from planeproof.scenes.edges import cached_edges, keep_edges

    with refusing(MachineFileError):
        asked = read_machine(machine)
    if cached_edges(asked) is not None:
        show([f"The edge scenes of {asked.name} ship with it: a check plays them, and there is nothing to solve."])
        return 0
    if not has_solver():
        show(MISSING.splitlines())
        return UNKNOWN
    with writing(into, "--into folder"):
        # Before anything is solved: it takes a while.
        into.mkdir(parents=True, exist_ok=True)
    solved = _solved(asked, rlimit, quiet=quiet)
    with writing(into, "--into folder"):
        folder = keep_edges(solved, asked, into)
    show(_lines(asked, solved, folder, into))
    return 0


def _solved(machine: "Machine", rlimit: int | None, *, quiet: bool) -> "Edges":
    from planeproof.spec.edges import solve_edges
    from planeproof.spec.edges.asking import RLIMIT

    with Interruption(), Progressing(quiet=quiet) as watcher:
        watcher.stage(f"asking z3 for scenes at the edges of {machine.name}, a minute or two", None)
        return solve_edges(machine, rlimit=rlimit or RLIMIT)


def _lines(machine: "Machine", solved: "Edges", folder: Path, into: Path) -> list[str]:
    from planeproof.report.figures import counted

    option = "" if into == EDGES else f" with --edges {into}"
    lines = [
        f"{counted(len(solved.scenes), 'scene')} at the edges of {machine.name}, kept in {folder}",
        f"  planeproof check plays them on this machine{option}.",
    ]
    missing = [*_missing(solved.impossible, _PROVED), *_missing(solved.unanswered, _OPEN)]
    return [*lines, "", "Of which there is no scene", *missing] if missing else lines


_PROVED = "as z3 has proved"
_OPEN = "for z3 came to no answer within its limit (a higher --rlimit may do)"


def _missing(left_out: Mapping[str, tuple[str, ...]], why: str) -> Iterator[str]:
    """Goals one by one, and how many pairs; ``left_out``: by the size of the machine, see `Edges`."""
    from planeproof.report.figures import counted, wrapped
    from planeproof.scenes.edge_goals import GOALS

    for size, names in left_out.items():
        if not names:
            continue
        cycles = size.rpartition("-")[2]
        yield f"  {'on the machine as given' if cycles == 'given' else f'on its relative of {cycles} cycles'}, {why}"
        goals = [goal for goal in GOALS if goal.id in names]
        for goal in goals:
            yield from wrapped(f"{goal.id}: {goal.sentence}", 4)
        if len(names) > len(goals):
            yield f"    {counted(len(names) - len(goals), 'pair')} of goals in one scene"
