"""Pictures taken ahead, and sent ahead: what a blanking has left after a reveal goes to the next picture."""

from collections import deque
from collections.abc import Iterable

from planeproof.candidates.reference.fresh import Fresh
from planeproof.contract import Answer, Burst, Machine, Picture, Rational

AHEAD = 2
"""Pictures that may wait, besides the one under way."""


class Queued(Fresh):
    """Takes up to two pictures ahead; no blanking is idle, in whole or in part, while any of them waits."""

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
        """Send what fits: of the picture under way, and once that is revealed, of the next."""
        if not self.outbox:
            self.begin_next()
        sent = self.outbox.fill(cycles)
        if not self.outbox:
            self.begin_next()
            sent += self.send_ahead(cycles - sum(self.machine.cost(burst) for burst in sent))
        return sent

    def begin_next(self) -> None:
        """Begin with a picture that waits, if any does."""
        if self.waiting:
            super().offer(self.next_waiting())

    def next_waiting(self) -> Picture:
        """The picture to begin with: the one taken first."""
        return self.waiting.popleft()

    def send_ahead(self, cycles: Rational) -> list[Burst]:
        """All but the reveal: after two reveals in one blanking the first picture would never have been seen."""
        return self.outbox.fill(cycles, leaving=1)
