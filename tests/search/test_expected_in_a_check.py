"""A check with a list of expected failures: what is let be, and what fails all the same."""

from datetime import date
from pathlib import Path

import pytest

from planeproof.candidates.reference import Delta
from planeproof.contract import Scene
from planeproof.contract.rules import FAIR_REFUSAL, HIDDEN_WRITES
from planeproof.judge import Outcome, RuleStatus, Verdict
from planeproof.judge.expected import Expected
from planeproof.record import read_record, write_record
from planeproof.report import verdict_lines
from planeproof.scenes.cases import Case, save_case
from planeproof.search import check
from tests.report.schedulers import Early
from tests.search.test_expected import scene
from tests.search.wrong import DeclinesSecond

LAST = date(2027, 3, 31)


class EarlyAndDeclines(Early, DeclinesSecond):
    """Two faults at once, of which one hides the other only where both come in one scene."""


@pytest.fixture
def declined(tmp_path: Path) -> str:
    """A scene on disk in which the second picture is declined."""
    one = scene()
    save_case(tmp_path / "declined.json", Case(scene=Scene.of(one.machine, [one.pictures[0]] * 2)))
    return str(tmp_path / "declined.json")


@pytest.fixture
def case(tmp_path: Path) -> str:
    """A scene on disk in which Early breaks hidden-writes first."""
    save_case(tmp_path / "here.json", Case(scene=scene()))
    return str(tmp_path / "here.json")


def entry(make: type, case: str, **changes: object) -> Expected:
    """That ``make`` breaks hidden-writes in it."""
    target = f"{make.__module__}:{make.__qualname__}"
    given = {"rule": HIDDEN_WRITES, "reason": "not yet", "expires": LAST, **changes}
    return Expected(place="list.toml, entry 1", target=target, case=case, **given)  # type: ignore[arg-type]


def verdict_with(make: type, *entries: Expected, today: date = LAST) -> Verdict:
    """Of a check with these expected, on the bench."""
    return check(make, machines=scene().machine, scenes=150, smaller_seconds=0.5, expected=entries, today=today)


def status(verdict: Verdict, rule: object) -> RuleStatus:
    """What is known of that rule."""
    return next(report.status for report in verdict.rules if report.rule is rule)


def test_what_is_expected_is_let_be_and_told(declined: str) -> None:
    """With its reason and date; what follows from it in the same scenes is let be too."""
    verdict = verdict_with(DeclinesSecond, entry(DeclinesSecond, declined, rule=FAIR_REFUSAL))
    assert Outcome.FAIL not in verdict.outcomes
    assert verdict.findings == ()
    assert status(verdict, FAIR_REFUSAL) is RuleStatus.EXPECTED
    assert [each.wrong for each in verdict.expected] == [None]
    text = " ".join(" ".join(verdict_lines(verdict)).split())
    assert "fair-refusal is broken, which is let be until 2027-03-31: not yet (list.toml, entry 1)" in text


def test_another_fault_is_found_all_the_same(case: str) -> None:
    """What is expected takes nothing else out of the search."""
    verdict = verdict_with(EarlyAndDeclines, entry(EarlyAndDeclines, case))
    assert verdict.outcome is Outcome.FAIL
    found = {finding.rule for finding in verdict.findings}
    assert FAIR_REFUSAL in found
    assert HIDDEN_WRITES not in found


def test_without_the_list_it_fails() -> None:
    """So the tests above are about the list."""
    verdict = verdict_with(Early)
    assert verdict.outcome is Outcome.FAIL
    assert HIDDEN_WRITES in [finding.rule for finding in verdict.findings]


def test_an_entry_that_does_not_hold_fails_a_check_that_finds_nothing(case: str) -> None:
    """As one that is mended."""
    verdict = verdict_with(Delta, entry(Delta, case))
    assert verdict.outcome is Outcome.FAIL
    assert verdict.findings == ()
    assert "no rule is broken in" in str(verdict.expected[0].wrong)
    assert status(verdict, HIDDEN_WRITES) is RuleStatus.KEPT


def test_an_entry_that_is_late_excuses_nothing(case: str) -> None:
    """The day after, its rule is found broken again."""
    verdict = verdict_with(Early, entry(Early, case), today=date(2027, 4, 1))
    assert HIDDEN_WRITES in [finding.rule for finding in verdict.findings]
    assert "it expired on 2027-03-31" in str(verdict.expected[0].wrong)


def test_a_record_holds_what_is_expected(case: str) -> None:
    """Both kinds come back as they were."""
    verdict = verdict_with(Early, entry(Early, case), entry(Early, "gone.json"))
    assert read_record(write_record(verdict), "here").expected == verdict.expected
    assert [each.wrong is None for each in verdict.expected] == [True, False]
