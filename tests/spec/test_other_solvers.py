from dataclasses import replace

import pytest

from planeproof.spec import OBLIGATIONS, Answer, Outcome
from planeproof.spec.other_solvers import OUT_OF_REACH, SOLVERS, OtherSolver

PAIRS = pytest.mark.parametrize("solver", SOLVERS, ids=lambda solver: str(solver.name))


@PAIRS
def test_all_certificates_are_confirmed_but_those_listed(solver: OtherSolver) -> None:
    """The solver gives the wanted answer to every obligation, and gives up on exactly those that are listed."""
    outcomes = {obligation.id: solver.confirm(obligation).outcome for obligation in OBLIGATIONS}
    assert [name for name, outcome in outcomes.items() if outcome is Outcome.CONTRARY] == []
    assert {name for name, outcome in outcomes.items() if outcome is Outcome.OPEN} == OUT_OF_REACH[solver.name].keys()


@PAIRS
def test_the_answer_is_the_solvers_own(solver: OtherSolver) -> None:
    """A false statement is refuted although the certificate's status line says that it is proved."""
    false = replace(OBLIGATIONS[0].without("the palette shows the side"), wanted=Answer.PROVED)
    result = solver.confirm(false)
    assert (result.answer, result.outcome) == (Answer.REFUTED, Outcome.CONTRARY)
    assert result.solver.startswith(f"{solver.name} ")


@PAIRS
def test_a_spent_limit_is_unknown(solver: OtherSolver) -> None:
    """With next to no resources or time the answer is UNKNOWN, and says which solver gave up."""
    hard = next(o for o in OBLIGATIONS if o.id == "rules-let-nothing-be-seen")
    result = solver.confirm(hard, limit=1)
    assert (result.answer, result.outcome) == (Answer.UNKNOWN, Outcome.OPEN)
    assert str(result.reason).startswith(f"{solver.name} gave up")


def test_a_missing_solver_is_unknown() -> None:
    """A package that is not installed proves nothing, and the reason says what to install."""
    missing = replace(SOLVERS[0], name="planeproof_no_such_solver")
    result = missing.confirm(OBLIGATIONS[0])
    assert result.answer is Answer.UNKNOWN
    assert result.reason == "planeproof_no_such_solver is missing: pip install 'planeproof[certificates]'"
