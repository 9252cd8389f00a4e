from pathlib import Path

import pytest

from planeproof.scenes.cases import load_case
from tests.command.running import run

TINY = ("--machine", "tiny.toml")


def test_a_right_scheduler_passes() -> None:
    """Exit code 0, PASS first, and what it rests on with a bound."""
    result = run("check", "planeproof.candidates.reference:Delta", "--machine", "vitrine-60", "--scenes", "80")
    assert (result.exit_code, result.stdout.split()[0]) == (0, "PASS")
    assert "with 95 % confidence fewer than 7.3 % of the scenes that can be so drawn fail" in " ".join(
        result.stdout.split()
    )


def test_a_wrong_one_fails_with_a_case_that_replays(folder: Path) -> None:
    """Exit code 1; the line to paste names a file that is there, and replay tells the same rule."""
    result = run("check", "mine.py:Early", *TINY, "--scenes", "20")
    assert (result.exit_code, result.stdout.split()[0]) == (1, "FAIL")
    lines = [line.strip() for line in result.stdout.splitlines() if line.strip().startswith("planeproof replay")]
    line, as_given, *_ = lines
    assert load_case(as_given.split()[-1]).scene.machine.name == "tiny"
    case = line.split()[-1]
    assert load_case(case).found is not None
    again = run(*line.split()[1:])
    assert (again.exit_code, again.stdout.split()[0]) == (1, "FAIL")
    assert again.stdout.splitlines()[2] == result.stdout.splitlines()[3]
    assert not (folder / ".planeproof" / "playing.json").exists()


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("NoBlank", "NoBlank has no method blank"),
        ("Raises", "raised ZeroDivisionError: division by zero"),
        ("RaisesWhenMade", "raised OSError: no display"),
        ("ExitsWhenMade", "raised SystemExit: 9"),
        ("Numbers", "returned 1 (int)"),
        ("Pairs", "(tuple)"),
        ("Nothing", "returned None (NoneType)"),
        ("needs_one", "missing 1 required positional argument"),
    ],
)
def test_what_breaks_the_contract_is_a_candidate_error(name: str, said: str) -> None:
    """Exit code 4, and one page that says what it did, without our own lines."""
    result = run("check", f"mine.py:{name}", *TINY, "--scenes", "4", "--quiet")
    assert (result.exit_code, result.stderr) == (4, "")
    assert result.stdout.startswith(f"CANDIDATE ERROR  mine.py:{name}: ")
    assert said in result.stdout
    assert "conversation.py" not in result.stdout
    assert run("replay", f".planeproof/{name.replace('_', '')}-contract.json").exit_code == 4


def test_what_never_ends_is_hung() -> None:
    """Exit code 5, from check and from replay."""
    result = run("check", "mine.py:Endless", *TINY, "--scenes", "4")
    assert (result.exit_code, result.stdout.split()[0]) == (5, "HUNG")
    assert run("replay", ".planeproof/Endless-contract.json").exit_code == 5


def test_what_exercises_too_little_is_vacuous() -> None:
    """Exit code 3: on a machine whose blanking holds everything, no blanking ends with work left."""
    result = run("check", "mine.py:Right", *TINY, "--scenes", "4", "--as-given")
    assert (result.exit_code, result.stdout.split()[0]) == (3, "VACUOUS")
    assert "exact-reveal: in no generated scene, a cell was occupied, then empty, then occupied again" in " ".join(
        result.stdout.split()
    )


def test_rules_can_be_asked_for_one_by_one() -> None:
    """With --only, the other rules are not judged."""
    arguments = ("check", "mine.py:Early", *TINY, "--scenes", "20")
    result = run(*arguments, "--only", "own-memory", "--only", "tile-cap")
    assert result.exit_code == 0
    assert "for 2 rules only" in result.stdout
    assert "own-memory, tile-cap: kept" in result.stdout


def test_the_seen_profile_exposes_without_failing() -> None:
    """Writing in place on a bench fails strictly, and is exposed with its margin under --profile seen."""
    arguments = ("check", "planeproof.candidates.reference:InPlace", "--machine", "bench", "--scenes", "60")
    assert run(*arguments).exit_code == 1
    seen = run(*arguments, "--profile", "seen")
    assert seen.exit_code == 0
    assert "hidden-writes: EXPOSED" in seen.stdout
    assert "cycles of a" in seen.stdout


def test_the_same_seed_says_the_same() -> None:
    """Everything on standard output is a function of the command line."""
    arguments = ("check", "mine.py:Right", *TINY, "--scenes", "12", "--seed", "7", "--quiet")
    assert run(*arguments).stdout == run(*arguments).stdout


def test_progress_goes_to_standard_error_unless_quiet() -> None:
    """Stage by stage as plain lines where nobody watches; not at all with --quiet."""
    arguments = ("check", "mine.py:Right", *TINY, "--scenes", "4")
    loud, quiet = run(*arguments), run(*arguments, "--quiet")
    assert loud.stderr.startswith("planeproof: ")
    assert "\x1b" not in loud.stderr
    assert quiet.stderr == ""
    assert loud.stdout == quiet.stdout


def test_cases_are_saved_where_asked(folder: Path) -> None:
    """--cases names the folder, made if need be."""
    result = run("check", "mine.py:Idle", *TINY, "--scenes", "4", "--cases", "found/here")
    assert result.exit_code == 1
    assert sorted(file.name for file in (folder / "found" / "here").iterdir()) == [
        "Idle-progress-as-given.json",
        "Idle-progress.json",
    ]
    assert "planeproof replay found/here/Idle-progress.json" in result.stdout
    assert not (folder / ".planeproof").exists()


def test_seconds_limit_the_search() -> None:
    """With --seconds the search ends by itself, and is answered like any other."""
    result = run("check", "mine.py:Right", *TINY, "--seconds", "3", "--only", "own-memory")
    assert (result.exit_code, result.stdout.split()[0]) == (0, "PASS")
