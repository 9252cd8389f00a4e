"""Schedulers that do something in processes other than the one of the tests, where they are right."""

import os
import signal
import time
from collections.abc import Iterable

from planeproof.candidates.reference import Fresh
from planeproof.contract import Answer, Burst, Picture

HOME = "PLANEPROOF_TESTS_HOME"
"""Names the process in which nothing is done; the environment goes along to other processes."""


def away() -> bool:
    """Whether this is another process."""
    return os.environ[HOME] != str(os.getpid())


class _Away(Fresh):
    """Does something in the blankings of the third picture and later ones."""

    def __init__(self) -> None:
        super().__init__()
        self.offered = -1

    def offer(self, picture: Picture) -> Answer:
        """Remember which."""
        self.offered = picture.number
        return super().offer(picture)

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Do it, or be right."""
        if self.offered >= 2 and away():
            self.do()
        return super().blank(cycles)

    def do(self) -> None:
        """Nothing."""


class EndsAway(_Away):
    """Ends its process without a word."""

    def do(self) -> None:
        """End."""
        os._exit(0)


class KillsAway(_Away):
    """Has its process killed."""

    def do(self) -> None:
        """Die."""
        os.kill(os.getpid(), signal.SIGKILL)


class HangsAway(_Away):
    """Never returns."""

    def do(self) -> None:
        """Sleep."""
        while True:
            time.sleep(0.01)


class HangsForGoodAway(_Away):
    """Never returns, and lets nothing interrupt it."""

    def do(self) -> None:
        """Sleep."""
        while True:
            try:
                time.sleep(0.01)
            except BaseException:
                continue


class RaisesAway(_Away):
    """Raises."""

    def do(self) -> None:
        """Raise."""
        raise OSError("no display here")


class PrintsAndReadsAway(_Away):
    """Writes to standard output, and reads standard input to its end."""

    def do(self) -> None:
        """Both, below and above Python."""
        print("said", flush=True)  # noqa: T201 -- that is what it is about
        os.write(1, b"said\n")
        assert os.read(0, 1) == b""


class EmptyAway(_Away):
    """Sends nothing."""

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Nothing, or what is right."""
        return [] if away() else super().blank(cycles)
