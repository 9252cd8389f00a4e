import pytest

from planeproof.conformance import shown
from planeproof.conformance.refuting import searched_machine
from planeproof.contract import RULES
from planeproof.judge import play
from planeproof.spec import Answer
from planeproof.spec.steps import Steps, decide
from planeproof.spec.steps.executing import executed
from planeproof.spec.steps.guards import facts_of, guards_of, without
from planeproof.spec.steps.reference import REFERENCES, Delta, Full, PackedDelta, SplitPool
from tests.candidates.seeded import seeded_scene, tight
from tests.spec.own_schedulers import (
    RIGHT,
    ChecksumForCompare,
    EmptiedCellKeepsEntry,
    HiddenSideWiped,
    PackedWithoutReading,
    PatternToSeenPlane,
    PendingForgotten,
    PoolNotSplit,
    ShowsBeforeMap,
    TwoPatternsOneTile,
)


def called(value: object) -> str:
    """What a case is called in a report of tests."""
    return value.name if isinstance(value, Steps) else str(value)


SAFETY = frozenset(rule for rule in RULES if rule.id not in {"progress", "fair-refusal"})


@pytest.mark.parametrize("steps", [*REFERENCES, *RIGHT], ids=called)
def test_right_schedulers_are_proved(steps: Steps) -> None:
    """Each strategy of reference, and each right scheduler of a user, is proved, and the words say what is not."""
    decision = decide(steps)
    assert (decision.answer, decision.gaps, decision.course) == (Answer.PROVED, (), None)
    assert "Not proved: that a picture is shown in time" in decision.words


WRONG = [
    (ChecksumForCompare(), "take", "a byte of the hidden side is pending or as wanted", "exact-reveal", 1),
    (EmptiedCellKeepsEntry(), "take", "an entry of the hidden side is pending or as wanted", "exact-reveal", 3),
    (TwoPatternsOneTile(), "take", "what is wanted makes the picture that is due", "exact-reveal", 1),
    (ShowsBeforeMap(), "show", "the viewer sees the current picture", "exact-reveal", 1),
    (PatternToSeenPlane(), "send-byte", "the viewer sees the current picture", "exact-reveal", 2),
    (PendingForgotten(), "lose", "a byte of the hidden side is pending or as wanted", "exact-reveal", 2),
    (PackedWithoutReading(), "send-byte", "the viewer sees the current picture", "hidden-writes", 2),
    (PoolNotSplit(), "take", "what is seen is remembered", "hidden-writes", 2),
]


@pytest.mark.parametrize(("steps", "step", "conjunct", "rule", "refreshes"), WRONG, ids=called)
def test_wrong_schedulers_are_refuted_by_a_scene_that_the_display_shows(
    steps: Steps, step: str, conjunct: str, rule: str, refreshes: int
) -> None:
    """The induction names the line, the search finds a scene, and the judge sees a rule broken in its last refresh."""
    decision = decide(steps)
    assert decision.answer is Answer.REFUTED
    assert (decision.gaps[0].step, decision.gaps[0].conjunct) == (step, conjunct)
    refutation = shown(decision)
    assert decision.course is not None
    assert len(decision.course) == refreshes
    assert (refutation.violation.rule.id, refutation.violation.refresh) == (rule, refreshes - 1)


def test_what_is_not_inductive_and_has_no_scene_is_unknown() -> None:
    """A scheduler that is right, but not by the fixed invariant, is neither proved nor refuted."""
    decision = decide(HiddenSideWiped(), refreshes=2)
    assert (decision.answer, decision.course) == (Answer.UNKNOWN, None)
    assert decision.gaps
    assert "no scene within 2 refreshes" in decision.words
    with pytest.raises(ValueError, match="There is no course to show"):
        shown(decision)


def test_a_spent_limit_proves_and_refutes_nothing() -> None:
    """With next to no resources a right scheduler is not proved, and a wrong one is not refuted: both are UNKNOWN."""
    for steps in (Delta(), ChecksumForCompare()):
        decision = decide(steps, rlimit=100)
        assert (decision.answer, decision.course) == (Answer.UNKNOWN, None)
        assert "z3 gave up in refresh 0" in decision.words


GUARDS = [(steps, guard) for steps in (Delta(), Full(), PackedDelta(), SplitPool()) for guard in guards_of(steps)]


@pytest.mark.parametrize(("steps", "guard"), GUARDS, ids=called)
def test_every_guard_is_needed(steps: Steps, guard: str) -> None:
    """Without any one guard there is a scene in which a rule is broken that has to do with what is seen or owned."""
    refutation = shown(decide(without(steps, guard)))
    assert refutation.violation.rule in SAFETY
    expected = "own-memory" if "hidden side may use" in guard else "exact-reveal"
    assert refutation.violation.rule.id == expected


FACTS = [(steps, fact) for steps in (Delta(), SplitPool()) for fact in facts_of(steps)]


@pytest.mark.parametrize(("steps", "fact"), FACTS, ids=called)
def test_every_plan_fact_is_needed(steps: Steps, fact: str) -> None:
    """Without any one plan fact there is a scene in which a rule about what is seen or owned is broken."""
    refutation = shown(decide(without(steps, fact)))
    assert refutation.violation.rule in SAFETY


def test_a_guard_that_is_not_there_is_named() -> None:
    """The message lists the guards there are."""
    with pytest.raises(ValueError, match="no guard or plan fact 'it rains'; there are: it is idle, the tile is one"):
        without(Delta(), "it rains")


@pytest.mark.parametrize("steps", REFERENCES, ids=called)
def test_the_proved_steps_run_and_break_no_rule(steps: Steps) -> None:
    """Executed as a scheduler, in scenes with disturbances, they show every picture in time and break no rule."""
    machine = tight(searched_machine(steps.sharing))
    for seed in range(3):
        played = play(seeded_scene(machine, seed), executed(steps))
        assert played.counts == {}
        assert played.shown > 0
