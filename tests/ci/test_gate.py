"""``ci/gate`` as a user copies it: what it runs, and the exit code that it ends with."""

import shlex
import shutil
import stat
import subprocess
import sys
from itertools import product
from pathlib import Path

import pytest

from planeproof.judge import Outcome, by_seriousness

GATE = Path(__file__).parents[2] / "ci" / "gate"

STAND_IN = """#!/bin/sh
# Instead of a Python that has planeproof: writes down its arguments, and ends as it is told.
[ "$3" != --version ] || exit 0
for argument; do printf '%s\\n' "$argument"; done >>"$HERE/calls.txt"
printf -- '--\\n' >>"$HERE/calls.txt"
exit "$(cat "$HERE/code of $3")"
"""


@pytest.fixture
def repository(tmp_path: Path) -> Path:
    """A user's repository with the gate in it, at a path with spaces."""
    folder = tmp_path / "my own display"
    (folder / "ci").mkdir(parents=True)
    shutil.copy(GATE, folder / "ci" / "gate")
    stand_in = folder / "a python"
    stand_in.write_text(STAND_IN, "utf-8")
    stand_in.chmod(stand_in.stat().st_mode | stat.S_IXUSR)
    told(folder, check=0, replay=0)
    return folder


def told(folder: Path, **codes: int) -> None:
    """Have the stand-in end each command with a code."""
    for command, code in codes.items():
        (folder / f"code of {command}").write_text(str(code), "utf-8")


def gate(folder: Path, **settings: str) -> "subprocess.CompletedProcess[str]":
    """Run the gate there, with the stand-in unless something else is set."""
    environment = {"PATH": "/usr/bin:/bin", "HERE": str(folder), "PYTHON": str(folder / "a python"), **settings}
    command = ["sh", "ci/gate"]
    return subprocess.run(command, cwd=folder, env=environment, capture_output=True, text=True, timeout=60, check=False)


def calls(folder: Path) -> list[list[str]]:
    """The arguments of each call of Python, in order."""
    written = (folder / "calls.txt").read_text("utf-8").split("--\n")
    # The -- that ends a command's own options is one of its arguments, and here a separator too.
    return [part.splitlines() for part in written if part]


def test_saved_cases_are_replayed_and_then_all_is_checked(repository: Path) -> None:
    """Spaces in any of the settings stay what they are; what is expected is not replayed besides."""
    kept = repository / "old scenes"
    (kept / "expected").mkdir(parents=True)
    for name in ("a b.json", "c.json", "expected/known.json", "notes.txt"):
        (kept / name).write_text("{}", "utf-8")
    done = gate(
        repository,
        TARGET="my file.py:Mine",
        MACHINES="vitrine-50\nmy display.toml\n*",
        CASES="old scenes",
        REPORT="the report",
        EXPECTED="old scenes/expected/list.toml",
        SCENES="70",
    )
    assert done.returncode == 0
    assert (repository / "the report").is_dir()
    start = ["-m", "planeproof"]
    first, first_case, second, second_case, check, target = calls(repository)
    assert (first, second) == ([*start, "replay"],) * 2
    assert first_case == ["old scenes/a b.json", "my file.py:Mine"]
    assert second_case == ["old scenes/c.json", "my file.py:Mine"]
    assert target == ["my file.py:Mine"]
    options = dict(zip(check[3:9:2], check[4:9:2], strict=True))
    assert check[:3] == [*start, "check"]
    assert options == {"--scenes": "70", "--cases": "old scenes", "--report": "the report"}
    machines = ["--machine", "vitrine-50", "--machine", "my display.toml", "--machine", "*"]
    assert check[9:] == ["--quiet", "--expected", "old scenes/expected/list.toml", *machines]


def test_without_settings_it_has_its_own(repository: Path) -> None:
    """Both line standards, no list of expected failures; folders are made, and none to replay is no fault."""
    assert gate(repository).returncode == 0
    check, target = calls(repository)
    assert check[-4:] == ["--machine", "vitrine-50", "--machine", "vitrine-60"]
    assert "--expected" not in check
    assert target == ["scheduler.py:Scheduler"]
    assert (repository / "tests" / "cases").is_dir()


def test_it_ends_with_the_most_serious_outcome(repository: Path) -> None:
    """As a verdict does where several apply, for every pair of a replay and a check."""
    (repository / "tests" / "cases").mkdir(parents=True)
    (repository / "tests" / "cases" / "one.json").write_text("{}", "utf-8")
    for replay, check in product(Outcome, Outcome):
        told(repository, replay=replay.value, check=check.value)
        done = gate(repository)
        assert done.returncode == by_seriousness([replay, check])[0].value, (replay, check)
        assert f"one.json: {replay.name.replace('_', ' ')}\n" in done.stdout


@pytest.mark.parametrize("codes", [{"replay": 64, "check": 1}, {"replay": 5, "check": 70}, {"replay": 0, "check": 130}])
def test_what_is_no_verdict_is_never_hidden_by_one(repository: Path, codes: dict[str, int]) -> None:
    """Wrong usage, a fault of Planeproof and an interruption go first."""
    (repository / "tests" / "cases").mkdir(parents=True)
    (repository / "tests" / "cases" / "one.json").write_text("{}", "utf-8")
    told(repository, **codes)
    assert gate(repository).returncode == max(codes.values())


def test_without_planeproof_it_fails(repository: Path) -> None:
    """Whether there is no such Python, or one that lacks it."""
    bare = repository / "bare python"
    bare.write_text(f'#!/bin/sh\nexec {shlex.quote(sys.executable)} -I -S "$@"\n', "utf-8")
    bare.chmod(0o755)
    for lacking in ("/nowhere/python", str(bare)):
        done = gate(repository, PYTHON=lacking)
        assert done.returncode == 127
        assert f"gate: {lacking} has no planeproof: install it there" in done.stderr
    assert gate(repository, PYTHON=f"{sys.executable}", PYTHONPATH="", TARGET="lost.py:Lost").returncode != 0


@pytest.mark.parametrize(("ending", "outcome"), [("os._exit(0)", "CANDIDATE ERROR"), ("os.abort()", "CANDIDATE ERROR")])
def test_a_scheduler_that_ends_the_process_is_stopped_with_a_report(
    repository: Path, ending: str, outcome: str
) -> None:
    """The scene that was being played is kept, so that the next run replays it, and then it is stopped by both."""
    lines = ["import os", "from planeproof.candidates.reference import Delta", "class Ends(Delta):"]
    lines += ["    def blank(self, cycles):", f"        {ending}"]
    (repository / "mine.py").write_text("\n".join(lines), "utf-8")
    for replayed in (0, 1):
        done = gate(repository, PYTHON=sys.executable, TARGET="mine.py:Ends", SCENES="20", MACHINES="bench")
        assert done.returncode == 4
        assert f"gate: {outcome} ({replayed} saved case(s), then the check: {outcome})" in done.stdout
        assert outcome in (repository / "planeproof-report" / "summary.md").read_text("utf-8").splitlines()[0]
        assert "<error" in (repository / "planeproof-report" / "junit.xml").read_text("utf-8")


def test_a_replay_is_told_in_full_in_the_report(repository: Path) -> None:
    """With the standard error of what it ran."""
    (repository / "tests" / "cases").mkdir(parents=True)
    (repository / "tests" / "cases" / "broken.json").write_text("{}", "utf-8")
    (repository / "mine.py").write_text("from planeproof.candidates.reference import Delta\n", "utf-8")
    gate(repository, PYTHON=sys.executable, TARGET="mine.py:Delta", SCENES="1", MACHINES="bench")
    log = (repository / "planeproof-report" / "replays.txt").read_text("utf-8")
    assert log.startswith("== tests/cases/broken.json\n")
    assert "planeproof_case is missing" in log
