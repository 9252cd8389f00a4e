import gc
import inspect
import io
import os
import signal
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import planeproof.search
from planeproof.command import printing
from planeproof.command.check import SCENES, check
from planeproof.command.interrupting import Interruption
from planeproof.command.main import main
from planeproof.command.progress import Progressing
from planeproof.contract import RULES
from planeproof.judge import Outcome
from planeproof.machines import parse_machine, read_machine, shipped
from tests.command.running import run, run_apart

HEAVY = ("numpy", "hypothesis", "z3", "msgspec", "rich")


@pytest.mark.parametrize("arguments", [["--help"], ["--version"], *([name, "--help"] for name in main.commands)])
def test_help_imports_nothing_heavy(arguments: list[str], folder: Path) -> None:
    """Asking for help or the version loads click and the command files only."""
    program = (
        "import sys\nfrom planeproof.command.main import main\n"
        f"try: main({arguments!r})\nexcept SystemExit as end: assert end.code == 0\n"
        f"print([name for name in {HEAVY!r} if name in sys.modules], file=sys.stderr)"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], cwd=folder, capture_output=True, text=True, timeout=60, check=True
    )
    assert done.stderr == "[]\n"
    assert done.stdout


def test_the_module_runs_as_the_command_does(folder: Path) -> None:
    """Python -m planeproof, in a process of its own, with the exit codes of an outcome and of wrong usage."""
    done = run_apart("check", "mine.py:NoBlank", "--machine", "tiny.toml", folder=folder)
    assert (done.returncode, done.stdout.split()[:2]) == (Outcome.CANDIDATE_ERROR.value, ["CANDIDATE", "ERROR"])
    wrong = run_apart("check", "mine.py:NoBlank", "--scenes", "0", folder=folder)
    assert (wrong.returncode, wrong.stdout) == (64, "")
    assert wrong.stderr.startswith("Usage: planeproof check")


def test_a_terminal_without_drawing_characters_is_served_too(folder: Path) -> None:
    """Where only ASCII can be written, every sign is replaced by one of its own."""
    environment = os.environ | {"PYTHONIOENCODING": "ascii", "PYTHONUTF8": "0"}
    done = run_apart("check", "mine.py:Idle", "--machine", "tiny.toml", "--scenes", "4", folder=folder, **environment)
    assert done.returncode == 1
    assert done.stdout.isascii()
    assert "|........|" in done.stdout
    assert ". background, @ ink, X differs" in done.stdout


@pytest.mark.usefixtures("heard")
def test_an_interruption_ends_cleanly(folder: Path) -> None:
    """Ctrl-C in the middle of a search: exit code 130, a word and no traceback, and no scene left as if in play."""
    command = [sys.executable, "-m", "planeproof", "check", "mine.py:Right", "--machine", "tiny.toml"]
    with subprocess.Popen(
        [*command, "--seconds", "50"], cwd=folder, stderr=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as running:
        assert running.stderr is not None
        while "Hypothesis" not in running.stderr.readline():
            pass
        running.send_signal(signal.SIGINT)
        out, error = running.communicate(timeout=40)
    assert (running.returncode, out) == (130, "")
    assert error.splitlines()[-1] == "planeproof: interrupted"
    assert "Traceback" not in error
    assert not (folder / ".planeproof" / "playing.json").exists()


def swallowed() -> None:
    """Ctrl-C in a callback of the garbage collector, where Python prints it and forgets it."""
    pressed: list[str] = []

    def press(phase: str, _info: dict[str, int]) -> None:
        if phase == "start" and not pressed:
            pressed.append(phase)
            signal.raise_signal(signal.SIGINT)

    gc.callbacks.append(press)
    try:
        gc.collect()
    finally:
        gc.callbacks.remove(press)
    assert pressed


def turned_into_an_error() -> None:
    """Ctrl-C that comes out as something else."""
    try:
        signal.raise_signal(signal.SIGINT)
    except KeyboardInterrupt:
        raise RuntimeError("something broke off") from None


def divided() -> None:
    """An error that has nothing to do with it."""
    raise ZeroDivisionError


def interruptible(body: Callable[[], None], *, then_checked: bool = False) -> bool:
    """Run ``body`` inside; whether the end was reached without anything being raised by then."""
    with Interruption() as interruption:
        body()
        if then_checked:
            interruption.check()
            pytest.fail("it was lost")
    return True


@pytest.mark.usefixtures("heard")
def test_an_interruption_is_never_lost(capfd: pytest.CaptureFixture[str]) -> None:
    """Swallowed, it is raised again between two scenes or else at the end; turned into an error, it is itself."""
    for checked in (True, False):
        with pytest.raises(KeyboardInterrupt):
            interruptible(swallowed, then_checked=checked)
    with pytest.raises(KeyboardInterrupt):
        interruptible(turned_into_an_error)
    assert capfd.readouterr().err == ""


def test_without_an_interruption_nothing_is_changed() -> None:
    """Results and errors pass, and handler and hook are those from before."""
    before = (signal.getsignal(signal.SIGINT), sys.unraisablehook)
    assert interruptible(lambda: None)
    with pytest.raises(ZeroDivisionError):
        interruptible(divided)
    assert (signal.getsignal(signal.SIGINT), sys.unraisablehook) == before


def test_a_fault_of_our_own_is_reported_as_one(monkeypatch: pytest.MonkeyPatch) -> None:
    """Exit code 70, the traceback, and the request to report it; not mistaken for the candidate's."""

    def broken(*_: object, **__: object) -> None:
        raise RuntimeError("a loose screw")

    monkeypatch.setattr("planeproof.search.check", broken)
    result = run("check", "mine.py:Right")
    assert (result.exit_code, result.stdout) == (70, "")
    assert "RuntimeError: a loose screw" in result.stderr
    assert "Please report it" in result.stderr


def test_the_rules_are_told_in_full() -> None:
    """All nine, or the one that is named, each with its sentence, reason and witness."""
    words = " ".join(run("rules").stdout.split())
    for rule in RULES:
        one = run("rules", rule.id)
        assert one.exit_code == 0
        assert one.stdout.splitlines()[0] == rule.id
        for part in (rule.statement, rule.why, rule.theorem, rule.witness):
            assert part in " ".join(one.stdout.split())
            assert part in words


def test_the_machines_are_listed_and_told_in_full() -> None:
    """A line each; one by one all figures, and TOML that reads back as the same machine."""
    listed = run("machines").stdout.splitlines()
    assert [line.split()[0] for line in listed] == list(shipped())
    for name in shipped():
        machine = read_machine(name)
        page = " ".join(run("machines", name).stdout.split())
        assert f"blanking {machine.blank_cycles} cycles" in page
        assert f"patience {machine.patience} full blankings" in page
        assert f"up to {machine.must_show} occupied cells" in page
        toml = run("machines", name, "--toml").stdout
        assert parse_machine(toml, "x") == machine


def test_a_machine_of_ones_own_is_told_too() -> None:
    """A file works like a name."""
    assert run("machines", "tiny.toml").stdout.splitlines()[0] == "tiny"


class Terminal(io.StringIO):
    """What a person sees."""

    def isatty(self) -> bool:
        """It is one."""
        return True


def test_a_person_who_watches_sees_a_bar(monkeypatch: pytest.MonkeyPatch) -> None:
    """On a terminal the stages appear with what is done of them, and are taken away at the end."""
    screen = Terminal()
    monkeypatch.setattr("sys.stderr", screen)
    monkeypatch.setenv("TERM", "xterm")
    with Progressing(quiet=False) as watcher:
        watcher.stage("scenes [of a kind]", 40)
        watcher.step(17)
        watcher.stage("open end", None)
        watcher.step(3)
    assert "scenes [of a kind]" in screen.getvalue() or "open end" in screen.getvalue()
    assert "3/?" in screen.getvalue()


def test_colour_is_for_terminals_only(monkeypatch: pytest.MonkeyPatch) -> None:
    """Headings are set apart on a terminal; what the text says is the same without."""
    screen, plain = Terminal(), io.StringIO()
    monkeypatch.setenv("TERM", "xterm-256color")
    monkeypatch.delenv("NO_COLOR", raising=False)
    for stream in (screen, plain):
        monkeypatch.setattr("sys.stdout", stream)
        printing.show(["FAIL  x: [bold]", "  burst 0  <-- here"])
    assert "\x1b[" in screen.getvalue()
    assert plain.getvalue() == "FAIL  x: [bold]\n  burst 0  <-- here\n"


def test_the_defaults_on_the_command_line_are_those_of_the_search() -> None:
    """They are written twice, because --help may not load the search."""
    defaults: dict[str | None, Any] = {option.name: option.default for option in check.params}
    asked = inspect.signature(planeproof.search.check).parameters
    assert tuple(defaults["machines"]) == asked["machines"].default
    assert asked["scenes"].default == SCENES
    assert (defaults["seed"], defaults["profile"]) == (asked["seed"].default, asked["profile"].default.value)


def test_a_reader_that_stops_reading_does_not_change_the_exit_code(folder: Path) -> None:
    """`planeproof check ... | head -1`: the rest is thrown away, in silence, and the code is the outcome's."""
    command = [sys.executable, "-m", "planeproof", "check", "mine.py:NoBlank", "--machine", "tiny.toml", "--quiet"]
    read, write = os.pipe()
    os.close(read)
    try:
        done = subprocess.run(command, cwd=folder, stdout=write, stderr=subprocess.PIPE, timeout=60, check=False)
    finally:
        os.close(write)
    assert (done.returncode, done.stderr) == (Outcome.CANDIDATE_ERROR.value, b"")
