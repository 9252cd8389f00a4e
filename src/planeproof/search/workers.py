"""Who does the work: this process, or others here or elsewhere. Whoever it is, what is found is the same."""

import logging
from abc import ABC, abstractmethod
from collections import deque
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Protocol, TypeVar

from planeproof.search.apart import Aparts, EndedError, FailedError, packed, silence_of
from planeproof.search.order import Order
from planeproof.search.posting import received
from planeproof.search.tally import Tally
from planeproof.search.trial import Trial
from planeproof.search.units import Unit, left_of, run, until
from planeproof.search.watching import Steps

UNDER_WAY = 2
"""Units that are handed out for each process at a time: one that it works on, and one that is ready for it."""

LOOK_SECONDS = 0.1
"""How often whoever waits for another process looks whether Ctrl-C was pressed."""

_LOG = logging.getLogger(__name__)

Pending = Callable[[], Tally]
"""Work that was handed out: call it to wait for what came of it."""


class Workers(Protocol):
    """Do units of one order. ``ahead``: units that are handed out before the first of them is asked for."""

    ahead: int

    def begin(self, unit: Unit, *, seconds: float | None, steps: Steps) -> Pending:
        """Hand out ``unit``, which gets ``seconds`` at most; ``steps`` are told how it gets on."""

    def stop(self) -> None:
        """Nothing that is under way matters any more."""


T = TypeVar("T")


def in_order(steps: Iterable[T], begin: Callable[[T], Pending], ahead: int) -> Iterator[tuple[T, Pending]]:
    """Each of ``steps`` and what will come of it, in their order, with up to ``ahead`` of them begun."""
    under_way: deque[tuple[T, Pending]] = deque()
    for step in steps:
        under_way.append((step, begin(step)))
        if len(under_way) >= ahead:
            yield under_way.popleft()
    yield from under_way


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

            trial = self.trial()
            run(self._order, unit, trial, go_on=go_on)
            return trial

        return played

    def stop(self) -> None:
        """Nothing is under way."""

    def trial(self) -> Trial:
        """A trial in which nothing has been played yet."""
        return self._order.trial(cases=self._cases, time_left=self._time_left)


class Handed(Protocol):
    """A unit that was handed out: a future of threads, or of a cluster."""

    def done(self) -> bool:
        """Whether something came of it."""

    def exception(self, timeout: float | None = None) -> BaseException | None:
        """Wait for that; raises TimeoutError after so many seconds."""

    def result(self) -> bytes:
        """What came of it, `posted`."""


class Elsewhere(ABC):
    """Others, to whom units are handed out. What comes of none of them is played ``here``."""

    ahead: int

    def __init__(self, order: Order, here: Here) -> None:
        self._order = order
        self._here = here
        self._interrupted = False

    def begin(self, unit: Unit, *, seconds: float | None, steps: Steps) -> Pending:
        """Hand it to whoever is free."""
        handed = self._hand_out(unit, seconds)
        return lambda: self._come_of(handed, unit, seconds, steps)

    @abstractmethod
    def stop(self) -> None:
        """Nothing that is under way matters any more."""

    @abstractmethod
    def _hand_out(self, unit: Unit, seconds: float | None) -> Handed:
        """Have it played somewhere."""

    def _result(self, handed: Handed) -> bytes:
        """What came of it. Raises `EndedError`, `FailedError`."""
        return handed.result()

    def _is_hopeless(self) -> bool:
        """Whether there is nobody left to wait for."""
        return False

    def _come_of(self, handed: Handed, unit: Unit, seconds: float | None, steps: Steps) -> Tally:
        self._wait(handed, steps)
        if self._interrupted and not handed.done():
            return Tally(interrupted=True)
        try:
            tally = received(self._result(handed), self._here.trial())
        except (EndedError, FailedError) as error:
            if self._interrupted:
                return Tally(interrupted=True)
            # What ended that process may end this one too: then it is known what was being played.
            _LOG.warning("planeproof: %s; it is played again in this process", error)
            return self._here.begin(unit, seconds=seconds, steps=steps)()
        with self._noting_interruption():
            steps.arrived(tally)
        return tally

    def _wait(self, handed: Handed, steps: Steps) -> None:
        with self._noting_interruption():
            while not (handed.done() or self._interrupted or self._is_hopeless()):
                steps.waiting()
                with suppress(TimeoutError):
                    handed.exception(timeout=LOOK_SECONDS)

    @contextmanager
    def _noting_interruption(self) -> Iterator[None]:
        """Ctrl-C is noted, so that what others have done by then is not lost."""
        try:
            yield
        except KeyboardInterrupt:
            self._interrupted = True


class Processes(Elsewhere):
    """``jobs`` processes of this computer."""

    def __init__(self, order: Order, jobs: int, here: Here) -> None:
        super().__init__(order, here)
        self._aparts = Aparts(packed(order), silence_of(order), ready=jobs)
        self._threads = ThreadPoolExecutor(max_workers=jobs)
        self.ahead = UNDER_WAY * jobs

    def stop(self) -> None:
        """End the processes at once."""
        self._threads.shutdown(wait=False, cancel_futures=True)
        self._aparts.stop()
        self._threads.shutdown()

    def _hand_out(self, unit: Unit, seconds: float | None) -> Handed:
        return self._threads.submit(self._aparts.play, unit, left_of(seconds))
