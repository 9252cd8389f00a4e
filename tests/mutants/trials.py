"""On which machines a mutant is tried: those that ship, and variants of them that reach what no shipped one does."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache

from planeproof.candidates.reference import Columns, Delta, Fresh, InPlace, Library, Pairs, Rows
from planeproof.contract import RULES, ByteDirection, Demands, Machine, Rule, Scene, Storage, TileMap, Tiles, Window
from planeproof.judge import MakeScheduler, Profile
from planeproof.machines import read_machine
from planeproof.scenes.crystals import crystal_scenes
from planeproof.scenes.full import full_scene
from planeproof.scenes.recipes import recipe
from planeproof.scenes.relatives import laid_out_anew, with_blanking
from planeproof.scenes.source import RandomSource
from tests.candidates.meant_for import MEANT_FOR
from tests.mutants.sources import PACKAGE, needs

RECIPES = 1500
"""Recipes that a mutant is tried with, over all its trials, but..."""

LEAST, MOST = 100, 300
"""... at least and at most so many in each."""

EARLY = 40
"""Recipes before the scenes on the machine as given, which take longer."""


def _label(**parts: object) -> Machine:
    """The shipped label with other parts, laid out anew; its bursts may step over a row."""
    label = read_machine("case-label")
    return laid_out_anew(replace(label, memory=None, **parts), label)  # type: ignore[arg-type]


def _wide() -> Machine:
    return _label(map=replace(read_machine("case-label").map, entry_bytes=2))


def _packed() -> Machine:
    return _label(tiles=replace(read_machine("case-label").tiles, storage=Storage.PACKED))


def _without_steps() -> Machine:
    label = read_machine("case-label")
    return replace(label, memory=replace(label.layout, steps=(1,)))


def _one_column(*, first: int, entry_bytes: int) -> Machine:
    """Four cells below one another, five tiles from ``first`` on, and above them the blank one."""
    tiles = Tiles(count=first + 6, pool=tuple(range(first, first + 5)), blank=first + 5)
    return _label(window=Window(columns=1, rows=4), map=TileMap(pages=1, entry_bytes=entry_bytes), tiles=tiles)


def _tall() -> Machine:
    """Two columns of six cells, and a blanking that ends within the second one."""
    label = read_machine("case-label")
    tiles = Tiles(count=14, pool=tuple(range(1, 13)))
    return with_blanking(_label(window=Window(columns=2, rows=6), tiles=tiles), 90, time=label.time)


def _dear_bursts() -> Machine:
    """A burst costs more to begin than a whole tile to pass over, and between two tiles of the pool is another's."""
    whole = read_machine("vitrine-60")
    tiles, window = Tiles(count=6, pool=(1, 3, 5)), Window(columns=3, rows=1)
    return replace(whole, memory=None, window=window, tiles=tiles, time=replace(whole.time, setup=200))


def _down() -> Machine:
    drawer = read_machine("drawer-front")
    return replace(drawer, tiles=replace(drawer.tiles, byte=ByteDirection.COLUMN))


def _one_page() -> Machine:
    floor = read_machine("mosaic-floor")
    return replace(floor, memory=None, map=replace(floor.map, pages=1))


def _four_planes(shape: str) -> Machine:
    """Planes for four pictures, of which these schedulers use two."""
    machine = read_machine(shape)
    tiles = replace(machine.tiles, planes=4)
    return replace(machine, memory=None, tiles=tiles, colours=replace(machine.colours, entries=None))


def _two_banks() -> Machine:
    """Three cells, and in each of two banks two tiles, the first of which is the first of its bank."""
    tiles = Tiles(count=6, pool=(0, 1, 3, 4), blank=2, planes=1)
    window, tile_map = Window(columns=3, rows=1), TileMap(pages=1, banks=2)
    return replace(read_machine("name-plate"), window=window, tiles=tiles, map=tile_map)


def _tight(cycles: int, must_show: int) -> Machine:
    """Four cells and one tile, with a blanking of so many cycles.

    At worst the first cell is emptied, the last one filled, and a pattern sent: 2 x (14 + 8) + 14 + 8 x 8 = 122 cycles.
    """
    plate = read_machine("name-plate")
    tiles, window = Tiles(count=2, pool=(1,), planes=1), Window(columns=4, rows=1)
    small = replace(plate, window=window, tiles=tiles, demands=Demands(must_show=must_show))
    return with_blanking(small, cycles, time=plate.time)


VARIANTS: tuple[tuple[str, Callable[[], Machine], MakeScheduler], ...] = (
    ("case-label, wide entries", _wide, Pairs),
    ("case-label, wide entries", _wide, Columns),
    ("case-label, packed", _packed, Pairs),
    ("case-label, without steps", _without_steps, Columns),
    ("case-label, one column", lambda: _one_column(first=2, entry_bytes=1), Columns),
    ("case-label, one column, wide entries", lambda: _one_column(first=254, entry_bytes=2), Columns),
    ("case-label, tall", _tall, Columns),
    ("vitrine-60, dear bursts", _dear_bursts, Delta),
    ("drawer-front, bytes down", _down, Fresh),
    ("mosaic-floor, one page", _one_page, Pairs),
    ("case-label, four planes", lambda: _four_planes("case-label"), Pairs),
    ("vitrine-60, four planes", lambda: _four_planes("vitrine-60"), Delta),
    ("long-frieze, four planes", lambda: _four_planes("long-frieze"), Library),
    ("name-plate, two banks", _two_banks, InPlace),
    ("name-plate, tight", lambda: _tight(122, must_show=1), InPlace),
    ("name-plate, too tight", lambda: _tight(100, must_show=0), InPlace),
)
"""Variants of machines that ship, which reach code that no pair of `MEANT_FOR` does."""

PAIRED: tuple[tuple[str, MakeScheduler], ...] = (
    *MEANT_FOR,
    ("long-frieze", Delta),  # entries of two bytes, read back from the shadow
    ("long-frieze", Rows),
    *((name, scheduler) for name, _, scheduler in VARIANTS),
)
"""All pairs of a machine and a scheduler that mutants are tried with."""

SMALL = 12
"""Cells of a machine that needs no small relatives, for it is one."""


@cache
def machine_of(shape: str) -> Machine:
    """The machine that a trial's ``shape`` names."""
    made = {name: make for name, make, _ in VARIANTS}
    return replace(made[shape](), name=shape) if shape in made else read_machine(shape)


@dataclass(frozen=True, kw_only=True)
class Trial:
    """A machine, and the reference scheduler ``name`` of ``module`` that is meant for it."""

    shape: str
    module: str
    name: str

    def __str__(self) -> str:
        return f"{self.name} on {self.shape}"

    @property
    def asked(self) -> frozenset[Rule]:
        """All rules; in place, those of discipline are left out, which writing over what is seen can't keep."""
        return frozenset(rule for rule in RULES if self.name != InPlace.__name__ or Profile.SEEN.fails_on(rule))


def trials_of(module: str, texts: Mapping[str, str]) -> list[Trial]:
    """The machines and schedulers that a change of ``module`` concerns."""
    needed = needs(texts)
    return [trial for trial in _every() if module in needed[trial.module]]


def _every() -> Iterator[Trial]:
    for shape, make in PAIRED:
        if isinstance(make, type) and make.__module__.startswith(f"{PACKAGE}."):
            yield Trial(shape=shape, module=make.__module__.removeprefix(f"{PACKAGE}."), name=make.__name__)


def scenes_each(trials: int) -> int:
    """How many scenes each of so many trials has."""
    return min(max(RECIPES // trials, LEAST), MOST)


@cache
def scene_of(shape: str, number: int) -> Scene:
    """Scene ``number`` for a machine, the same for every mutant.

    `EARLY` recipes on its small relatives; then two on the machine as given, at its limit and with the crystal that
    turns for long; then more recipes.
    """
    machine, as_given = machine_of(shape), _as_given(shape)
    if EARLY <= number < EARLY + len(as_given):
        return as_given[number - EARLY]
    return recipe(machine, RandomSource(f"mutants/{shape}/{number}"), as_given=machine.cells <= SMALL)


@cache
def _as_given(shape: str) -> tuple[Scene, ...]:
    return (full_scene(machine_of(shape)), *crystal_scenes(machine_of(shape))[-1:])
