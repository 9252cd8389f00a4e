"""``check --report``: a folder in which everything is made from one record, whatever came of the check."""

import json
from pathlib import Path
from xml.etree import ElementTree as ET

import jsonschema
import pytest

from planeproof.record import RecordError, read_record, record_schema
from tests.command.running import run
from tests.report.published import JUNIT, SARIF

RECORD = jsonschema.Draft202012Validator(json.loads(record_schema()))

WRITTEN = ["index.html", "junit.xml", "planeproof.sarif", "record.json", "summary.md"]
ENDINGS = [
    ("planeproof.candidates.reference:Delta", 0, "PASS", ("--machine", "vitrine-60", "--scenes", "300")),
    ("mine.py:Early", 1, "FAIL", ("--machine", "tiny.toml", "--scenes", "20")),
    ("mine.py:Right", 3, "VACUOUS", ("--machine", "tiny.toml", "--scenes", "4", "--as-given")),
    ("mine.py:Raises", 4, "CANDIDATE ERROR", ("--machine", "tiny.toml", "--scenes", "4")),
    ("mine.py:Endless", 5, "HUNG", ("--machine", "tiny.toml", "--scenes", "4")),
]
"""Candidates with the exit code, its name, and how they are checked."""


@pytest.mark.parametrize(("target", "code", "name", "arguments"), ENDINGS, ids=[ending[2] for ending in ENDINGS])
def test_a_report_is_written_of_whatever_came_of_it(
    target: str, code: int, name: str, arguments: tuple[str, ...], folder: Path
) -> None:
    """The exit code stays; every file validates; all of them and the terminal name the same outcome."""
    result = run("check", target, *arguments, "--report", "made/report", "--quiet")
    assert (result.exit_code, result.stdout.startswith(f"{name}  ")) == (code, True)
    made = folder / "made" / "report"
    assert sorted(file.name for file in made.iterdir()) == WRITTEN
    assert "planeproof: the report is in" in result.stderr

    record = (made / "record.json").read_bytes()
    RECORD.validate(json.loads(record))
    assert read_record(record, "record.json").outcome.value == code
    JUNIT.validate((made / "junit.xml").read_text("utf-8"))
    sarif = json.loads((made / "planeproof.sarif").read_text("utf-8"))
    SARIF.validate(sarif)
    assert sarif["runs"][0]["invocations"][0]["exitCode"] == code
    bad = ET.parse(made / "junit.xml").findall(".//failure") + ET.parse(made / "junit.xml").findall(".//error")
    assert bool(bad) is (code != 0)
    assert name in (made / "summary.md").read_text("utf-8").splitlines()[0]
    assert f"<title>{name}: " in (made / "index.html").read_text("utf-8")


def test_what_a_report_was_written_from_is_told_on_the_terminal_too(folder: Path) -> None:
    """The rule that is broken first is the same in the terminal's lines, SARIF and JUnit."""
    result = run("check", "mine.py:Early", "--machine", "tiny.toml", "--scenes", "20", "--report", "report")
    found = read_record((folder / "report" / "record.json").read_bytes(), "record.json").findings
    rules = {finding.rule.id for finding in found}
    assert rules
    assert all(rule in result.stdout for rule in rules)
    sarif = json.loads((folder / "report" / "planeproof.sarif").read_text("utf-8"))
    assert {told["ruleId"] for told in sarif["runs"][0]["results"]} == rules
    failed = ET.parse(folder / "report" / "junit.xml").findall(".//testcase[failure]")
    assert {case.attrib["name"] for case in failed} >= rules


def test_a_report_replaces_the_one_before(folder: Path) -> None:
    """A folder that is there is written into; what else it holds stays."""
    (folder / "report").mkdir()
    (folder / "report" / "mine.txt").write_text("kept", "utf-8")
    for target, name in (("mine.py:Early", "FAIL"), ("mine.py:Raises", "CANDIDATE ERROR")):
        run("check", target, "--machine", "tiny.toml", "--scenes", "20", "--report", "report")
        assert name in (folder / "report" / "summary.md").read_text("utf-8").splitlines()[0]
    assert (folder / "report" / "mine.txt").read_text("utf-8") == "kept"


def test_a_folder_that_can_not_be_is_refused_before_the_search(folder: Path) -> None:
    """A file stands where the folder should be: said so, and nothing is played."""
    (folder / "report").write_text("a file", "utf-8")
    result = run("check", "mine.py:Early", "--machine", "tiny.toml", "--scenes", "20", "--report", "report")
    assert (result.exit_code, result.stdout) == (64, "")
    assert not (folder / ".planeproof").exists()
    assert "--report folder" in result.stderr
    assert (folder / "report").read_text("utf-8") == "a file"


@pytest.mark.parametrize("kept", [1, 100, -2])
def test_a_record_cut_short_is_refused(kept: int, folder: Path) -> None:
    """As after a full disk: what is left is no smaller report."""
    run("check", "mine.py:Early", "--machine", "tiny.toml", "--scenes", "20", "--report", "report")
    record = (folder / "report" / "record.json").read_bytes()
    with pytest.raises(RecordError, match=r"record\.json"):
        read_record(record[:kept], "record.json")
