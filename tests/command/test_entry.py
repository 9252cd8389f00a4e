"""A candidate that ends the whole process never passes."""

import subprocess
import sys
from pathlib import Path

import pytest

from planeproof.scenes.cases import load_case

ENDS = """
import os, signal
from planeproof.candidates.reference import Fresh

class Ends(Fresh):
    def blank(self, cycles):
        {ending}
"""


def ended(folder: Path, ending: str, *arguments: str) -> "subprocess.CompletedProcess[str]":
    """`planeproof check` of a scheduler whose blanking ends like this, in ``folder``."""
    (folder / "ends.py").write_text(ENDS.format(ending=ending), encoding="utf-8")
    line = [sys.executable, "-m", "planeproof", "check", "ends.py:Ends", "--quiet", "--scenes", "150", *arguments]
    return subprocess.run(line, cwd=folder, capture_output=True, text=True, check=False)


@pytest.mark.parametrize(
    ("ending", "code", "how"),
    [
        ("os._exit(0)", 4, "with exit code 0"),
        ("os._exit(1)", 4, "with exit code 1"),
        ("os.abort()", 4, "SIGABRT"),
        ("os.kill(os.getpid(), signal.SIGKILL)", 2, "SIGKILL"),
    ],
)
def test_a_candidate_that_ends_the_process_never_passes(tmp_path: Path, ending: str, code: int, how: str) -> None:
    """It is said that there is no verdict, and where the scene is, which can be loaded."""
    result = ended(tmp_path, ending)
    assert (result.returncode, result.stdout) == (code, "")
    assert "there is no verdict" in result.stderr
    assert how in result.stderr
    assert load_case(tmp_path / ".planeproof" / "playing.json").found is not None
    assert "planeproof replay .planeproof/playing.json" in result.stderr


def test_the_folder_of_cases_is_the_one_given(tmp_path: Path) -> None:
    """Also where it was named on the line."""
    assert "kept/playing.json" in ended(tmp_path, "os._exit(0)", "--cases", "kept").stderr
    assert "kept2/playing.json" in ended(tmp_path, "os._exit(0)", "--cases=kept2").stderr


def test_the_next_check_keeps_the_scene_of_a_crash(tmp_path: Path) -> None:
    """Two crashes, two scenes."""
    ended(tmp_path, "os._exit(0)")
    ended(tmp_path, "os._exit(0)")
    ended(tmp_path, "return super().blank(cycles)")
    kept = sorted(path.name for path in (tmp_path / ".planeproof").iterdir())
    assert kept == ["left-over-1.json", "left-over-2.json"]


def test_otherwise_the_exit_code_is_the_verdicts(tmp_path: Path) -> None:
    """A wrong scheduler FAILs with 1, a right one ends with 0 and its report."""
    assert ended(tmp_path, "return ()").returncode == 1
    right = ended(tmp_path, "return super().blank(cycles)")
    assert (right.returncode, right.stdout[:4]) == (0, "PASS")
