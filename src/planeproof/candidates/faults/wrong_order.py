"""The right things in the wrong order, or a step left out between them."""

from collections.abc import Mapping

from planeproof.candidates.reference import Pairs, Queued
from planeproof.candidates.reference.pairs import Pair
from planeproof.contract import Answer, Burst, Picture, Rational


class OrderSwapped(Queued):
    """Of two pictures that wait the later is shown first, so the drawing jumps ahead and then back."""

    def next_waiting(self) -> Picture:
        """The picture taken last."""
        return self.waiting.pop()


class PictureSkipped(Queued):
    """When two pictures wait only the later is shown, so the drawing jerks over one that was taken."""

    def next_waiting(self) -> Picture:
        """The picture taken last; the other is dropped."""
        latest = self.waiting.pop()
        self.waiting.clear()
        return latest


class QueueOverrun(Queued):
    """A picture that finds the queue full takes the place of the oldest, which was taken and is never seen."""

    def offer(self, picture: Picture) -> Answer:
        """Make room, and take it."""
        answer = super().offer(picture)
        if answer is not Answer.BUSY:
            return answer
        self.waiting.popleft()
        return super().offer(picture)


class RevealedTwice(Queued):
    """The next picture is sent and revealed in the same blanking if it fits, so the one before it is never seen."""

    def send_ahead(self, cycles: Rational) -> list[Burst]:
        """All that fits, the reveal included."""
        return self.outbox.fill(cycles)


class PairsWithoutRelease(Pairs):
    """Cells that look empty keep their old tiles while those are written anew, so stray pieces light up in them."""

    def _release(self, pairs: list[Pair]) -> None:
        """Nothing is released."""


class PairsMapFirst(Pairs):
    """Cells are given their new tiles before these hold what is being seen, so parts of the seen picture drop out."""

    _later: Mapping[Pair, int] | None = None

    def _send_patterns(self, tiles: Mapping[Pair, int]) -> None:
        self._later = tiles

    def _send_entries(self, tile_of: list[int]) -> None:
        super()._send_entries(tile_of)
        if self._later is not None:
            super()._send_patterns(self._later)
            self._later = None


class SeenPatternNotCopied(Pairs):
    """A cell's new tile gets what comes next but not what is seen, so the cell goes dark until the reveal."""

    def _send_patterns(self, tiles: Mapping[Pair, int]) -> None:
        """The hidden side as it shall be, the seen side as it happens to be."""
        seen = {tile: self.shadow.pattern_of(tile, self.seen).tobytes() for tile in tiles.values()}
        for (_, following), tile in tiles.items():
            super()._send_patterns({(seen[tile], following): tile})
