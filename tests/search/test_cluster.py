"""The same check on a real Dask scheduler with worker processes: nothing is lost, nothing is counted twice."""

import logging
import os
import signal
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import distributed
import pytest

from planeproof.candidates.reference import Delta
from planeproof.judge import CandidateHung, Outcome
from planeproof.machines import read_machine
from planeproof.record import write_record
from planeproof.search import check, cluster
from planeproof.search.apart import FailedError
from planeproof.search.cluster import ClusterError
from planeproof.search.units import Stage, Unit
from tests.search import elsewhere

VITRINE = read_machine("vitrine-50")


@pytest.fixture(scope="module")
def address() -> Iterator[str]:
    """Of a scheduler with two workers, each a process of its own that is begun again when it dies."""
    logging.getLogger("distributed").setLevel(logging.CRITICAL)
    with distributed.LocalCluster(  # type: ignore[no-untyped-call]
        n_workers=2, threads_per_worker=1, processes=True, dashboard_address=":0", env={elsewhere.HOME: "0"}
    ) as made:
        yield str(made.scheduler_address)


@pytest.fixture(autouse=True)
def _home(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(elsewhere.HOME, str(os.getpid()))


def record(target: object, **asked: Any) -> bytes:  # noqa: ANN401 -- any argument of `check`
    """The record of a check, in which nothing depends on how long anything took."""
    asked = {"machines": [VITRINE], "scenes": 100, "smaller_seconds": 0} | asked
    return write_record(check(target, **asked))  # type: ignore[arg-type]


class KillsWorker:
    """A watcher that kills a worker while both are at work."""

    def __init__(self, address: str) -> None:
        with distributed.Client(address, set_as_default=False) as client:  # type: ignore[no-untyped-call]
            self._workers = client.run(os.getpid)
        self.killed = 0
        self._now = ""

    def stage(self, name: str, total: int | None) -> None:
        """A stage begins."""
        self._now = name

    def step(self, done: int) -> None:
        """Kill one, once."""
        if "independently" in self._now and not self.killed:
            self.killed = next(iter(self._workers.values()))
            os.kill(self.killed, signal.SIGKILL)


def test_one_worker_is_killed_in_mid_run_and_nothing_is_lost(address: str) -> None:
    """The record is that of one process, to the byte; the worker was one of two that were at work."""
    kills = KillsWorker(address)
    assert record(Delta, scenes=400, cluster=address, watcher=kills) == record(Delta, scenes=400)
    assert kills.killed


def test_what_ends_or_hangs_on_a_worker_is_no_end_of_the_campaign(
    address: str, caplog: pytest.LogCaptureFixture
) -> None:
    """A unit in which the process ends is played here. A call that does not return there is told as it is here."""
    assert record(elsewhere.EndsAway, scenes=8, cluster=address) == record(elsewhere.EndsAway, scenes=8)
    assert "has ended; it is played again in this process" in caplog.text
    verdict = check(
        elsewhere.HangsAway, machines=[VITRINE], scenes=8, cluster=address, call_seconds=0.2, smaller_seconds=0
    )
    assert verdict.outcome is Outcome.HUNG
    assert isinstance(verdict.fault, CandidateHung)


def test_a_candidate_that_workers_can_t_import_is_refused(address: str, tmp_path: Path) -> None:
    """With what they said, and what to do; not played here in silence."""
    mine = tmp_path / "mine.py"
    mine.write_text(
        f"import os\nassert os.environ[{elsewhere.HOME!r}] != '0', 'not on this computer'\n"
        "from planeproof.candidates.reference import Delta\nclass Mine(Delta):\n    pass\n",
        "utf-8",
    )
    with pytest.raises(ClusterError, match=r"can't do this check \(TargetError: .*not on this computer.*import it"):
        record(f"{mine}:Mine", cluster=address)


def test_other_versions_are_refused(address: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """A seed would mean other scenes there. A worker that has joined since says so itself."""
    with pytest.raises(FailedError, match=r"the versions are .* there and {} here"):
        cluster.play_unit(b"", Unit(stage=Stage.FULL, number=0, scenes=1), None, 1.0, {})
    monkeypatch.setattr("planeproof.search.versions.version", lambda package: "0")
    with pytest.raises(ClusterError, match=r"worker tcp://.* has .* and here is .*install the same"):
        record(Delta, cluster=address)


def test_when_no_worker_is_left_the_rest_is_played_here(
    monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    """All workers go in mid-run and none comes back: the record is the same."""
    monkeypatch.setattr(cluster, "ALONE_SECONDS", 0.5)
    monkeypatch.setattr(cluster, "LOOK_SECONDS", 0.1)
    with distributed.LocalCluster(  # type: ignore[no-untyped-call]
        n_workers=1, threads_per_worker=2, processes=False, dashboard_address=":0"
    ) as made:

        class Closes(KillsWorker):
            """Closes the only worker."""

            def step(self, done: int) -> None:
                """Close it."""
                if "independently" in self._now and not self.killed:
                    self.killed = 1
                    made.scale(0)

        closes = Closes(made.scheduler_address)
        assert record(Delta, cluster=made.scheduler_address, watcher=closes) == record(Delta)
    assert "no worker is left; it is played again in this process" in caplog.text


def test_nobody_there_is_said_soon(monkeypatch: pytest.MonkeyPatch) -> None:
    """No scheduler, no address, a scheduler without workers, the package missing: what is wrong and what to do."""
    monkeypatch.setattr(cluster, "ANSWER_SECONDS", 0.5)
    with pytest.raises(ClusterError, match=r"cluster tcp://127.0.0.1:9: no scheduler answers there .*dask scheduler"):
        record(Delta, cluster="tcp://127.0.0.1:9")
    with pytest.raises(ClusterError, match="cluster nowhere: no scheduler answers there"):
        record(Delta, cluster="nowhere")
    with (
        distributed.LocalCluster(n_workers=0, processes=False, dashboard_address=":0") as made,  # type: ignore[no-untyped-call]
        pytest.raises(ClusterError, match="it has no worker; start one with: dask worker"),
    ):
        record(Delta, cluster=made.scheduler_address)
    monkeypatch.setitem(sys.modules, "distributed", None)
    with pytest.raises(ClusterError, match=r"pip install 'planeproof\[cluster\]'"):
        record(Delta, cluster="tcp://127.0.0.1:9")


def test_here_and_there_at_once_is_refused() -> None:
    """One of both must be left out."""
    with pytest.raises(ValueError, match="jobs is 2 and cluster 'there'"):
        record(Delta, jobs=2, cluster="there")
