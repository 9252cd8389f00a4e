"""Writing over what is seen, and not all at once.

These differ from `InPlace` in what the viewer sees, so on machines with two sides, where writing in place breaks
hidden-writes by itself, look at the seen rules; on a machine with one side they are the only faults.
"""

from collections.abc import Iterable

from planeproof.candidates.reference import InPlace
from planeproof.candidates.reference.outbox import Outbox
from planeproof.contract import Answer, Burst, Machine, Picture


class SplitInPlace(InPlace):
    """The difference is spread over two blankings when one is short, so a mixture of two pictures is seen."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Have an outbox."""
        self.outbox = Outbox(machine)
        return super().start(machine)

    def offer(self, picture: Picture) -> Answer:
        """Busy until all is sent."""
        return Answer.BUSY if self.outbox else super().offer(picture)

    def blank(self, cycles: int) -> Iterable[Burst]:
        """What fits."""
        self.outbox.put(self.pending)
        self.pending = ()
        return self.outbox.fill(cycles)


class ClearedFirst(InPlace):
    """The old picture is cleared in one blanking and the new one drawn in the next, so the drawing blinks."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Nothing to clear."""
        self.clearing: tuple[Burst, ...] = ()
        return super().start(machine)

    def offer(self, picture: Picture) -> Answer:
        """Take the picture as one that begins with an empty window."""
        if self.pending or self.clearing:
            return Answer.BUSY
        before, cleared = dict(self.shadow.bytes), dict[int, int]()
        for cell in range(self.machine.cells):
            cleared |= self.shadow.entry(0, cell, self.machine.blank_tile)
        self.shadow.bytes |= cleared
        answer = super().offer(picture)
        if answer is Answer.TAKEN:
            self.clearing = self.machine.bursts(cleared, before)
        else:
            self.shadow.bytes = before
        return answer

    def blank(self, cycles: int) -> Iterable[Burst]:
        """The clearing, or else the drawing."""
        if not self.clearing:
            return super().blank(cycles)
        if sum(self.machine.cost(burst) for burst in self.clearing) > cycles:
            return ()
        sent, self.clearing = self.clearing, ()
        return sent


class OldListReplayed(InPlace):
    """Of its two lists of bursts it sends the older one again when idle, so the picture before comes back."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Both lists are empty."""
        self.older: tuple[Burst, ...] = ()
        self.newer: tuple[Burst, ...] = ()
        return super().start(machine)

    def blank(self, cycles: int) -> Iterable[Burst]:
        """The pending list, or the older one."""
        if self.pending:
            sent = tuple(super().blank(cycles))
            self.older, self.newer = (self.newer, sent) if sent else (self.older, self.newer)
            return sent
        fits = sum(self.machine.cost(burst) for burst in self.older) <= cycles
        return self.older if fits else ()


class PendingReplaced(InPlace):
    """A picture that comes while another waits for a whole blanking takes its place, so the other is never seen."""

    def offer(self, picture: Picture) -> Answer:
        """Take the picture, whatever is pending."""
        self.pending = ()
        return super().offer(picture)
