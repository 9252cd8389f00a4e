"""Theorem 6, the viewer's side: which cells can't share a tile. The counting that makes a cap of it is beside this."""

from dataclasses import dataclass

import z3

from planeproof.spec.obligation import Answer, Build, Obligation, Question
from planeproof.spec.symbols import Size, Symbols
from planeproof.spec.vocabulary import Formula, Pixel, Term, all_of

FULL = Size(planes=4)
TINY = Size(planes=2, tiles=2, cells=2, rows=2)


@dataclass(frozen=True, kw_only=True)
class _Cell:
    """One cell in two frames: the tile it names and the colour it shows, at one and the same pixel of a tile."""

    tile: Term
    next_tile: Term
    seen: Term
    next_seen: Term

    @property
    def map_stays(self) -> Formula:
        return self.tile == self.next_tile


class _TwoFrames:
    """A frame and a later one, between which patterns, palette and map may change as they like."""

    def __init__(self, context: z3.Context, size: Size) -> None:
        self.symbols = Symbols(context, size)
        self.old, self.new = self.symbols.view("old-view"), self.symbols.view("new-view")
        self.before, self.after = self.symbols.memory("before"), self.symbols.memory("after")
        self.pixel = self.symbols.pixel("pixel")

    def cell(self, number: Term) -> _Cell:
        at = Pixel(cell=number, row=self.pixel.row, column=self.pixel.column)
        return _Cell(
            tile=self.before.named(self.old, number),
            next_tile=self.after.named(self.new, number),
            seen=self.before.shown(self.old, at),
            next_seen=self.after.shown(self.new, at),
        )


def _different_patterns(context: z3.Context) -> Question:
    frames = _TwoFrames(context, FULL)
    one, other = (frames.cell(frames.symbols.cell(name)) for name in ("one-cell", "other-cell"))
    return Question(
        premises={"the cells look different at some pixel": one.seen != other.seen},
        goal=one.tile != other.tile,
        shown={"tile of one": one.tile, "tile of the other": other.tile},
    )


def _pairs(context: z3.Context) -> Question:
    frames = _TwoFrames(context, FULL)
    one, other = (frames.cell(frames.symbols.cell(name)) for name in ("one-cell", "other-cell"))
    return Question(
        premises={
            "one page: both frames show the same map": z3.And(one.map_stays, other.map_stays),
            "the pairs (seen, next) differ at some pixel": z3.Or(
                one.seen != other.seen, one.next_seen != other.next_seen
            ),
        },
        goal=one.tile != other.tile,
        shown={"tile of one": one.tile, "tile of the other": other.tile},
        mutants={"the cells look different in the next frame": one.next_seen != other.next_seen},
    )


def _next_alone(context: z3.Context) -> Question:
    """As if the tiles of the next picture could be counted without those of the seen one."""
    frames = _TwoFrames(context, FULL)
    one, other = (frames.cell(frames.symbols.cell(name)) for name in ("one-cell", "other-cell"))
    return Question(
        premises={
            "one page: both frames show the same map": z3.And(one.map_stays, other.map_stays),
            "the cells stand in two tiles": one.tile != other.tile,
        },
        goal=one.next_seen != other.next_seen,
        shown={"tile of one": one.tile, "tile of the other": other.tile, "colour seen next": one.next_seen},
    )


def _split_pool(context: z3.Context) -> Question:
    frames = _TwoFrames(context, FULL)
    memory, old, new = frames.before, frames.old, frames.new
    one, other = (
        frames.pixel,
        Pixel(cell=frames.symbols.cell("other-cell"), row=frames.pixel.row, column=frames.pixel.column),
    )
    values = [z3.BitVecVal(value, FULL.planes, context) for value in range(1 << FULL.planes)]
    tile, next_tile = memory.named(old, one.cell), memory.named(new, other.cell)
    return Question(
        premises={
            "the palette stays": all_of(*(old.colour(value) == new.colour(value) for value in values)),
            "a seen cell and a next one look different": memory.shown(old, one) != memory.shown(new, other),
        },
        goal=tile != next_tile,
        shown={"tile of the seen cell": tile, "tile of the next cell": next_tile},
    )


def _cap_of_one(context: z3.Context) -> Question:
    frames = _TwoFrames(context, TINY)
    first, second = (frames.cell(z3.BitVecVal(cell, 1, context)) for cell in (0, 1))
    background, blank = frames.symbols.shade("background"), z3.BitVecVal(0, 1, context)
    empty = [
        view.colour(memory.value(blank, frames.pixel.row, frames.pixel.column)) == background
        for view, memory in ((frames.old, frames.before), (frames.new, frames.after))
    ]
    return Question(
        premises={
            "one page: both frames show the same map": z3.And(first.map_stays, second.map_stays),
            "the blank tile looks like background": all_of(*empty),
            "the seen picture has cell 0 alone": z3.And(first.seen != background, second.seen == background),
            "the next picture has cell 1 alone": z3.And(first.next_seen == background, second.next_seen != background),
        },
        goal=z3.BoolVal(False, context),
        shown={
            "tile of cell 0": first.tile,
            "tile of cell 1": second.tile,
            "then of cell 0": first.next_tile,
            "then of cell 1": second.next_tile,
        },
    )


def _obligation(name: str, statement: str, build: Build, size: str = str(FULL)) -> Obligation:
    return Obligation(id=name, theorem=6, statement=statement, size=size, build=build)


OBLIGATIONS: tuple[Obligation, ...] = (
    _obligation(
        "different-patterns",
        "Two cells that look different stand in two tiles. With the pigeonhole: no map shows more different patterns "
        "than there are tiles.",
        _different_patterns,
    ),
    _obligation(
        "one-page-pairs",
        "With one map page, two cells whose pairs (seen, next) differ stand in two tiles: seen and next picture "
        "together need a tile for each different pair.",
        _pairs,
    ),
    Obligation(
        id="one-page-next-picture-alone",
        theorem=6,
        statement="With one map page, cells stand in two tiles only if they differ in the next picture: a tile for "
        "each pattern of the next picture is enough.",
        size=str(FULL),
        build=_next_alone,
        wanted=Answer.REFUTED,
    ),
    _obligation(
        "split-pool-patterns",
        "Where the page or bank turns and the palette stays, a cell of the seen picture and a cell of the next that "
        "look different stand in two tiles: together they need a tile for each pattern of either.",
        _split_pool,
    ),
    _obligation(
        "one-page-cap-of-one",
        "With one page and one tile beside the blank one, no picture of one occupied cell can follow one that has "
        "another cell occupied.",
        _cap_of_one,
        f"{TINY.tiles} tiles of {TINY.planes} planes, {TINY.cells} cells, one page; a pixel of each tile",
    ),
)
