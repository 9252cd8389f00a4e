import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path

import pytest

from planeproof.candidates.faults import ZOO
from planeproof.power import Detection, JournalError, Limits, engine_named, measure
from planeproof.power import journal as journal_of

FAULTS = [fault for fault in ZOO if fault.id in {"wrong-pitch", "stale-entry"}]
RECIPES, UNIFORM, EDGES = (engine_named(name) for name in ("recipes", "uniform", "edges"))
LIMITS = Limits(scenes=40)


class Counting:
    """A watcher that remembers."""

    def __init__(self) -> None:
        self.total: int | None = None
        self.steps: list[int] = []

    def stage(self, _name: str, total: int | None) -> None:
        """How many hunts there are."""
        self.total = total

    def step(self, done: int) -> None:
        """How many are done."""
        self.steps.append(done)


def timeless(rows: Sequence[Detection]) -> list[Detection]:
    """All but the seconds."""
    return [replace(row, seconds=0) for row in rows]


def test_every_fault_by_every_engine_with_every_seed() -> None:
    """In that order; an engine that makes no use of seeds hunts once."""
    rows = measure(FAULTS, engines=[RECIPES, EDGES], seeds=(4, 2), limits=LIMITS)
    each = [("recipes", 4), ("recipes", 2), ("edges", 4)]
    assert [row.key for row in rows] == [(fault.id, *hunt) for fault in FAULTS for hunt in each]


def test_two_processes_find_what_one_finds() -> None:
    """The same rows in the same order, and progress to the end."""
    watcher = Counting()
    one = measure(FAULTS, engines=[RECIPES, UNIFORM], limits=Limits(scenes=15))
    two = measure(FAULTS, engines=[RECIPES, UNIFORM], limits=Limits(scenes=15), jobs=2, watcher=watcher)
    assert timeless(one) == timeless(two)
    assert (watcher.total, watcher.steps[-1]) == (4, 4)


def test_a_run_that_was_stopped_goes_on(tmp_path: Path) -> None:
    """Rows that are there are kept with their seconds, one that was cut off is measured again, more seeds are added."""
    file, watcher = tmp_path / "in" / "journal.jsonl", Counting()
    whole = measure(FAULTS, engines=[RECIPES], seeds=(0, 1), limits=LIMITS, journal=file)
    file.write_bytes(file.read_bytes()[:-20])
    again = measure(FAULTS, engines=[RECIPES], seeds=(0, 1, 2), limits=LIMITS, journal=file, watcher=watcher)
    assert watcher.total == 3
    held = {row.key: row for row in again}
    assert [held[row.key] for row in whole[:-1]] == list(whole[:-1])
    assert timeless([held[whole[-1].key]]) == timeless(whole[-1:])
    assert measure(FAULTS, engines=[RECIPES], seeds=(0, 1, 2), limits=LIMITS, journal=file) == again


def test_a_journal_of_another_run_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Other limits and other code make other rows; the file is left as it was."""
    file = tmp_path / "journal.jsonl"
    measure(FAULTS[:1], engines=[RECIPES], limits=LIMITS, journal=file)
    before = file.read_bytes()
    with pytest.raises(JournalError, match=r"another run .40 scenes, .* this is 41 scenes, .*delete it to begin anew"):
        measure(FAULTS[:1], engines=[RECIPES], limits=Limits(scenes=41), journal=file)
    monkeypatch.setattr(journal_of, "code", lambda: "0123456789ab")
    with pytest.raises(JournalError, match="this is 40 scenes, 60 seconds, code 0123456789ab"):
        measure(FAULTS[:1], engines=[RECIPES], limits=LIMITS, journal=file)
    assert file.read_bytes() == before


@pytest.mark.parametrize(("lines", "said"), [(b"notes\n", "its first line is no header"), (None, "line 3 is no row")])
def test_what_is_no_journal_is_refused(tmp_path: Path, lines: bytes | None, said: str) -> None:
    """With file, line and what to do."""
    file = tmp_path / "journal.jsonl"
    if lines is None:
        measure(FAULTS[:1], engines=[RECIPES], limits=LIMITS, journal=file)
        lines = file.read_bytes() + b'{"fault": 1}\n'
    file.write_bytes(lines)
    with pytest.raises(JournalError, match=said):
        measure(FAULTS[:1], engines=[RECIPES], limits=LIMITS, journal=file)


def test_no_process_is_too_few() -> None:
    """With the figure."""
    with pytest.raises(ValueError, match="jobs is 0: at least 1 process"):
        measure(FAULTS, jobs=0)


KILLED = """
import os, sys
from pathlib import Path
from planeproof.candidates.faults import ZOO
from planeproof.power import Limits, engine_named, measuring

def noted():
    Path(sys.argv[1], str(os.getpid())).touch()

measuring.IDLE_SECONDS, measuring._ignore_interrupts = 1, noted
measuring.measure(ZOO, engines=[engine_named("recipes")], limits=Limits(scenes=1, seconds=0.1), jobs=2)
"""


def test_no_process_stays_when_the_one_that_waits_is_killed(tmp_path: Path) -> None:
    """Those that it began end by themselves, when they have had nothing to do for a while."""
    pids = tmp_path / "pids"
    pids.mkdir()
    (tmp_path / "killed.py").write_text(KILLED, "utf-8")
    waiting = subprocess.Popen([sys.executable, str(tmp_path / "killed.py"), str(pids)])
    until(lambda: len(list(pids.iterdir())) == 2)
    waiting.kill()
    waiting.wait()
    until(lambda: not any(Path("/proc", each.name).exists() for each in pids.iterdir()))


def until(so: Callable[[], bool]) -> None:
    """Wait for it; a minute is more than it takes on a slow computer."""
    for _ in range(600):
        if so():
            return
        time.sleep(0.1)
    pytest.fail("it has not come about within a minute")
