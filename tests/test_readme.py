"""The README tells the truth: its code runs, its commands do what it says, its figures are those of the code."""

import re
import shlex
from datetime import date
from pathlib import Path

import pytest
from click.testing import CliRunner

from planeproof.candidates import reference
from planeproof.command.main import main
from planeproof.contract.rules import EXACT_REVEAL
from planeproof.judge import Basis, Outcome, Strength
from planeproof.machines import shipped
from planeproof.search import checking, steering
from planeproof.search.expected import read_expected
from planeproof.spec import THEOREMS
from planeproof.ways import WAYS

README = (Path(__file__).parent.parent / "README.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"^```(\w*)\n(.*?)^```", README, flags=re.MULTILINE | re.DOTALL)
CODE = [text for kind, text in BLOCKS if kind == "python"]
STRATEGIES = re.findall(r"^\| `(\w+)` \| .* \| `(--machine .*)` \|$", README, flags=re.MULTILINE)
COMMANDS = [shlex.split(line) for _, text in BLOCKS for line in text.splitlines() if line.startswith("planeproof ")]


def test_the_ten_line_scheduler_passes(capsys: pytest.CaptureFixture[str]) -> None:
    """The example runs as it stands, its verdict is the one that the comment gives, and then its report is printed."""
    (code,) = CODE
    names: dict[str, object] = {}
    exec(code, names)
    assert getattr(names["verdict"], "outcome", None) is Outcome.PASS
    first, second, *_ = capsys.readouterr().out.splitlines()
    assert (first, second.split()[0]) == ("Outcome.PASS", "PASS")
    body = code[code.index("class Plain") : code.index("verdict =")].strip()
    assert len([line for line in body.splitlines() if line.strip()]) <= 10


def test_the_commands_run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """One after the other, in an empty folder; only the time that a check may take is cut."""
    monkeypatch.chdir(tmp_path)
    codes = {}
    for command in COMMANDS:
        short = ["--scenes", "200"] if command[1] == "check" and "faults" not in command[2] else []
        short += ["--refreshes", "4"] if command[1] == "pictures" else []
        arguments = [part for part in command[1:] if part not in ("--seconds", "60")] + short
        codes[" ".join(command)] = CliRunner().invoke(main, arguments).exit_code
    failing = {command for command, code in codes.items() if code}
    judges = {command for command in codes if not command.startswith("planeproof pictures ")}
    assert failing == {command for command in judges if "TileInUseReused" in command}
    assert {codes[command] for command in failing} == {1}


def test_the_list_of_expected_failures_can_be_read(tmp_path: Path) -> None:
    """The example has every field, and no other."""
    text = next(text for kind, text in BLOCKS if kind == "toml" and text.startswith("[[expected]]"))
    (tmp_path / "expected.toml").write_text(text, "utf-8")
    (entry,) = read_expected(tmp_path / "expected.toml")
    assert (entry.rule, entry.expires) == (EXACT_REVEAL, date(2027, 3, 31))


def test_the_failure_shown_is_what_is_printed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Each line of the excerpt is a line of the answer, in that order, however slow the computer.

    Between two lines of it nothing is left out but where a line of dots says so.
    """
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(checking, "SMALLER_SECONDS", 600.0)
    monkeypatch.setattr(steering, "SHRINKING_SECONDS", 600.0)
    excerpt = next(text for _, text in BLOCKS if text.startswith("FAIL  "))
    target = excerpt.split(maxsplit=2)[1].rstrip(":")
    printed = CliRunner().invoke(main, ["check", target, "--machine", "vitrine-60"]).stdout
    parts = re.split(r"^  \.\.\.\n", excerpt, flags=re.MULTILINE)
    assert re.fullmatch("(?:.*\n)+?".join(map(re.escape, parts)), printed)


def test_the_exit_codes_are_those_of_the_outcomes() -> None:
    """The table lists every outcome with its exit code."""
    rows = dict(re.findall(r"^\| (\d) \| ([A-Z ]+) \|", README, flags=re.MULTILINE))
    assert {int(code): name.replace(" ", "_") for code, name in rows.items()} == {o.value: o.name for o in Outcome}


@pytest.mark.parametrize(("name", "options"), STRATEGIES)
def test_a_strategy_is_right_where_the_table_says(name: str, options: str, tmp_path: Path) -> None:
    """A check with the options of its row passes."""
    target, cases = f"planeproof.candidates.reference:{name}", str(tmp_path)
    arguments = ["check", target, *options.split(), "--scenes", "300", "--cases", cases]
    assert CliRunner().invoke(main, arguments).exit_code == Outcome.PASS.value


def test_what_ships_is_listed() -> None:
    """Every reference strategy has a row, and as many machines ship as the README says."""
    assert {name for name, _ in STRATEGIES} == set(reference.__all__) - {"TwoSides"}
    assert len(shipped()) == 12
    assert "Twelve machines" in README


def test_the_bound_is_the_one_computed() -> None:
    """With 1,000 independent scenes and no failure the bound is 0.3 %, rounded."""
    bound = Basis(strength=Strength.SAMPLED, source="", scenes=1000, independent=True).bound
    assert bound is not None
    assert f"{100 * bound:.1f} %" == "0.3 %"
    assert "with 1,000 such scenes" in README


def test_the_ways_shown_are_what_is_printed() -> None:
    """Each row of the excerpt is a row of the table, and there are as many ways as the README says."""
    excerpt = next(text for _, text in BLOCKS if text.lstrip().startswith("hidden plane")).splitlines()
    printed = iter(CliRunner().invoke(main, ["ways"]).output.splitlines())
    assert [line for line in excerpt if line not in printed] == []
    assert (len(WAYS), len(THEOREMS)) == (5, 10)
    assert "five ways" in README
    assert "ten theorems" in README
