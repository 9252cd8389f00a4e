"""Several processes share the work: what is found is the same, whatever becomes of them."""

import os
import pickle
import signal
import subprocess
import sys
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from planeproof.candidates.faults.zoo import ZOO, Fault
from planeproof.candidates.reference import Delta, Fresh
from planeproof.contract import Answer, Picture, Scheduler
from planeproof.hosts import TargetError
from planeproof.judge import CandidateHung, Outcome
from planeproof.machines import read_machine
from planeproof.record import write_record
from planeproof.search import apart, check, steering
from planeproof.search.units import Stage, Unit
from tests.search import elsewhere, unhurried
from tests.search.test_handing_out import order

VITRINE = read_machine("vitrine-50")
FAULTS = [fault for fault in ZOO if fault.make.__name__ in unhurried.__all__]


@pytest.fixture(autouse=True)
def _home_and_time_enough(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(steering, "SHRINKING_SECONDS", 600.0)
    monkeypatch.setenv(elsewhere.HOME, str(os.getpid()))


@pytest.fixture
def begun(monkeypatch: pytest.MonkeyPatch) -> Iterator[list["subprocess.Popen[bytes]"]]:
    """The processes that a test has begun; none outlives the check."""
    processes: list[subprocess.Popen[bytes]] = []
    make = subprocess.Popen

    def noting(*arguments: Any, **more: Any) -> "subprocess.Popen[bytes]":  # noqa: ANN401 -- as it has them
        processes.append(make(*arguments, **more))
        return processes[-1]

    monkeypatch.setattr(subprocess, "Popen", noting)
    yield processes
    assert all(process.poll() is not None for process in processes)


def record(target: object, **asked: Any) -> bytes:  # noqa: ANN401 -- any argument of `check`
    """The record of a check, in which nothing depends on how long anything took."""
    asked = {"machines": [VITRINE], "scenes": 300, "smaller_seconds": 0} | asked
    return write_record(check(target, **asked))  # type: ignore[arg-type]


@pytest.mark.parametrize("fault", FAULTS, ids=[fault.id for fault in FAULTS])
def test_what_is_found_does_not_depend_on_how_many_share_the_work(fault: Fault) -> None:
    """With 1 and with 3 processes, the record is the same to the byte: basis, rules, findings and their scenes."""
    target = f"{unhurried.__name__}:{fault.make.__name__}"
    one, three = (record(target, machines=[fault.machine], jobs=jobs) for jobs in (1, 3))
    assert one == three
    assert fault.rule.id.encode() in one


def test_a_right_scheduler_passes_alike(begun: list[object]) -> None:
    """On two machines and in more units than processes; and the work was done by three others."""
    asked = {"machines": ["vitrine-50", "bench"], "scenes": 600}
    one = record(Delta, **asked)
    assert begun == []
    assert record(Delta, **asked, jobs=3) == one
    assert len(begun) == 3
    assert b'"PASS"' in one


def test_the_clock_is_kept_to_by_several_as_well() -> None:
    """With a time limit the search ends by itself, and scenes that are drawn independently have had their share."""
    verdict = check(Fresh, machines=[VITRINE], seconds=6.0, jobs=2)
    assert not verdict.findings
    words = ("Hypothesis", "independently", "crystals")
    assert [any(word in basis.source for basis in verdict.basis) for word in words] == [True] * 3


def test_a_file_and_a_class_made_on_the_spot_can_be_checked(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A file named from here, with a neighbour that it imports; and a class that no other process could import."""
    (tmp_path / "neighbour_of_mine.py").write_text("LEFT_OUT = 1\n", "utf-8")
    (tmp_path / "mine.py").write_text(
        "from neighbour_of_mine import LEFT_OUT\nfrom planeproof.candidates.reference import Delta\n"
        "class Mine(Delta):\n    def blank(self, cycles):\n        return list(super().blank(cycles))[LEFT_OUT:]\n",
        "utf-8",
    )
    monkeypatch.chdir(tmp_path)
    assert record("mine.py:Mine", jobs=2) == record("mine.py:Mine")

    class Declines(Fresh):
        """Declines every second picture."""

        def offer(self, picture: Picture) -> Answer:
            """Decline it, or not."""
            return Answer.TOO_BIG if picture.number % 2 else super().offer(picture)

    assert check(Declines, machines=[VITRINE], scenes=300, jobs=2).outcome is Outcome.FAIL


def test_a_script_can_share_out_its_own_class(tmp_path: Path) -> None:
    """Without the guard that begins many scripts: the script is not run again by those who share the work."""
    script = tmp_path / "script.py"
    script.write_text(
        "from planeproof import check\nfrom planeproof.candidates.reference import Delta\n"
        "class Mine(Delta):\n    pass\n"
        "print(check(Mine, machines='vitrine-50', scenes=300, jobs=2).outcome.name)\n",
        "utf-8",
    )
    done = subprocess.run([sys.executable, str(script)], capture_output=True, text=True, timeout=100, check=True)
    assert (done.stdout, done.stderr) == ("PASS\n", "")


def test_what_can_t_be_sent_is_refused() -> None:
    """With the reason and what to do, before anything is played."""
    lock = threading.Lock()

    def make() -> Scheduler:
        assert not lock.locked()
        return Fresh()

    with pytest.raises(TargetError, match=r"make' can't be sent to another process \(TypeError: .*name it in text"):
        check(make, machines=[VITRINE], jobs=2)


@pytest.mark.parametrize("ends", [elsewhere.EndsAway, elsewhere.KillsAway])
def test_a_process_that_ends_costs_its_unit_which_is_played_here(
    ends: type[Scheduler], begun: list[object], caplog: pytest.LogCaptureFixture
) -> None:
    """Nothing is lost and nothing counted twice: all is as if it had been played here. It is told of each unit."""
    assert record(ends, jobs=2) == record(ends)
    assert len(begun) > 2
    told = [entry.getMessage() for entry in caplog.records]
    assert all("has ended; it is played again in this process" in message for message in told)
    assert len({message.split(" has ended")[0] for message in told}) == len(told) >= 4


def test_one_that_nobody_listens_to_ends_without_a_word() -> None:
    """Whoever began it has ended: what it would say is for nobody, a traceback least of all."""
    unit = Unit(stage=Stage.INDEPENDENT, number=0, scenes=8)
    command = [sys.executable, "-c", apart._BEGIN, *sys.path]
    pipes = {"stdin": subprocess.PIPE, "stdout": subprocess.PIPE, "stderr": subprocess.PIPE}
    with subprocess.Popen(command, **pipes) as process:  # type: ignore[call-overload]
        process.stdout.close()
        for asked in (apart.packed(order()), (unit, 100.0)):
            pickle.dump(asked, process.stdin)
            process.stdin.flush()
        assert process.stderr.read() == b""
        assert process.wait(timeout=60) == 0


def test_one_that_is_killed_from_outside_costs_nothing(begun: list["subprocess.Popen[bytes]"]) -> None:
    """In mid-run, by whoever wants its memory back."""

    class Kills:
        """A watcher that kills the first of them while both are at work."""

        done = False
        at = ""

        def stage(self, name: str, total: int | None) -> None:
            """A stage begins."""
            self.at = name

        def step(self, done: int) -> None:
            """Kill, once."""
            if "independently" in self.at and not self.done:
                self.done = True
                os.kill(begun[0].pid, signal.SIGKILL)

    assert record(Delta, scenes=600, jobs=2, watcher=Kills()) == record(Delta, scenes=600)
    assert len(begun) == 3


@pytest.mark.parametrize("hangs", [elsewhere.HangsAway, elsewhere.HangsForGoodAway])
def test_what_hangs_elsewhere_is_hung(hangs: type[Scheduler], monkeypatch: pytest.MonkeyPatch) -> None:
    """Also where nothing can interrupt it: the process is ended, and the scene that it was in is told."""
    monkeypatch.setattr(apart, "SILENT_SECONDS", 2.0)
    verdict = check(hangs, machines=[VITRINE], scenes=300, jobs=2, call_seconds=0.2, smaller_seconds=0)
    assert verdict.outcome is Outcome.HUNG
    assert isinstance(verdict.fault, CandidateHung)
    assert verdict.fault_scene is not None
    assert len(verdict.fault_scene.pictures) >= 3


def test_what_is_at_fault_elsewhere_only_is_at_fault() -> None:
    """An exception there is told as it came; a rule broken there, but not when it is played again here, as well."""
    raised = check(elsewhere.RaisesAway, machines=[VITRINE], scenes=300, jobs=2, smaller_seconds=0)
    assert raised.outcome is Outcome.CANDIDATE_ERROR
    assert "no display here" in str(raised.fault)
    broken = check(elsewhere.EmptyAway, machines=[VITRINE], scenes=300, jobs=2, smaller_seconds=0)
    assert broken.outcome is Outcome.CANDIDATE_ERROR
    assert "broke progress in another process" in str(broken.fault)


def test_what_is_printed_and_read_there_disturbs_nothing(capfd: pytest.CaptureFixture[str]) -> None:
    """What it prints goes with its errors; it finds nothing to read."""
    assert record(elsewhere.PrintsAndReadsAway, jobs=2) == record(elsewhere.PrintsAndReadsAway)
    out, error = capfd.readouterr()
    assert out == ""
    assert "said" in error


class Presses:
    """A watcher that presses Ctrl-C after so many scenes of a stage."""

    def __init__(self, stage: str, after: int) -> None:
        self._stage, self._after = stage, after
        self._now = ""

    def stage(self, name: str, total: int | None) -> None:
        """A stage begins."""
        self._now = name

    def step(self, done: int) -> None:
        """Press it, from then on."""
        if self._stage in self._now and done >= self._after:
            raise KeyboardInterrupt


def test_an_interruption_keeps_what_was_done(tmp_path: Path, begun: list[object]) -> None:
    """It ends all processes; what they had done by then is in the journal, and is not played again."""
    journal = tmp_path / "journal"
    with pytest.raises(KeyboardInterrupt):
        record(Delta, scenes=800, jobs=2, journal=journal, watcher=Presses("independently", 200))
    kept = journal.read_bytes().count(b"\n") - 1
    assert kept >= 5, "the laws, two searched, two drawn"
    assert record(Delta, scenes=800, journal=journal) == record(Delta, scenes=800)
