"""A candidate that ends the whole process never passes."""

import json
import re
import subprocess
import sys
from pathlib import Path
from xml.etree import ElementTree as ET

import jsonschema
import pytest

from planeproof.judge import Outcome, Verdict
from planeproof.record import load_record, record_schema
from planeproof.scenes.cases import Case, encode_case, load_case
from tests.report.published import JUNIT, SARIF

ENDS = """
import os, signal
from planeproof.candidates.reference import Fresh

class Ends(Fresh):
    def blank(self, cycles):
        {ending}
"""


def ended(folder: Path, ending: str, *arguments: str) -> "subprocess.CompletedProcess[str]":
    """`planeproof check` of a scheduler whose blanking ends like this, in ``folder``."""
    (folder / "ends.py").write_text(ENDS.format(ending=ending), encoding="utf-8")
    line = [sys.executable, "-m", "planeproof", "check", "ends.py:Ends", "--quiet", "--scenes", "150", *arguments]
    return subprocess.run(line, cwd=folder, capture_output=True, text=True, check=False)


@pytest.mark.parametrize(
    ("ending", "code", "how"),
    [
        ("os._exit(0)", 4, "with exit code 0"),
        ("os._exit(1)", 4, "with exit code 1"),
        ("os.abort()", 4, "SIGABRT"),
        ("os.kill(os.getpid(), signal.SIGKILL)", 2, "SIGKILL"),
    ],
)
def test_a_candidate_that_ends_the_process_never_passes(tmp_path: Path, ending: str, code: int, how: str) -> None:
    """It is said that there is no verdict, and where the scene is, which can be loaded."""
    result = ended(tmp_path, ending)
    assert (result.returncode, result.stdout) == (code, "")
    assert "there is no verdict" in result.stderr
    assert how in result.stderr
    assert load_case(tmp_path / ".planeproof" / "playing.json").found is not None
    assert "planeproof replay .planeproof/playing.json" in result.stderr


def scene_in(verdict: Verdict) -> bytes:
    """The scene of the fault, as it is written."""
    assert verdict.fault_scene is not None
    return encode_case(Case(scene=verdict.fault_scene))


@pytest.mark.parametrize(
    ("ending", "outcome", "how"),
    [
        ("os._exit(9)", Outcome.CANDIDATE_ERROR, "with exit code 9"),
        ("os.abort()", Outcome.CANDIDATE_ERROR, "by signal 6 (SIGABRT)"),
        ("os.kill(os.getpid(), signal.SIGKILL)", Outcome.UNKNOWN, "by signal 9 (SIGKILL)"),
    ],
)
def test_a_report_is_written_of_it_too(tmp_path: Path, ending: str, outcome: Outcome, how: str) -> None:
    """Each file is valid, says how the process ended, and shows the scene; the exit code is what it is without."""
    result = ended(tmp_path, ending, "--report", "report", "--only", "tile-cap")
    assert (result.returncode, result.stdout) == (outcome.value, "")
    assert "the report is in report" in result.stderr
    made = tmp_path / "report"

    jsonschema.Draft202012Validator(json.loads(record_schema())).validate(
        json.loads((made / "record.json").read_text())
    )
    verdict = load_record(made / "record.json")
    assert (verdict.outcomes, verdict.target, verdict.seed) == ((outcome,), "ends.py:Ends", 0)
    assert (verdict.machines, [report.rule.id for report in verdict.rules]) == (
        ("vitrine-50", "vitrine-60"),
        ["tile-cap"],
    )
    assert scene_in(verdict) == encode_case(Case(scene=load_case(tmp_path / ".planeproof" / "playing.json").scene))

    JUNIT.validate((made / "junit.xml").read_text("utf-8"))
    SARIF.validate(json.loads((made / "planeproof.sarif").read_text("utf-8")))
    cases = {case.attrib["name"]: case for case in ET.parse(made / "junit.xml").iter("testcase")}
    assert [cases[name].find("error") is not None for name in ("contract", "verdict")] == [True, True]
    assert f"<title>{outcome.name.replace('_', ' ')}: " in (made / "index.html").read_text("utf-8")
    for file in ("record.json", "junit.xml", "planeproof.sarif", "summary.md", "index.html"):
        told = re.sub(r"\s+", " ", (made / file).read_text("utf-8"))
        assert f"ended {how} while the candidate was running" in told, file
        assert "no failure" not in told, file
    assert "The scene in which it happened" in (made / "index.html").read_text("utf-8")


def test_a_seed_that_was_drawn_is_that_of_the_report(tmp_path: Path) -> None:
    """So that what led to the end can be checked again: with that seed the same scene is being played."""
    ended(tmp_path, "os._exit(9)", "--report", "report", "--seed", "random")
    first = load_record(tmp_path / "report" / "record.json")
    ended(tmp_path, "os._exit(9)", "--report", "report", "--seed", str(first.seed))
    again = load_record(tmp_path / "report" / "record.json")
    assert first.seed > 0
    assert scene_in(again) == scene_in(first)


def test_a_scene_of_an_earlier_check_is_not_taken_for_one_of_this(tmp_path: Path) -> None:
    """A candidate that ends the process before any scene is played: the report has none, nor has the terminal."""
    ended(tmp_path, "os._exit(9)")
    result = ended(tmp_path, "pass\nos._exit(9)", "--report", "report")
    assert result.returncode == 4
    assert "playing.json" not in result.stderr
    verdict = load_record(tmp_path / "report" / "record.json")
    assert (verdict.outcome, verdict.fault_scene, verdict.fault_case) == (Outcome.CANDIDATE_ERROR, None, None)
    assert sum(basis.scenes for basis in verdict.basis) == 0


def test_a_report_that_can_not_be_written_changes_nothing_else(tmp_path: Path) -> None:
    """Its folder is gone by then, and a file stands there: that is said, and the exit code is the same."""
    away = "import shutil; shutil.rmtree('report'); open('report', 'w').close(); os._exit(9)"
    result = ended(tmp_path, away, "--report", "report")
    assert (result.returncode, result.stdout) == (4, "")
    assert "there is no verdict" in result.stderr
    assert "--report folder" in result.stderr


def test_the_folder_of_cases_is_the_one_given(tmp_path: Path) -> None:
    """Also where it was named on the line."""
    assert "kept/playing.json" in ended(tmp_path, "os._exit(0)", "--cases", "kept").stderr
    assert "kept2/playing.json" in ended(tmp_path, "os._exit(0)", "--cases=kept2").stderr


def test_the_next_check_keeps_the_scene_of_a_crash(tmp_path: Path) -> None:
    """Two crashes, two scenes."""
    ended(tmp_path, "os._exit(0)")
    ended(tmp_path, "os._exit(0)")
    ended(tmp_path, "return super().blank(cycles)")
    kept = sorted(path.name for path in (tmp_path / ".planeproof").iterdir())
    assert kept == ["left-over-1.json", "left-over-2.json"]


def test_otherwise_the_exit_code_is_the_verdicts(tmp_path: Path) -> None:
    """A wrong scheduler FAILs with 1, a right one ends with 0 and its report."""
    assert ended(tmp_path, "return ()").returncode == 1
    right = ended(tmp_path, "return super().blank(cycles)")
    assert (right.returncode, right.stdout[:4]) == (0, "PASS")
