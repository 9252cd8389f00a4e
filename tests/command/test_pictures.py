from pathlib import Path

import pytest
from PIL import Image

from planeproof.command.pictures import ANIMATED_NAMES, KIND_NAMES
from planeproof.contract import Picture, Scene
from planeproof.machines import read_machine
from planeproof.pictures import ANIMATED, CAUTION, KINDS
from planeproof.scenes.cases import Case, Found, save_case
from tests.command.running import run, run_apart


@pytest.fixture
def case(folder: Path) -> Path:
    """A case of two cells all lit and all dark by turns, which Right shows without a fault."""
    machine = read_machine("tiny.toml")
    pictures = [Picture.from_rows(0, [[255 * (n % 2)] * 8] * 2) for n in range(20)]
    path = folder / "case.json"
    save_case(path, Case(scene=Scene.of(machine, pictures), found=Found(target="mine.py:Right", rule="in-order")))
    return path


def test_the_names_on_the_command_line_are_those_of_the_pictures() -> None:
    """They are written twice so that --help needs no Pillow."""
    assert tuple(kind.name for kind in KINDS) == KIND_NAMES
    assert tuple(ANIMATED) == ANIMATED_NAMES


def test_a_case_is_drawn(case: Path) -> None:
    """Files, an index, the caution, and no animation."""
    result = run("pictures", case.name, "--into", "out", "--refreshes", "0-1", "--scale", "2")
    assert result.exit_code == 0
    assert f"{2 * len(KINDS)} pictures in out; out/index.txt says what each shows." in result.stdout
    assert CAUTION in result.stdout
    assert len(list(Path("out").glob("*.png"))) == 2 * len(KINDS)


def test_another_target_is_drawn_and_kinds_are_chosen(case: Path) -> None:
    """One kind, without labels, in a shape of one's own."""
    options = ["--only", "seen", "--no-labels", "--refreshes", "1", "--scale", "3", "--pixel-shape", "2:1"]
    assert run("pictures", case.name, "mine.py:Early", "--into", "out", *options).exit_code == 0
    with Image.open("out/0001-refresh-001-seen.png") as image:
        assert image.size == (16 * 6, 8 * 3)


def test_an_animation_that_flashes_too_much_is_refused(case: Path) -> None:
    """Exit code 64, with what, where, and what to do; the still pictures are there all the same."""
    options = ["--only", "seen", "--refreshes", "0", "--animation", "it.png"]
    result = run("pictures", case.name, "--into", "out", *options)
    assert result.exit_code == 64
    assert "it.png is not written: it would flash more than WCAG 2.2, success criterion 2.3.1, allows." in result.stderr
    assert "general flashes: 3.5 within one second (3 are allowed) in frames" in result.stderr
    assert "--slower N" in result.stderr
    assert not Path("it.png").exists()
    forced = run("pictures", case.name, "--into", "out", *options, "--despite-flashes")
    assert forced.exit_code == 0
    assert "It EXCEEDS the limits of WCAG 2.2" in forced.stdout
    slow = run("pictures", case.name, "--into", "out", *options, "--slower", "9")
    assert slow.exit_code == 0
    assert "No more flashes were found in it than WCAG 2.2, success criterion 2.3.1, allows." in slow.stdout


@pytest.mark.parametrize(
    ("options", "said"),
    [
        (["--refreshes", "9-3"], "'9-3' is no refresh: give one (3), a span (3-9), eventful or all"),
        (["--refreshes", "5000"], "--refreshes asks for refresh 5000: the run has 0 to"),
        (["--pixel-shape", "12"], "'12' is no shape: give width and height of a pixel, as in 12:11"),
        (["--pixel-shape", "9:1"], "'9:1' is too far from square"),
        (["--scale", "0"], "--scale"),
        (["--only", "film"], "'film' is not one of"),
    ],
)
def test_what_cannot_be_drawn_is_refused(case: Path, options: list[str], said: str) -> None:
    """Exit code 64, the value, and what may stand there."""
    result = run("pictures", case.name, "--into", "out", *options)
    assert (result.exit_code, said in result.stderr) == (64, True), result.stderr


def test_a_folder_that_is_a_file_is_refused(case: Path) -> None:
    """It is said which, and what to do."""
    result = run("pictures", case.name, "--into", "tiny.toml")
    assert result.exit_code == 64
    assert "tiny.toml can't be written" in result.stderr
    assert "name another --into" in result.stderr


def test_a_target_that_breaks_the_contract_is_told_as_elsewhere(case: Path) -> None:
    """Exit code 4 and the page of its fault; nothing is drawn."""
    result = run("pictures", case.name, "mine.py:Raises", "--into", "out")
    assert result.exit_code == 4
    assert result.stdout.startswith("CANDIDATE ERROR")
    assert not Path("out").exists()


def test_a_target_that_ends_the_process_is_noticed(case: Path, folder: Path) -> None:
    """The command runs it in a process of its own, as check and replay do."""
    with (folder / "mine.py").open("a", encoding="utf-8") as file:
        file.write("\nclass Ends(Delta):\n    def blank(self, cycles):\n        import os\n        os._exit(0)\n")
    ended = run_apart("pictures", case.name, "mine.py:Ends", "--into", "out", folder=folder)
    assert ended.returncode == 4
    assert "there is no verdict" in ended.stderr
