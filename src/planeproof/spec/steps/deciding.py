"""Proved, refuted with a course of steps, or unknown: what is decided of a scheduler that is written as steps."""

from dataclasses import dataclass

import z3

from planeproof.spec.obligation import Answer
from planeproof.spec.solving import RLIMIT, answered
from planeproof.spec.steps.course import Course
from planeproof.spec.steps.form import Named, Steps
from planeproof.spec.steps.guards import facts_of, refuse_unknown_waivers
from planeproof.spec.steps.induction import case, cases, full_site
from planeproof.spec.steps.searching import REFRESHES, search, shows_pictures
from planeproof.spec.vocabulary import Formula


@dataclass(frozen=True, kw_only=True)
class Gap:
    """A step that is not proved to keep a conjunct of the invariant: the line to look at first."""

    step: str
    conjunct: str


@dataclass(frozen=True, kw_only=True)
class Decision:
    """The answer about ``steps``, and what it rests on in words.

    PROVED: every step keeps the invariant, and pictures can be shown. REFUTED: ``course`` breaks what the viewer is
    owed or writes outside the pool. UNKNOWN: not inductive, and no such course found; or inductive, but nothing is ever
    shown. ``gaps`` are where the induction failed.
    """

    steps: Steps
    answer: Answer
    words: str
    gaps: tuple[Gap, ...] = ()
    course: Course | None = None


def decide(steps: Steps, *, refreshes: int = REFRESHES, rlimit: int = RLIMIT) -> Decision:
    """Try to prove ``steps`` by induction at full size; failing that, look for a course of ``refreshes`` at most.

    Steps that keep the invariant are proved only if they show anything at all. Raises `ValueError` where a guard or
    plan fact is waived that there is not.
    """
    refuse_unknown_waivers(steps)
    found = gaps(steps, rlimit)
    if not found and not shows_pictures(steps, refreshes, rlimit):
        words = (
            f"The steps of {steps.name} keep the invariant, but so does whatever shows nothing: on a small machine "
            f"they have no way to show two pictures with ink, one after the other, within {refreshes} refreshes."
        )
        return Decision(steps=steps, answer=Answer.UNKNOWN, words=words)
    if not found:
        assumed = "; ".join(facts_of(steps)) or "nothing"
        words = (
            f"The steps of {steps.name} keep the invariant, for every split of the work over blankings and every "
            f"sequence of pictures whose plans keep these facts: {assumed}. Without bound in time. Not proved: that a "
            "picture is shown in time, or that a blanking is long enough."
        )
        return Decision(steps=steps, answer=Answer.PROVED, words=words)
    searched = search(steps, refreshes, rlimit)
    where = ", ".join(f"{gap.step} / {gap.conjunct}" for gap in found)
    if searched.course is not None:
        words = f"A scene of {_refreshes(searched.refreshes)} refutes them. Not kept: {where}."
        return Decision(steps=steps, answer=Answer.REFUTED, words=words, gaps=found, course=searched.course)
    reason = searched.gave_up or f"no scene within {searched.refreshes} refreshes of a small machine"
    words = f"Not inductive ({where}), and {reason}."
    return Decision(steps=steps, answer=Answer.UNKNOWN, words=words, gaps=found)


def _refreshes(number: int) -> str:
    return "1 refresh" if number == 1 else f"{number} refreshes"


def gaps(steps: Steps, rlimit: int = RLIMIT) -> tuple[Gap, ...]:
    """Where the induction fails or gives up, conjunct by conjunct; empty if it succeeds."""
    found = []
    for step in cases(steps):
        asked = case(steps, step, full_site(steps.sharing, z3.Context()))
        if not _holds(asked.premises, asked.question.goal, rlimit):
            found += [
                Gap(step=step, conjunct=name)
                for name, goal in asked.goals.items()
                if not _holds(asked.premises, goal, rlimit)
            ]
    return tuple(found)


def _holds(premises: Named, goal: Formula, rlimit: int) -> bool:
    solver = z3.Solver(ctx=goal.ctx)
    solver.set("rlimit", rlimit)
    solver.add(*premises.values(), z3.Not(goal))
    return bool(answered(solver) == z3.unsat)
