"""Every short trace of a tiny machine: three words out of eleven, after each of three set-ups.

The machine has one cell beside a neighbour's, tiles 1 and 2 for a pool, 0 the blank one and 3 the rest of the screen's;
2 planes, 2 map pages. A blanking has 12 cycles; a burst costs 1, and 1 a byte, so not everything fits.
"""

from dataclasses import dataclass
from itertools import product

from planeproof.contract import Burst, Demands, Machine, Outside, Picture, Scene, Tiles, Timing, Window
from planeproof.judge import Play, play
from tests.judge.scripted import FULL, Blanking, entry, pattern, picture, scripted

MACHINE = Machine(
    name="tiny",
    window=Window(columns=1, rows=1, map_columns=2),
    tiles=Tiles(count=4, pool=(1, 2)),
    time=Timing(standard="tiny", lines=52, shown=40, cycles_per_line=1, setup=1, per_byte=1),
    outside=Outside.LOST,
    demands=Demands(patience=1),
)
SHOWN: Picture = picture(FULL)
NEXT_BLANKING = None
WORDS: tuple[Blanking | None, ...] = (
    [pattern(1, 0, [255], machine=MACHINE)],
    [pattern(1, 1, FULL, machine=MACHINE)],
    [pattern(3, 1, [255], machine=MACHINE)],
    [entry(0, 0, 1, machine=MACHINE)],
    [entry(1, 0, 1, machine=MACHINE)],
    [entry(1, 0, 3, machine=MACHINE)],
    [Burst(MACHINE.map_address(0, 0) + 1, b"\x01")],
    MACHINE.view_bursts(0, 1),
    MACHINE.view_bursts(1, 0),
    [Burst(MACHINE.palette_address + 2, b"\x01")],
    NEXT_BLANKING,
)
_HIDDEN_HOLDS_IT = [*MACHINE.view_bursts(0), pattern(1, 1, FULL, machine=MACHINE), entry(1, 0, 1, machine=MACHINE)]
SET_UPS: tuple[Blanking, ...] = (
    MACHINE.view_bursts(0),
    _HIDDEN_HOLDS_IT,
    [*_HIDDEN_HOLDS_IT, entry(0, 0, 1, machine=MACHINE)],
)


@dataclass(frozen=True, kw_only=True, eq=False)
class Trace:
    """Three words after a set-up; one picture is taken."""

    words: tuple[Blanking | None, ...]
    set_up: Blanking

    def play(self) -> Play:
        """What comes of it."""
        blankings: list[list[Burst]] = [[]]
        for word in self.words:
            if word is None:
                blankings.append([])
            else:
                blankings[-1].extend(word)
        return play(Scene.of(MACHINE, [SHOWN]), scripted(blankings, set_up=self.set_up))


TRACES = tuple(Trace(words=words, set_up=set_up) for words, set_up in product(product(WORDS, repeat=3), SET_UPS))
