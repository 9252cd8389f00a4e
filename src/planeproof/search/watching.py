"""Progress, for whoever wants to watch a check."""

from typing import Protocol

from planeproof.search.tally import Tally


class Watcher(Protocol):
    """Told how a check is getting on. ``total`` is None where it is not known in advance."""

    def stage(self, name: str, total: int | None) -> None:
        """A new stage begins."""

    def step(self, done: int) -> None:
        """``done`` scenes of this stage are done."""


class NoWatcher:
    """Nobody watches."""

    def stage(self, name: str, total: int | None) -> None:
        """Say nothing."""

    def step(self, done: int) -> None:
        """Say nothing."""


class Steps:
    """Counts the scenes of one stage for a watcher, wherever they are played."""

    def __init__(self, watcher: Watcher) -> None:
        self._watcher = watcher
        self._done = 0

    def one(self) -> None:
        """A scene is about to be played in this process."""
        self._done += 1
        self._watcher.step(self._done)

    def waiting(self) -> None:
        """Others are at work."""
        self._watcher.step(self._done)

    def arrived(self, tally: Tally) -> Tally:
        """Scenes that were played elsewhere, or at another time, are done."""
        self._done += tally.played
        self._watcher.step(self._done)
        return tally
