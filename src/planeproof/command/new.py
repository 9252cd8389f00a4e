"""``planeproof new``: a scheduler to begin with, which is right."""

from importlib import resources
from pathlib import Path

import click

from planeproof.command.refusing import writing


@click.command(short_help="Write a scheduler to begin with, which is right.")
@click.argument("file", type=click.Path(path_type=Path))
def new(file: Path) -> None:
    """Write a starter scheduler to FILE, which must end in .py and must not be there yet."""
    if file.suffix != ".py":
        raise click.UsageError(f"{file} does not end in .py, and check takes file.py:Name")
    text = resources.files("planeproof.command").joinpath("starter.py").read_text("utf-8")
    if file.exists():
        raise click.ClickException(f"{file} is there already, and is left as it is: name another file")
    with writing(file, "file"), file.open("x", encoding="utf-8") as out:
        out.write(text)
    click.echo(f"Wrote {file}. Check it:\n\n  planeproof check {file}:Starter")
