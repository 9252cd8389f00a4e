"""Processes apart that play units of work, one after the other: whatever a candidate does, it does it there.

A unit is played in the main thread of such a process, where a call that does not return can be interrupted. It tells
of each scene before it is played. So one that ends the process, or hangs where nothing can interrupt it, costs one
unit, and who waits is never left waiting.

No pool of a library does: those lose the work of all processes when one of them ends, can't say which work ended it,
and can't be begun by a worker of a cluster, which may have no children of their kind.
"""

import math
import pickle
import subprocess
import sys
import threading
import time
from collections.abc import Callable
from contextlib import suppress
from typing import IO

import cloudpickle

from planeproof.hosts import TargetError
from planeproof.judge import CandidateHung
from planeproof.judge.conversation import THE_PROCESS
from planeproof.scenes.cases import decode_case
from planeproof.search.order import Order
from planeproof.search.posting import posted
from planeproof.search.serving import Sign
from planeproof.search.tally import Tally
from planeproof.search.units import Unit

SILENT_CALLS, SILENT_SECONDS = 10, 60.0
"""A process that begins no other scene for as long as so many calls may take, and so long, counts as hung."""

LOOK_SECONDS = 0.5
"""How often that is looked at."""

_BEGIN = "import sys; sys.path[:] = sys.argv[1:]; from planeproof.search.serving import serve; serve()"


class EndedError(Exception):
    """The process ended before its unit was done."""


class FailedError(Exception):
    """The process could not do its unit, for no fault of the candidate's. The message is of the error there."""


def packed(order: Order) -> bytes:
    """``order`` as other processes can read it. Raises `TargetError` where the candidate can't be sent."""
    try:
        return bytes(cloudpickle.dumps(order))
    except Exception as error:
        raise TargetError(
            f"target {order.candidate.name!r} can't be sent to another process ({type(error).__name__}: {error}); "
            "name it in text, as in package.module:Name or file.py:Name, or use one process"
        ) from error


def silence_of(order: Order) -> float:
    """Seconds without another scene after which a process that plays ``order`` counts as hung."""
    return SILENT_CALLS * order.call_seconds + SILENT_SECONDS


class Apart:
    """One process apart, for units of ``order``, which is `packed`; after ``silence`` seconds it counts as hung."""

    def __init__(self, order: bytes, silence: float) -> None:
        self._silence = silence
        self._silent = False
        self._since = math.inf
        self._child = subprocess.Popen(
            [sys.executable, "-c", _BEGIN, *sys.path],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            start_new_session=True,  # Ctrl-C of a terminal is for whoever waits
        )
        threading.Thread(target=self._watch, daemon=True).start()
        with suppress(OSError):  # it has ended already: the first unit will tell
            self._ask(order)

    @property
    def alive(self) -> bool:
        """Whether it can be given a unit."""
        return self._child.poll() is None

    def play(self, unit: Unit, seconds: float) -> bytes:
        """What came of ``unit`` in ``seconds`` at most, `posted`.

        That the candidate hung where nothing could interrupt it may be a part of that. Raises `EndedError`,
        `FailedError`.
        """
        scene, self._since = None, time.monotonic()
        try:
            self._ask((unit, seconds))
            while True:
                sign, data = pickle.load(_open(self._child.stdout))
                if sign is Sign.DONE:
                    return bytes(data)
                if sign is Sign.FAILED:
                    self.stop()
                    raise FailedError(data.decode())
                scene, self._since = data, time.monotonic()
        except (OSError, EOFError, ValueError, pickle.UnpicklingError) as error:
            self.stop()
            if self._silent and scene is not None:
                return _hung(scene, self._silence)
            raise EndedError(f"the process that played {unit.key} has ended") from error
        finally:
            self._since = math.inf

    def stop(self) -> None:
        """End it at once."""
        self._child.kill()
        self._child.wait()
        for pipe in (self._child.stdin, self._child.stdout):
            with suppress(OSError):  # what was still to be said to it
                _open(pipe).close()

    def _ask(self, asked: object) -> None:
        pipe = _open(self._child.stdin)
        pickle.dump(asked, pipe)
        pipe.flush()

    def _watch(self) -> None:
        while self.alive:
            if time.monotonic() - self._since > self._silence:
                self._silent = True
                self._child.kill()
            time.sleep(LOOK_SECONDS)


class Aparts:
    """As many processes apart as are asked at a time, ``ready`` of them begun at once; see `Apart`."""

    def __init__(self, order: bytes, silence: float, *, ready: int = 0) -> None:
        self._order = order
        self._silence = silence
        self._lock = threading.Lock()
        self._stopped = False
        self._all: set[Apart] = set()
        self._idle = [self._new() for _ in range(ready)]

    def play(self, unit: Unit, left: Callable[[], float]) -> bytes:
        """As `Apart.play`, for as many seconds as are ``left`` when its turn comes."""
        apart = self._taken()
        data = apart.play(unit, left())
        with self._lock:
            self._idle.append(apart)
        return data

    def stop(self) -> None:
        """End them all, for good."""
        with self._lock:
            self._stopped = True
            for apart in self._all:
                apart.stop()

    def _taken(self) -> Apart:
        with self._lock:
            if self._stopped:
                raise EndedError("nothing is played any more")
            self._idle = [apart for apart in self._idle if apart.alive]
            for ended in {apart for apart in self._all if not apart.alive}:
                ended.stop()
                self._all.discard(ended)
            return self._idle.pop(0) if self._idle else self._new()

    def _new(self) -> Apart:
        apart = Apart(self._order, self._silence)
        self._all.add(apart)
        return apart


def _open(pipe: IO[bytes] | None) -> IO[bytes]:
    assert pipe is not None, "both were asked for"
    return pipe


def _hung(scene: bytes, silence: float) -> bytes:
    tally = Tally()
    said = f"did not come to the end of the scene in {silence:g} s, and what it was doing could not be interrupted"
    advice = (
        "Find what does not end: a loop that catches every exception, or a call into a library that waits for ever."
    )
    tally.blame(CandidateHung(THE_PROCESS, -1, said, advice), decode_case(scene, "a scene played apart").scene)
    return posted(tally)
