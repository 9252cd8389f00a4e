from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from planeproof.candidates.faults import ZOO
from planeproof.command.main import main
from planeproof.command.power import ENGINES as NAMED
from planeproof.power import ENGINES, Detection, Outcome, lines_of, measuring


def run(*arguments: str) -> Result:
    """The command, quietly."""
    return CliRunner().invoke(main, ["power", "--quiet", *arguments], prog_name="planeproof")


def test_the_table_is_printed_and_every_fault_is_caught() -> None:
    """One fault: its rule and, for each engine that was asked, after how many scenes."""
    result = run("wrong-pitch", "--engine", "recipes", "--engine", "uniform", "--scenes", "3")
    assert result.exit_code == 0, result.output
    assert result.stdout.startswith("PASS  1 fault, each caught by its own rule")
    row = next(line for line in result.stdout.splitlines() if line.split()[:1] == ["wrong-pitch"])
    assert row.split() == ["wrong-pitch", "own-memory", "1", "none", "in", "3"]


def test_a_survivor_is_told_by_the_exit_code() -> None:
    """A thousandth of a second is too short to find anything: 1. Without the engine that must find it: 2."""
    result = run("split-in-place", "--engine", "recipes", "--seconds", "0.001")
    assert result.exit_code == 1
    assert "split-in-place: whole-reveal was found by recipes with 0 of 1 seeds" in result.stdout
    assert run("split-in-place", "--engine", "uniform", "--scenes", "2").exit_code == 2


def test_a_catch_by_the_wrong_rule_is_told_by_the_exit_code(monkeypatch: pytest.MonkeyPatch) -> None:
    """As a survivor is."""

    def caught_otherwise(task: measuring.Task) -> Detection:
        wrong = Outcome.WRONG_RULE
        return Detection(
            fault=task.fault.id, wanted="progress", engine=task.engine, seed=0, outcome=wrong, rules=("in-order",)
        )

    monkeypatch.setattr(measuring.Task, "done", caught_otherwise)
    result = run("wrong-pitch", "--engine", "recipes")
    assert result.exit_code == 1
    assert "broken first were in-order" in result.stdout


def test_the_table_is_exported_and_the_run_resumed(tmp_path: Path) -> None:
    """CSV, JSON and Markdown; a journal that is there is gone on with, and one of another run is refused."""
    journal, folder = str(tmp_path / "journal.jsonl"), tmp_path / "table"
    given = ("stale-entry", "--engine", "recipes", "--seeds", "2", "--journal", journal)
    first = run(*given)
    assert first.stdout == run(*given, "--export", str(folder)).stdout
    (line,) = lines_of((folder / "detection.csv").read_text("utf-8"))
    assert (line.fault, line.seeds, line.caught) == ("stale-entry", 2, 2)
    assert "| stale-entry | exact-reveal |" in (folder / "detection.md").read_text("utf-8")
    assert (folder / "detection.json").stat().st_size > 0
    refused = run(*given, "--scenes", "7")
    assert refused.exit_code == 64
    assert "is of another run" in refused.stderr


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["stale-entri"], "no planted fault 'stale-entri': the nearest are stale-entry"),
        (["--engine", "luck"], "'luck' is not one of 'recipes'"),
        (["--seconds", "nan"], "nan is not a number of seconds above 0"),
    ],
)
def test_wrong_usage_is_refused(arguments: list[str], said: str) -> None:
    """With what there is instead."""
    result = run(*arguments)
    assert result.exit_code == 64
    assert said in result.stderr


def test_the_command_names_every_engine() -> None:
    """Though it does not import them before it is asked."""
    assert list(NAMED) == [engine.name for engine in ENGINES]


def test_all_faults_are_listed_and_none_is_hunted_twice() -> None:
    """A line each with its rule; a name given twice is refused."""
    listed = run("--list")
    assert (listed.exit_code, listed.stdout.splitlines()) == (0, [f"{fault.id}  {fault.rule.id}" for fault in ZOO])
    twice = run("stale-entry", "stale-entry")
    assert (twice.exit_code, twice.stdout) == (64, "")
    assert "'stale-entry' is given twice" in twice.stderr
