"""Candidates that are wrong in themselves, not in a rule: each breaks one law, or does next to nothing."""

import itertools
import os
import time
from collections.abc import Iterable, Iterator

from planeproof.candidates.reference import Fresh
from planeproof.contract import Answer, Burst, Machine, Picture


class Nothing:
    """Takes every picture and shows none."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Leave everything as it is."""
        return ()

    def offer(self, picture: Picture) -> Answer:
        """Take it."""
        return Answer.TAKEN

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Write nothing."""
        return ()


class AlwaysBusy(Nothing):
    """Puts every picture off, for ever."""

    def offer(self, picture: Picture) -> Answer:
        """Not now."""
        return Answer.BUSY


class DeclinesAll(Nothing):
    """Finds every picture too big, the empty one as well."""

    def offer(self, picture: Picture) -> Answer:
        """Too big."""
        return Answer.TOO_BIG


class OnlyBackground(Nothing):
    """Busy with writing, yet every palette entry stays background, so nothing of it is ever seen."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Keep the machine."""
        self.machine = machine
        return ()

    def blank(self, cycles: int) -> Iterable[Burst]:
        """The first cell's map entry, over and over."""
        burst = Burst(self.machine.map_address(0, 0), self.machine.map_entry(self.machine.blank_tile))
        return (burst,) if self.machine.cost(burst) <= cycles else ()


class CountsInClass(Fresh):
    """Counts offers in the class, over all scenes, and is busy at every third."""

    offers = 0

    def offer(self, picture: Picture) -> Answer:
        """Busy at every third."""
        CountsInClass.offers += 1
        return Answer.BUSY if CountsInClass.offers % 3 == 0 else super().offer(picture)


class DefaultArgument(Fresh):
    """Keeps what it has been offered in a default argument, which all scenes share."""

    def offer(self, picture: Picture, known: set[bytes] = set()) -> Answer:  # noqa: B006 - this is the mistake
        """Busy at pictures that are new to it."""
        data = picture.rows.tobytes() + bytes([picture.number])
        if data not in known:
            known.add(data)
            return Answer.BUSY
        return super().offer(picture)


class LooksAtTheClock(Fresh):
    """Busy in every other microsecond."""

    def offer(self, picture: Picture) -> Answer:
        """Busy or not."""
        return Answer.BUSY if time.perf_counter_ns() // 1000 % 2 else super().offer(picture)


class LooksAtIds(Fresh):
    """Decides by where in memory its own objects happen to stand, which no two schedulers share."""

    kept: tuple[object, ...] = ()

    def offer(self, picture: Picture) -> Answer:
        """Busy or not."""
        thing = object()
        LooksAtIds.kept = (*LooksAtIds.kept, thing)  # so that the next one stands elsewhere
        return Answer.BUSY if id(thing) // 16 % 3 == 0 else super().offer(picture)


class OrderOfASet(Fresh):
    """Sends its bursts in the order of a set of texts; the order is another in every process.

    Two plays in one process share it, so here the order is another in every other scheduler: also the claim that
    what alternates is noticed, though every machine has an even number of scenes.
    """

    orders = itertools.count()

    def __init__(self) -> None:
        self.order = next(OrderOfASet.orders)

    def blank(self, cycles: int) -> Iterable[Burst]:
        """What is to be sent but in some other order, while it is all hidden."""
        bursts = list(super().blank(cycles))
        if len(bursts) > 2 and not any(self.machine.is_view(burst.address) for burst in bursts):
            return bursts[self.order % 2 :] + bursts[: self.order % 2]
        return bursts


class DeclinesOnce(Fresh):
    """Declines everything in one scene of all, and never again: what it did can't be seen a second time."""

    made = 0

    def __init__(self) -> None:
        DeclinesOnce.made += 1
        self.declines = DeclinesOnce.made == 30

    def offer(self, picture: Picture) -> Answer:
        """Decline, or not."""
        return Answer.TOO_BIG if self.declines else super().offer(picture)


class RenamesTheMachine(Fresh):
    """Writes to the frozen machine behind its back."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Set a field."""
        bursts = super().start(machine)
        object.__setattr__(machine, "name", "mine now")
        return bursts


class StealsTheTime(Fresh):
    """Takes from the machine what the judge needs."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Unset a part."""
        bursts = tuple(super().start(machine))
        object.__setattr__(machine, "time", None)
        return bursts


class RaisesWhenMade(Fresh):
    """Can't even be made."""

    def __init__(self) -> None:
        raise KeyError("no such setting")


class RaisesInStart(Fresh):
    """Can't set up."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Raise."""
        raise OSError("no such device")


class RaisesInOffer(Fresh):
    """Can't do with two occupied cells."""

    def offer(self, picture: Picture) -> Answer:
        """Raise, at two or more."""
        if len(picture.occupied) >= 2:
            raise IndexError("list index out of range")
        return super().offer(picture)


class RaisesInBlank(Fresh):
    """Fails at the last burst of a blanking that has any, while it is being handed over."""

    def blank(self, cycles: int) -> Iterator[Burst]:
        """Raise, after all bursts."""
        for burst in super().blank(cycles):
            yield burst
            raise ZeroDivisionError("division by zero")


class HangsInBlank(Fresh):
    """Never returns from a blanking, and catches every ordinary exception."""

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Loop."""
        while True:
            try:
                time.sleep(0.001)
            except Exception:
                continue


class BurstsWithoutEnd(Fresh):
    """Returns an iterator that never ends."""

    def blank(self, cycles: int) -> Iterable[Burst]:
        """The same burst for ever."""
        return itertools.repeat(Burst(self.machine.map_address(0, 0), b"\0"))


class FailsAndHangs(Fresh):
    """Declines every second picture, and never returns where the window is one cell."""

    def offer(self, picture: Picture) -> Answer:
        """Decline the second."""
        return Answer.TOO_BIG if picture.number == 1 else super().offer(picture)

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Loop, or do it right."""
        while self.machine.cells == 1:
            time.sleep(0.001)
        return super().blank(cycles)


class RaisesAndHangs(Fresh):
    """Raises at the start, but never returns from it where the window is one cell."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Loop, or raise."""
        while machine.cells == 1:
            time.sleep(0.001)
        raise OSError("no such device")


class DeclinesSecond(Fresh):
    """Declines every second picture. Least scene: two empty pictures on one cell."""

    def offer(self, picture: Picture) -> Answer:
        """Decline it, or not."""
        return Answer.TOO_BIG if picture.number % 2 else super().offer(picture)


class DeclinesThreeCells(Fresh):
    """Declines three cells and more. Least scene: one picture of three cells."""

    def offer(self, picture: Picture) -> Answer:
        """Decline it, or not."""
        return Answer.TOO_BIG if len(picture.occupied) >= 3 else super().offer(picture)


class DiesInBlank(Fresh):
    """Takes the whole process with it."""

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Die without a word."""
        os._exit(9)
