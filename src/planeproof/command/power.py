"""``planeproof power``: how many scenes each engine needs to find each planted fault, beside plain random testing."""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that --help answers at once

import difflib
from contextlib import nullcontext
from pathlib import Path
from typing import TYPE_CHECKING

import click

from planeproof.command.interrupting import Interruption
from planeproof.command.options import each_once, finite, quiet_option
from planeproof.command.printing import show
from planeproof.command.progress import Progressing
from planeproof.command.refusing import refusing, writing

if TYPE_CHECKING:
    from planeproof.candidates.faults import Fault
    from planeproof.power import Detection, Summary

ENGINES = ("recipes", "edges", "exhaustion", "spec", "uniform", "fitting", "arrays")
"""As in `planeproof.power.ENGINES`, which is not imported before it is needed; a test holds them together."""

FOUND, NOT_FOUND, UNKNOWN = 0, 1, 2


def _list(context: click.Context, _option: click.Parameter, wanted: bool) -> None:
    """Print a name a line, with the rule that must catch it."""
    if wanted:
        from planeproof.candidates.faults import ZOO

        show(f"{fault.id}  {fault.rule.id}" for fault in ZOO)
        context.exit()


@click.command(short_help="Measure how soon planted faults are found, and by which rule.")
@click.argument("faults", nargs=-1, metavar="[FAULT]...", callback=each_once)
@click.option(
    "--list",
    is_flag=True,
    is_eager=True,
    expose_value=False,
    callback=_list,
    help="Faults, each with the rule that must catch it; and end.",
)
@click.option(
    "--engine", "engines", multiple=True, type=click.Choice(ENGINES), help="This one only; may be given several times."
)
@click.option("--seeds", type=click.IntRange(min=1), default=1, show_default=True, metavar="N", help="Hunts a fault.")
@click.option(
    "--scenes", type=click.IntRange(min=1), default=2000, show_default=True, metavar="N", help="Most scenes of a hunt."
)
@click.option(
    "--seconds", type=float, callback=finite, default=60.0, show_default=True, metavar="S", help="Most time of a hunt."
)
@click.option("--jobs", type=click.IntRange(min=1), default=1, show_default=True, metavar="N", help="Processes.")
@click.option(
    "--journal",
    type=click.Path(path_type=Path, dir_okay=False),
    metavar="FILE",
    help="Keep each hunt as it ends, as a line of JSON; a run that was stopped goes on from there.",
)
@click.option(
    "--export",
    type=click.Path(path_type=Path, file_okay=False),
    metavar="DIR",
    help="Write detection.csv, detection.json and detection.md to this folder.",
)
@quiet_option
def power(  # noqa: PLR0913, PLR0917 -- an option of the command each, handed over by click
    faults: tuple[str, ...],
    engines: tuple[str, ...],
    seeds: int,
    scenes: int,
    seconds: float,
    jobs: int,
    journal: Path | None,
    export: Path | None,
    quiet: bool,
) -> int:
    """Hunt for each planted FAULT (default all) with each engine, and show after how many scenes it was found.

    A hunt that finds nothing goes on up to --scenes or --seconds, so that all engines together take minutes for a
    fault; --engine recipes is quick.

    The exit code is 1 where recipes, which is what `planeproof check` does, does not catch a fault by its own rule with
    95 of 100 seeds, 0 where it does, and 2 where it was not asked.
    """
    chosen = _chosen(faults)

    from planeproof.power import JournalError, Limits, engine_named, measure, summary_of
    from planeproof.report.power import power_lines

    if export is not None:
        # Before the hunts: they may take hours.
        with writing(export, "--export folder"):
            export.mkdir(parents=True, exist_ok=True)
    with (
        Interruption() as interruption,
        Progressing(quiet=quiet, between=interruption.check) as watcher,
        refusing(JournalError),
        nullcontext() if journal is None else writing(journal, "--journal file"),
    ):
        detections = measure(
            chosen,
            engines=[engine_named(name) for name in engines or ENGINES],
            seeds=range(seeds),
            limits=Limits(scenes=scenes, seconds=seconds),
            jobs=jobs,
            journal=journal,
            watcher=watcher,
        )
    summary = summary_of(detections)
    if export is not None:
        _export(export, detections, summary)
    show(power_lines(summary))
    return _code(summary)


def _chosen(names: tuple[str, ...]) -> "list[Fault]":
    from planeproof.candidates.faults import ZOO

    known = {fault.id: fault for fault in ZOO}
    for name in names:
        if name not in known:
            near = [one for one in known if name in one] or difflib.get_close_matches(name, known)
            hint = f"the nearest are {', '.join(near[:5])}" if near else "--list has the names of all"
            raise click.BadParameter(f"there is no planted fault {name!r}: {hint}", param_hint="FAULT")
    return [known[name] for name in names or known]


def _export(folder: Path, detections: "tuple[Detection, ...]", summary: "Summary") -> None:
    from planeproof.power import csv_of, json_of
    from planeproof.report.power import power_markdown

    texts = {
        "detection.csv": csv_of(summary),
        "detection.json": json_of(detections, summary),
        "detection.md": power_markdown(summary),
    }
    with writing(folder, "--export folder"):
        for name, text in texts.items():
            (folder / name).write_text(text, "utf-8")


def _code(summary: "Summary") -> int:
    if not summary.must:
        return UNKNOWN
    return NOT_FOUND if summary.survivors or summary.wrong else FOUND
