import re
from pathlib import Path

import pytest

from planeproof.command import edges, options
from planeproof.machines import read_machine
from planeproof.scenes.edges import KEPT, keep_edges
from tests.command.running import TINY, run
from tests.scenes.own import some_edges

CELL = TINY.replace("columns = 2", "columns = 1")
"""A machine of one cell, of which a solver has soon told everything."""

CHECK = ("check", "mine.py:Right", "--machine", "cell.toml", "--scenes", "4", "--quiet")


@pytest.fixture
def cell(folder: Path) -> Path:
    """The file of that machine."""
    file = folder / "cell.toml"
    file.write_text(CELL, "utf-8")
    return file


def words(text: str) -> str:
    """On one line."""
    return " ".join(text.split())


def test_scenes_of_ones_own_machine_are_solved_kept_and_played(cell: Path) -> None:
    """First the check says what to type; that says how many, and what can't be; then the check plays as many."""
    before = words(run(*CHECK).stdout)
    line = re.search(r"none are kept for cell, to have them solved: planeproof (edges cell\.toml)\)", before)
    assert line is not None
    result = run(*line[1].split())
    assert result.exit_code == 0
    many = re.match(r"(\d+) scenes at the edges of cell, kept in \.planeproof/edges/cell-[0-9a-f]{16}\n", result.stdout)
    assert many is not None
    assert "asking z3" in result.stderr
    assert "on the machine as given, as z3 has proved\n    shared-tiles: One cell more is occupied" in result.stdout
    assert re.search(r"\n    \d+ pairs of goals in one scene\n", result.stdout)
    after = words(run(*CHECK).stdout)
    assert f"sampled: {many[1]} scenes (scenes at stated edges, supplied by a solver" in after
    assert "none are kept" not in after
    cell.write_text(CELL.replace("lines = 30", "lines = 31"), "utf-8")
    assert "none are kept for cell" in words(run(*CHECK).stdout)


def test_what_z3_leaves_open_is_told(cell: Path) -> None:
    """With next to no resources it answers nothing: no scene, and the option that may help; the folder as asked."""
    result = run("edges", cell.name, "--into", "kept", "--rlimit", "1", "--quiet")
    assert (result.exit_code, result.stderr) == (0, "")
    assert result.stdout.startswith("0 scenes at the edges of cell, kept in kept/cell-")
    assert "with --edges kept." in result.stdout
    assert "z3 came to no answer within its limit (a higher --rlimit may do)\n    at-the-limit: " in result.stdout


def test_a_machine_that_ships_is_solved_already(folder: Path) -> None:
    """Nothing is asked and nothing written."""
    result = run("edges", "vitrine-50")
    assert (result.exit_code, result.stderr) == (0, "")
    assert "there is nothing to solve" in result.stdout
    assert not (folder / ".planeproof").exists()


def test_without_z3_nothing_is_known(cell: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Exit code 2, and what to install."""
    monkeypatch.setattr(edges, "has_solver", lambda: False)
    result = run("edges", cell.name)
    assert result.exit_code == 2
    assert "pip install 'planeproof[spec]'" in result.stdout


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        ((*CHECK, "--edges", "nowhere"), "'nowhere' does not exist"),
        ((*CHECK, "--edges", "mine.py"), "'mine.py' is a file"),
        (("edges", "no.toml"), "no.toml: no such file"),
        (("edges", "cell.toml", "--into", "mine.py"), "'mine.py' is a file"),
        (("edges", "cell.toml", "--into", "mine.py/below"), "can't be written"),
        (("edges", "cell.toml", "--rlimit", "0"), "0 is not in the range"),
    ],
)
@pytest.mark.usefixtures("cell")
def test_what_can_not_be_used_is_refused(arguments: tuple[str, ...], said: str) -> None:
    """Exit code 64 and one line, before anything is solved or played."""
    result = run(*arguments)
    assert (result.exit_code, result.stdout) == (64, "")
    assert said in words(result.stderr)
    assert "Traceback" not in result.stderr


def test_scenes_that_can_not_be_read_are_refused(cell: Path, folder: Path) -> None:
    """By the check that would have played them: where they are, and what to do."""
    keep_edges(some_edges(read_machine(cell)), read_machine(cell), KEPT)
    (kept,) = (folder / KEPT).iterdir()
    (kept / "left-out.json").unlink()
    result = run(*CHECK)
    assert (result.exit_code, result.stdout) == (64, "")
    assert f"{KEPT / kept.name}: its edge scenes can't be read" in result.stderr
    assert "solved anew by planeproof edges" in result.stderr


def test_the_folder_is_the_one_that_is_looked_into() -> None:
    """It is written twice, because --help may not load the scenes."""
    assert options.EDGES == KEPT
