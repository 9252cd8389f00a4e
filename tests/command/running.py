"""Running the command, inside the test's process and outside it."""

import subprocess
import sys
from pathlib import Path

from click.testing import CliRunner, Result

from planeproof.command.main import main

TINY = """
[window]
columns = 2
rows = 1
[tiles]
count = 4
pool = [{ first = 1, count = 2 }]
[time]
lines = 30
shown = 24
"""
"""A machine of two cells."""

CANDIDATES = '''
from planeproof import Answer, Burst
from planeproof.candidates.reference import Delta, InPlace

LIMIT = 3

class Right(Delta):
    pass

class Idle(Delta):
    def blank(self, cycles):
        return []

class Early(Delta):
    """Reveals first, sends afterwards."""
    def blank(self, cycles):
        bursts = list(super().blank(cycles))
        return bursts[-1:] + bursts[:-1]

class NoBlank:
    def start(self, machine):
        return []
    def offer(self, picture):
        return Answer.BUSY

class Raises(Delta):
    def blank(self, cycles):
        return [1 / 0]

class RaisesWhenMade:
    def __init__(self):
        raise OSError("no display")

class ExitsWhenMade:
    def __init__(self):
        raise SystemExit(9)

class Numbers(Delta):
    def offer(self, picture):
        return 1

class Pairs(Delta):
    def blank(self, cycles):
        return [(b.address, b.data) for b in super().blank(cycles)]

class Nothing(Delta):
    def start(self, machine):
        super().start(machine)

class Endless(Delta):
    def blank(self, cycles):
        while True:
            yield Burst(0, bytes(8))

def needs_one(machine):
    return Delta()
'''


def run(*arguments: str) -> Result:
    """The command in this process, in the current folder."""
    return CliRunner().invoke(main, list(arguments), prog_name="planeproof")


def run_apart(*arguments: str, folder: Path, **environment: str) -> "subprocess.CompletedProcess[str]":
    """The command in a process of its own."""
    command = [sys.executable, "-m", "planeproof", *arguments]
    environ = environment or None
    return subprocess.run(command, cwd=folder, env=environ, capture_output=True, text=True, timeout=60, check=False)


def set_up(folder: Path) -> None:
    """Put a machine and candidates in ``folder``."""
    (folder / "tiny.toml").write_text(TINY, "utf-8")
    (folder / "mine.py").write_text(CANDIDATES, "utf-8")
