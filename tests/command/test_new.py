from pathlib import Path

import planeproof.command.starter
from tests.command.running import run


def test_the_starter_passes_a_check(folder: Path) -> None:
    """What `new` writes passes on both vitrines, by the line that `new` prints."""
    made = run("new", "first.py")
    assert made.exit_code == 0
    line = made.stdout.splitlines()[-1].strip()
    assert line == "planeproof check first.py:Starter"
    result = run(*line.split()[1:], "--scenes", "200", "--quiet")
    assert (result.exit_code, result.stdout.split()[0]) == (0, "PASS")
    assert (folder / "first.py").read_bytes() == Path(planeproof.command.starter.__file__).read_bytes()


def test_the_starter_is_short() -> None:
    """It is read in a minute: under 60 lines, comments included."""
    assert len(Path(planeproof.command.starter.__file__).read_text("utf-8").splitlines()) < 60
