"""Small runs to draw: two cells, pictures drawn by hand."""

from collections.abc import Iterable, Sequence

from planeproof.contract import Answer, Burst, Machine, Picture, Scene, Storage, Tiles, Timing, Window
from planeproof.judge import MakeScheduler, play
from planeproof.pictures import Course, course_of

SQUARE = [255, 129, 129, 129, 129, 129, 129, 255]
SLOPE = [1, 2, 4, 8, 16, 32, 64, 128]
FULL = [255] * 8
EMPTY = [0] * 8

NICHE = Machine(name="two cells", window=Window(columns=2, rows=1), tiles=Tiles(count=4, pool=(1, 2, 3)))
NARROW = Timing(lines=30, shown=24, cycles_per_line=20, setup=10, per_byte=8)
"""A blanking of 120 cycles: one pattern of eight bytes (74) and little besides."""


def machine(storage: Storage = Storage.PLANAR, timing: Timing | None = None, planes: int = 2) -> Machine:
    """Two cells with patterns stored as ``storage`` says."""
    return Machine(
        name="two cells",
        window=Window(columns=2, rows=1),
        tiles=Tiles(count=4, pool=(1, 2, 3), storage=storage, planes=planes),
        time=Timing() if timing is None else timing,
    )


def scene(on: Machine, *pictures: Sequence[Sequence[int]]) -> Scene:
    """Pictures given as the rows of each cell, all ready at once."""
    return Scene.of(on, [Picture.from_rows(0, rows) for rows in pictures])


def course(on: Machine, make: MakeScheduler, *pictures: Sequence[Sequence[int]]) -> Course:
    """The run of ``make`` on those pictures."""
    return course_of(play(scene(on, *pictures), make))


def scripted(*blankings: Sequence[Burst], start: Sequence[Burst] = ()) -> type:
    """A scheduler that takes everything and sends just these bursts."""

    class Scripted:
        def start(self, machine: Machine) -> Iterable[Burst]:
            self.left = list(blankings)
            return start

        def offer(self, picture: Picture) -> Answer:
            return Answer.TAKEN

        def blank(self, cycles: int) -> Iterable[Burst]:
            return self.left.pop(0) if self.left else ()

    return Scripted
