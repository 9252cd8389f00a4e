"""What a person gave us can't be used: one clear line, no traceback, exit code 64."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import click


@contextmanager
def refusing(*kinds: type[Exception]) -> Iterator[None]:
    """Turn errors of these kinds, which say what is wrong with something given, into a refusal."""
    try:
        yield
    except kinds as error:
        raise click.ClickException(str(error)) from error


@contextmanager
def writing(path: Path, option: str) -> Iterator[None]:
    """Turn a failure to write ``path`` into a refusal that names it and the ``option`` to change."""
    try:
        yield
    except OSError as error:
        why = "it is no folder" if isinstance(error, FileExistsError) else error.strerror
        raise click.ClickException(f"{path} can't be written ({why}): name another {option}") from error
