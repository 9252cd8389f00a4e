"""Steps that keep the invariant because they show nothing are not proved."""

import pytest
import z3

from planeproof.spec.obligation import Answer
from planeproof.spec.steps import decide
from planeproof.spec.steps.form import Named, Steps
from planeproof.spec.steps.guards import without
from planeproof.spec.steps.reference import Delta, SplitPool
from planeproof.spec.steps.state import Own, Plan
from planeproof.spec.vocabulary import Formula, Term


def never(own: Own) -> Formula:
    """What holds in no state."""
    return z3.And(own.busy, z3.Not(own.busy))


class NeverTakes(Delta):
    """Is never idle enough."""

    def take_guards(self, own: Own) -> Named:
        """Never."""
        return {"never": never(own)}


class NeverShows(Delta):
    """Sends, and waits for ever."""

    def show_guards(self, own: Own, tile: Term, row: Term, cell: Term) -> Named:
        """Never."""
        return {"never": never(own)}


class NoPlan(Delta):
    """Has facts that no plan can keep."""

    def plan_facts(self, own: Own, plan: Plan, cell: Term, row: Term) -> Named:
        """What can't be."""
        return {"contradiction": never(own)}


class EmptyPicturesOnly(Delta):
    """Is right about pictures without ink."""

    def plan_facts(self, own: Own, plan: Plan, cell: Term, row: Term) -> Named:
        """No ink anywhere, besides the usual facts."""
        return {**super().plan_facts(own, plan, cell, row), "no ink": plan.picture(cell, row) == 0}


@pytest.mark.parametrize(
    "steps", [NeverTakes(), NeverShows(), NoPlan(), EmptyPicturesOnly()], ids=lambda steps: steps.name
)
def test_what_shows_nothing_is_not_proved(steps: Steps) -> None:
    """Every step keeps the invariant, and still the answer is UNKNOWN, with the reason."""
    decision = decide(steps)
    assert (decision.answer, decision.gaps) == (Answer.UNKNOWN, ())
    assert "whatever shows nothing" in decision.words


@pytest.mark.parametrize("steps", [Delta(), SplitPool()], ids=lambda steps: steps.name)
def test_a_proof_says_what_is_assumed_of_plans(steps: Steps) -> None:
    """The facts that every plan must keep stand in the answer."""
    decision = decide(steps)
    assert decision.answer is Answer.PROVED
    assert "only an empty cell gets the blank tile" in decision.words


def test_a_waived_name_that_is_none_is_refused() -> None:
    """It would waive nothing, and seem to show that the guard is not needed."""
    steps = Delta()
    steps.waived = frozenset({"nonsense"})
    with pytest.raises(ValueError, match="waived names 'nonsense'; there are: it is idle"):
        decide(steps)
    assert decide(without(Delta(), "it is idle")).answer is Answer.REFUTED
