"""Time misjudged: bytes that come too late."""

from collections.abc import Iterable
from dataclasses import replace

from planeproof.candidates.reference import Fresh, Pairs, SplitPool
from planeproof.candidates.reference.outbox import Outbox
from planeproof.contract import Burst, Machine, Rational


class SetUpNotCharged(Fresh):
    """Only bytes are charged, not the set-up of each burst, so a full blanking overruns and the frame is wrecked."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Plan for a machine without set-up."""
        bursts = super().start(machine)
        self.outbox = Outbox(replace(machine, time=replace(machine.time, setup=0, view_setup=0)))
        return bursts


class _Unsplit(Outbox):
    """Begins a burst that may be split if its first byte fits, and ends it whatever the time."""

    def _split(self, left: Rational) -> list[Burst]:
        begun = super()._split(left)
        if begun:
            ((rest,), _) = self._units.popleft(), self._splits.popleft()
            begun = [Burst(begun[0].address, begun[0].data + rest.data, rest.step)]
        return begun


class BurstAcrossTheEnd(SplitPool):
    """A burst that has begun is ended though the blanking is over, so its last bytes come while the beam is on."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Use an outbox that does not split."""
        bursts = super().start(machine)
        self.outbox = _Unsplit(machine)
        return bursts


class FullBlankingAssumed(Pairs):
    """Every blanking is taken to have its full length, so the frame is wrecked when other work shortens one."""

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Send what would fit into a whole blanking."""
        return super().blank(self.machine.blank_cycles)
