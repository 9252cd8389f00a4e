"""Progress, for whoever wants to watch a check."""

from typing import Protocol


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
