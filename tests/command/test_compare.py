import inspect
import json
import os
from pathlib import Path
from typing import Any

import pytest

from planeproof.command.compare import SCENES, compare
from planeproof.search import comparing
from tests.command.running import run, run_apart

TINY = ("--machine", "tiny.toml")


def test_right_ones_side_by_side() -> None:
    """Exit code 0 and a column each."""
    result = run("compare", "mine.py:Right", "planeproof.candidates.reference:Fresh", *TINY, "--scenes", "300")
    assert (result.exit_code, result.stdout.splitlines()[0]) == (0, "PASS  2 schedulers compared")
    assert "A Right" in result.stdout
    assert "B Fresh" in result.stdout


@pytest.mark.parametrize(
    ("wrong", "code", "said"),
    [("Early", 1, "FAIL"), ("Raises", 4, "CANDIDATE ERROR"), ("Endless", 5, "HUNG"), ("Idle", 1, "FAIL")],
)
def test_the_exit_code_is_that_of_the_most_serious_outcome(wrong: str, code: int, said: str) -> None:
    """Whoever else is right, and wherever it stands among them."""
    result = run("compare", f"mine.py:{wrong}", "mine.py:Right", *TINY, "--scenes", "40", "--quiet")
    assert (result.exit_code, result.stderr) == (code, "")
    assert result.stdout.startswith(f"{said}  2 schedulers compared; the most serious outcome is that of A")


@pytest.mark.parametrize("command", ["check", "compare"])
def test_the_same_machine_twice_is_refused(command: str) -> None:
    """It would be counted twice; nothing is played."""
    result = run(command, "mine.py:Right", *TINY, "--machine", "bench", *TINY)
    assert (result.exit_code, result.stdout) == (64, "")
    assert "'tiny.toml' is given twice: name each once" in result.stderr


def test_the_figures_are_written_where_asked(folder: Path) -> None:
    """--json writes them beside the table; where that can't be, it is said with the option to change."""
    line = ("compare", "mine.py:Right", *TINY, "--scenes", "8", "--quiet")
    result = run(*line, "--json", "figures.json")
    data = json.loads((folder / "figures.json").read_bytes())
    assert data["candidates"][0]["target"] == "mine.py:Right"
    assert result.stdout == run(*line).stdout
    refused = run(*line, "--json", "no/such/folder.json")
    assert refused.exit_code == 64
    assert "no/such/folder.json can't be written" in refused.stderr


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("mine.py:Nobody", *TINY), "mine.py has no 'Nobody'"),
        (("mine.py:Right", "--machine", "none.toml"), "none.toml"),
        ((), "TARGETS"),
    ],
)
def test_what_is_not_there_is_refused(arguments: tuple[str, ...], said: str) -> None:
    """Exit code 64, one line of what is wrong."""
    result = run("compare", *arguments)
    assert result.exit_code == 64
    assert said in result.stderr


def test_progress_goes_to_standard_error_unless_quiet() -> None:
    """A line a candidate where nobody watches, nothing with --quiet, and the same table either way."""
    line = ("compare", "mine.py:Right", "mine.py:Idle", *TINY, "--scenes", "4")
    loud, quiet = run(*line), run(*line, "--quiet")
    assert loud.stderr.splitlines() == ["planeproof: mine.py:Right, 5", "planeproof: mine.py:Idle, 5"]
    assert (quiet.stderr, quiet.stdout) == ("", loud.stdout)


def test_defaults_are_those_of_the_search() -> None:
    """What --help says is what happens."""
    defaults: dict[str | None, Any] = {option.name: option.default for option in compare.params}
    asked = inspect.signature(comparing.compare).parameters
    assert (defaults["scenes"], SCENES) == (comparing.DEFAULT_SCENES, comparing.DEFAULT_SCENES)
    assert defaults["seed"] == asked["seed"].default
    assert defaults["profile"] == asked["profile"].default.value


@pytest.mark.skipif(
    not hasattr(os, "fork"), reason="without fork the command runs in one process, until it has another"
)
def test_one_that_ends_the_process_is_told_of(folder: Path) -> None:
    """Which of them it was, and what to do; there is no comparison, and the exit code is not the one it ended with."""
    ends = "import os\nfrom planeproof.candidates.reference import Fresh\n\n\nclass Ends(Fresh):\n"
    ends += "    def blank(self, cycles):\n        os._exit(0)\n"
    (folder / "ends.py").write_text(ends, "utf-8")
    targets = ("mine.py:Right", "ends.py:Ends", "mine.py:Early")
    done = run_apart("compare", *targets, *TINY, "--scenes", "8", "--quiet", folder=folder, **os.environ)
    assert (done.returncode, done.stdout) == (4, "")
    assert "there is no verdict: the process ended with exit code 0 while ends.py:Ends was running" in done.stderr
    assert "planeproof check ends.py:Ends" in done.stderr
