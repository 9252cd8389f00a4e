"""Lazy clearing: cells that became empty are cleared in idle blankings, or else when a picture would show them."""

from collections.abc import Iterable, Mapping

from planeproof.candidates.reference.fresh import Fresh
from planeproof.candidates.reference.outbox import Outbox
from planeproof.contract import Burst, Rational


class LazyClear(Fresh):
    """Hidden side; its map is emptied in what blankings have left when no picture is due.

    A picture finds most cells empty, so that it costs little more than its occupied cells. Where there was no time
    for clearing, cells that it leaves empty are cleared with it; those that it occupies never need be.
    """

    def to_send(self, wanted: Mapping[int, int]) -> Iterable[Burst]:
        """What the shadow does not hold: no entry of a cell that is clear."""
        return self.machine.bursts(wanted, self.shadow.bytes)

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Send what fits; clear with what is left."""
        sent = self.outbox.fill(cycles)
        return sent if self.outbox else [*sent, *self.clear(cycles - sum(map(self.machine.cost, sent)))]

    def clear(self, cycles: Rational) -> list[Burst]:
        """Clear what fits. The rest is forgotten, not put off: the next picture may occupy those cells."""
        idle = Outbox(self.machine)
        idle.put(self.machine.bursts(self.entries({}), self.shadow.bytes))
        sent = idle.fill(cycles)
        for burst in sent:
            self.shadow.bytes |= zip(burst.addresses, burst.data, strict=True)
        return sent
