"""The command ``planeproof``: its commands, and how it ends."""

import sys
import traceback
from collections.abc import Sequence
from typing import Any, NoReturn

import click

from planeproof.command.check import check
from planeproof.command.compare import compare
from planeproof.command.edges import edges
from planeproof.command.exhaust import exhaust
from planeproof.command.machines import machines
from planeproof.command.new import new
from planeproof.command.pictures import pictures
from planeproof.command.power import power
from planeproof.command.prove import prove
from planeproof.command.replay import replay
from planeproof.command.rules import rules
from planeproof.command.ways import ways

USAGE, INTERNAL, INTERRUPTED = 64, 70, 130
"""Exit codes beside those of `planeproof.judge.Outcome`; click's own 2 for usage would mean UNKNOWN here."""

_ENDING = """Exit codes: 0 PASS, 1 FAIL, 2 UNKNOWN, 3 VACUOUS, 4 CANDIDATE ERROR, 5 HUNG, 64 wrong usage,
70 a fault of Planeproof itself, 130 interrupted."""


_OUR_FAULT = """planeproof: this is a fault of Planeproof itself, not of your scheduler. Please report it,
with the lines above and the line that you typed."""


class Front(click.Group):
    """A click group whose commands return their exit code, and which ends with the codes above."""

    def main(self, args: Sequence[str] | None = None, prog_name: str | None = None, **extra: Any) -> NoReturn:  # type: ignore[override]  # noqa: ANN401 -- as click has it
        """Run the command that ``args`` name, and exit."""
        extra["standalone_mode"] = False
        sys.exit(self._code(args, prog_name, extra))

    def _code(self, args: Sequence[str] | None, prog_name: str | None, extra: dict[str, Any]) -> int:
        try:
            code = super().main(args, prog_name, **extra)
        except click.ClickException as refused:
            refused.show()
            return USAGE
        except (click.Abort, KeyboardInterrupt):
            click.echo("planeproof: interrupted", err=True)
            return INTERRUPTED
        except Exception:
            click.echo(traceback.format_exc(), err=True, nl=False)
            click.echo(_OUR_FAULT, err=True)
            return INTERNAL
        return int(code or 0)


@click.group(cls=Front, epilog=_ENDING, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="planeproof", message="planeproof %(version)s")
def main() -> None:
    """Says whether a scheduler for a tile display ever shows what it should not, with the smallest scene.

    Begin with `planeproof new my.py`, then `planeproof check my.py:Starter`.
    """


for command in (check, exhaust, compare, power, replay, pictures, rules, machines, edges, ways, prove, new):
    main.add_command(command)
