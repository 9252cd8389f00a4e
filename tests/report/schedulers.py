"""Wrong schedulers to tell stories about."""

from collections.abc import Iterable

from planeproof.candidates.reference import Delta, Fresh, InPlace
from planeproof.contract import Answer, Burst, Machine, Picture


class Early(Delta):
    """Turns the view to the hidden side before the last of its bytes are sent."""

    def blank(self, cycles: int) -> Iterable[Burst]:
        """The last burst of all comes first."""
        bursts = list(super().blank(cycles))
        return bursts[-1:] + bursts[:-1] if len(bursts) > 1 else bursts


class Torn(InPlace):
    """Writes over what is seen, burst by burst, as many as fit."""

    def blank(self, cycles: int) -> Iterable[Burst]:
        """What fits now; the rest next time."""
        sent: list[Burst] = []
        while self.pending and sum(map(self.machine.cost, [*sent, self.pending[0]])) <= cycles:
            sent.append(self.pending[0])
            self.pending = self.pending[1:]
        return sent


class Late(Fresh):
    """Counts on the machine's full blanking, and then some."""

    def blank(self, cycles: int) -> Iterable[Burst]:
        """More than there is time for: the same again from the end of the blanking on."""
        bursts = list(super().blank(cycles))
        spare = self.machine.pattern_address(self.machine.pool[-1], 1)
        filling = [Burst(spare, bytes(8))] * int(cycles // self.machine.burst_cycles(8))
        return [*filling, *bursts]


class Idle:
    """Takes everything and shows nothing."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Show side 0."""
        return machine.view_bursts(0)

    def offer(self, picture: Picture) -> Answer:
        """Promise it."""
        return Answer.TAKEN

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Do nothing."""
        return ()


class Scribbler(Delta):
    """Right, but for one burst that it adds to every blanking."""

    def __init__(self, burst: Burst) -> None:
        self._burst = burst

    def blank(self, cycles: int) -> Iterable[Burst]:
        """The burst, then the work."""
        left = cycles - int(self.machine.cost(self._burst))
        return [self._burst, *super().blank(left)]
