"""The workers of a Dask cluster, which share the work of a check. Needs the extra ``cluster``.

A worker runs its tasks in threads, where a call that does not return can't be interrupted; so it has them played in
processes apart of its own. A task whose worker dies is begun again on another by the scheduler, under the same name, so
that it is never there twice. What comes of none of them is played here, and so is everything once no worker is left.
"""

import asyncio
import hashlib
import threading
import time
import uuid
from contextlib import suppress
from typing import Any

from planeproof.search.apart import Aparts, EndedError, FailedError, packed, silence_of
from planeproof.search.order import Order
from planeproof.search.units import Unit, left_of
from planeproof.search.versions import versions
from planeproof.search.workers import UNDER_WAY, Elsewhere, Handed, Here

ANSWER_SECONDS = 5.0
"""A scheduler that does not answer for so long, or has no worker for so long at the beginning, is of no use."""

ALONE_SECONDS = 30.0
"""Once there has been no worker for so long, this process does the work."""

LOOK_SECONDS = 1.0
"""How often the scheduler is asked for its workers."""

MISSING = "a cluster needs the package distributed: pip install 'planeproof[cluster]', or use --jobs on this computer"


class ClusterError(ValueError):
    """A cluster that can't be used. The message says its address, why, and what to do."""


class Cluster(Elsewhere):
    """The workers of the Dask scheduler at ``address``. Raises `ClusterError`."""

    def __init__(self, order: Order, address: str, here: Here) -> None:
        super().__init__(order, here)
        self._address = address
        self._packed = packed(order)
        self._run = uuid.uuid4().hex[:8]
        self._client = _client(address)
        self._handed: set[Handed] = set()
        self._worked = False
        self._seen = self._looked = time.monotonic()
        self.ahead = UNDER_WAY * self._threads()

    def stop(self) -> None:
        """Take back what is not done yet; what a worker has begun ends by itself."""
        with suppress(Exception):  # a cluster that is gone can't be told
            if self._client.status == "running":
                self._client.cancel(list(self._handed), force=True)
            self._client.close(timeout=ANSWER_SECONDS)

    def _hand_out(self, unit: Unit, seconds: float | None) -> Handed:
        future: Handed = self._client.submit(
            play_unit,
            self._packed,
            unit,
            seconds,
            silence_of(self._order),
            versions(),
            key=f"planeproof {self._run}: {unit.key}",
            pure=False,
        )
        self._handed.add(future)
        return future

    def _result(self, handed: Handed) -> bytes:
        self._handed.discard(handed)
        if not handed.done():
            raise EndedError(f"cluster {self._address}: no worker is left")
        try:
            data = handed.result()
        except EndedError:
            raise
        except FailedError as error:
            if self._worked:  # that one worker can't do it, which has joined since
                raise
            raise ClusterError(
                f"cluster {self._address}: its workers can't do this check ({error}); they need the same versions as "
                "here, and the candidate where they can import it: its file under the same path"
            ) from error
        except (Exception, asyncio.CancelledError) as error:
            raise EndedError(f"cluster {self._address}: gave a part of the work up ({error})") from error
        self._worked = True
        return data

    def _is_hopeless(self) -> bool:
        now = time.monotonic()
        if now - self._looked > LOOK_SECONDS:
            self._looked = now
            if self._threads():
                self._seen = time.monotonic()
        return self._looked - self._seen > ALONE_SECONDS

    def _threads(self) -> int:
        """Of all workers together; none where the scheduler does not answer."""
        with suppress(OSError, RuntimeError):
            if self._client.status == "running":
                return int(sum(self._client.nthreads().values()))
        return 0


def play_unit(order: bytes, unit: Unit, seconds: float | None, silence: float, wanted: dict[str, str]) -> bytes:
    """Play ``unit`` of ``order``, on a worker; what came of it, posted. ``wanted``: the versions it is to be played by.

    Raises `EndedError`, `FailedError`.
    """
    if versions() != wanted:
        raise FailedError(f"the versions are {versions()} there and {wanted} here")
    return _aparts(order, silence).play(unit, left_of(seconds))


_APARTS: dict[str, Aparts] = {}
_LOCK = threading.Lock()


def _aparts(order: bytes, silence: float) -> Aparts:
    """The processes of this worker for ``order``; they end when nothing has been asked of them for a while."""
    name = hashlib.sha256(order).hexdigest()
    with _LOCK:
        if name not in _APARTS:
            _APARTS[name] = Aparts(order, silence)
        return _APARTS[name]


def _client(address: str) -> Any:  # noqa: ANN401 -- few of its methods are typed
    try:
        import distributed  # noqa: PLC0415 -- needs the extra
    except ImportError as error:
        raise ClusterError(MISSING) from error
    try:
        connect: Any = distributed.Client  # published with few types
        client = connect(address, timeout=ANSWER_SECONDS, set_as_default=False)
    except (OSError, ValueError) as error:
        raise ClusterError(
            f"cluster {address}: no scheduler answers there ({error}); start one with: dask scheduler"
        ) from error
    try:
        client.wait_for_workers(1, timeout=ANSWER_SECONDS)
        unlike = {worker: there for worker, there in client.run(versions).items() if there != versions()}
    except TimeoutError as error:
        client.close()
        raise ClusterError(f"cluster {address}: it has no worker; start one with: dask worker {address}") from error
    except Exception as error:
        client.close()
        raise ClusterError(
            f"cluster {address}: a worker could not say its versions ({error}); is planeproof installed there?"
        ) from error
    if unlike:
        client.close()
        worker, there = next(iter(unlike.items()))
        raise ClusterError(
            f"cluster {address}: worker {worker} has {there}, and here is {versions()}; a seed would mean other scenes "
            "there, so install the same"
        )
    return client
