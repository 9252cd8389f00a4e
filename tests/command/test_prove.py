import sys
from dataclasses import replace

import pytest

import planeproof.spec
from planeproof.spec import OBLIGATIONS, Answer
from planeproof.spec.other_solvers import OUT_OF_REACH
from tests.command.running import run

WRONG = replace(OBLIGATIONS[0].without("the palette shows the side"), id="planted", wanted=Answer.PROVED)
"""Theorem 1 without its premise: false."""


def test_a_theorem_is_proved_again_and_told_in_full() -> None:
    """Exit code 0; statement, size, answer, resources and time of each obligation, with its premises."""
    result = run("prove", "--only", "1")
    assert (result.exit_code, result.stdout.split()[0]) == (0, "PASS")
    words = " ".join(result.stdout.split())
    for obligation in (one for one in OBLIGATIONS if one.theorem == 1):
        assert obligation.statement in words
        assert f"{obligation.id} proved, as wanted" in words
        assert f"s {obligation.size} premises {obligation.premises[0]}" in words
    assert "asking z3, 8" in result.stderr


def test_one_obligation_by_its_id_with_its_witness() -> None:
    """A wording that is kept because it is wrong is answered as wanted, and shown where it is not so."""
    result = run("prove", "--only", "colours-in-any-tiles", "--quiet")
    assert (result.exit_code, result.stderr) == (0, "")
    assert "colours-in-any-tiles  refuted, as wanted" in result.stdout
    assert "witness: it is not so where\n        values for 00: " in result.stdout


def test_a_planted_wrong_theorem_is_refuted_with_a_witness(monkeypatch: pytest.MonkeyPatch) -> None:
    """Exit code 1, and the values that refute it can be checked by hand: they agree on the side, but not elsewhere."""
    monkeypatch.setattr(planeproof.spec, "OBLIGATIONS", (*OBLIGATIONS[:1], WRONG))
    result = run("prove")
    assert (result.exit_code, result.stdout.split()[0]) == (1, "FAIL")
    assert "planted REFUTED, wanted proved" in " ".join(result.stdout.split())
    witness = result.stdout.partition("it is not so where\n")[2].splitlines()
    told = {name: int(value) for name, value in (line.strip().split(": ") for line in witness)}
    assert told["value in one"] >> told["side"] & 1 == told["value in the other"] >> told["side"] & 1
    assert told["value in one"] != told["value in the other"]


def test_a_limit_that_is_reached_is_unknown() -> None:
    """With hardly any resources exit code 2, and z3's own reason; never PASS."""
    result = run("prove", "--only", "three-writes-map-pattern-map", "--rlimit", "500")
    assert (result.exit_code, result.stdout.split()[0]) == (2, "UNKNOWN")
    assert "z3 gave up: " in result.stdout
    assert "UNKNOWN, wanted proved" in result.stdout


def test_a_wrong_answer_outweighs_an_unknown_one(monkeypatch: pytest.MonkeyPatch) -> None:
    """With both, the exit code is 1."""
    hard = next(one for one in OBLIGATIONS if one.id == "three-writes-map-pattern-map")
    monkeypatch.setattr(planeproof.spec, "OBLIGATIONS", (WRONG, hard))
    assert run("prove", "--rlimit", "60000").exit_code == 1


def test_more_solvers_confirm_the_same_statements() -> None:
    """Each says in a line with its own name that it agrees."""
    result = run("prove", "--only", "3", "--with", "cvc5", "--with", "bitwuzla", "--quiet")
    assert result.exit_code == 0
    heads = [line.split()[:2] for line in result.stdout.splitlines() if line.startswith("PASS")]
    assert heads == [["PASS", "z3"], ["PASS", "cvc5"], ["PASS", "bitwuzla"]]


def test_what_is_out_of_a_solvers_reach_is_told() -> None:
    """It is not asked, which proves nothing: with nothing else asked, exit code 2, and the reason is given."""
    (name, why), *_ = OUT_OF_REACH["cvc5"].items()
    result = run("prove", "--only", name, "--with", "cvc5", "--quiet")
    assert result.exit_code == 2
    assert "UNKNOWN  nothing was asked" in result.stdout
    assert f"cvc5 was not asked {name}, which is out of its reach: {why}" in " ".join(result.stdout.split())


def test_without_z3_it_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    """Exit code 2 and the line to type; no traceback."""
    for module in [name for name in sys.modules if name.startswith("planeproof.spec")]:
        monkeypatch.delitem(sys.modules, module)
    monkeypatch.delattr(planeproof, "spec")
    monkeypatch.setitem(sys.modules, "z3", None)
    result = run("prove")
    assert (result.exit_code, result.stdout.split()[0]) == (2, "UNKNOWN")
    assert "pip install 'planeproof[spec]'" in result.stdout
    assert result.stderr == ""


def test_without_another_solver_it_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    """The answers of z3 stand, but exit code 2: what was asked for was not confirmed."""
    monkeypatch.setitem(sys.modules, "cvc5", None)
    result = run("prove", "--only", "different-patterns", "--with", "cvc5", "--quiet")
    assert result.exit_code == 2
    assert "cvc5 is missing: pip install 'planeproof[certificates]'" in result.stdout


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["--only", "11"], "there is no theorem or obligation '11'"),
        (["--only", "reveal-"], "the nearest are reveal-1-planes-depth-1"),
        (["--with", "z9"], "z9"),
        (["--rlimit", "0"], "0"),
    ],
)
def test_wrong_usage_is_refused(arguments: list[str], words: str) -> None:
    """Exit code 64, and what was wrong; a part of a name is answered with the names that have it."""
    result = run("prove", *arguments)
    assert (result.exit_code, result.stdout) == (64, "")
    assert words in result.stderr
