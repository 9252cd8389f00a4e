"""A saved case and a target from the command line, or one clear line on what is wrong with them."""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that --help answers at once

from typing import TYPE_CHECKING

import click

from planeproof.command.refusing import refusing

if TYPE_CHECKING:
    from planeproof.hosts import Candidate
    from planeproof.scenes.cases import Case


def loaded(case: str) -> "Case":
    """The case in that file."""
    from planeproof.scenes.cases import CaseError, load_case

    with refusing(CaseError):
        return load_case(case)


def candidate_for(saved: "Case", case: str, target: str | None, command: str) -> "Candidate":
    """The ``target``, or the one that the case was found with."""
    from planeproof.hosts import TargetError, load

    name = target or (saved.found.target if saved.found is not None else "")
    if not name:
        raise click.ClickException(f"{case} names no target: give one, planeproof {command} {case} TARGET")
    with refusing(TargetError):
        return load(name)
