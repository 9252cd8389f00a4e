"""The check behind the tests of one machine, made once in a process, and what it says about each of them."""

from datetime import date
from functools import cache
from typing import Any

from planeproof.contract import RULES, Rule, rule
from planeproof.hosts import load
from planeproof.judge import Outcome, Profile, RuleReport, RuleStatus, Verdict
from planeproof.judge.conversation import CALL_SECONDS
from planeproof.judge.expected import Expected
from planeproof.report.evidence import rule_state
from planeproof.report.fault import fault_lines
from planeproof.report.figures import listed, wrapped
from planeproof.report.story import again_lines, finding_lines
from planeproof.report.text import OPENINGS
from planeproof.search import check
from planeproof.search.expected import held, read_expected
from planeproof.search.trial import Trial
from planeproof.testing.asked import Asked
from planeproof.testing.keeping import kept
from planeproof.testing.questions import Answer, Failed, LetBe

_BROKEN_OFF = (Outcome.FAIL, Outcome.CANDIDATE_ERROR, Outcome.HUNG)
_TO_ITS_END = (Outcome.PASS, Outcome.VACUOUS)


def about_rule(asked: Asked, machine: Any, name: str, *, alone: bool) -> Answer:  # noqa: ANN401 -- text or a Machine
    """What the check says about the rule of that name."""
    chosen = rule(name)
    entry = next((entry for entry in _entries(asked) if entry.wrong is None and entry.rule is chosen), None)
    if entry is not None:
        return LetBe(reason=f"{entry.reason} (let be until {entry.expires}: {entry.place})")
    return _about(_verdict(asked, machine, chosen if alone else None), chosen)


def about_contract(asked: Asked, machine: Any) -> Answer:  # noqa: ANN401 -- text or a Machine
    """Whether the candidate broke the contract."""
    verdict = _verdict(asked, machine, None)
    if verdict.fault is None:
        return None
    return _failed(fault_lines(verdict.fault, verdict.fault_case, verdict.fault_scene))


def about_entry(asked: Asked, number: int) -> Answer:
    """What is wrong with that entry of the expected failures."""
    entry = _entries(asked)[number]
    return None if entry.wrong is None else _failed(wrapped(f"{entry.place}: {entry.wrong}.", 0))


def _about(verdict: Verdict, chosen: Rule) -> Answer:
    """What is not known to be kept fails: a rule without an answer is none that was skipped."""
    finding = next((finding for finding in verdict.findings if finding.rule is chosen), None)
    if finding is not None:
        return _failed([*finding_lines(finding), "", *again_lines(finding.case)])
    if verdict.fault is not None and len(verdict.rules) == 1:
        return _failed(fault_lines(verdict.fault, verdict.fault_case, verdict.fault_scene))
    report = next(report for report in verdict.rules if report.rule is chosen)
    if report.status is RuleStatus.MASKED:
        return LetBe(reason=rule_state(verdict, report))
    missing = _missing(verdict, report)
    return None if missing is None else _failed(wrapped(missing, 0))


def _missing(verdict: Verdict, report: RuleReport) -> str | None:
    """Why the rule is not known to be kept, though no scene of its own shows it broken; None if it is."""
    name = report.rule.id
    if report.status is RuleStatus.BROKEN:
        return f"{name} is BROKEN, in a scene where another rule was broken first: see {_broken(verdict)}."
    if verdict.outcome in _BROKEN_OFF:
        return f"{name} is UNKNOWN: {_ended(verdict)}"
    if report.status is RuleStatus.NOT_EXERCISED:
        return f"{name} is VACUOUS: it never happened that {report.rule.witness}."
    if verdict.outcome not in _TO_ITS_END or _says_nothing(verdict):
        return f"{name} is {verdict.outcome.name}: {OPENINGS[verdict.outcome]}."
    return None


def _says_nothing(verdict: Verdict) -> bool:
    """Whether it is VACUOUS for another reason than rules that were not exercised, so as a whole."""
    idle = any(report.status is RuleStatus.NOT_EXERCISED for report in verdict.rules)
    return verdict.outcome is Outcome.VACUOUS and not idle


def _ended(verdict: Verdict) -> str:
    if verdict.fault is not None:
        return f"{OPENINGS[verdict.outcome]}; see the test of the contract."
    return (
        f"the check ended before it was known, at {_broken(verdict)}. Mend that first, and this will have its answer."
    )


def _broken(verdict: Verdict) -> str:
    return listed([finding.rule.id for finding in verdict.findings]) or "an entry of the expected failures"


def _failed(lines: list[str]) -> Failed:
    return Failed(text="\n".join(lines))


@cache
def _verdict(asked: Asked, machine: Any, alone: Rule | None) -> Verdict:  # noqa: ANN401 -- text or a Machine
    entries = _entries(asked)
    options: dict[str, Any] = {"expected": entries} if entries else {}
    with kept(asked, machine) as (folder, moved):
        verdict = check(
            asked.target,
            machines=[machine],
            profile=Profile(asked.profile),
            scenes=asked.scenes,
            only=() if alone is None else [alone],
            cases=folder,
            **options,
        )
    return moved(verdict)


@cache
def _entries(asked: Asked) -> tuple[Expected, ...]:
    """The expected failures, each held to its case."""
    if asked.expected is None:
        return ()
    candidate = load(asked.target)
    trial = Trial(
        name=candidate.name,
        make=candidate.make,
        asked=frozenset(RULES),
        profile=Profile(asked.profile),
        call_seconds=CALL_SECONDS,
    )
    return held(read_expected(asked.expected), trial, today=date.today())
