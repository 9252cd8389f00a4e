"""Progress on standard error: a bar where somebody watches, a line a stage where nobody does.

The bar is still between steps: nothing moves that does not tell something.
"""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that --help answers at once

import sys
from collections.abc import Callable
from types import TracebackType
from typing import TYPE_CHECKING, Self

import click

if TYPE_CHECKING:
    from rich.progress import Progress, TaskID


class Progressing:
    """A `planeproof.search.Watcher` and context manager; ``quiet`` says nothing at all.

    ``between`` is called between two scenes.
    """

    def __init__(self, *, quiet: bool, between: Callable[[], None] = lambda: None) -> None:
        self._quiet = quiet
        self._between = between
        self._bar: Progress | None = None
        self._task: TaskID | None = None

    def __enter__(self) -> Self:
        if not self._quiet and sys.stderr.isatty():
            self._bar = _bar()
            self._bar.start()
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self._bar is not None:
            self._bar.stop()

    def stage(self, name: str, total: int | None) -> None:
        """A new stage begins."""
        self._between()
        if self._bar is None:
            if not self._quiet:
                click.echo(f"planeproof: {name}{'' if total is None else f', {total}'}", err=True)
            return
        if self._task is not None:
            self._bar.remove_task(self._task)
        self._task = self._bar.add_task(name, total=total)

    def step(self, done: int) -> None:
        """``done`` scenes of this stage are done."""
        self._between()
        if self._bar is not None and self._task is not None:
            self._bar.update(self._task, completed=done)


def _bar() -> "Progress":
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn, TimeElapsedColumn

    return Progress(
        TextColumn("{task.description}", markup=False),
        BarColumn(pulse_style="bar.back"),
        MofNCompleteColumn(),
        TimeElapsedColumn(),
        console=Console(stderr=True),
        transient=True,
        refresh_per_second=2,
        redirect_stdout=False,  # what a candidate prints is its own affair
        redirect_stderr=False,
    )
