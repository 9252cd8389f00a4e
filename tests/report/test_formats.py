"""JUnit XML, SARIF and Markdown of every kind of verdict: valid by their published schemas, and saying what is so."""

import json
from dataclasses import replace
from pathlib import Path
from typing import Any
from xml.etree import ElementTree as ET

import pytest
import xmlschema
from markdown_it import MarkdownIt

from planeproof.contract import RULES
from planeproof.judge import Outcome, Verdict
from planeproof.report.formats import junit_xml, markdown_summary, sarif_log
from tests.record.verdicts import KINDS, verdict_of_kind
from tests.report.published import JUNIT, SARIF, SARIF_TEXT

HOSTILE = "]]></testsuite><script>alert(1)</script>|`*_\x00\x1b[31m\ud800&amp;\n## PASS"


def unknown() -> Verdict:
    """A verdict without an answer, which a search alone never gives."""
    return replace(verdict_of_kind("pass"), outcomes=(Outcome.UNKNOWN,))


def verdicts() -> dict[str, Verdict]:
    """Every kind, and one whose names would like to be markup."""
    kinds = {kind: verdict_of_kind(kind) for kind in KINDS} | {"unknown": unknown()}
    hostile = replace(kinds["fail"], target=HOSTILE, machines=(HOSTILE,))
    return kinds | {"hostile": hostile}


ALL = [*KINDS, "unknown", "hostile"]


# --- JUnit ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("kind", ALL)
def test_junit_is_valid(kind: str) -> None:
    """By the schema, and its counts are those of its cases; nothing is ever skipped."""
    suite = junit_of(kind)
    failures, errors = len(suite.findall(".//failure")), len(suite.findall(".//error"))
    assert (int(suite.attrib["failures"]), int(suite.attrib["errors"])) == (failures, errors)
    assert int(suite.attrib["tests"]) == len(suite.findall("testcase"))
    assert not suite.findall(".//skipped")


def junit_of(kind: str) -> ET.Element:
    """The one suite of the verdict's JUnit XML, which is valid."""
    data = junit_xml(verdicts()[kind])
    JUNIT.validate(data.decode())
    suite = ET.fromstring(data).find("testsuite")
    assert suite is not None
    return suite


@pytest.mark.parametrize("kind", ALL)
def test_junit_passes_only_what_passes(kind: str) -> None:
    """No failure and no error if and only if the outcome is PASS; UNKNOWN and VACUOUS are errors."""
    suite, outcome = junit_of(kind), verdicts()[kind].outcome
    bad = suite.findall(".//failure") + suite.findall(".//error")
    assert (not bad) is (outcome is Outcome.PASS)
    types = {element.attrib["type"] for element in bad}
    assert types == set() if outcome is Outcome.PASS else outcome.name in types
    if outcome in (Outcome.UNKNOWN, Outcome.VACUOUS):
        assert suite.find("testcase[@name='verdict']/error") is not None


def test_junit_has_a_case_for_each_rule_and_the_story_of_the_one_that_is_broken() -> None:
    """So that a CI system's own list of tests says which rule it was, and shows the smallest scene."""
    suite = junit_of("fail")
    assert [case.attrib["name"] for case in suite.findall("testcase")] == [
        "contract",
        *(rule.id for rule in RULES),
        "verdict",
    ]
    story = suite.findtext("testcase[@name='exact-reveal']/failure")
    assert story is not None
    assert "The smallest scene found that shows it" in story


def test_a_mutated_junit_file_is_refused() -> None:
    """The schema is one that can refuse."""
    data = junit_xml(verdict_of_kind("fail")).decode()
    with pytest.raises(xmlschema.XMLSchemaException):
        JUNIT.validate(data.replace(' tests="11"', "", 2).replace("<testsuite name", "<testsuite nome", 1))


# --- SARIF ------------------------------------------------------------------------------------------------


def sarif_of(kind: str) -> dict[str, Any]:
    """The one run of the verdict's SARIF log, which is valid."""
    log = json.loads(sarif_log(verdicts()[kind]))
    SARIF.validate(log)
    (run,) = log["runs"]
    assert isinstance(run, dict)
    return run


def test_the_schema_is_the_published_one() -> None:
    """The size of the OASIS listing, READ, and its own id."""
    assert len(SARIF_TEXT) == 112_768
    assert SARIF.schema["id"].startswith("https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/")


@pytest.mark.parametrize("kind", ALL)
def test_sarif_is_valid_and_has_an_error_only_for_what_does_not_pass(kind: str) -> None:
    """By the OASIS schema; each result names a rule that the log describes, by its place where it gives one."""
    run, outcome = sarif_of(kind), verdicts()[kind].outcome
    rules = [rule["id"] for rule in run["tool"]["driver"]["rules"]]
    for result in run["results"]:
        assert rules[result.get("ruleIndex", rules.index(result["ruleId"]))] == result["ruleId"]
    levels = [result["level"] for result in run["results"]]
    assert ("error" in levels) is (outcome is not Outcome.PASS)


def test_sarif_rules_have_help_texts() -> None:
    """Every rule of the rulebook, with why it matters."""
    described = sarif_of("pass")["tool"]["driver"]["rules"]
    assert [rule["id"] for rule in described[: len(RULES)]] == [rule.id for rule in RULES]
    assert all(rule.why in text["help"]["text"] for rule, text in zip(RULES, described, strict=False))


def test_a_sarif_result_stands_at_the_candidates_own_file_and_line() -> None:
    """At its class."""
    (result,) = sarif_of("candidate error")["results"]
    place = result["locations"][0]["physicalLocation"]
    file = Path(place["artifactLocation"]["uri"])
    assert file.read_text("utf-8").splitlines()[place["region"]["startLine"] - 1] == "class Raises(Fresh):"


def test_a_finding_without_a_known_file_is_named_all_the_same() -> None:
    """By the target."""
    verdict = replace(verdict_of_kind("fail"), source=None)
    (result,) = json.loads(sarif_log(verdict))["runs"][0]["results"]
    assert result["locations"] == [{"logicalLocations": [{"fullyQualifiedName": verdict.target}]}]


@pytest.mark.parametrize("change", ["message", "level", "version"])
def test_a_mutated_sarif_log_is_refused(change: str) -> None:
    """A message gone, a level that is none, another version."""
    log = json.loads(sarif_log(verdict_of_kind("fail")))
    if change == "version":
        log["version"] = "2.0.0"
    elif change == "level":
        log["runs"][0]["results"][0]["level"] = "fatal"
    else:
        del log["runs"][0]["results"][0]["message"]
    assert not SARIF.is_valid(log)


# --- Markdown ---------------------------------------------------------------------------------------------


@pytest.mark.parametrize("kind", ALL)
def test_markdown_begins_with_the_outcome_and_has_every_rule(kind: str) -> None:
    """As CommonMark with tables reads it: one heading with the outcome, a row for each rule."""
    verdict = verdicts()[kind]
    tokens = MarkdownIt("commonmark").enable("table").parse(markdown_summary(verdict))
    heading = tokens[1].content
    assert heading == f"Planeproof: {verdict.outcome.name.replace('_', ' ')}"
    rows = [tokens[place + 2].content for place, token in enumerate(tokens) if token.type == "tr_open"]
    assert rows == ["rule", *(report.rule.id for report in verdict.rules)]


def test_hostile_names_stay_text_in_markdown() -> None:
    """No heading, no HTML and no table of their own come of them."""
    html = MarkdownIt("commonmark").enable("table").render(markdown_summary(verdicts()["hostile"]))
    assert "<script" not in html
    assert html.count("<h2>") == 1
    assert html.count("<table>") == 1
