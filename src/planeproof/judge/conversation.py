"""Talking to a candidate: every call is guarded, every answer is checked.

A candidate that breaks a law of the contract is at fault itself, whatever the rules say: `CandidateFault`.
"""

import copy
import signal
import threading
import traceback
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import AbstractContextManager, contextmanager
from dataclasses import dataclass
from itertools import islice
from operator import index
from types import FrameType, TracebackType
from typing import Any, TypeVar

from planeproof.contract import Answer, Burst, Machine, Picture, Scheduler
from planeproof.contract.burst import FARTHEST
from planeproof.contract.errors import in_words
from planeproof.judge.duplicating import Duplicable, NotDuplicable
from planeproof.judge.lending import Loan, own_machine, own_picture

T = TypeVar("T")

MakeScheduler = Callable[[], Scheduler]
"""A candidate: anything that makes a scheduler when called without arguments."""

CALL_SECONDS = 10.0
"""How long one call of a candidate may take before it counts as hung."""

REFRESHES_OF_BYTES = 16
"""A blanking that returns more bytes than fill this many whole refreshes never ends."""


THE_PROCESS = "the process"
"""Instead of a method, where the process ended, or had to be ended, in one of them and it is not known in which."""


class CandidateFault(Exception):
    """The candidate broke a law of the contract: in ``method``, in refresh ``refresh`` (-1: set-up)."""

    def __init__(self, method: str, refresh: int, said: str, advice: str, trace: str = "") -> None:
        super().__init__(f"{method} in refresh {refresh}: {said}" if refresh >= 0 else f"{method}: {said}")
        self.method = method
        self.refresh = refresh
        self.said = said
        self.advice = advice
        self.trace = trace

    @property
    def in_scene(self) -> bool:
        """Whether it had come to know anything of the scene by then."""
        return self.refresh >= 0 or self.method in {"start", THE_PROCESS}


class CandidateHung(CandidateFault):
    """A call of the candidate did not return, or its bursts never ended."""


class _OutOfTime(BaseException):
    """Raised inside a candidate's call; no `except Exception` of its own catches it."""


_AGAIN_SECONDS = 1.0
"""After which it rings again: where an exception can't be raised, in a finaliser for instance, the first is lost."""

_DEAF = ("weakref", "_weakrefset")
"""Modules whose callbacks the interpreter calls wherever it likes; what is raised there is lost, with a warning."""


def _ring(_signal: int, frame: FrameType | None) -> None:
    if frame is None or frame.f_globals.get("__name__") not in _DEAF:
        raise _OutOfTime


class _TimeLimit:
    """Interrupts calls: `_OutOfTime` in the one that is running when its ``seconds`` are over.

    Only the main thread of a Unix process can be interrupted; elsewhere calls run without this limit.
    """

    def __init__(self, seconds: float) -> None:
        self._seconds = seconds
        self._rings = threading.current_thread() is threading.main_thread() and hasattr(signal, "setitimer")

    @contextmanager
    def ready(self) -> Iterator[None]:
        """Calls can be limited inside; done once a play, for it costs more than most calls."""
        if not self._rings:
            yield
            return
        before = signal.signal(signal.SIGALRM, _ring)
        try:
            yield
        finally:
            signal.setitimer(signal.ITIMER_REAL, 0)
            signal.signal(signal.SIGALRM, before)

    def __enter__(self) -> None:
        if self._rings:
            signal.setitimer(signal.ITIMER_REAL, self._seconds, _AGAIN_SECONDS)

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self._rings:
            signal.setitimer(signal.ITIMER_REAL, 0)


def _all_plain(bursts: Sequence[object]) -> bool:
    """Whether all are bursts of this package with what `Burst` lets in, also now: frozen fields can be forced."""
    if not set(map(type, bursts)) <= {Burst}:
        return False
    data = [burst.data for burst in bursts]  # type: ignore[attr-defined]  # all of them are bursts, by the line above
    numbers = [number for burst in bursts for number in (burst.address, burst.step)]  # type: ignore[attr-defined]
    if not (set(map(type, data)) <= {bytes} and set(map(type, numbers)) <= {int} and all(data)):
        return False
    return not numbers or (min(numbers) >= -FARTHEST and max(numbers) <= FARTHEST)


@dataclass(kw_only=True)
class Conversation:
    """One candidate in one scene, to be held inside `open`. ``refresh`` is kept by the player, for messages."""

    machine: Machine
    make: MakeScheduler
    call_seconds: float = CALL_SECONDS
    refresh: int = -1

    def __post_init__(self) -> None:
        self._limit = _TimeLimit(self.call_seconds)
        self._loans: dict[str, Loan] = {}
        time = self.machine.time
        self._most = int(REFRESHES_OF_BYTES * time.lines * time.cycles_per_line / time.per_byte) + 1
        self._steps = set(self.machine.layout.steps)

    def open(self) -> AbstractContextManager[None]:
        """Calls may be made inside."""
        return self._limit.ready()

    def start(self) -> tuple[Burst, ...]:
        """Make the scheduler and let it set up. Raises `CandidateFault`."""
        self._scheduler: Any = self._call("the candidate itself", self._made)
        machine, self._loans["machine"] = own_machine(self.machine)
        most = REFRESHES_OF_BYTES * max(region.end for region in self.machine.regions)
        return self._bursts("start", most, lambda: self._scheduler.start(machine))

    def offer(self, picture: Picture) -> Answer:
        """Offer a picture. Raises `CandidateFault`."""
        own, self._loans["picture"] = own_picture(picture)
        return self._call("offer", lambda: self._answer(self._scheduler.offer(own)))

    def blank(self, cycles: int) -> tuple[Burst, ...]:
        """Let it use one blanking. Raises `CandidateFault`."""
        return self._bursts("blank", self._most, lambda: self._scheduler.blank(cycles))

    def halted(self) -> "Halted":
        """The conversation as it is now, to be taken up from here any number of times. Raises `NotDuplicable`."""
        marked = next((name for name, loan in self._loans.items() if loan.marked), None)
        if marked is not None:
            raise NotDuplicable(f"it keeps something on the {marked} that it was given")
        lent = {id(value): value for loan in self._loans.values() for value in loan.held}
        lent[id(self.machine.tile_bits)] = (
            self.machine.tile_bits
        )  # one for all machines alike, and as large as the rest
        return Halted(self, Duplicable.of(self._scheduler, lent))

    # --- what it returns ----------------------------------------------------------------------------------

    def _made(self) -> object:
        scheduler = self.make()
        for method in ("start", "offer", "blank"):
            if not callable(getattr(scheduler, method, None)):
                advice = f"Planeproof calls it without arguments; what that returns needs a method {method!r}."
                raise CandidateFault(method, -1, f"{type(scheduler).__name__} has no method {method}", advice)
        return scheduler

    def _answer(self, returned: object) -> Answer:
        if not isinstance(returned, Answer):
            advice = "Return Answer.TAKEN, Answer.BUSY or Answer.TOO_BIG."
            raise CandidateFault("offer", self.refresh, f"returned {returned!r} ({type(returned).__name__})", advice)
        return returned

    def _bursts(self, method: str, most: int, call: Callable[[], object]) -> tuple[Burst, ...]:
        bursts = self._call(method, lambda: self._collected(method, most, call()))
        if sum([len(burst.data) for burst in bursts]) > most:
            raise self._endless(method, most)
        if not {burst.step for burst in bursts} <= self._steps:
            raise self._unlike_any_step(method, bursts)
        return bursts

    def _collected(self, method: str, most: int, returned: object) -> tuple[Burst, ...]:
        if not isinstance(returned, Iterable):
            advice = "Return a list of Burst, an empty one when there is nothing to write."
            raise CandidateFault(method, self.refresh, f"returned {returned!r} ({type(returned).__name__})", advice)
        bursts = tuple(islice(returned, most + 1))
        if len(bursts) > most:
            raise self._endless(method, most)
        if _all_plain(bursts):
            return bursts
        return tuple(self._plain(method, number, burst) for number, burst in enumerate(bursts))

    def _plain(self, method: str, number: int, burst: object) -> Burst:
        """The burst made anew, of plain numbers and bytes, where it is not just that; refused as any such burst is."""
        if not isinstance(burst, Burst):
            said = f"item {number} of what it returned is {burst!r} ({type(burst).__name__})"
            raise CandidateFault(method, self.refresh, said, "Return an iterable of planeproof.Burst.")
        return Burst(index(burst.address), bytes(memoryview(burst.data)), index(burst.step))

    def _unlike_any_step(self, method: str, bursts: Sequence[Burst]) -> CandidateFault:
        number = next(number for number, burst in enumerate(bursts) if burst.step not in self._steps)
        steps = " or ".join(str(step) for step in self.machine.layout.steps)
        said = f"burst {number} has step {bursts[number].step}"
        return CandidateFault(method, self.refresh, said, f"This machine permits step {steps}.")

    def _endless(self, method: str, most: int) -> CandidateHung:
        advice = "It must come to an end, and stop when the cycles are used up."
        return CandidateHung(method, self.refresh, f"returned more than {most} bytes and did not end", advice)

    # --- the guard ----------------------------------------------------------------------------------------

    def _call(self, method: str, call: Callable[[], T]) -> T:
        """``call``, in which all of the candidate's own code runs: whatever it does there comes out as its fault."""
        try:
            with self._limit:
                returned = self._blaming(method, call)
        except _OutOfTime:
            advice = "A call may not wait, sleep or loop for ever."
            raise CandidateHung(method, self.refresh, f"did not return in {self.call_seconds:g} s", advice) from None
        self._check_loans(method)
        return returned

    def _blaming(self, method: str, call: Callable[[], T]) -> T:
        try:
            return call()
        except (CandidateFault, _OutOfTime, KeyboardInterrupt):
            raise
        except BaseException as error:
            trace = "".join(traceback.format_exception(error))
            advice = "The last line of the traceback that is in your own file is where to look."
            raise CandidateFault(method, self.refresh, f"raised {in_words(error)}", advice, trace) from error

    def _check_loans(self, method: str) -> None:
        for name, loan in self._loans.items():
            if loan.changed:
                advice = "Change nothing that you are given: keep what you work out in the scheduler."
                raise CandidateFault(method, self.refresh, f"changed the {name} it was given", advice)


@dataclass(frozen=True, eq=False)
class Halted:
    """A conversation at one moment; what was lent by then stays lent to every scheduler that goes on from here."""

    _conversation: Conversation
    _scheduler: Duplicable

    def again(self) -> Conversation:
        """One that goes on from that moment, with a scheduler of its own. Raises `NotDuplicable`."""
        twin = copy.copy(self._conversation)
        twin._scheduler, twin._loans = self._scheduler.again(), dict(twin._loans)
        return twin
