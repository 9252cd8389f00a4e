"""What should have been on show in a refresh: what a rule waits for where it is broken, what is next otherwise."""

from planeproof.contract.rules import FAIR_REFUSAL, PROGRESS
from planeproof.judge import Violation
from planeproof.pictures.compared import Expected, expected
from planeproof.pictures.course import Moment
from planeproof.report.refreshes import Names

WAITED_FOR = {PROGRESS: "due", FAIR_REFUSAL: "declined"}
"""Rules that are broken by what is not shown, and what that is."""


def due(moment: Moment, names: Names, violation: Violation | None) -> tuple[Expected, str]:
    """The frame that should have been seen, and what it is called; ``violation`` is what is broken in this refresh."""
    if violation is not None and violation.picture is not None and violation.rule in WAITED_FOR:
        number = violation.picture
        return Expected(number=number, frame=names.look(number)), f"{names.name(number)}, {WAITED_FOR[violation.rule]}"
    right = expected(moment)
    return right, names.name(right.number)
