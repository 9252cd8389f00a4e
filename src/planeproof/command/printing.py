"""Lines of a report to the terminal: headings set apart where colours are to be had, plain everywhere else."""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that --help answers at once

import os
import sys
from collections.abc import Iterable

import click

_PLAIN = str.maketrans("·█▓▒░│─┌┬┐├┼┤└┴┘", ".@%&=|-+++++++++")
"""For terminals and files that can't take the drawing characters; no two that mean something become one."""

_GOOD, _BAD = ("PASS", "PROVED"), ("FAIL", "REFUTED", "HUNG", "CANDIDATE ERROR")
_STYLES = dict.fromkeys(_GOOD, "bold green") | dict.fromkeys(_BAD, "bold red")


def show(lines: Iterable[str]) -> None:
    """Print ``lines`` to standard output. Lines at the margin are headings; the first may begin with an outcome."""
    from rich.console import Console
    from rich.text import Text

    console = Console(highlight=False, markup=False, emoji=False, soft_wrap=True)
    try:
        for line in lines:
            text = _printable(line, console.encoding)
            if not console.is_terminal:
                click.echo(text)  # not through the console, which would cut or pad lines for a width it assumes
            else:
                console.print(Text(text, style=_style(line)))
    except BrokenPipeError:
        # Whoever reads has seen enough (`| head`); the exit code still says what came of it.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _printable(line: str, encoding: str) -> str:
    try:
        line.encode(encoding)
    except UnicodeEncodeError:
        return line.translate(_PLAIN).encode(encoding, "replace").decode(encoding)
    return line


def _style(line: str) -> str:
    if not line or line[0] == " ":
        return "bold yellow" if "<-- here" in line else ""
    return next((style for word, style in _STYLES.items() if line.startswith(f"{word}  ")), "bold")
