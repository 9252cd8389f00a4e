"""``planeproof prove TARGET``: proved, refuted by a scene to replay, or unknown."""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that --help answers at once

from pathlib import Path
from typing import TYPE_CHECKING

from planeproof.command.interrupting import Interruption
from planeproof.command.printing import show
from planeproof.command.refusing import writing
from planeproof.command.steps import decided, steps_named

if TYPE_CHECKING:
    from planeproof.spec.steps import Decision


def prove_own(target: str, rlimit: int, cases: Path) -> int:
    """Decide the steps that ``target`` names, show what came of it, and save a refutation in ``cases``."""
    from planeproof.spec import Answer, decision_lines

    steps = steps_named(target)
    with Interruption():
        decision = decided(target, steps, rlimit)
    show(decision_lines(decision, target))
    if decision.answer is Answer.REFUTED:
        show(_scene_lines(decision, target, cases))
    return {Answer.PROVED: 0, Answer.REFUTED: 1, Answer.UNKNOWN: 2}[decision.answer]


def _scene_lines(decision: "Decision", target: str, cases: Path) -> list[str]:
    from planeproof.conformance import save, shown
    from planeproof.judge import Finding
    from planeproof.report.story import again_lines, summary_lines

    refutation = shown(decision)
    with writing(cases, "--cases folder"):
        cases.mkdir(parents=True, exist_ok=True)
        case = save(refutation, target, cases)
    finding = Finding(rule=refutation.violation.rule, play=refutation.play, violation=refutation.violation)
    return ["", *summary_lines(finding), "", *again_lines(str(case))]
