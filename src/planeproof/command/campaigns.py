"""Options for long runs of ``planeproof check``: shared out, kept in a journal, with what other runs have found."""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that --help answers at once

import secrets
import shlex
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import click

from planeproof.command.refusing import refusing, writing

RANDOM = "random"
SEED_BITS = 32
"""Of a seed that is drawn: few enough to type it."""

_LINE = "planeproof.line"


class Repeatable(click.Command):
    """A command that remembers the line it was called with, so that it can be told."""

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        """Remember, then parse."""
        ctx.meta[_LINE] = shlex.join([*ctx.command_path.split(), *args])
        return super().parse_args(ctx, args)


def seed_of(_context: click.Context, _option: click.Parameter, value: str) -> int | None:
    """The seed that ``value`` says; None for a random one."""
    try:
        return None if value == RANDOM else int(value)
    except ValueError:
        raise click.BadParameter(f"{value!r} is neither a whole number nor {RANDOM}") from None


@dataclass(frozen=True, kw_only=True)
class Campaign:
    """Who does the work, where what it comes to is kept, and what is known from elsewhere; see `campaign_options`."""

    jobs: int
    cluster: str | None
    journal: Path | None
    examples: str | None

    def __post_init__(self) -> None:
        if self.cluster is not None and self.jobs > 1:
            raise click.UsageError("--jobs and --cluster are both given: leave one of them out")

    def seed(self, given: int | None) -> int:
        """The seed that was given; if a random one was asked for, that of the journal, or one that is drawn now."""
        from planeproof.search.journal import JournalError, seed_in

        if given is not None:
            return given
        with refusing(JournalError, OSError):
            begun = None if self.journal is None else seed_in(self.journal)
        drawn = secrets.randbits(SEED_BITS) if begun is None else begun
        told = click.get_current_context().obj
        if told is not None:  # whoever waits for this process can't know it otherwise, should the process end
            told("seed", str(drawn))
        return drawn

    @contextmanager
    def refusing(self) -> Iterator[None]:
        """Turn into refusals what is wrong with any of these."""
        from planeproof.search.cluster import ClusterError
        from planeproof.search.examples import ExamplesError
        from planeproof.search.journal import JournalError

        with ExitStack() as stack:
            stack.enter_context(refusing(JournalError, ClusterError, ExamplesError))
            if self.journal is not None:
                stack.enter_context(_only_of(self.journal, "--journal file"))
            if self.examples is not None:
                stack.enter_context(_only_of(Path(self.examples), "--examples folder"))
            yield

    def say_what_is_known(self) -> None:
        """On standard error, how much of the work is in the journal already."""
        from planeproof.search.journal import JournalError, units_in

        with refusing(JournalError, OSError):
            units = 0 if self.journal is None else units_in(self.journal)
        if units:
            click.echo(
                f"planeproof: {self.journal} has {units} parts of this check, which are not played again", err=True
            )

    def say_how_to_go_on(self) -> None:
        """On standard error, after an interruption."""
        if self.journal is not None:
            line = click.get_current_context().meta[_LINE]
            click.echo(f"planeproof: what is done is kept in {self.journal}; the same line goes on from it:", err=True)
            click.echo(f"  {line}", err=True)


@contextmanager
def _only_of(path: Path, option: str) -> Iterator[None]:
    """As `writing`, for errors that name ``path``, what it is in or what is in it."""
    try:
        yield
    except OSError as error:
        named = None if error.filename is None else Path(error.filename)
        if named is None or not (named == path or named in path.parents or path in named.parents):
            raise
        with writing(path, option):
            raise


def campaign_options(command: Callable[..., Any]) -> Callable[..., Any]:
    """Give ``command`` the options of a `Campaign`, each by its name."""
    for option in reversed(_OPTIONS):
        command = option(command)
    return command


_OPTIONS = (
    click.option(
        "--jobs",
        type=click.IntRange(min=1),
        default=1,
        show_default=True,
        metavar="N",
        help="Processes that share the work. What is found does not depend on it.",
    ),
    click.option(
        "--cluster",
        metavar="ADDRESS",
        help="Share the work among the workers of the Dask scheduler there, as tcp://host:8786, instead.",
    ),
    click.option(
        "--journal",
        type=click.Path(path_type=Path, dir_okay=False),
        metavar="FILE",
        help="Keep what each part of the work comes to in FILE. The same check goes on from it.",
    ),
    click.option(
        "--examples",
        metavar="DIR|redis://...",
        help="Try first what other runs have found and kept there, a folder or a Redis server, and keep what is found. "
        "The seed alone then does not repeat the run.",
    ),
)
