import json
from pathlib import Path

import pytest

from planeproof.contract import Picture, Scene
from planeproof.machines import read_machine
from planeproof.scenes.cases import Case, Found, save_case
from tests.command.running import run


@pytest.fixture
def case(folder: Path) -> Path:
    """A case that Early breaks, saved for another rule and against another target."""
    machine = read_machine("tiny.toml")
    pictures = [Picture.from_rows(0, [[255] * 8, [0] * 8]), Picture.from_rows(0, [[0] * 8, [129] * 8])]
    path = folder / "one case.json"
    save_case(path, Case(scene=Scene.of(machine, pictures), found=Found(target="mine.py:Right", rule="in-order")))
    return path


def test_a_case_is_played_against_its_own_target(case: Path) -> None:
    """Exit code 0 and the whole course; that the rule it was saved for is kept now is said."""
    result = run("replay", case.name)
    assert result.exit_code == 0
    assert "mine.py:Right: no rule is broken in one case.json" in result.stdout
    assert "It was saved because in-order was broken in it; now that rule is kept here." in result.stdout
    assert "refresh 0: picture 0 offered, answered TAKEN" in result.stdout


def test_a_case_is_played_against_another_target(case: Path) -> None:
    """Exit code 1 where that one breaks a rule, with expected and seen."""
    result = run("replay", case.name, "mine.py:Early")
    assert (result.exit_code, result.stdout.split()[0]) == (1, "FAIL")
    assert "Expected and seen" in result.stdout


def test_the_profile_is_that_of_the_case(case: Path) -> None:
    """What a case was judged by is what it is judged by again."""
    machine = read_machine("tiny.toml")
    scene = Scene.of(machine, [Picture.from_rows(0, [[255] * 8, [0] * 8])])
    target = "planeproof.candidates.reference:InPlace"
    for profile, code in (("strict", 1), ("seen", 0)):
        save_case(case, Case(scene=scene, found=Found(target=target, rule="hidden-writes", profile=profile)))
        assert run("replay", case.name).exit_code == code
    assert "EXPOSED" in run("replay", case.name).stdout


def test_a_case_without_a_target_asks_for_one(case: Path) -> None:
    """A scene that was written by hand need not name a target; then one must be given."""
    written = json.loads(case.read_text("utf-8"))
    del written["found"]
    case.write_text(json.dumps(written), "utf-8")
    result = run("replay", case.name)
    assert result.exit_code == 64
    assert "names no target: give one" in result.stderr
    assert run("replay", case.name, "mine.py:Right").exit_code == 0


def test_a_profile_that_is_none_is_refused(case: Path) -> None:
    """The case may have been changed by hand."""
    case.write_text(case.read_text("utf-8").replace('"strict"', '"lax"'), "utf-8")
    result = run("replay", case.name)
    assert result.exit_code == 64
    assert "found.profile is 'lax': must be 'strict' or 'seen'" in result.stderr
