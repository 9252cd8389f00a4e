"""A scheduler that takes pictures ahead. It is right; two faults are made of it."""

from collections import deque
from collections.abc import Iterable

from planeproof.candidates.reference import Fresh
from planeproof.contract import Answer, Burst, Machine, Picture

AHEAD = 2
"""Pictures that may wait, besides the one under way."""


class Queued(Fresh):
    """Takes up to two pictures ahead, and begins with the next when the one under way has been revealed."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Show side 0, which is empty; nothing waits."""
        self.waiting: deque[Picture] = deque()
        return super().start(machine)

    def offer(self, picture: Picture) -> Answer:
        """Put the picture in the queue; work on it begins in a blanking."""
        if len(self.waiting) == AHEAD:
            return Answer.BUSY
        if self.tiles_for(picture) is None:
            return Answer.TOO_BIG
        self.waiting.append(picture)
        return Answer.TAKEN

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Send what fits. At most one reveal a blanking, or a picture would not be seen at all."""
        if self.waiting and not self.outbox:
            super().offer(self.next_waiting())
        return super().blank(cycles)

    def next_waiting(self) -> Picture:
        """The picture to begin with: the one taken first."""
        return self.waiting.popleft()
