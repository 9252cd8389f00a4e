"""Time misjudged: bytes that come too late."""

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction

from planeproof.candidates.reference import Fresh, InPlace, Pairs, Queued, Rows, SplitPool
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


class OneCycleMore(Rows):
    """A blanking is taken to be a cycle longer than it is, so a byte is late where just one cycle is missing."""

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Send what would fit into one cycle more."""
        return super().blank(cycles + 1)


class ViewChargedAsMemory(Fresh):
    """The view is charged at the rate of picture memory, so where its registers are slower the reveal comes late."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Plan for a machine where all bytes cost the same."""
        bursts = super().start(machine)
        self.outbox = Outbox(replace(machine, time=replace(machine.time, view_setup=None, view_per_byte=None)))
        return bursts


class FractionsDropped(Fresh):
    """Cycles per byte are cut down to a whole number, so many bytes together take longer than was reckoned."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Plan for a machine of whole cycles."""
        bursts = super().start(machine)
        self.outbox = Outbox(replace(machine, time=replace(machine.time, per_byte=int(machine.time.per_byte))))
        return bursts


class CyclesOfTheOtherStandard(Queued):
    """Cycles are reckoned in lines of the 625-line standard, so on the other one, whose lines are shorter, it is late.

    Its lines have 89.6 cycles at 1.4 MHz. On the 525-line standard they have 88.98, so that a hundred and fifty cycles
    seem to be one more.
    """

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Send what would fit into as many lines of the other standard."""
        lines = cycles / Fraction(self.machine.time.cycles_per_line)
        return super().blank(int(lines * Fraction("89.6")))


class CutNotNoticed(InPlace):
    """A blanking that other work has shortened is used as if it were whole, so the beam meets a half-made picture."""

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Send what fits into a whole blanking."""
        return super().blank(self.machine.blank_cycles)
