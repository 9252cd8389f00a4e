"""A check with a list of expected failures: what is let be, and what fails all the same."""

import xml.etree.ElementTree as ET
from datetime import date
from pathlib import Path

import pytest

from planeproof.candidates.faults import OldInkLeft
from planeproof.candidates.reference import Delta
from planeproof.contract import Scene
from planeproof.contract.rules import EXACT_REVEAL, FAIR_REFUSAL, HIDDEN_WRITES, IN_ORDER, PROGRESS, RULES, WHOLE_REVEAL
from planeproof.judge import Outcome, RuleStatus, Verdict
from planeproof.judge.expected import Expected
from planeproof.page import page_html
from planeproof.record import read_record, write_record
from planeproof.report import verdict_lines
from planeproof.report.formats import junit_xml
from planeproof.scenes.cases import Case, save_case
from planeproof.search import check
from tests.candidates.test_zoo import LEAST, played
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


@pytest.fixture
def old(tmp_path: Path) -> str:
    """A scene on disk in which OldInkLeft breaks exact-reveal first."""
    save_case(tmp_path / "old.json", Case(scene=played(LEAST["old-ink-left"], OldInkLeft).scene))
    return str(tmp_path / "old.json")


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


def test_what_is_broken_in_the_same_scenes_is_not_called_kept(old: str) -> None:
    """Nothing is known of it, no bound is left, how many scenes were let be is told, and no format calls it a pass."""
    verdict = verdict_with(OldInkLeft, entry(OldInkLeft, old, rule=EXACT_REVEAL))
    masked = {report.rule for report in verdict.rules if report.status is RuleStatus.MASKED}
    assert verdict.outcome is Outcome.PASS
    assert masked == {WHOLE_REVEAL, IN_ORDER, PROGRESS}
    drawn = [basis for basis in verdict.basis if basis.independent]
    assert all(0 < basis.let_be <= basis.scenes and basis.bound is None for basis in drawn)
    text = " ".join(" ".join(verdict_lines(verdict)).split())
    assert f"of which {drawn[0].let_be} failed as is expected, so there is no bound" in text
    assert "no rule was broken but in scenes in which a failure that is expected came first" in text
    assert "with 95 %" not in text
    suite = ET.fromstring(junit_xml(verdict))[0]
    skipped = {each.get("name") for each in suite if each.find("skipped") is not None}
    assert skipped == {rule.id for rule in masked | {EXACT_REVEAL}}
    assert suite.get("skipped") == str(len(skipped))
    head = page_html(verdict).split('id="rules"')[0]
    assert "exact-reveal is broken, which is let be until 2027-03-31: not yet (list.toml, entry 1)." in head
    assert read_record(write_record(verdict), "here").basis == verdict.basis


@pytest.mark.parametrize("jobs", [1, 2])
def test_how_many_scenes_were_let_be_does_not_depend_on_who_played_them(old: str, jobs: int) -> None:
    """What another process has let be is counted as well."""
    entries = [entry(OldInkLeft, old, rule=EXACT_REVEAL)]
    machine = scene().machine
    options = {"scenes": 150, "smaller_seconds": 0.5, "expected": entries, "today": LAST, "jobs": jobs}
    verdict = check(OldInkLeft, machines=machine, **options)  # type: ignore[arg-type]
    alone = verdict_with(OldInkLeft, *entries)
    assert verdict.basis == alone.basis
    assert [status(verdict, rule) for rule in RULES] == [status(alone, rule) for rule in RULES]


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
