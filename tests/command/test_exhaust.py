"""`planeproof exhaust`: what it says, and with which exit code."""

from pathlib import Path

import pytest

from planeproof.command.entry import RUNS_CANDIDATES
from planeproof.scenes.cases import load_case
from planeproof.search.exhausting import TINY
from tests.command.running import run, run_apart, set_up


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with candidates, to be in."""
    set_up(tmp_path)
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_the_list_names_every_tiny_machine_and_its_scenes() -> None:
    """Each with the numbers of scenes; no target is needed."""
    listed = run("exhaust", "--list")
    assert listed.exit_code == 0
    heads = [line.partition(":")[0] for line in listed.output.splitlines() if not line.startswith(" ")]
    assert heads == [one.name for one in TINY]
    assert "copies and compares bytes: 5,610 scenes" in listed.output


def test_a_wrong_scheduler_fails_with_the_smallest_scene(folder: Path) -> None:
    """Exit code 1, the scene is saved, and it is said that all smaller ones were played."""
    found = run("exhaust", "mine.py:Early", "--quiet")
    assert found.exit_code == 1
    assert found.output.startswith("FAIL  mine.py:Early")
    assert "exhausted: all " in found.output
    (case,) = [path for path in (folder / ".planeproof").iterdir() if path.name.startswith("Early-")]
    assert len(load_case(str(case)).scene.pictures) == 3  # nothing smaller has two bursts in one blanking


def test_what_is_not_finished_is_unknown() -> None:
    """Exit code 2, with how far it got; progress goes to standard error."""
    found = run("exhaust", "mine.py:Right", "--machine", "four-cells", "--seconds", "1")
    assert found.exit_code == 2
    assert found.stdout.startswith("UNKNOWN  mine.py:Right")
    assert "exhausted" not in found.stdout
    assert "planeproof: premises on four-cells" in found.stderr


def test_a_contract_breaker_is_told_apart() -> None:
    """Exit code 4."""
    assert run("exhaust", "mine.py:Raises", "--quiet").exit_code == 4


def test_a_rule_can_be_asked_for_alone() -> None:
    """As with check."""
    found = run("exhaust", "mine.py:Idle", "--only", "fair-refusal", "--seconds", "2", "--quiet")
    assert found.exit_code in {0, 2}
    assert "for 1 rule only" in found.output


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("mine.py:Right", "--machine", "vast"), "there is no tiny machine 'vast'; there are: one-cell"),
        (("mine.py:Right", "--only", "vast"), "there is no rule 'vast'"),
        (("mine.py:Wrong",), "mine.py has no 'Wrong'"),
        (("mine.py:Right", "--seconds", "-1"), "is not a number of seconds above 0"),
        ((), "Missing argument 'TARGET'"),
    ],
)
def test_what_makes_no_sense_is_refused(arguments: tuple[str, ...], said: str) -> None:
    """Exit code 64, with what there is instead."""
    refused = run("exhaust", *arguments)
    assert refused.exit_code == 64
    assert said in " ".join(refused.output.split())


def test_a_candidate_that_ends_the_process_has_no_verdict(folder: Path) -> None:
    """It runs in a process of its own: an exit with code 0 is no PASS."""
    assert "exhaust" in RUNS_CANDIDATES
    text = "import os\nfrom planeproof.candidates.reference import Fresh\n"
    text += "class Ends(Fresh):\n    def blank(self, cycles):\n        os._exit(0)\n"
    (folder / "ends.py").write_text(text, "utf-8")
    ended = run_apart("exhaust", "ends.py:Ends", "--quiet", folder=folder)
    assert (ended.returncode, ended.stdout) == (4, "")
    assert "there is no verdict: the process ended with exit code 0 while the candidate was running" in ended.stderr


def test_what_no_scene_within_the_bounds_exercises_is_vacuous_and_no_more_scenes_are_advised() -> None:
    """Exit code 3; nothing was drawn, so there is no seed, and no advice to draw more."""
    found = run("exhaust", "planeproof.candidates.reference:InPlace", "--machine", "one-side", "--quiet")
    assert (found.exit_code, found.output.split()[0]) == (3, "VACUOUS")
    assert "there are no more scenes within these bounds" in " ".join(found.output.split())
    assert not any(word in found.output for word in ("seed", "--scenes", "--seconds", "time was up"))
