"""`planeproof check --conforms`: what is observed, what is proved, and that neither is taken for the other."""

import sys
from pathlib import Path

import pytest

import planeproof
from planeproof.command.conforming import Conforming
from planeproof.judge import Verdict
from planeproof.scenes.cases import load_case
from tests.command.running import run

DELTA = "planeproof.candidates.reference:Delta"
PROVED_DELTA, PROVED_FULL = "planeproof.spec.executed:Delta", "planeproof.spec.steps.reference:Full"
SMALL = ("--machine", "tiny.toml", "--quiet")


def words(text: str) -> str:
    """The text without its line breaks."""
    return " ".join(text.split())


def test_what_conforms_passes_and_is_called_observed() -> None:
    """Exit code 0; bursts are counted as OBSERVED, the steps alone are PROVED, and by what is said."""
    result = run("check", DELTA, *SMALL, "--scenes", "80", "--conforms", PROVED_DELTA)
    assert (result.exit_code, result.stdout.split()[0]) == (0, "PASS")
    said = words(result.stdout)
    assert f"Whether it takes the steps of {PROVED_DELTA} OBSERVED: all " in said
    assert "bursts of 20 scenes are steps of Delta" in said
    assert "observed in these scenes, not proved" in said
    assert "as in theorem 5 (start, take, send-byte, send-entry, show): PROVED. The steps of Delta" in said
    assert "observed: 20 scenes (conformance to the steps of Delta)" in said


def test_fewer_scenes_are_observed_where_fewer_were_drawn() -> None:
    """Only scenes that the check itself has played are observed."""
    result = run("check", DELTA, *SMALL, "--scenes", "12", "--conforms", PROVED_DELTA)
    assert "bursts of 6 scenes are steps of Delta" in words(result.stdout)


def test_a_stray_burst_makes_unknown_of_pass(folder: Path) -> None:
    """Exit code 2 though no rule is broken: the burst and the guard are named, and its scene is saved."""
    result = run("check", DELTA, *SMALL, "--scenes", "80", "--conforms", PROVED_FULL)
    assert (result.exit_code, result.stdout.split()[0]) == (2, "UNKNOWN")
    said = words(result.stdout)
    assert "is no step of the scheduler: the hidden side is shown, and this does not hold: no " in said
    assert "No rule was broken, and it may be right in another way" in said
    assert "95 % confidence" in said
    assert "observed:" not in said
    (line,) = (line.strip() for line in result.stdout.splitlines() if line.strip().startswith("planeproof replay"))
    found = load_case(folder / line.split()[-1]).found
    assert found is not None
    assert "is no step of the scheduler" in found.note
    assert run(*line.split()[1:]).exit_code == 0


def test_a_broken_rule_stays_a_failure() -> None:
    """Exit code 1: in the scene that was found, the burst that broke the rule is no step either."""
    result = run("check", "mine.py:Early", *SMALL, "--scenes", "20", "--conforms", PROVED_DELTA)
    assert (result.exit_code, result.stdout.split()[0]) == (1, "FAIL")
    assert "which breaks a rule besides" in words(result.stdout)
    assert "also UNKNOWN" not in result.stdout


def test_who_breaks_the_contract_is_not_observed() -> None:
    """Exit code 4 as without the option, and it is said that nothing was observed."""
    result = run("check", "mine.py:Raises", *SMALL, "--scenes", "4", "--conforms", PROVED_DELTA)
    assert result.exit_code == 4
    assert "Nothing was observed" in result.stdout


UNPROVED = """
from planeproof.spec.steps.reference import Delta

class Careless(Delta):
    def show_guards(self, own, tile, row, cell):
        return {}
"""


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("--conforms", "nowhere.py:Steps"), "there is no such file"),
        (("--conforms", "mine.py:Right"), "is no scheduler written as steps"),
        (("--conforms", "planeproof.spec.steps:HiddenPlane"), "abstract"),
        (("--conforms", "careless.py:Careless"), "not proved, so to conform to them would mean nothing"),
        (("--conforms", PROVED_DELTA, "--as-given"), "leave one of them out"),
        (("--conforms", PROVED_DELTA, "--machine", "twin-niche"), "has sets of planes: 1; steps for two planes need 2"),
    ],
)
def test_what_can_not_be_compared_is_refused(folder: Path, arguments: tuple[str, ...], said: str) -> None:
    """Exit code 64 before anything is played, and what is wrong."""
    (folder / "careless.py").write_text(UNPROVED, encoding="utf-8")
    result = run("check", "mine.py:Right", *SMALL, *arguments)
    assert (result.exit_code, result.stdout) == (64, "")
    assert said in words(result.stderr)


def test_without_z3_nothing_is_said_to_conform(monkeypatch: pytest.MonkeyPatch) -> None:
    """Exit code 2 and the line to type, before anything is played."""
    for module in [name for name in sys.modules if name.startswith("planeproof.spec")]:
        monkeypatch.delitem(sys.modules, module)
    monkeypatch.delattr(planeproof, "spec", raising=False)
    monkeypatch.setitem(sys.modules, "z3", None)
    result = run("check", DELTA, *SMALL, "--conforms", PROVED_DELTA)
    assert (result.exit_code, result.stdout.split()[0]) == (2, "UNKNOWN")
    assert "pip install 'planeproof[spec]'" in result.stdout


TIRED = """
from itertools import count
from planeproof.candidates.reference import Delta

MADE = count()

class Tired(Delta):
    def __init__(self):
        if next(MADE) >= LIMIT:
            raise OSError("no more of them")

LIMIT = 10 ** 9
"""


def test_a_candidate_that_fails_only_when_observed_never_passes(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Exit code 2: the scenes were played to their end once, and not the second time."""
    (folder / "tired.py").write_text(TIRED, encoding="utf-8")
    observed = Conforming.observed

    def then_tired(conforming: Conforming, verdict: Verdict, cases: Path) -> tuple[Verdict, list[str]]:
        (folder / "tired.py").write_text(TIRED.replace("10 ** 9", "0"), encoding="utf-8")
        return observed(conforming, verdict, cases)

    monkeypatch.setattr(Conforming, "observed", then_tired)
    result = run("check", "tired.py:Tired", *SMALL, "--scenes", "40", "--conforms", PROVED_DELTA)
    assert (result.exit_code, result.stdout.split()[0]) == (2, "UNKNOWN")
    assert "played again, the candidate broke the contract" in words(result.stdout)
