"""Who does the work: this process, or several on this computer. Whoever it is, what is found is the same."""

from __future__ import annotations

import time
from collections import deque
from collections.abc import Callable, Iterable, Iterator
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING, Protocol

from planeproof.search.order import Order
from planeproof.search.posting import posted, received
from planeproof.search.tally import Tally
from planeproof.search.units import Unit, run, until
from planeproof.search.watching import Steps

if TYPE_CHECKING:
    from concurrent.futures import Future

UNDER_WAY = 2
"""Units that are handed out for each process at a time: one that it works on, and one that is ready for it."""

LOOK_SECONDS = 0.1
"""How often whoever waits for another process looks whether Ctrl-C was pressed."""

Pending = Callable[[], Tally]
"""Work that was handed out: call it to wait for what came of it."""


class Workers(Protocol):
    """Do units of one order. ``ahead``: units that are handed out before the first of them is asked for."""

    ahead: int

    def begin(self, unit: Unit, *, seconds: float | None, steps: Steps) -> Pending:
        """Hand out ``unit``, which gets ``seconds`` at most; ``steps`` are told how it gets on."""

    def stop(self) -> None:
        """Nothing that is under way matters any more."""


def in_order(units: Iterable[Unit], begin: Callable[[Unit], Pending], ahead: int) -> Iterator[tuple[Unit, Tally]]:
    """What came of each of ``units``, in their order, with up to ``ahead`` of them under way."""
    under_way: deque[tuple[Unit, Pending]] = deque()
    for unit in units:
        under_way.append((unit, begin(unit)))
        if len(under_way) >= ahead:
            first, pending = under_way.popleft()
            yield first, pending()
    while under_way:
        first, pending = under_way.popleft()
        yield first, pending()


class Here:
    """This process, one unit after the other. ``cases``: folder for the scene that is being played."""

    ahead = 1

    def __init__(self, order: Order, *, cases: Path | None, time_left: Callable[[], float]) -> None:
        self._order = order
        self._cases = cases
        self._time_left = time_left

    def begin(self, unit: Unit, *, seconds: float | None, steps: Steps) -> Pending:
        """Play it when it is asked for."""

        def played() -> Tally:
            in_time = until(seconds)

            def go_on() -> bool:
                steps.one()
                return in_time()

            trial = self._order.trial(cases=self._cases, time_left=self._time_left)
            run(self._order, unit, trial, go_on=go_on)
            return trial

        return played

    def stop(self) -> None:
        """Nothing is under way."""


class Processes:
    """``jobs`` processes of this computer. A unit whose process died is played again by ``here``."""

    def __init__(self, order: Order, jobs: int, here: Here) -> None:
        from loky import ProcessPoolExecutor  # noqa: PLC0415 -- only where several processes are asked for

        self._order = order
        self._here = here
        self._jobs = jobs
        self._make = ProcessPoolExecutor
        self._pool = self._make(max_workers=jobs, initializer=_ignore_interrupts)
        self.ahead = UNDER_WAY * jobs

    def begin(self, unit: Unit, *, seconds: float | None, steps: Steps) -> Pending:
        """Hand it to whichever process is free."""
        from loky.process_executor import BrokenProcessPool  # noqa: PLC0415

        try:
            future = self._pool.submit(work, self._order, unit, seconds)
        except BrokenProcessPool:
            self._pool.shutdown(wait=False, kill_workers=True)
            self._pool = self._make(max_workers=self._jobs, initializer=_ignore_interrupts)
            future = self._pool.submit(work, self._order, unit, seconds)

        def waited_for() -> Tally:
            try:
                return steps.arrived(received(_result(future, steps), self._order.trial()))
            except BrokenProcessPool:
                # What ended that process may end this one too: then it is known what was being played.
                return self._here.begin(unit, seconds=seconds, steps=steps)()
            except KeyboardInterrupt:
                return Tally(interrupted=True)

        return waited_for

    def stop(self) -> None:
        """End the processes at once."""
        with suppress(OSError):
            self._pool.shutdown(wait=True, kill_workers=True)


def work(order: Order, unit: Unit, seconds: float | None) -> bytes:
    """Play ``unit`` in this process, and post what came of it."""
    in_time = until(seconds)
    end = None if seconds is None else time.monotonic() + seconds
    trial = order.trial() if end is None else order.trial(time_left=lambda: max(end - time.monotonic(), 0.0))
    run(order, unit, trial, go_on=in_time)
    return posted(trial)


def _result(future: Future[bytes], steps: Steps) -> bytes:
    while True:
        steps.waiting()
        with suppress(TimeoutError):
            return future.result(timeout=LOOK_SECONDS)


def _ignore_interrupts() -> None:
    """Ctrl-C reaches every process of a terminal; the one that waits for the others says what becomes of them."""
    import signal  # noqa: PLC0415

    signal.signal(signal.SIGINT, signal.SIG_IGN)
