"""A scheduler written as steps, named on the command line, and what is decided of it."""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that --help answers at once

from typing import TYPE_CHECKING

import click

from planeproof.command.refusing import refusing

if TYPE_CHECKING:
    from planeproof.spec.steps import Decision, Steps

MISSING = """UNKNOWN  z3 is missing, so nothing was asked and nothing is proved
  What to do: pip install 'planeproof[spec]' (in a checkout: pip install -e '.[spec]'), then the same line again."""


def has_solver() -> bool:
    """Whether z3 is installed."""
    try:
        from planeproof import spec  # noqa: F401
    except ModuleNotFoundError as error:
        if error.name != "z3":
            raise
        return False
    return True


def steps_named(target: str) -> "Steps":
    """The steps that ``target`` names, or that the scheduler it names takes; refused if there are none."""
    from planeproof.contract.errors import in_words
    from planeproof.hosts import TargetError, load
    from planeproof.spec.steps.executing import steps_of

    with refusing(TargetError):
        make = load(target).make
        try:
            return steps_of(make())
        except Exception as error:
            raise click.ClickException(f"target {target!r} gives no steps: {in_words(error)}") from error


def decided(target: str, steps: "Steps", rlimit: int) -> "Decision":
    """What z3 decides of ``steps``; refused if what they say can't be asked."""
    from planeproof.contract.errors import in_words
    from planeproof.spec.steps import decide

    try:
        return decide(steps, rlimit=rlimit)
    except Exception as error:
        raise click.ClickException(
            f"target {target!r}: its steps can't be decided: {in_words(error)}. Each method must give what the form "
            "asks for, made with z3 from what it is given: see python -m pydoc planeproof.spec.steps.form"
        ) from error
