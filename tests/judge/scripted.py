"""A scheduler that only says what it is told to, and the small display that it is told to say it to.

The display is 2 x 1 cells of 2 planes on 2 map pages: palette entries at 0 to 3, the page register at 4, the maps at
5 and 7, patterns from 9 on, 16 bytes a tile. Tiles 1, 2 and 3 are the pool, 0 is the blank one, 4 the rest of the
screen's. A blanking has 200 cycles, a displayed line takes 10 and there are 20; a burst costs 4 and 1 a byte.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from planeproof.contract import (
    Answer,
    Burst,
    Demands,
    Disturbance,
    Machine,
    Outside,
    Picture,
    Scene,
    Tiles,
    Timing,
    Window,
)
from planeproof.judge import Play, Violation, play
from planeproof.judge.conversation import MakeScheduler

TIME = Timing(standard="by hand", lines=40, shown=20, cycles_per_line=10, setup=4, per_byte=1)
MACHINE = Machine(
    name="by hand",
    window=Window(columns=2, rows=1),
    tiles=Tiles(count=5, pool=(1, 2, 3)),
    time=TIME,
    demands=Demands(patience=5),
)
FULL, EMPTY, LEFT, RIGHT = [0xFF] * 8, [0] * 8, [0xF0] * 8, [0x0F] * 8
Blanking = Sequence[Burst]


@dataclass(kw_only=True)
class Scripted:
    """Returns ``set_up`` from start, one of ``blankings`` from each call of blank, one of ``answers`` to each offer.

    When they have run out it writes nothing and takes everything.
    """

    set_up: Blanking | None
    blankings: Iterable[Blanking]
    answers: Iterable[Answer]

    def start(self, machine: Machine) -> Iterable[Burst]:
        """The set-up; unless told otherwise, the view of side 0."""
        self._blankings, self._answers = iter(self.blankings), iter(self.answers)
        return machine.view_bursts(0) if self.set_up is None else self.set_up

    def offer(self, _picture: Picture) -> Answer:
        """The next answer."""
        return next(self._answers, Answer.TAKEN)

    def blank(self, _cycles: int) -> Iterable[Burst]:
        """The next bursts."""
        return next(self._blankings, ())


def scripted(
    blankings: Iterable[Blanking] = (), *, set_up: Blanking | None = None, answers: Iterable[Answer] = ()
) -> MakeScheduler:
    """A candidate that makes a `Scripted`."""
    return lambda: Scripted(set_up=set_up, blankings=tuple(blankings), answers=tuple(answers))


def played(
    pictures: Iterable[Picture],
    blankings: Iterable[Blanking],
    *,
    machine: Machine = MACHINE,
    set_up: Blanking | None = None,
    answers: Iterable[Answer] = (),
    ready: Iterable[int] | None = None,
    disturbances: Iterable[Disturbance] = (),
) -> Play:
    """What comes of a script."""
    scene = Scene.of(machine, pictures, ready, disturbances)
    return play(scene, scripted(blankings, set_up=set_up, answers=answers))


def broken(one: Play) -> set[str]:
    """The ids of the rules that were broken."""
    return {rule.id for rule in one.counts}


def only(one: Play) -> Violation:
    """The violation, where there is just one."""
    (violation,) = one.violations
    return violation


def picture(*cells: list[int]) -> Picture:
    """A picture of these cells."""
    return Picture.from_rows(0, list(cells))


def with_outside(outside: Outside, *, machine: Machine = MACHINE, first_line: int = 0) -> Machine:
    """The machine with another way of dealing with late bytes, its window from ``first_line`` on."""
    return replace(machine, outside=outside, window=replace(machine.window, first_line=first_line))


def pattern(tile: int, plane: int, data: list[int], row: int = 0, *, machine: Machine = MACHINE) -> Burst:
    """Bytes of one plane of a tile, in one burst (planar storage)."""
    return Burst(machine.pattern_address(tile, plane, row), bytes(data))


def entry(page: int, cell: int, tile: int, *, machine: Machine = MACHINE) -> Burst:
    """The map entry of a cell."""
    return Burst(machine.map_address(page, cell), machine.map_entry(tile))


def sent(shown: Picture, side: int, *, machine: Machine = MACHINE) -> list[Burst]:
    """A whole picture for one side: cell c in the c-th tile of the pool, and the whole map page."""
    plane, page = machine.planes_of(side)[0], machine.page_of(side)
    tiles = {cell: machine.pool[cell] for cell in shown.occupied}
    patterns = [pattern(tile, plane, shown.rows[cell].tolist(), machine=machine) for cell, tile in tiles.items()]
    cells = range(machine.cells)
    return patterns + [entry(page, cell, tiles.get(cell, machine.blank_tile), machine=machine) for cell in cells]


def revealed(shown: Picture, side: int, *, machine: Machine = MACHINE) -> list[Burst]:
    """A whole picture for one side, and the view turned to it from the other."""
    return [*sent(shown, side, machine=machine), *machine.view_bursts(side, 1 - side)]


def cost(bursts: Iterable[Burst], machine: Machine = MACHINE) -> int | Fraction:
    """Cycles of all of ``bursts``."""
    return sum(machine.cost(burst) for burst in bursts)
