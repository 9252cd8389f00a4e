"""The other end of `planeproof.search.apart`: a process that plays the units it is told to, and tells of each scene."""

import os
import pickle
import threading
from collections.abc import Callable
from enum import Enum
from queue import Empty, SimpleQueue
from typing import IO, Any

from planeproof.contract import Scene
from planeproof.scenes.cases import Case, encode_case
from planeproof.search.order import Order
from planeproof.search.posting import posted
from planeproof.search.units import Unit, left_of, run, until

IDLE_SECONDS = 60.0
"""Without a unit for so long, the process ends: whoever began it may have lost interest and not been able to say so."""

Say = Callable[["Sign", bytes], None]


class Sign(Enum):
    """What is said; with it goes the scene as a case, the posted tally, or what went wrong."""

    BEGUN = "begun"
    DONE = "done"
    FAILED = "failed"


def serve() -> None:
    """Read an order from standard input, then units of it; what comes of each goes to standard output."""
    asked, said = _taken(0, os.O_RDONLY), _taken(1, os.O_WRONLY)

    def say(sign: Sign, data: bytes) -> None:
        try:
            pickle.dump((sign, data), said)
            said.flush()
        except BrokenPipeError:  # nobody listens any more, and nobody wants to read why
            os._exit(0)

    heard: SimpleQueue[Any] = SimpleQueue()
    threading.Thread(target=_listen, args=(asked, heard), daemon=True).start()
    try:
        order = pickle.loads(heard.get())
        while True:
            unit, seconds = heard.get(timeout=IDLE_SECONDS)
            say(Sign.DONE, work(order, unit, seconds, say))
    except Empty:
        return
    except Exception as error:
        say(Sign.FAILED, f"{type(error).__name__}: {error}".encode())


def work(order: Order, unit: Unit, seconds: float, say: Say) -> bytes:
    """Play ``unit`` for ``seconds`` at most; what came of it, posted."""

    def told(scene: Scene) -> None:
        say(Sign.BEGUN, encode_case(Case(scene=scene)))

    trial = order.trial(time_left=left_of(seconds), told=told)
    run(order, unit, trial, go_on=until(seconds))
    return posted(trial)


def _taken(number: int, mode: int) -> IO[bytes]:
    """Standard input or output for ourselves: what a candidate reads is empty, what it prints goes with its errors."""
    ours = os.fdopen(os.dup(number), "rb" if mode == os.O_RDONLY else "wb")
    if mode == os.O_RDONLY:
        os.dup2(os.open(os.devnull, mode), number)
    else:
        os.dup2(2, number)
    return ours


def _listen(asked: IO[bytes], heard: "SimpleQueue[Any]") -> None:
    """Hand on what is asked. When whoever asks is gone, nothing that is being played matters any more."""
    try:
        while True:
            heard.put(pickle.load(asked))
    finally:
        os._exit(0)
