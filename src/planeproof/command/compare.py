"""``planeproof compare``: several schedulers on the same scenes, right or wrong and what each spends, side by side."""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that --help answers at once

from pathlib import Path

import click

from planeproof.command.interrupting import Interruption
from planeproof.command.options import machine_option, profile_option, quiet_option
from planeproof.command.printing import show
from planeproof.command.progress import Progressing
from planeproof.command.refusing import refusing, writing

SCENES = 400
"""As in `planeproof.search.comparing`, which is not imported before it is needed."""


class _OneByOne(Progressing):
    """Progress; and whoever waits for this process is told whose turn it is, should that one end the process."""

    def stage(self, name: str, total: int | None) -> None:
        """The candidate of that name begins."""
        tell = click.get_current_context().obj
        if tell is not None:
            tell("target", name)
        super().stage(name, total)


@click.command(short_help="Several schedulers on the same scenes: correctness and cost side by side.")
@click.argument("targets", nargs=-1, required=True)
@machine_option
@profile_option
@click.option(
    "--scenes", type=click.IntRange(min=1), default=SCENES, show_default=True, metavar="N", help="Scenes to draw."
)
@click.option("--seed", type=int, default=0, show_default=True, metavar="N", help="The same seed, the same scenes.")
@click.option(
    "--json",
    "data",
    type=click.Path(path_type=Path, dir_okay=False),
    metavar="FILE",
    help="Write the figures there too.",
)
@quiet_option
def compare(
    targets: tuple[str, ...],
    machines: tuple[str, ...],
    profile: str,
    scenes: int,
    seed: int,
    data: Path | None,
    quiet: bool,
) -> int:
    """Play the same scenes with each of TARGETS, package.module:Name or file.py:Name, and tell them apart.

    The exit code is that of the most serious outcome among them.
    """
    from planeproof.hosts import TargetError
    from planeproof.judge import Profile
    from planeproof.machines import MachineFileError
    from planeproof.report.comparison import comparison_lines
    from planeproof.report.comparison_data import comparison_json
    from planeproof.search.comparing import compare as search

    given = (TargetError, MachineFileError)
    with (
        Interruption() as interruption,
        _OneByOne(quiet=quiet, between=interruption.check) as watcher,
        refusing(*given),
    ):
        comparison = search(
            targets, machines=machines, profile=Profile(profile), scenes=scenes, seed=seed, watcher=watcher
        )
    if data is not None:
        with writing(data, "--json file"):
            data.write_bytes(comparison_json(comparison))
    show(comparison_lines(comparison))
    return int(comparison.outcome.value)
