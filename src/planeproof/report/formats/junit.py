"""A verdict as JUnit XML: a test case for each rule, one for the contract and one for the verdict itself.

No standards body defines the format. What is written keeps to the widely used schema ``junit-10.xsd``, against which
the tests hold it. What was not found out is an error, never a skip: a skip is read as no matter.
"""

import re
from xml.etree import ElementTree as ET

from planeproof.judge import Finding, Outcome, RuleReport, RuleStatus, Verdict
from planeproof.report.evidence import basis_sentence, rule_state
from planeproof.report.expected import expected_sentence
from planeproof.report.fault import fault_lines
from planeproof.report.story import finding_lines
from planeproof.report.text import OPENINGS, not_exercised, verdict_lines

_UNFIT = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""What XML 1.0 can't hold, in any form."""

_NOT_FOUND_OUT = (Outcome.UNKNOWN, Outcome.VACUOUS)
_NOT_JUDGED = (Outcome.CANDIDATE_ERROR, Outcome.HUNG)


def junit_xml(verdict: Verdict) -> bytes:
    """The verdict as JUnit XML, in UTF-8."""
    rules = [_rule(verdict, report) for report in verdict.rules]
    cases = [_contract(verdict), *rules, *_entries(verdict), _whole(verdict)]
    failures = sum(case.find("failure") is not None for case in cases)
    skipped = sum(case.find("skipped") is not None for case in cases)
    errors = sum(case.find("error") is not None for case in cases)
    counts = {"tests": str(len(cases)), "failures": str(failures), "errors": str(errors)}
    root = ET.Element("testsuites", {"name": "planeproof", **counts})
    suite = ET.SubElement(root, "testsuite", {"name": _fit(verdict.target), **counts, "skipped": str(skipped)})
    suite.append(_properties(verdict))
    suite.extend(cases)
    ET.indent(root)
    text: bytes = ET.tostring(root, encoding="utf-8", xml_declaration=True)
    return text + b"\n"


def _properties(verdict: Verdict) -> ET.Element:
    said = {
        "machines": ", ".join(verdict.machines),
        "profile": verdict.profile.value,
        "seed": str(verdict.seed),
        "outcome": ", ".join(outcome.name for outcome in verdict.outcomes),
    }
    element = ET.Element("properties")
    for name, value in said.items():
        ET.SubElement(element, "property", {"name": name, "value": _fit(value)})
    return element


def _case(verdict: Verdict, name: str) -> ET.Element:
    return ET.Element("testcase", {"classname": _fit(verdict.target), "name": name})


def _say(case: ET.Element, kind: str, message: str, text: str, *, what: str) -> ET.Element:
    told = ET.SubElement(case, kind, {"type": what, "message": _fit(message)})
    told.text = _fit(text)
    return case


def _contract(verdict: Verdict) -> ET.Element:
    case, fault = _case(verdict, "contract"), verdict.fault
    if fault is None:
        return case
    text = "\n".join(fault_lines(fault, verdict.fault_case, verdict.fault_scene))
    outcome = next((outcome for outcome in verdict.outcomes if outcome in _NOT_JUDGED), verdict.outcome)
    return _say(case, "error", str(fault), text, what=outcome.name)


def _rule(verdict: Verdict, report: RuleReport) -> ET.Element:
    case, state = _case(verdict, report.rule.id), rule_state(verdict, report)
    finding = next((finding for finding in verdict.findings if finding.rule is report.rule), None)
    if finding is not None:
        return _say(case, "failure", finding.violation.said, _story(finding), what="FAIL")
    if report.status is RuleStatus.BROKEN:
        return _say(case, "failure", state, report.rule.statement, what="FAIL")
    if report.status in (RuleStatus.EXPECTED, RuleStatus.MASKED):
        ET.SubElement(case, "skipped", {"message": _fit(state)})
        return case
    if report.status is RuleStatus.NOT_EXERCISED and verdict.profile.fails_on(report.rule):
        return _say(case, "error", state, not_exercised(report), what="VACUOUS")
    ET.SubElement(case, "system-out").text = _fit(state)
    return case


def _entries(verdict: Verdict) -> list[ET.Element]:
    """A case for each entry of a list of expected failures; one that can't stand fails."""
    cases = []
    for entry in verdict.expected:
        case, said = _case(verdict, f"expected: {_fit(entry.place)}"), expected_sentence(entry)
        if entry.wrong is not None:
            _say(case, "failure", entry.wrong, said, what="FAIL")
        else:
            ET.SubElement(case, "system-out").text = _fit(said)
        cases.append(case)
    return cases


def _story(finding: Finding) -> str:
    return "\n".join(finding_lines(finding))


def _whole(verdict: Verdict) -> ET.Element:
    """The verdict as a case of its own: whatever is not a PASS can't look like one, nor can what rests on nothing."""
    case = _case(verdict, "verdict")
    if verdict.outcome is Outcome.FAIL:
        return _say(case, "failure", OPENINGS[Outcome.FAIL], "\n".join(verdict_lines(verdict)), what="FAIL")
    if verdict.outcome is not Outcome.PASS:
        text = "\n".join(verdict_lines(verdict))
        return _say(case, "error", OPENINGS[verdict.outcome], text, what=verdict.outcome.name)
    rests = "\n".join(basis_sentence(basis, clean=True) for basis in verdict.basis)
    ET.SubElement(case, "system-out").text = _fit(rests)
    return case


def _fit(text: str) -> str:
    """``text`` with what XML can't hold written as its number."""
    return _UNFIT.sub(lambda found: f"\\x{ord(found[0]):02x}", text)
