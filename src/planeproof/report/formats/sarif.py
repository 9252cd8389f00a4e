"""A verdict as a SARIF 2.1.0 log (OASIS Standard, 2020, with Errata 01 of 2023).

Rules come with their help texts. A result stands at the candidate's own file and line, where these are known: the line
on which its class or function begins, for which of its lines wrote a byte can't be seen from outside.
"""

import json
from importlib.metadata import version
from pathlib import Path
from typing import Any

from planeproof.contract import RULES, Rule, RuleClass
from planeproof.judge import Finding, Outcome, RuleReport, RuleStatus, Verdict
from planeproof.judge.expected import Expected
from planeproof.report.evidence import basis_sentence, rule_state
from planeproof.report.expected import expected_sentence
from planeproof.report.story import finding_lines
from planeproof.report.text import OPENINGS, not_exercised

SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
"""Names the published schema; nothing is fetched."""

_OWN_IDS = {
    Outcome.UNKNOWN: "no-answer",
    Outcome.VACUOUS: "not-exercised",
    Outcome.CANDIDATE_ERROR: "contract",
    Outcome.HUNG: "contract",
}
_OWN_RULES = {
    "contract": "A candidate is deterministic, changes nothing it is given, returns what is declared, and ends.",
    "not-exercised": "Every rule that was asked for must have had its chance to be broken.",
    "no-answer": "An answer must be reached within its limits.",
}


def sarif_log(verdict: Verdict) -> str:
    """The verdict as the text of a SARIF log."""
    results = [_result(verdict, finding) for finding in verdict.findings]
    results += [_exposed(verdict, report) for report in verdict.rules if report.status is RuleStatus.EXPOSED]
    results += [_entry(verdict, entry) for entry in verdict.expected]
    results += [_own(verdict, outcome) for outcome in verdict.outcomes if outcome in _OWN_IDS]
    run = {
        "tool": {"driver": _driver()},
        "automationDetails": {"id": f"planeproof/{verdict.target}/{verdict.profile.value}/"},
        "invocations": [
            {
                "executionSuccessful": verdict.outcome in (Outcome.PASS, Outcome.FAIL),
                "exitCode": int(verdict.outcome.value),
            }
        ],
        "results": results,
        "columnKind": "unicodeCodePoints",
        "properties": {
            "outcomes": [outcome.name for outcome in verdict.outcomes],
            "machines": list(verdict.machines),
            "seed": verdict.seed,
            "restsOn": [basis_sentence(basis, clean=verdict.outcome is Outcome.PASS) for basis in verdict.basis],
        },
    }
    return json.dumps({"$schema": SCHEMA, "version": "2.1.0", "runs": [run]}, indent=2) + "\n"


def _driver() -> dict[str, Any]:
    rules = [_rule(rule) for rule in RULES]
    rules += [{"id": name, "shortDescription": {"text": text}} for name, text in _OWN_RULES.items()]
    return {"name": "Planeproof", "semanticVersion": version("planeproof"), "rules": rules}


def _rule(rule: Rule) -> dict[str, Any]:
    return {
        "id": rule.id,
        "shortDescription": {"text": rule.statement},
        "fullDescription": {"text": f"{rule.statement} {rule.why}"},
        "help": {
            "text": f"{rule.why}\n\n{rule.theorem}\n\nIt counts as exercised once {rule.witness}.",
            "markdown": f"{rule.why}\n\n*Known:* {rule.theorem}\n\n*Exercised* once {rule.witness}.",
        },
        "defaultConfiguration": {"level": "error"},
        "properties": {"class": rule.rule_class.value, "kind": rule.kind.value},
    }


def _result(verdict: Verdict, finding: Finding) -> dict[str, Any]:
    violation = finding.violation
    return {
        "ruleId": finding.rule.id,
        "ruleIndex": RULES.index(finding.rule),
        "level": "error",
        "message": {"text": f"{finding.rule.statement} Broken in refresh {violation.refresh}: {violation.said}."},
        "locations": _locations(verdict),
        "partialFingerprints": {"targetAndRule/v1": f"{verdict.target}/{finding.rule.id}"},
        "properties": {
            "refresh": violation.refresh,
            "burst": violation.burst,
            "byte": violation.byte,
            "address": violation.address,
            "cell": violation.cell,
            "case": finding.case,
            "story": "\n".join(finding_lines(finding)),
        },
    }


def _exposed(verdict: Verdict, report: RuleReport) -> dict[str, Any]:
    assert report.rule.rule_class is RuleClass.DISCIPLINE
    return {
        "ruleId": report.rule.id,
        "ruleIndex": RULES.index(report.rule),
        "level": "note",
        "message": {"text": f"{report.rule.statement} {rule_state(verdict, report)}."},
        "locations": _locations(verdict),
    }


def _entry(verdict: Verdict, entry: Expected) -> dict[str, Any]:
    """An expected failure is a result that is suppressed, with its reason; an entry that can't stand is an error."""
    result: dict[str, Any] = {
        "ruleId": entry.rule.id,
        "ruleIndex": RULES.index(entry.rule),
        "level": "error",
        "message": {"text": expected_sentence(entry)},
        "locations": _locations(verdict),
    }
    if entry.wrong is None:
        until = f"{entry.reason} (until {entry.expires})"
        result["suppressions"] = [{"kind": "external", "status": "accepted", "justification": until}]
    return result


def _own(verdict: Verdict, outcome: Outcome) -> dict[str, Any]:
    of_fault = verdict.fault is not None and outcome is not Outcome.VACUOUS
    said = str(verdict.fault) if of_fault else _not_exercised(verdict)
    return {
        "ruleId": _OWN_IDS[outcome],
        "level": "error",
        "message": {"text": f"{outcome.name.replace('_', ' ')}: {OPENINGS[outcome]}. {said}"},
        "locations": _locations(verdict),
    }


def _not_exercised(verdict: Verdict) -> str:
    missing = [report for report in verdict.rules if report.status is RuleStatus.NOT_EXERCISED]
    return " ".join(not_exercised(report) for report in missing)


def _locations(verdict: Verdict) -> list[dict[str, Any]]:
    source = verdict.source
    if source is None:
        return [{"logicalLocations": [{"fullyQualifiedName": verdict.target}]}]
    place = {"artifactLocation": {"uri": _uri(Path(source.file))}, "region": {"startLine": max(source.line, 1)}}
    return [{"physicalLocation": place, "logicalLocations": [{"fullyQualifiedName": verdict.target}]}]


def _uri(file: Path) -> str:
    """Relative to the folder the check ran in, where it is below that: a checkout is elsewhere on the next computer."""
    try:
        return file.resolve().relative_to(Path.cwd().resolve()).as_posix()
    except ValueError:
        return file.resolve().as_uri()
