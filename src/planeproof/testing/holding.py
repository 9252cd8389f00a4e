"""`holds`: a rule as a test, in a suite of one's own."""

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

from planeproof.testing.asked import MACHINES, PROFILE, SCENES, Asked
from planeproof.testing.questions import Failed, LetBe, Question

if TYPE_CHECKING:
    from planeproof.contract import Machine, Scheduler

MARK = "planeproof_holds"
"""Attribute of a test that `holds` has made: what it asks. The plugin makes a test of it for each case and machine."""

ARGUMENT = "planeproof_question"
"""What such a test is given."""


def holds(
    target: "str | Callable[[], Scheduler]",
    rule: str,
    *,
    machines: "Sequence[Machine | str] | Machine | str" = MACHINES,
    cases: str | Path | None = None,
    scenes: int = SCENES,
    profile: str = PROFILE,
) -> Callable[..., None]:
    """A test that ``target`` keeps the rule of that id, for each of ``machines``, with saved cases replayed first.

    ``test_exact_reveal = holds(Mine, "exact-reveal", cases="tests/cases")``. No other rule is judged by it. ``target``:
    a class, a function that makes a scheduler, or text that names one. ``machines``: values, names of shipped ones, or
    TOML files. ``cases``: a folder; every case in it is replayed, whatever it was found with, and what is found is
    saved there. Paths are relative to pytest's rootdir. The profile is ``strict`` or ``seen``.

    What is wrong with these is an error of the test's collection. The plugin ``planeproof`` must be on, as it is
    unless it was turned off.
    """
    asked = Asked(
        target=target,
        machines=tuple(machines) if isinstance(machines, list | tuple) else (machines,),
        cases=None if cases is None else Path(cases),
        scenes=scenes,
        profile=profile,
    )

    def test(planeproof_question: Question) -> None:
        told(planeproof_question)

    test.__doc__ = f"{rule} holds."
    setattr(test, MARK, (asked, rule))
    return test


def told(question: Question) -> None:
    """Ask, and have pytest tell the answer: its text alone, for there is no line of the test to look at."""
    __tracebackhide__ = True
    answer: Any = question.answer()
    if isinstance(answer, Failed):
        pytest.fail(answer.text, pytrace=False)
    if isinstance(answer, LetBe):
        pytest.xfail(answer.reason)
