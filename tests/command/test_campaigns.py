"""`planeproof check` shared out, interrupted and gone on with."""

import signal
import subprocess
import sys
from pathlib import Path

import pytest

from planeproof.judge import Outcome
from planeproof.scenes.cases import load_case
from planeproof.search.journal import seed_in, units_in
from tests.command.running import run

RIGHT = ("check", "mine.py:Right", "--machine", "tiny.toml")

ENDS = """
import os
from planeproof.candidates.reference import Fresh

class Ends(Fresh):
    number = -1

    def offer(self, picture):
        self.number = picture.number
        return super().offer(picture)

    def blank(self, cycles):
        if self.number == 2 and self.machine.cells == 8:
            os._exit(9)
        return super().blank(cycles)
"""


def test_the_answer_does_not_depend_on_how_many_share_the_work() -> None:
    """The same page and exit code, for a right one and a wrong one."""
    for line in (RIGHT, ("check", "mine.py:Early", "--machine", "tiny.toml")):
        one, two = (run(*line, "--scenes", "40", "--quiet", "--jobs", jobs) for jobs in ("1", "2"))
        assert (one.exit_code, one.stdout) == (two.exit_code, two.stdout)


def test_a_candidate_that_ends_its_process_is_told_as_without_jobs(folder: Path) -> None:
    """At the third picture: no verdict, the exit code, and the scene that was being played."""
    (folder / "ends.py").write_text(ENDS, "utf-8")
    line = [sys.executable, "-m", "planeproof", "check", "ends.py:Ends", "--quiet"]
    said = []
    for jobs in ("1", "2"):
        done = subprocess.run([*line, "--jobs", jobs], capture_output=True, text=True, timeout=100, check=False)
        case = load_case(folder / ".planeproof" / "playing.json")
        said.append((done.returncode, done.stdout, done.stderr.splitlines()[-2:], case))
        assert ("has ended; it is played again in this process" in done.stderr) is (jobs == "2")
    assert said[0][:3] == said[1][:3]
    assert (said[0][0], said[0][1]) == (Outcome.CANDIDATE_ERROR.value, "")
    assert "there is no verdict: the process ended with exit code 9" in said[0][2][0]
    assert [case.scene.machine.cells for *_, case in said] == [8, 8]


def test_a_random_seed_is_told_and_repeats_the_run() -> None:
    """Drawn anew each time; with the one that is told, everything is the same."""
    drawn = [run(*RIGHT, "--scenes", "8", "--seed", "random", "--quiet").stdout for _ in range(2)]
    seeds = [text.split("seed ")[1].split(",")[0] for text in drawn]
    assert seeds[0] != seeds[1]
    assert run(*RIGHT, "--scenes", "8", "--seed", seeds[0], "--quiet").stdout == drawn[0]


def test_a_random_seed_goes_on_with_that_of_the_journal(folder: Path) -> None:
    """So that the same line goes on; how much is known is told."""
    line = (*RIGHT, "--scenes", "8", "--seed", "random", "--journal", "kept/journal")
    first, again = run(*line), run(*line)
    assert seed_in(folder / "kept" / "journal") is not None
    assert first.stdout == again.stdout
    units = units_in(folder / "kept" / "journal")
    assert f"planeproof: kept/journal has {units} parts of this check, which are not played again" in again.stderr
    assert "parts of this check" not in first.stderr
    assert run(*line, "--quiet").stderr == ""


@pytest.mark.usefixtures("heard")
@pytest.mark.parametrize("jobs", ["1", "2"])
def test_an_interrupted_check_says_how_to_go_on(folder: Path, jobs: str) -> None:
    """Exit code 130, the line to paste, no traceback; what is done is in the journal, and no process is left."""
    command = [sys.executable, "-m", "planeproof", *RIGHT, "--seconds", "60", "--journal", "a journal", "--jobs", jobs]
    with subprocess.Popen(command, cwd=folder, stderr=subprocess.PIPE, stdout=subprocess.PIPE, text=True) as running:
        assert running.stderr is not None
        while "Hypothesis" not in running.stderr.readline():
            pass
        running.send_signal(signal.SIGINT)
        out, error = running.communicate(timeout=60)
    assert (running.returncode, out) == (130, "")
    assert [line for line in error.splitlines() if line] == [
        "planeproof: what is done is kept in a journal; the same line goes on from it:",
        f"  planeproof {' '.join(RIGHT)} --seconds 60 --journal 'a journal' --jobs {jobs}",
        "planeproof: interrupted",
    ]
    assert units_in(folder / "a journal") >= 1


REFUSED = (
    (("--jobs", "0"), "0 is not in the range x>=1"),
    (("--jobs", "2", "--cluster", "tcp://127.0.0.1:9"), "--jobs and --cluster are both given: leave one of them out"),
    (("--seed", "any"), "'any' is neither a whole number nor random"),
    (("--journal", "mine.py"), "mine.py: is not a journal of a check; name another file"),
    (("--seed", "random", "--journal", "mine.py"), "mine.py: is not a journal of a check; name another file"),
    (("--journal", "mine.py/journal"), "mine.py/journal can't be written (Not a directory): name another --journal"),
    (("--examples", "mine.py"), "mine.py can't be written (it is no folder): name another --examples folder"),
    (("--cases", "mine.py"), "mine.py can't be written (it is no folder): name another --cases folder"),
    (("--examples", "redis://127.0.0.1:1/0"), "examples at redis://127.0.0.1:1/0: "),
    (("--cluster", "nowhere"), "cluster nowhere: no scheduler answers there"),
)


@pytest.mark.parametrize(("arguments", "said"), REFUSED, ids=lambda value: str(value)[:30])
def test_what_can_t_be_used_is_refused(arguments: tuple[str, ...], said: str) -> None:
    """Exit code 64, one clear line, nothing on standard output."""
    result = run(*RIGHT, *arguments, "--quiet", "--scenes", "4")
    assert (result.exit_code, result.stdout) == (64, "")
    assert said in result.stderr
    assert "Traceback" not in result.stderr
