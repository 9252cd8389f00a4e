"""All that a page says, as one value: a pure function of the verdict."""

import json
from dataclasses import asdict, dataclass
from hashlib import sha256

from planeproof.contract.rules import RULES
from planeproof.judge import Outcome, RuleStatus, Verdict
from planeproof.page.faults import FaultView, fault_of
from planeproof.page.grounds import CostRow, EdgeRow, Figures, RuleRow, basis_of, costs_of, edges_of, rules_of
from planeproof.page.sheets import Found, found_of
from planeproof.page.shots import Gallery
from planeproof.report.expected import expected_sentence
from planeproof.report.figures import counted, listed
from planeproof.report.text import meaning

SIGNS = {
    Outcome.PASS: "✓",
    Outcome.FAIL: "✕",
    Outcome.UNKNOWN: "?",
    Outcome.VACUOUS: "○",
    Outcome.CANDIDATE_ERROR: "!",
    Outcome.HUNG: "!",
}
"""A sign for each outcome, beside its word."""

TOO_SHORT = (
    "The time was up before any scene was drawn independently, and the others are too few to say anything. Give the "
    "search more time (--seconds), or a number of scenes (--scenes)"
)
"""Why there is no answer where nothing was searched."""


@dataclass(frozen=True, kw_only=True)
class Page:
    """A page. ``sentence`` is what somebody reads who reads nothing else; ``asked`` what the check was about.

    ``expected``: what became of each failure that is expected.
    """

    outcome: str
    sign: str
    target: str
    source: str
    sentence: str
    also: tuple[str, ...]
    expected: tuple[str, ...]
    asked: str
    fault: FaultView | None
    findings: tuple[Found, ...]
    gaps: tuple[str, ...]
    basis: tuple[Figures, ...]
    rules: tuple[RuleRow, ...]
    edges: tuple[EdgeRow, ...]
    costs: tuple[CostRow, ...]


def page_of(verdict: Verdict, gallery: Gallery) -> Page:
    """The page of ``verdict``; its pictures go into ``gallery``."""
    fault = fault_of(verdict, gallery)
    findings = tuple(found_of(finding, number, gallery) for number, finding in enumerate(verdict.findings, 1))
    return Page(
        outcome=_word(verdict.outcome),
        sign=SIGNS[verdict.outcome],
        target=verdict.target,
        source="" if verdict.source is None else f"{verdict.source.file}, line {verdict.source.line}",
        sentence=_sentence(verdict, fault, findings),
        also=tuple(f"{_word(outcome)}: {meaning(verdict, outcome)}" for outcome in verdict.outcomes[1:]),
        expected=tuple(expected_sentence(entry) for entry in verdict.expected),
        asked=_asked(verdict),
        fault=fault,
        findings=findings,
        gaps=_gaps(verdict),
        basis=basis_of(verdict),
        rules=rules_of(verdict),
        edges=edges_of(verdict),
        costs=costs_of(verdict),
    )


def page_data(verdict: Verdict) -> str:
    """What the page says as JSON, each picture as its size and a digest of its pixels."""
    gallery = Gallery()
    page = asdict(page_of(verdict, gallery))
    pictures = [[*each.pixels.shape[:2], sha256(each.pixels.tobytes()).hexdigest()[:16]] for each in gallery]
    return json.dumps({"page": page, "pictures": pictures}, indent=1, ensure_ascii=False)


def _word(outcome: Outcome) -> str:
    return outcome.name.replace("_", " ")


def _sentence(verdict: Verdict, fault: FaultView | None, findings: tuple[Found, ...]) -> str:
    if fault is not None:
        return fault.sentence
    if findings:
        return findings[0].sentence
    opening = meaning(verdict, verdict.outcome)
    return f"{opening[0].upper()}{opening[1:]}."


def _asked(verdict: Verdict) -> str:
    some = "" if len(verdict.rules) == len(RULES) else f", for {counted(len(verdict.rules), 'rule')} only"
    return f"profile {verdict.profile.value}, seed {verdict.seed}, on {listed(verdict.machines)}{some}"


def _gaps(verdict: Verdict) -> tuple[str, ...]:
    """What was not exercised, where that is the answer."""
    if Outcome.VACUOUS not in verdict.outcomes:
        return ()
    drawn = any(basis.independent for basis in verdict.basis)
    missing = [report.rule for report in verdict.rules if report.status is RuleStatus.NOT_EXERCISED]
    never = (f"{rule.id}: it never happened that {rule.witness}" for rule in missing)
    return (*(() if drawn else (TOO_SHORT,)), *never)
