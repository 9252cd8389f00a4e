"""``planeproof ways``: how a picture could be revealed on a machine, whether the method is needed there, or can be."""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that --help answers at once

import click

from planeproof.command.printing import show
from planeproof.command.refusing import refusing


@click.command(short_help="The ways to reveal a picture on a machine, side by side.")
@click.argument("machines", nargs=-1, metavar="[NAME|FILE.toml]...")
def ways(machines: tuple[str, ...]) -> None:
    """Set the ways to reveal a picture side by side: a table of several machines, or of all that ship, or one in full.

    What each leaves of colours and tiles, what it sends, how many refreshes that takes on either line standard, and the
    proof, the example or the count that each statement rests on (see planeproof prove --only ID).
    """
    from planeproof.machines import MachineFileError, read_machine, shipped
    from planeproof.report import RECKONED, ways_page, ways_table, wrapped

    with refusing(MachineFileError):
        described = [read_machine(name) for name in machines or shipped()]
    show(ways_page(described[0]) if len(described) == 1 else ways_table(described))
    show(["", *wrapped(RECKONED, 2)])
