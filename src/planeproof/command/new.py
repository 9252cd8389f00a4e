"""``planeproof new``: a scheduler to begin with, which is right; as code that runs, or as steps that are proved."""

from importlib import resources
from pathlib import Path

import click

from planeproof.command.refusing import writing


@click.command(short_help="Write a scheduler to begin with, which is right.")
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--steps", is_flag=True, help="Write one as guarded steps, to be proved.")
def new(file: Path, steps: bool) -> None:
    """Write a starter scheduler to FILE, which must end in .py and must not be there yet."""
    if file.suffix != ".py":
        raise click.UsageError(f"{file} does not end in .py, and check takes file.py:Name")
    template = "starter_steps.py" if steps else "starter.py"
    text = resources.files("planeproof.command").joinpath(template).read_text("utf-8")
    if file.exists():
        raise click.ClickException(f"{file} is there already, and is left as it is: name another file")
    with writing(file, "file"), file.open("x", encoding="utf-8") as out:
        out.write(text)
    what, line = ("Have it proved", f"prove {file}:Starter") if steps else ("Check it", f"check {file}:Starter")
    click.echo(f"Wrote {file}. {what}:\n\n  planeproof {line}")
