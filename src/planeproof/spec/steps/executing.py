"""Steps that run: a scheduler of the contract that takes the steps of a scheduler written as such.

It may follow a course, turn by turn, and so show in a replay what a refutation found. After that, or without one, it
works through what is pending as fast as blankings allow. `planeproof check` of what `executed` makes is then a check
of the very steps that were proved.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence

from planeproof.contract import Answer, Burst, Machine, Picture, Rational, Scheduler
from planeproof.spec.steps.course import Course, Turn
from planeproof.spec.steps.form import Steps
from planeproof.spec.steps.ghost import Ghost


def executed(steps: Steps, course: Course = ()) -> Callable[[], Scheduler]:
    """Something that makes a scheduler, as `planeproof check` and ``replay`` take it."""
    return lambda: Executed(steps, course)


def steps_of(made: object) -> Steps:
    """The steps that ``made`` is, or that it takes.

    Raises `TypeError` if it is neither `Steps` nor a scheduler that `executed` makes.
    """
    found = made.steps if isinstance(made, Executed) else made
    if not isinstance(found, Steps):
        raise TypeError(f"{found!r} is no scheduler written as steps: derive it from HiddenPlane, Packed or PageFlip")
    return found


class Executed:
    """The steps as a scheduler. In a turn of its course it sends what the turn says, however long that takes."""

    def __init__(self, steps: Steps, course: Course = ()) -> None:
        self.steps = steps
        self.course = list(course)

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Show side 0, which is empty. Raises `ValueError` for a machine that the steps can't be for."""
        self.machine = machine
        self.ghost = Ghost(self.steps, machine)
        self.asked = False
        return machine.view_bursts(0)

    def offer(self, picture: Picture) -> Answer:
        """Take the picture if its turn has come, or, after the course, if the guards of taking hold."""
        self._pass_lost_turns()
        self.asked = True
        units = self.ghost.addresses.units(picture)
        if self.course:
            taken = self.course[0].taken
            if taken is None:
                return Answer.BUSY
            self._must(self.ghost.take(units, taken.place, dict(enumerate(taken.cell_of))))
            return Answer.TAKEN
        place = self._plan(picture)
        if place is None:
            return Answer.TOO_BIG
        broken = self.ghost.take(units, place, {tile: cell for cell, tile in reversed(list(enumerate(place)))})
        return Answer.BUSY if broken else Answer.TAKEN

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Follow the course, or send what is pending, and show the hidden side once nothing is."""
        self._pass_lost_turns()
        self.asked = False
        return self._follow(self.course.pop(0)) if self.course else self._work(cycles)

    def _pass_lost_turns(self) -> None:
        """A lost blanking is noticed when the next thing happens."""
        while self.course and self.course[0].lost and (self.asked or self.course[0].taken is None):
            self.course.pop(0)
            self.asked = False
            self.ghost.lose()

    def _follow(self, turn: Turn) -> Iterable[Burst]:
        wanted: dict[int, int] = {}
        for place in turn.sent:
            wanted |= self._byte(*place)
        for cell in turn.entries:
            wanted |= self._entry(cell)
        return (*self.machine.bursts(wanted, {}), *(self._view() if turn.shows else ()))

    def _work(self, cycles: int) -> Iterable[Burst]:
        """Whatever is pending and may be sent, as far as it fits; the view if all of it did."""
        wanted: dict[int, int] = {}
        for place in self.ghost.pending_bytes():
            byte = self._byte_wanted(*place)
            if not self._fits(wanted | byte, cycles):
                return self.machine.bursts(wanted, {})
            wanted |= {} if self.ghost.send_byte(*place) else byte
        for cell in self.ghost.pending_entries():
            entry = self._entry_wanted(cell)
            if not self._fits(wanted | entry, cycles):
                return self.machine.bursts(wanted, {})
            wanted |= {} if self.ghost.send_entry(cell) else entry
        sent = self.machine.bursts(wanted, {})
        view = self.machine.view_bursts(1 - self.ghost.seen, self.ghost.seen)
        shows = self._cost((*sent, *view)) <= cycles and self.ghost.busy and not self.ghost.show()
        return (*sent, *view) if shows else sent

    def _fits(self, wanted: Mapping[int, int], cycles: int) -> bool:
        return self._cost(self.machine.bursts(wanted, {})) <= cycles

    def _cost(self, bursts: Sequence[Burst]) -> Rational:
        return sum(self.machine.cost(burst) for burst in bursts)

    def _byte_wanted(self, tile: int, row: int) -> dict[int, int]:
        store, byte = self.ghost.byte(tile, row)
        return {self.ghost.addresses.pattern(store, tile, row): byte}

    def _byte(self, tile: int, row: int) -> dict[int, int]:
        wanted = self._byte_wanted(tile, row)
        self._must(self.ghost.send_byte(tile, row))
        return wanted

    def _entry_wanted(self, cell: int) -> dict[int, int]:
        first = self.machine.map_address(self.machine.page_of(1 - self.ghost.seen), cell)
        return {first + i: byte for i, byte in enumerate(self.machine.map_entry(self.ghost.placed(cell)))}

    def _entry(self, cell: int) -> dict[int, int]:
        wanted = self._entry_wanted(cell)
        self._must(self.ghost.send_entry(cell))
        return wanted

    def _view(self) -> Iterable[Burst]:
        seen = self.ghost.seen
        self._must(self.ghost.show())
        return self.machine.view_bursts(1 - seen, seen)

    def _must(self, broken: Sequence[str]) -> None:
        if broken:
            raise ValueError(f"{self.steps.name}: the course takes a step whose guards fail: {', '.join(broken)}")

    def _plan(self, picture: Picture) -> list[int] | None:
        """A cell keeps the tile that the hidden side has for it; the others get free ones."""
        place, used = [self.machine.blank_tile] * self.machine.cells, set[int]()
        for cell in picture.occupied:
            tile = self.ghost.placed(cell)
            if tile not in used and self.ghost.usable(tile):
                place[cell] = tile
                used.add(tile)
        free = (tile for tile in self.machine.pool if tile not in used and self.ghost.usable(tile))
        for cell in picture.occupied:
            if place[cell] == self.machine.blank_tile:
                place[cell] = next(free, self.machine.blank_tile)
                if place[cell] == self.machine.blank_tile:
                    return None
        return place
