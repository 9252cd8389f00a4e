"""Examples: what Hypothesis has found in other runs, kept in a folder or on a Redis server, so that machines share it.

They are Hypothesis's own databases. A run tries first what is kept of the same candidate and machine, so what it finds
depends on more than its seed.
"""

from collections.abc import Callable, Iterable
from contextlib import suppress
from pathlib import Path
from urllib.parse import urlsplit

from hypothesis.database import DirectoryBasedExampleDatabase, ExampleDatabase

SCHEMES = ("redis://", "rediss://")
"""What a place begins with that is no folder."""

ANSWER_SECONDS = 5.0
"""A server that takes longer is done without."""

MISSING = "examples on a Redis server need the package redis: pip install 'planeproof[redis]', or name a folder"


class ExamplesError(ValueError):
    """A server for examples that can't be used. The message says why and what to do."""


class Kept(ExampleDatabase):
    """What ``store`` keeps of one candidate and machine, named by ``key``.

    ``ended`` says whether the run was ended: an example that is then not tried is no example that shows nothing. A
    store that fails in mid-run, with one of ``failures``, is done without: it is a help, and nothing rests on it.
    """

    def __init__(
        self, store: ExampleDatabase, key: str, ended: Callable[[], bool], failures: tuple[type[Exception], ...]
    ) -> None:
        super().__init__()
        self._store = store
        self._key = key.encode() + b"\0"
        self._ended = ended
        self._failures = failures

    def fetch(self, key: bytes) -> Iterable[bytes]:
        """All that is kept."""
        with suppress(*self._failures):
            return list(self._store.fetch(self._key + key))
        return []

    def save(self, key: bytes, value: bytes) -> None:
        """Keep it too."""
        with suppress(*self._failures):
            self._store.save(self._key + key, value)

    def delete(self, key: bytes, value: bytes) -> None:
        """It shows nothing any more."""
        with suppress(*self._failures):
            if not self._ended():
                self._store.delete(self._key + key, value)


class Examples:
    """Examples at ``place``: a folder, made if need be, or the address of a Redis server.

    Raises `ExamplesError` for a server that does not answer, `OSError` for a folder that can't be written.
    """

    def __init__(self, place: str) -> None:
        self._store, self._failures = _on_server(place) if place.startswith(SCHEMES) else _in_folder(place)

    def of(self, key: str, *, ended: Callable[[], bool]) -> Kept:
        """Those of the candidate and machine that ``key`` names."""
        return Kept(self._store, key, ended, self._failures)


_Store = tuple[ExampleDatabase, tuple[type[Exception], ...]]


def _in_folder(place: str) -> _Store:
    folder = Path(place)
    folder.mkdir(parents=True, exist_ok=True)
    probe = folder / ".writable"
    probe.touch()
    probe.unlink(missing_ok=True)
    return DirectoryBasedExampleDatabase(folder), (OSError,)


def _on_server(place: str) -> _Store:
    try:
        from hypothesis.extra.redis import RedisExampleDatabase  # noqa: PLC0415 -- where it is asked for
        from redis import Redis, RedisError  # noqa: PLC0415
    except ImportError as error:
        raise ExamplesError(MISSING) from error
    try:
        server = Redis.from_url(place, socket_timeout=ANSWER_SECONDS, socket_connect_timeout=ANSWER_SECONDS)
        server.ping()
    except (RedisError, OSError, ValueError) as error:
        raise ExamplesError(
            f"examples at {_without_password(place)}: {error}; start that server, or name another or a folder"
        ) from error
    return RedisExampleDatabase(server), (RedisError, OSError)


def _without_password(place: str) -> str:
    parts = urlsplit(place)
    return f"{parts.scheme}://{parts.netloc.rpartition('@')[2]}{parts.path}"
