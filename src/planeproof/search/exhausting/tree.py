"""All scenes within bounds, as a tree whose branches are what the world may do next.

A level of it has scenes of the same number of pictures, occupied cells and disturbances, and levels are walked in that
order: what breaks a rule first needs no minimising. Within a level a position moves on refresh by refresh: the next
picture is ready or is not yet, is this one or that, and the blanking is whole or is not.

One play may stand for several scenes: a candidate is not told when a picture became ready, only asked when it is free,
so scenes that differ in a moment at which it was BUSY are one play; so are those that differ after its end. That holds
for any candidate, and each scene is still counted.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from math import comb
from random import Random

import numpy as np

from planeproof.contract import Disturbance, Machine, Picture, Scene
from planeproof.search.exhausting.bounds import Bounds
from planeproof.search.exhausting.letters import Letters

Times = tuple[tuple[tuple[int, ...], int], ...]
"""Ways in which the pictures so far may have become ready, told apart by the last: an example, and how many."""

_Word = tuple[tuple[int, ...], int, int]
"""What fills the slots of a picture, tokens used by then, and occupied cells."""

_Choice = tuple[Picture, int, int]
"""A picture that may come next, tokens used by then, and cells that are left to be occupied after it."""


@dataclass(frozen=True, kw_only=True)
class Level:
    """Scenes of exactly ``pictures`` pictures, ``cells`` occupied cells over all of them, ``disturbed`` blankings."""

    pictures: int
    cells: int
    disturbed: int


@dataclass(frozen=True, kw_only=True, eq=False)
class Position:
    """What has happened so far in scenes of ``level``, and what is still to come.

    ``drawn``: pictures that were offered; the last is still ``on_offer`` or not. ``used``: tokens in them. ``times``:
    see `Times`, of the picture on offer or of the next one. ``cuts``: disturbances so far.
    """

    level: Level
    drawn: tuple[Picture, ...] = ()
    on_offer: bool = False
    used: int = 0
    cells_left: int
    times: Times
    cuts: tuple[Disturbance, ...] = ()

    @property
    def more(self) -> bool:
        """Whether a picture is on offer, or still to come."""
        return self.on_offer or len(self.drawn) < self.level.pictures

    @property
    def cuts_left(self) -> int:
        """Disturbances that are still to come."""
        return self.level.disturbed - len(self.cuts)


@dataclass(frozen=True)
class Move:
    """What happens in one refresh: where that leads, the picture that is offered, the cycles of the blanking."""

    to: Position
    picture: Picture | None
    cycles: int


class SceneTree:
    """All scenes on ``machine`` within ``bounds``, in ``letters``."""

    def __init__(self, machine: Machine, bounds: Bounds, letters: Letters) -> None:
        if any(left >= machine.blank_cycles for left in bounds.left):
            most = machine.blank_cycles - 1
            raise ValueError(f"bounds: left is {bounds.left!r}: a blanking of {machine.name!r} has 0 to {most} then")
        self.machine, self.bounds, self.letters = machine, bounds, letters
        self._words: Callable[[bool, int], list[_Word]] = lru_cache(maxsize=None)(self._all_words)
        self._ways: Callable[[int, int, int, int], int] = lru_cache(maxsize=None)(self._count_ways)
        self._choices: Callable[[int, int, int, int], list[_Choice]] = lru_cache(maxsize=256)(self._all_choices)

    # --- counting -----------------------------------------------------------------------------------------

    @property
    def levels(self) -> Iterator[Level]:
        """Every level, the smallest scenes first."""
        bounds = self.bounds
        for pictures in range(bounds.pictures + 1):
            for cells in range(self._room(0, pictures) + 1):
                for disturbed in range(bounds.disturbed + 1):
                    yield Level(pictures=pictures, cells=cells, disturbed=disturbed)

    def count(self, level: Level) -> int:
        """How many scenes it has."""
        drawings = self._ways(level.pictures, 0, 0, level.cells)
        return drawings * self._gaps(level.pictures) * self._disturbances(0, level.disturbed)

    @property
    def total(self) -> int:
        """How many scenes there are."""
        return sum(map(self.count, self.levels))

    def covered(self, position: Position, number: int) -> int:
        """How many scenes go through ``position`` before refresh ``number`` and differ only in what comes later."""
        pictures, known = position.level.pictures, len(position.drawn)
        drawings = self._ways(pictures, known, position.used, position.cells_left)
        timed = min(known + (not position.on_offer), pictures)
        ways = sum(ways for _, ways in position.times)
        return drawings * self._gaps(pictures - timed) * ways * self._disturbances(number, position.cuts_left)

    def _gaps(self, pictures: int) -> int:
        return int(len(self.bounds.gaps) ** pictures)

    def _disturbances(self, first: int, number: int) -> int:
        return comb(max(self.bounds.within - first, 0), number) * int(len(self.bounds.left) ** number)

    def _room(self, first: int, pictures: int) -> int:
        """Cells that pictures ``first`` to ``pictures`` - 1 have to be occupied."""
        return self.machine.cells * sum(number not in self.bounds.empty for number in range(first, pictures))

    def _count_ways(self, pictures: int, first: int, used: int, cells: int) -> int:
        """In how many ways the pictures from ``first`` on can be drawn with just so many occupied cells."""
        if first == pictures:
            return int(cells == 0)
        if not 0 <= cells <= self._room(first, pictures):
            return 0
        words = self._words(first in self.bounds.empty, used)
        rest: dict[tuple[int, int], int] = {}
        for _, now, occupied in words:
            rest[now, occupied] = rest.get((now, occupied), 0) + 1
        return sum(n * self._ways(pictures, first + 1, now, cells - taken) for (now, taken), n in rest.items())

    # --- walking ------------------------------------------------------------------------------------------

    def start(self, level: Level) -> Position:
        """The beginning of every scene of ``level``."""
        times: Times = (((), 1),)
        first = Position(level=level, cells_left=level.cells, times=times)
        return replace(first, times=self._next_times(times)) if level.pictures else first

    def moves(self, position: Position, number: int) -> list[Move]:
        """All that may happen in refresh ``number``, one of them at least."""
        offers = [(position, position.drawn[-1])] if position.on_offer else self._offers(position, number)
        cuts = self._blankings(position, number)
        return [
            Move(replace(to, cuts=to.cuts + cut) if cut else to, picture, cycles)
            for to, picture in offers
            for cut, cycles in cuts
        ]

    def settled(self, position: Position) -> Position:
        """The picture on offer was taken or declined."""
        last = len(position.drawn) == position.level.pictures
        return replace(position, on_offer=False, times=position.times if last else self._next_times(position.times))

    def scene(self, position: Position) -> Scene:
        """The scene that was played up to ``position``, of those that are the same play the one with least waiting."""
        ready = min((example for example, _ in position.times), key=sum)[: len(position.drawn)]
        return Scene.of(self.machine, position.drawn, ready, position.cuts)

    def drawn(self, random: Random) -> Scene:
        """A scene within the bounds, drawn from ``random``; which are how likely is nobody's concern."""
        bounds, pictures, used = self.bounds, [], 0
        for number in range(random.randint(1, bounds.pictures)):
            word, used, _ = random.choice(self._words(number in bounds.empty, used))
            pictures.append(self._picture(number, word))
        ready = np.cumsum([random.choice(bounds.gaps) for _ in pictures]).tolist()
        cut = random.sample(range(bounds.within), random.randint(0, bounds.disturbed))
        return Scene.of(self.machine, pictures, ready, [Disturbance(at, random.choice(bounds.left)) for at in cut])

    def _offers(self, position: Position, number: int) -> list[tuple[Position, Picture | None]]:
        if len(position.drawn) == position.level.pictures:
            return [(position, None)]
        ready = tuple(time for time in position.times if time[0][-1] <= number)
        later = tuple(time for time in position.times if time[0][-1] > number)
        offers: list[tuple[Position, Picture | None]] = []
        if ready:
            key = (position.level.pictures, len(position.drawn), position.used, position.cells_left)
            for picture, used, cells_left in self._choices(*key):
                drawn = (*position.drawn, picture)
                to = replace(position, drawn=drawn, on_offer=True, used=used, cells_left=cells_left, times=ready)
                offers.append((to, picture))
        if later:
            offers.append((replace(position, times=later), None))
        return offers

    def _blankings(self, position: Position, number: int) -> list[tuple[tuple[Disturbance, ...], int]]:
        full = self.machine.blank_cycles
        if number >= self.bounds.within:
            return [((), full)]
        rest = self.bounds.within - number - 1
        whole: list[tuple[tuple[Disturbance, ...], int]] = [((), full)] if position.cuts_left <= rest else []
        cuts = [((Disturbance(number, left),), left) for left in self.bounds.left] if position.cuts_left else []
        return whole + cuts

    def _next_times(self, times: Times) -> Times:
        found: dict[int, tuple[tuple[int, ...], int]] = {}
        for example, ways in times:
            for gap in self.bounds.gaps:
                ready = (example[-1] if example else 0) + gap
                held = found.get(ready)
                least = (*example, ready) if held is None else min(held[0], (*example, ready), key=sum)
                found[ready] = (least, ways + (0 if held is None else held[1]))
        return tuple(found[ready] for ready in sorted(found))

    def _all_choices(self, pictures: int, number: int, used: int, cells: int) -> list[_Choice]:
        return [
            (self._picture(number, word), now, cells - occupied)
            for word, now, occupied in self._words(number in self.bounds.empty, used)
            if self._ways(pictures, number + 1, now, cells - occupied)
        ]

    # --- drawing ------------------------------------------------------------------------------------------

    def _all_words(self, empty: bool, used: int) -> list[_Word]:
        a_cell = self.machine.tiles.depth * self._parts
        slots = a_cell * self.machine.cells
        words = [((0,) * slots, used)] if empty else self.letters.words(slots, used, values=self.bounds.values)
        starts = range(0, slots, a_cell)
        return [(word, now, sum(any(word[at : at + a_cell]) for at in starts)) for word, now in words]

    def _picture(self, number: int, word: tuple[int, ...]) -> Picture:
        parts, depth = self._parts, self.machine.tiles.depth
        patterns = [self.letters.pattern(word[at : at + parts]) for at in range(0, len(word), parts)]
        rows = np.array(patterns, dtype=np.uint8)
        return Picture.from_rows(number, rows if depth == 1 else rows.reshape(-1, depth, rows.shape[1]))

    @property
    def _parts(self) -> int:
        return 1 if self.letters is Letters.PATTERNS else self.bounds.parts
