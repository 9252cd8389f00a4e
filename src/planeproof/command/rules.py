"""``planeproof rules``: what a scheduler must never do, and what it must eventually do."""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that --help answers at once

import click

from planeproof.command.printing import show
from planeproof.command.refusing import refusing


@click.command(short_help="The nine rules that a scheduler must keep.")
@click.argument("name", required=False, metavar="[RULE]")
def rules(name: str | None) -> None:
    """The nine rules, or one RULE, with class, kind, sentence, reason, and when it counts as exercised."""
    from planeproof.contract import RULES, rule
    from planeproof.report import rule_lines

    with refusing(ValueError):
        chosen = RULES if name is None else (rule(name),)
    for number, one in enumerate(chosen):
        show([*([""] if number else []), one.id, *rule_lines(one, 2)])
