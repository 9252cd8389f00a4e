"""The stated tiny machines: small relatives of each kind, with bounds within which every scene can be played."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cached_property

from planeproof.contract import Demands, Machine, Window
from planeproof.machines import read_machine
from planeproof.scenes.relatives import laid_out_anew, least_blanking, with_blanking
from planeproof.search.exhausting.bounds import Bounds
from planeproof.search.exhausting.letters import Letters


@dataclass(frozen=True, kw_only=True)
class Tiny:
    """One tiny machine, told in a few words, and the bounds of its scenes for each kind of letters.

    ``patterns`` is for candidates that copy and compare whole patterns, ``bytes`` for those that compare bytes too,
    ``values`` for all others.
    """

    name: str
    said: str
    make: Callable[[], Machine]
    patterns: Bounds
    bytes: Bounds
    values: Bounds

    @cached_property
    def machine(self) -> Machine:
        """The machine, called as this is."""
        return replace(self.make(), name=self.name)

    def bounds(self, letters: Letters) -> Bounds:
        """The bounds for these letters."""
        return {Letters.PATTERNS: self.patterns, Letters.BYTES: self.bytes, Letters.VALUES: self.values}[letters]


def _small(
    shape: str, columns: int, rows: int, *, cap: int, first: int = 1, spare: int = 0, more: int | None = None
) -> Callable[[], Machine]:
    """The shipped ``shape`` with few cells and tiles, and the shortest blanking that it may have.

    ``cap`` tiles a bank from ``first`` on; ``spare`` columns beside the window. A blanking has ``more`` cycles than the
    least, None for as many as it takes to send a whole picture.
    """

    def make() -> Machine:
        base = read_machine(shape)
        banks, a_bank = base.map.banks, first + cap
        window = Window(columns=columns, rows=rows, map_columns=columns + spare)
        pool = tuple(bank * a_bank + first + tile for bank in range(banks) for tile in range(cap))
        tiles = replace(base.tiles, count=banks * a_bank, pool=pool, blank=0)
        roomy = replace(base.time, lines=4096, shown=rows * 8, reserve=0)
        machine = replace(base, window=window, tiles=tiles, memory=None, time=roomy, demands=Demands())
        machine = laid_out_anew(machine, base)
        cycles = least_blanking(machine) + (_whole_picture(machine) if more is None else more)
        return with_blanking(machine, cycles, time=base.time, below=0)

    return make


def _whole_picture(machine: Machine) -> int:
    tiles = machine.cap * machine.tiles.depth * machine.burst_cycles(8)
    return int(tiles + machine.cells * machine.burst_cycles(machine.map.entry_bytes)) + 1


_VALUES = Bounds(pictures=3, empty=(1,))
"""What a hidden side holds is compared with the picture after the next, so the one between may be empty."""

_LONG = Bounds(pictures=4, gaps=(0, 3), disturbed=1, within=5)
_SHORT = Bounds(pictures=3, disturbed=1, within=5)
_HALVES = replace(_SHORT, parts=2)

TINY: tuple[Tiny, ...] = (
    Tiny(
        name="one-cell",
        said="1 cell, 1 tile, two planes and two map pages, room for one pattern in a blanking",
        make=_small("vitrine-50", 1, 1, cap=1, more=0),
        patterns=_LONG,
        bytes=_HALVES,
        values=_VALUES,
    ),
    Tiny(
        name="two-cells",
        said="2 x 1 cells, 2 tiles, two planes and two map pages, room for one pattern in a blanking",
        make=_small("vitrine-60", 2, 1, cap=2, more=0),
        patterns=_SHORT,
        bytes=_SHORT,
        values=Bounds(pictures=1),
    ),
    Tiny(
        name="scarce",
        said="2 x 1 cells, 1 tile, two planes and two map pages, a panel beside the window",
        make=_small("vitrine-50", 2, 1, cap=1, first=2, spare=1, more=20),
        patterns=_SHORT,
        bytes=_SHORT,
        values=Bounds(pictures=1),
    ),
    Tiny(
        name="four-cells",
        said="2 x 2 cells, 3 tiles, two planes and two map pages, a panel beside the window",
        make=_small("vitrine-60", 2, 2, cap=3, spare=1, more=0),
        patterns=Bounds(pictures=2),
        bytes=Bounds(pictures=2),
        values=Bounds(pictures=1, values=4),
    ),
    Tiny(
        name="one-page",
        said="2 x 1 cells, 4 tiles, two planes, one map page",
        make=_small("case-label", 2, 1, cap=4, more=0),
        patterns=_SHORT,
        bytes=_SHORT,
        values=Bounds(pictures=1),
    ),
    Tiny(
        name="one-plane",
        said="1 cell, 2 tiles, one plane, two map pages",
        make=_small("twin-niche", 1, 1, cap=2, more=0),
        patterns=_LONG,
        bytes=_HALVES,
        values=_VALUES,
    ),
    Tiny(
        name="two-banks",
        said="1 cell, a tile in each of two banks, one plane",
        make=_small("two-wings", 1, 1, cap=1, more=0),
        patterns=_LONG,
        bytes=_HALVES,
        values=_VALUES,
    ),
    Tiny(
        name="columns",
        said="1 x 2 cells, 4 tiles, one plane of columns, two map pages",
        make=_small("scroll-case", 1, 2, cap=4, more=0),
        patterns=_SHORT,
        bytes=_SHORT,
        values=Bounds(pictures=1),
    ),
    Tiny(
        name="wide-entries",
        said="1 cell, tile 256 alone, two planes, two map pages, two bytes a map entry",
        make=_small("long-frieze", 1, 1, cap=1, first=256, more=0),
        patterns=_LONG,
        bytes=_HALVES,
        values=_VALUES,
    ),
    Tiny(
        name="two-bits",
        said="1 cell, 1 tile, pictures of two bits in four planes, two map pages",
        make=_small("mosaic-floor", 1, 1, cap=1, more=0),
        patterns=_SHORT,
        bytes=_SHORT,
        values=Bounds(pictures=1),
    ),
    Tiny(
        name="interleaved",
        said="1 cell, 1 tile, pictures of two bits in four interleaved planes, two map pages",
        make=_small("pigment-chart", 1, 1, cap=1, more=0),
        patterns=_SHORT,
        bytes=_SHORT,
        values=Bounds(pictures=1),
    ),
    Tiny(
        name="packed",
        said="1 cell, 1 tile, two planes in packed storage, two map pages",
        make=_small("drawer-front", 1, 1, cap=1, more=0),
        patterns=_SHORT,
        bytes=_SHORT,
        values=Bounds(pictures=3, values=16),  # of four pixels, which is what one byte holds of a picture
    ),
    Tiny(
        name="one-side",
        said="1 cell, 2 tiles, one plane, one map page, a blanking for a whole picture",
        make=_small("name-plate", 1, 1, cap=2),
        patterns=_LONG,
        bytes=_HALVES,
        values=Bounds(pictures=2),
    ),
    Tiny(
        name="roomy",
        said="1 cell, 1 tile, two planes and two map pages, a blanking for a whole picture",
        make=_small("bench", 1, 1, cap=1),
        patterns=_LONG,
        bytes=_HALVES,
        values=_VALUES,
    ),
)
"""The tiny machines. On all but the last two a picture takes several blankings."""


def tiny(name: str) -> Tiny:
    """The tiny machine of that name. Raises `ValueError`, naming those there are."""
    for one in TINY:
        if one.name == name:
            return one
    raise ValueError(f"there is no tiny machine {name!r}; there are: {', '.join(one.name for one in TINY)}")
