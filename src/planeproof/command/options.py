"""Options that mean the same wherever they stand."""

import math
from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

import click

EDGES = Path(".planeproof/edges")
"""As `planeproof.scenes.edges.KEPT`, which is not imported to say --help; a test compares."""

Command = TypeVar("Command", bound=Callable[..., Any])


def finite(_context: click.Context, _option: click.Parameter, value: float | None) -> float | None:
    """A number of seconds above 0, or none."""
    if value is not None and not (math.isfinite(value) and value > 0):
        raise click.BadParameter(f"{value:g} is not a number of seconds above 0")
    return value


def each_once(_context: click.Context, _option: click.Parameter, given: tuple[str, ...]) -> tuple[str, ...]:
    """The values of an option or argument, of which none may be given twice: it would be counted twice."""
    twice = next((value for place, value in enumerate(given) if value in given[:place]), None)
    if twice is not None:
        raise click.BadParameter(f"{twice!r} is given twice: name each once")
    return given


machine_option = click.option(
    "--machine",
    "machines",
    multiple=True,
    callback=each_once,
    default=["vitrine-50", "vitrine-60"],
    show_default=True,
    metavar="NAME|FILE.toml",
    help="A machine that ships or a file of your own; may be given several times.",
)
profile_option = click.option(
    "--profile",
    type=click.Choice(["strict", "seen"]),
    default="strict",
    show_default=True,
    help="strict: every rule must be kept. seen: breaches of discipline are exposed, and do not fail.",
)
only_option = click.option(
    "--only", multiple=True, metavar="RULE", help="Judge by this rule only; may be given several times."
)
quiet_option = click.option("--quiet", is_flag=True, help="No progress.")


def cases_option(what: str) -> Callable[[Command], Command]:
    """``--cases DIR``; ``what`` is kept there, as its help says."""
    return click.option(
        "--cases",
        type=click.Path(path_type=Path),
        default=Path(".planeproof"),
        show_default=True,
        metavar="DIR",
        help=f"Folder for {what}.",
    )
