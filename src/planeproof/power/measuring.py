"""Many hunts: every fault by every engine with every seed, here or in several processes, each row kept as it comes."""

from collections.abc import Iterator, Sequence
from contextlib import nullcontext, suppress
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from planeproof.candidates.faults import ZOO, Fault
from planeproof.power.detection import Detection
from planeproof.power.engines import ENGINES, Engine, engine_named
from planeproof.power.hunt import Hunt, Limits, NothingToAsk
from planeproof.power.journal import Journal
from planeproof.search.watching import NoWatcher, Watcher

if TYPE_CHECKING:
    from concurrent.futures import Future

LOOK_SECONDS = 0.2
"""How often whoever waits for other processes looks whether Ctrl-C was pressed."""

IDLE_SECONDS = 60
"""Without a hunt for so long, a process ends: whoever began it may have been killed."""


@dataclass(frozen=True, kw_only=True)
class Task:
    """One hunt to be done. The engine goes by its name, so that a task can be sent to another process."""

    fault: Fault
    engine: str
    seed: int
    limits: Limits

    @property
    def key(self) -> tuple[str, str, int]:
        """As in `Detection`."""
        return (self.fault.id, self.engine, self.seed)

    def done(self) -> Detection:
        """Hunt, and say what came of it."""
        hunted = Hunt(fault=self.fault, engine=self.engine, seed=self.seed, limits=self.limits)
        try:
            engine_named(self.engine).hunt(hunted)
        except NothingToAsk as why:
            return hunted.nothing_to_ask(str(why))
        return hunted.detection()


def measure(
    faults: Sequence[Fault] = ZOO,
    *,
    engines: Sequence[Engine] = ENGINES,
    seeds: Sequence[int] = (0,),
    limits: Limits | None = None,
    jobs: int = 1,
    journal: Path | None = None,
    watcher: Watcher | None = None,
) -> tuple[Detection, ...]:
    """Hunt each fault with each engine and seed, and give one `Detection` each, in that order.

    ``limits`` are those of one hunt. ``jobs``: processes. ``journal``: file of rows; those that it holds are not
    measured again. An engine that makes no use of seeds hunts once, with the first.

    Raises `ValueError` for jobs, `planeproof.power.journal.JournalError` for a journal of another run, `OSError` where
    it can't be written.
    """
    if jobs < 1:
        raise ValueError(f"jobs is {jobs}: at least 1 process must do the work")
    limits, watcher = limits or Limits(), watcher or NoWatcher()
    tasks = [
        Task(fault=fault, engine=engine.name, seed=seed, limits=limits)
        for fault in faults
        for engine in engines
        for seed in (seeds if engine.seeded else seeds[:1])
    ]
    with nullcontext() if journal is None else Journal(journal, limits) as kept:
        rows = {} if kept is None else {row.key: row for row in kept.rows}
        missing = [task for task in tasks if task.key not in rows]
        watcher.stage("hunts for planted faults", len(missing))
        for number, row in enumerate(_done(missing, jobs, watcher), 1):
            rows[row.key] = row
            if kept is not None:
                kept.add(row)
            watcher.step(number)
    return tuple(rows[task.key] for task in tasks)


def _done(tasks: Sequence[Task], jobs: int, watcher: Watcher) -> Iterator[Detection]:
    if min(jobs, len(tasks)) < 2:
        return (task.done() for task in tasks)
    return _elsewhere(tasks, jobs, watcher)


def _elsewhere(tasks: Sequence[Task], jobs: int, watcher: Watcher) -> Iterator[Detection]:
    """In ``jobs`` processes, as they end. However this one ends, they end too; where it is killed, when all is idle."""
    from loky import ProcessPoolExecutor, wait  # noqa: PLC0415 -- only where several processes are asked for

    pool = ProcessPoolExecutor(max_workers=jobs, timeout=IDLE_SECONDS, initializer=_ignore_interrupts)
    try:
        waiting: set[Future[Detection]] = {pool.submit(Task.done, task) for task in tasks}
        while waiting:
            ended, waiting = wait(waiting, timeout=LOOK_SECONDS, return_when="FIRST_COMPLETED")
            watcher.step(len(tasks) - len(waiting) - len(ended))
            yield from (future.result() for future in ended)
    finally:
        with suppress(OSError):
            pool.shutdown(wait=True, kill_workers=True)


def _ignore_interrupts() -> None:
    """Ctrl-C reaches every process of a terminal; the one that waits for the others says what becomes of them."""
    import signal  # noqa: PLC0415

    signal.signal(signal.SIGINT, signal.SIG_IGN)
