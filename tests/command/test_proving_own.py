"""`planeproof prove TARGET`: a scheduler of one's own, written as steps."""

import re
from pathlib import Path

import pytest

import planeproof.command.starter_steps
from planeproof.scenes.cases import load_case
from tests.command.running import run, run_apart

STEPS = """
import z3
from planeproof.spec.steps import HiddenPlane
from planeproof.spec.steps.reference import Delta, Full

class Forgetful(Delta):
    def entry_becomes_pending(self, own, plan, cell):
        return z3.And(plan.place(cell) != own.blank, super().entry_becomes_pending(own, plan, cell))

class Wiped(Full):
    def byte_sent(self, own, tile, row):
        wanted = own.byte(own.hidden, tile, row)
        return z3.If(own.busy, wanted, wanted & 0)

class Wordy(Delta):
    def entry_becomes_pending(self, own, plan, cell):
        return "always"

class Half(HiddenPlane):
    pass
"""


@pytest.fixture(autouse=True)
def steps(folder: Path) -> None:
    """Steps of several kinds in steps.py."""
    (folder / "steps.py").write_text(STEPS, encoding="utf-8")


def test_the_starter_of_steps_is_proved(folder: Path) -> None:
    """What `new --steps` writes is proved by the line that it prints: exit code 0, and what is not proved is said."""
    made = run("new", "--steps", "first.py")
    line = made.stdout.splitlines()[-1].strip()
    assert line == "planeproof prove first.py:Starter"
    result = run(*line.split()[1:])
    assert (result.exit_code, result.stdout.split()[0]) == (0, "PROVED")
    assert "Not proved: that a picture is shown in time" in " ".join(result.stdout.split())
    assert (folder / "first.py").read_bytes() == Path(planeproof.command.starter_steps.__file__).read_bytes()


def test_the_example_of_the_specs_is_the_starter() -> None:
    """The code in specs/README.md is that of the starter, without comments and types."""
    text = (Path(__file__).parents[2] / "specs" / "README.md").read_text("utf-8")
    (example,) = re.findall(r"^```python\n(.*?)^```", text, flags=re.MULTILINE | re.DOTALL)
    starter = Path(planeproof.command.starter_steps.__file__).read_text("utf-8")
    bare = re.sub(r': (Own|Plan|Term)\b| -> Formula|"""[^"]*"""', "", starter)
    bare = re.sub(r"import HiddenPlane, .*\n.*", "import HiddenPlane", bare)
    assert bare.split() == example.split()


def test_what_is_wrong_is_refuted_by_a_case_that_replays() -> None:
    """Exit code 1; the line of the induction, the rule, and a scene in which replay shows the same."""
    result = run("prove", "steps.py:Forgetful", "--cases", "kept")
    assert (result.exit_code, result.stdout.split()[0]) == (1, "REFUTED")
    assert "take / an entry of the hidden side is pending or as wanted" in " ".join(result.stdout.split())
    assert "exact-reveal: " in result.stdout
    line = result.stdout.splitlines()[-1].strip()
    assert line == "planeproof replay kept/forgetful.json"
    found = load_case("kept/forgetful.json").found
    assert found is not None
    assert found.rule == "exact-reveal"
    again = run(*line.split()[1:])
    assert (again.exit_code, again.stdout.split()[0]) == (1, "FAIL")
    assert "exact-reveal: " in again.stdout


def test_what_is_neither_is_unknown(folder: Path) -> None:
    """Exit code 2, the step and the conjunct that is not inductive, and how far was looked; nothing is saved."""
    result = run("prove", "steps.py:Wiped")
    assert (result.exit_code, result.stdout.split()[0]) == (2, "UNKNOWN")
    said = " ".join(result.stdout.split())
    assert "Not inductive (send-byte / a byte of the hidden side is pending or as wanted)" in said
    assert "no scene within 4 refreshes of a small machine" in said
    assert not (folder / ".planeproof").exists()


def test_too_little_to_decide_with_is_unknown() -> None:
    """Hardly any resources prove nothing and refute nothing."""
    assert run("prove", "planeproof.spec.executed:Delta", "--rlimit", "1").exit_code == 2


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("steps.py:Absent",), "has no 'Absent'"),
        (("mine.py:Right",), "is no scheduler written as steps"),
        (("steps.py:Half",), "abstract"),
        (("steps.py:Wordy",), "its steps can't be decided"),
        (("steps.py:Forgetful", "--only", "5"), "leave them out"),
        (("steps.py:Forgetful", "--with", "cvc5"), "leave them out"),
        (("steps.py:Forgetful", "--cases", "steps.py"), "name another --cases folder"),
    ],
)
def test_what_can_not_be_decided_is_refused(arguments: tuple[str, ...], said: str) -> None:
    """Exit code 64 and a line that says what is wrong; no traceback."""
    result = run("prove", *arguments)
    assert result.exit_code == 64
    assert said in " ".join(result.stderr.split())
    assert "Traceback" not in result.stderr


def test_steps_that_end_the_process_are_not_proved(folder: Path) -> None:
    """Exit code 2: an end with exit code 0 is no proof."""
    (folder / "ends.py").write_text("import os\nos._exit(0)\n", encoding="utf-8")
    result = run_apart("prove", "ends.py:Steps", folder=folder)
    assert (result.returncode, result.stdout) == (2, "")
    assert "there is no verdict" in result.stderr
