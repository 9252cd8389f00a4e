"""Outcomes, what they rest on, and the statistics of it."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binomtest

from planeproof.contract.rules import PROGRESS, RULES, RuleClass
from planeproof.judge import Basis, Finding, Outcome, Profile, Strength, Verdict, by_seriousness
from tests.judge.scripted import EMPTY, FULL, picture, played

EXIT_CODES = {"PASS": 0, "FAIL": 1, "UNKNOWN": 2, "VACUOUS": 3, "CANDIDATE_ERROR": 4, "HUNG": 5}
WORST_FIRST = ["HUNG", "CANDIDATE_ERROR", "FAIL", "UNKNOWN", "VACUOUS", "PASS"]


def verdict(*outcomes: Outcome) -> Verdict:
    """A verdict of which only the outcomes matter."""
    return Verdict(
        target="mine.py:Mine",
        machines=("by hand",),
        profile=Profile.STRICT,
        seed=1,
        outcomes=outcomes,
        basis=(),
        rules=(),
        findings=(),
        costs=(),
    )


def test_the_outcomes_are_these_six_with_these_exit_codes() -> None:
    """A closed set."""
    assert {outcome.name: outcome.value for outcome in Outcome} == EXIT_CODES


@pytest.mark.parametrize("outcome", Outcome)
def test_an_outcome_refuses_to_be_a_bool(outcome: Outcome) -> None:
    """Not even PASS is true; nor is a verdict."""
    for use in (bool, lambda it: not it, lambda it: it and 1, lambda it: 1 if it else 0):
        with pytest.raises(TypeError, match=f"Outcome.{outcome.name}"):
            use(outcome)
    with pytest.raises(TypeError, match="not a bool"):
        bool(verdict(outcome))


@given(st.lists(st.sampled_from(Outcome)))
def test_the_most_serious_is_reported_first_and_all_are_listed(found: list[Outcome]) -> None:
    """Each once, worst first; PASS only where there is nothing else, nothing at all included."""
    names = [outcome.name for outcome in by_seriousness(found)]
    others = [name for name in WORST_FIRST if name != "PASS" and Outcome[name] in found]
    assert names == (others or ["PASS"])


def test_a_verdict_answers_with_its_first_outcome() -> None:
    """The others stand beside it."""
    assert verdict(Outcome.FAIL, Outcome.VACUOUS).outcome is Outcome.FAIL


def test_a_verdict_prints_on_one_line() -> None:
    """Outcomes, target, machines and what is broken; neither plays nor pictures."""
    plain = verdict(Outcome.PASS)
    assert repr(plain) == "<Verdict PASS; mine.py:Mine; on by hand>"
    shown = played([picture(FULL, EMPTY)], [])
    found = Finding(rule=PROGRESS, play=shown, violation=shown.violations[0])
    failed = replace(plain, outcomes=(Outcome.FAIL, Outcome.VACUOUS), machines=("a", "b"), findings=(found,))
    assert repr(failed) == "<Verdict FAIL, VACUOUS; mine.py:Mine; on a, b; broken: progress>"


def test_strict_fails_on_every_rule_and_seen_on_all_but_discipline() -> None:
    """The three of discipline are exposed only."""
    assert all(Profile.STRICT.fails_on(rule) for rule in RULES)
    spared = {rule.id for rule in RULES if not Profile.SEEN.fails_on(rule)}
    assert spared == {"hidden-writes", "exact-reveal", "blanking-only"}
    assert spared == {rule.id for rule in RULES if rule.rule_class is RuleClass.DISCIPLINE}


# --- the bound ----------------------------------------------------------------------------------------------


def sampled(scenes: int, *, independent: bool = True) -> Basis:
    """So many scenes, none of which failed."""
    return Basis(strength=Strength.SAMPLED, source="recipes", scenes=scenes, independent=independent)


@given(st.integers(1, 100_000))
def test_the_bound_is_the_exact_one_sided_one(scenes: int) -> None:
    """The Clopper-Pearson interval of scipy for no failure in n, one-sided, 95 %."""
    interval = binomtest(0, scenes, alternative="less").proportion_ci(confidence_level=0.95, method="exact")
    assert sampled(scenes).bound == pytest.approx(interval.high, rel=1e-9)


# RUN: computed with scipy, `binomtest(0, n, alternative="less")`, printed to these places.
EXACT = {30: ".0950", 100: ".0295", 842: ".003552", 1000: ".002991", 8192: ".000366", 10000: ".000300"}
# READ, abstract: Hanley and Lippman-Hand's rule of three in a letter to JAMA 1995: 0/50 -> 6 %, 0/1000 -> 0.3 %.
RULE_OF_THREE = {50: 0.06, 1000: 0.003}
# RUN: the scenes that are needed for a bound below 1 %, 0.1 % and 0.01 %.
NEEDED = {299: 0.01, 2995: 0.001, 29_956: 0.0001}


@pytest.mark.parametrize(("scenes", "printed"), EXACT.items())
def test_the_bound_for_some_sizes(scenes: int, printed: str) -> None:
    """The exact figures, to the places they are known to."""
    assert f"{sampled(scenes).bound:.{len(printed) - 1}f}" == f"0{printed}"


@pytest.mark.parametrize(("scenes", "bound"), RULE_OF_THREE.items())
def test_the_bound_is_below_the_rule_of_three_and_near_it(scenes: int, bound: float) -> None:
    """Three in n is the well-known approximation from above."""
    exact = sampled(scenes).bound
    assert exact is not None
    assert 0.96 * bound < exact < bound


@pytest.mark.parametrize(("scenes", "bound"), NEEDED.items())
def test_the_scenes_needed_for_a_bound(scenes: int, bound: float) -> None:
    """One scene fewer is not enough."""
    enough, fewer = sampled(scenes).bound, sampled(scenes - 1).bound
    assert enough is not None
    assert fewer is not None
    assert enough <= bound < fewer


@pytest.mark.parametrize("basis", [sampled(0), sampled(500, independent=False), replace(sampled(500), failed=True)])
def test_no_bound_where_it_would_mean_nothing(basis: Basis) -> None:
    """Without scenes, with scenes that depend on one another, or with one that failed."""
    assert basis.bound is None
