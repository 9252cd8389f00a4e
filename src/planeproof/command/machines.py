"""``planeproof machines``: the displays that ship, and all figures of one of them or of a user's own."""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that --help answers at once

import click

from planeproof.command.printing import show
from planeproof.command.refusing import refusing


@click.command(short_help="The machines that ship, and all figures of one.")
@click.argument("name", required=False, metavar="[NAME|FILE.toml]")
@click.option("--toml", is_flag=True, help="Only the machine as TOML, to save and change.")
def machines(name: str | None, toml: bool) -> None:
    """The machines that ship, or all figures of one, followed by its TOML to copy."""
    from planeproof.machines import MachineFileError, machine_toml, read_machine, shipped
    from planeproof.report import machine_headline, machine_page

    if name is None:
        if toml:
            raise click.UsageError("--toml needs the name of a machine")
        show([machine_headline(read_machine(each)) for each in shipped()])
        return
    with refusing(MachineFileError):
        machine = read_machine(name)
    text = machine_toml(machine).rstrip().splitlines()
    show(text if toml else [*machine_page(machine), "", "As TOML", *(f"  {line}".rstrip() for line in text)])
