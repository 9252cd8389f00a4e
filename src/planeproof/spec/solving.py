"""Asks z3 one obligation: a fresh context and solver each time, a resource limit, never a wall clock."""

import time
from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum

import z3

from planeproof.spec.obligation import Answer, Obligation, Question
from planeproof.spec.vocabulary import Term

RLIMIT = 60_000_000
"""Resource units of z3 for one obligation; the same for the same question on every machine."""

Witness = Mapping[str, int | bool]
"""A counterexample, readable: what each of the question's shown terms is."""


class Outcome(Enum):
    """How an answer stands to the one that was wanted."""

    AS_WANTED = "as wanted"
    OPEN = "open"
    CONTRARY = "contrary"


@dataclass(frozen=True, kw_only=True)
class Result:
    """What one solver answered to one obligation.

    ``used`` are the resource units of this question alone, ``limit`` how many it was given; None where a solver
    does not count. ``witness`` is there if a model was found, also where that model is of chosen instances only and
    the answer therefore UNKNOWN. ``reason`` says why an answer is UNKNOWN.
    """

    obligation: Obligation
    solver: str
    answer: Answer
    seconds: float
    used: int | None
    limit: int
    witness: Witness | None = None
    reason: str | None = None

    @property
    def outcome(self) -> Outcome:
        """Whether the answer is the wanted one, the opposite, or still open."""
        if self.answer is Answer.UNKNOWN:
            return Outcome.OPEN
        return Outcome.AS_WANTED if self.answer is self.obligation.wanted else Outcome.CONTRARY


def prove(obligation: Obligation, rlimit: int = RLIMIT) -> Result:
    """Ask z3 whether the denial of ``obligation`` has a model.

    Raises `ValueError` unless ``rlimit`` is at least 1: z3 takes 0 to mean no limit.
    """
    if rlimit < 1:
        raise ValueError(f"rlimit is {rlimit!r}: give at least 1 resource unit")
    question = obligation.question()
    solver = z3.Solver(ctx=question.goal.ctx)
    solver.set("rlimit", rlimit)
    solver.add(*question.denial)
    before, started = _used(solver), time.perf_counter()
    said = solver.check()
    seconds, used = time.perf_counter() - started, _used(solver) - before
    answer, reason = _reading(said, solver, obligation)
    return Result(
        obligation=obligation,
        solver=f"z3 {z3.get_version_string()}",
        answer=answer,
        seconds=seconds,
        used=used,
        limit=rlimit,
        witness=_witness(solver.model(), question) if said == z3.sat else None,
        reason=reason,
    )


def answered(solver: z3.Solver) -> z3.CheckSatResult:
    """What ``solver`` says. z3 takes Ctrl-C for itself and calls it a reason: here it is `KeyboardInterrupt` again."""
    said = solver.check()
    if said == z3.unknown and "interrupted" in solver.reason_unknown():
        raise KeyboardInterrupt
    return said


def reading(said: str, *, exact: bool) -> tuple[Answer, str | None]:
    """The answer that `sat`, `unsat` or anything else about a denial amounts to, and why it is UNKNOWN if it is."""
    if said == "unsat":
        return Answer.PROVED, None
    if said == "sat" and exact:
        return Answer.REFUTED, None
    if said == "sat":
        return Answer.UNKNOWN, "not proved: a model of the chosen instances, which need not be a counterexample"
    return Answer.UNKNOWN, said


def _reading(said: z3.CheckSatResult, solver: z3.Solver, obligation: Obligation) -> tuple[Answer, str | None]:
    words = f"z3 gave up: {solver.reason_unknown()}" if said == z3.unknown else str(said)
    return reading(words, exact=obligation.exact)


def _used(solver: z3.Solver) -> int:
    """z3 counts on through the life of a context, so only differences mean anything."""
    statistics = solver.statistics()
    return int(statistics.get_key_value("rlimit count")) if "rlimit count" in statistics.keys() else 0  # noqa: SIM118


def _witness(model: z3.ModelRef, question: Question) -> Witness:
    return {name: _value(model, term) for name, term in question.shown.items()}


def _value(model: z3.ModelRef, term: Term) -> int | bool:
    value = model.eval(term, model_completion=True)
    return z3.is_true(value) if z3.is_bool(value) else int(value.as_long())
