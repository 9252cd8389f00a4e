"""``--planeproof-target``: a test for each rule and machine, with what was found before replayed first."""

import json
import re
from pathlib import Path

import pytest

from planeproof.contract import RULES
from planeproof.scenes.cases import load_case
from tests.testing.running import about, run

pytest_plugins = "pytester"

RULE_IDS = [rule.id for rule in RULES]
ON_TINY = [f"planeproof::tiny::{name}" for name in ("contract", *RULE_IDS)]


def outcomes(result: pytest.RunResult) -> dict[str, str]:
    """Name of each test, in the order in which they ran, and what came of it; pytest was run with -v."""
    told = [line.split() for line in result.outlines if line.startswith("planeproof::") and "%]" in line]
    return {line[0]: line[1] for line in told}


def _flat(result: pytest.RunResult) -> str:
    return " ".join(result.stdout.str().split())


def test_each_rule_is_a_test_and_a_right_scheduler_passes(pytester: pytest.Pytester) -> None:
    """In the order of the rules; nothing is saved."""
    result = run(pytester, "-v", *about("Right"))
    assert outcomes(result) == dict.fromkeys(ON_TINY, "PASSED")
    assert result.ret == 0
    assert list((pytester.path / "kept").iterdir()) == []


def test_a_broken_rule_fails_with_its_story_and_is_replayed_first_next_time(pytester: pytest.Pytester) -> None:
    """Its test shows the smallest scene, without a traceback; what the check did not come to is told as unknown."""
    result = run(pytester, "-v", *about("Early"))
    came = outcomes(result)
    assert came.pop("planeproof::tiny::contract") == "PASSED"
    assert set(came.values()) == {"FAILED"}
    text = result.stdout.str()
    assert "The smallest scene found that shows it" in text
    assert "<-- here, byte" in text
    assert "│·······X│" in text
    assert "Traceback" not in text
    assert "is UNKNOWN: the check ended before it was known" in text

    saved = sorted(path.stem for path in (pytester.path / "kept").iterdir())
    assert "Early-hidden-writes-tiny" in saved
    again = run(pytester, "-v", *about("Early"))
    assert list(outcomes(again))[: len(saved)] == [f"planeproof::cases::{name}" for name in saved]
    assert set(list(outcomes(again).values())[: len(saved)]) == {"FAILED"}
    assert "FAIL mine:Early: a rule is broken in " in _flat(again)
    assert sorted(path.stem for path in (pytester.path / "kept").iterdir()) == saved


def test_a_rule_that_is_never_broken_first_says_where_to_look(pytester: pytest.Pytester) -> None:
    """What half a picture does to the viewer is told at the reveal, so the rules about the viewer point there."""
    unsent = "planeproof.candidates.faults:LastRowNotSent"
    result = run(pytester, "-v", "--planeproof-target", unsent, *about("Right")[2:])
    assert outcomes(result)["planeproof::tiny::whole-reveal"] == "FAILED"
    broken_first = r"whole-reveal is BROKEN, in a scene where another rule was broken first: see (.*?)\."
    said = re.search(broken_first, _flat(result))
    assert said is not None
    assert "exact-reveal" in said[1]


def test_a_finding_names_the_file_where_it_is(pytester: pytest.Pytester) -> None:
    """The line to paste is about a case that can be loaded, and that says what it showed."""
    text = run(pytester, *about("Early")).stdout.str()
    (first, *_) = [line.split()[-1] for line in text.splitlines() if line.strip().startswith("planeproof replay")]
    found = load_case(first).found
    assert found is not None
    assert (found.target, found.rule) == ("mine:Early", "hidden-writes")


def test_what_is_saved_under_a_name_is_not_lost_to_another_scene(pytester: pytest.Pytester) -> None:
    """The second gets a number; what failed once is replayed for ever."""
    earlier = pytester.path / "kept" / "Early-hidden-writes-tiny.json"
    earlier.parent.mkdir()
    earlier.write_text("{}", "utf-8")
    result = run(pytester, "-v", *about("Early"))
    assert earlier.read_text("utf-8") == "{}"
    assert load_case(earlier.with_name("Early-hidden-writes-tiny-2.json")).found is not None
    assert outcomes(result)["planeproof::cases::Early-hidden-writes-tiny"] == "FAILED"
    result.stdout.fnmatch_lines(["*UNKNOWN what the case shows: *planeproof_case is missing*"])


def test_too_few_scenes_are_failures_and_no_skips(pytester: pytest.Pytester) -> None:
    """VACUOUS is told of each rule that was not exercised, with what never happened."""
    result = run(pytester, "-v", *about("Right", scenes="2"))
    came = outcomes(result)
    assert came["planeproof::tiny::contract"] == "PASSED"
    assert "FAILED" in came.values()
    assert "skipped" not in result.parseoutcomes()
    result.stdout.fnmatch_lines(["*is VACUOUS: it never happened that *"])
    assert result.ret == 1


def test_a_candidate_at_fault_fails_every_test(pytester: pytest.Pytester) -> None:
    """That of the contract shows the page about it; no rule is said to hold."""
    result = run(pytester, "-v", *about("Raises"))
    assert outcomes(result) == dict.fromkeys(ON_TINY, "FAILED")
    result.stdout.fnmatch_lines(["The candidate broke a law of the contract", "*ZeroDivisionError*"])
    assert (pytester.path / "kept" / "Raises-contract-tiny.json").exists()


def test_the_ini_file_says_the_same(pytester: pytest.Pytester) -> None:
    """All options in the ini file, where paths are relative to it; the command line goes first."""
    pytester.makeini(
        "[pytest]\nplaneproof_target = mine:Right\nplaneproof_machines =\n  tiny.toml\n  name-plate\n"
        "planeproof_scenes = 150\nplaneproof_cases = elsewhere/kept\nplaneproof_profile = seen\n"
    )
    result = run(pytester, "-q", "--collect-only")
    groups = {line.split("::")[1] for line in result.outlines if line.startswith("planeproof::")}
    assert groups == {"tiny", "name-plate"}
    result = run(pytester, "-v", "--planeproof-target", "mine:Early", "--planeproof-machine", "tiny.toml")
    # Discipline is exposed under this profile, and does not fail.
    assert outcomes(result) == dict.fromkeys(ON_TINY, "PASSED")
    assert not (pytester.path / ".planeproof").exists()


def test_they_stand_beside_other_tests_and_can_be_chosen(pytester: pytest.Pytester) -> None:
    """Before those of the suite; -k chooses among all."""
    pytester.makepyfile(test_other="def test_here(): pass\n")
    result = run(pytester, "-v", *about("Right"))
    result.assert_outcomes(passed=len(ON_TINY) + 1)
    result.stdout.fnmatch_lines(["planeproof::tiny::fair-refusal*", "test_other.py::test_here*"])
    chosen = run(pytester, "-v", *about("Right"), "-k", "tiny and exact-reveal")
    assert outcomes(chosen) == {"planeproof::tiny::exact-reveal": "PASSED"}


def test_two_workers_share_the_tests(pytester: pytest.Pytester) -> None:
    """By pytest-xdist, with a worker for each machine; each plays in a folder of its own, of which none is left."""
    options = (*about("Early"), "--planeproof-machine", "name-plate")
    result = run(pytester, "-v", "-n", "2", "--dist", "loadgroup", *options)
    result.assert_outcomes(passed=2, failed=18)
    result.stdout.fnmatch_lines(["2 workers [[]20 items[]]"])
    saved = [path.name for path in (pytester.path / "kept").iterdir()]
    assert all(name.startswith("Early-") for name in saved), saved
    machines = ("-tiny", "-name-plate")
    assert {machine for machine in machines for name in saved if machine in name} == set(machines)


def test_a_scene_that_ended_the_process_is_there_next_time(pytester: pytest.Pytester) -> None:
    """It is left in the folder of the process that died, and replayed as any other."""
    left = pytester.path / "kept" / "playing-tiny-gw1"
    left.mkdir(parents=True)
    run(pytester, *about("Early"))
    (pytester.path / "kept" / "Early-hidden-writes-tiny.json").rename(left / "playing.json")
    result = run(pytester, "-v", *about("Early"))
    assert outcomes(result)["planeproof::cases::playing-tiny-gw1-playing"] == "FAILED"


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("--planeproof-target", "mine:Rihgt"), "did you mean 'Right'?"),
        (("--planeproof-target", "mine:Rihgt", "-n", "2"), "did you mean 'Right'?"),
        (("--planeproof-target", "lost:Right"), "there is no module 'lost'"),
        (("--planeproof-target", "mine:Right", "--planeproof-machine", "vitrine-5"), "no machine of that name ships"),
        (("--planeproof-target", "mine:Right", "--planeproof-scenes", "few"), "must be a whole number, 1 or more"),
        (("--planeproof-target", "mine:Right", "--planeproof-expected", "lost.toml"), "no such file: check the path"),
        (
            ("--planeproof-target", "mine:Right", "--planeproof-machine", "bench", "--planeproof-machine", "bench"),
            "name at least one, and each once",
        ),
        (("--planeproof-machine", "bench"), "--planeproof-machine is about a target: give --planeproof-target too"),
    ],
)
def test_what_names_nothing_is_refused_before_any_test(
    arguments: tuple[str, ...], said: str, pytester: pytest.Pytester
) -> None:
    """As a usage error in one line, with workers and without."""
    result = run(pytester, *arguments)
    assert result.ret == pytest.ExitCode.USAGE_ERROR
    (line,) = [line for line in result.errlines if line.startswith("ERROR: ")]
    assert said in line


def test_the_report_of_pytest_names_them(pytester: pytest.Pytester) -> None:
    """Its JUnit XML has machine and rule."""
    run(pytester, *about("Right"), "--junit-xml", "out.xml")
    text = Path(pytester.path / "out.xml").read_text("utf-8")
    assert 'classname="planeproof.tiny" name="exact-reveal"' in text
    assert 'skipped="0"' in text


def test_expected_failures_that_do_not_hold_fail(pytester: pytest.Pytester) -> None:
    """Each entry is a test; one whose case passes says to remove it, and its case is not replayed besides."""
    run(pytester, *about("Early"))
    case = json.dumps("kept/Early-hidden-writes-tiny.json")
    entry = (
        f'[[expected]]\ntarget = "mine:Right"\nrule = "hidden-writes"\ncase = {case}\n'
        'reason = "not yet"\nexpires = 2999-12-31\n'
    )
    pytester.makefile(".toml", listed=entry)
    result = run(pytester, "-v", *about("Right"), "--planeproof-expected", "listed.toml", "-k", "expected or cases")
    came = outcomes(result)
    assert came["planeproof::expected::1-hidden-writes"] == "FAILED"
    assert "planeproof::cases::Early-hidden-writes-tiny" not in came
    assert "listed.toml, entry 1: no rule is broken in" in _flat(result)
