"""A run of a few refreshes of a tiny machine, one burst a blanking, as terms: what theorems 9 and 10 speak of.

Two sides: side s uses plane s and map page s. A burst is one pattern byte, one map entry, or the view of a side.
"""

from dataclasses import dataclass, replace
from functools import cached_property

import z3

from planeproof.spec.rules import keeps_hidden_writes
from planeproof.spec.symbols import Size, Symbols
from planeproof.spec.vocabulary import (
    Formula,
    MapEntry,
    PatternByte,
    PictureMemory,
    Pixel,
    SymbolicPicture,
    Term,
    View,
    side_bits,
)

SIZE = Size(planes=2, tiles=4, cells=2, rows=2)
SENDS_PATTERN, SENDS_ENTRY, SHOWS = 0, 1, 2


@dataclass(frozen=True, kw_only=True)
class State:
    """Memory, the side that palette and page show, and whether what is seen is the picture."""

    memory: PictureMemory
    picture: SymbolicPicture
    side: Term
    seen: Formula

    @cached_property
    def view(self) -> View:
        """Palette and page show the side."""
        return View(colour=self._colour, page=self.side, bank=z3.BitVecVal(0, 1, self.side.ctx))

    def _colour(self, value: Term) -> Term:
        return self.picture.shade(side_bits(value, self.side, 1))

    def shown(self, pixel: Pixel) -> Term:
        """The colour of ``pixel``."""
        return self.memory.shown(self.view, pixel)


@dataclass(frozen=True, kw_only=True)
class Refresh:
    """One blanking with one burst in it, then one frame. Of ``pattern`` and ``entry`` only the one of ``kind`` is."""

    kind: Term
    pattern: PatternByte
    entry: MapEntry
    before: State
    after: State

    def hidden(self, pixel: Pixel) -> Formula:
        """hidden-writes, for one pixel."""
        memory, view = self.before.memory, self.before.view
        return z3.And(
            z3.Implies(self.kind == SENDS_PATTERN, keeps_hidden_writes(memory, view, self.pattern, pixel)),
            z3.Implies(self.kind == SENDS_ENTRY, keeps_hidden_writes(memory, view, self.entry, pixel)),
        )

    def in_words(self, number: int) -> dict[str, Term]:
        """What a reader wants to know of it, by names that `planeproof.spec.witness_run` reads again."""
        name = f"refresh {number}"
        return {
            f"{name}: 0 sends a pattern byte, 1 a map entry, 2 shows": self.kind,
            f"{name}: tile": self.pattern.tile,
            f"{name}: plane": self.pattern.plane,
            f"{name}: row": self.pattern.row,
            f"{name}: byte": self.pattern.byte,
            f"{name}: page": self.entry.page,
            f"{name}: cell": self.entry.cell,
            f"{name}: entry": self.entry.entry,
            f"{name}: side then seen": self.after.side,
            f"{name}: the picture is seen": self.after.seen,
        }


def empty_memory(context: z3.Context) -> PictureMemory:
    """Patterns zero, every map entry the blank tile."""
    byte, tile = z3.BitVecVal(0, 8, context), z3.BitVecVal(0, 2, context)
    return PictureMemory(
        planes=SIZE.planes,
        pattern=lambda _tile, _plane, _row: byte,
        entry=lambda _page, _cell: tile,
        tile_of=lambda _bank, entry: entry,
    )


def first_state(memory: PictureMemory, picture: SymbolicPicture, context: z3.Context) -> State:
    """After a set-up that left ``memory`` and shows side 0."""
    unseen = z3.BoolVal(False, context)
    return State(memory=memory, picture=picture, side=z3.BitVecVal(0, 1, context), seen=unseen)


def run_from(symbols: Symbols, first: State, refreshes: int) -> list[Refresh]:
    """That many refreshes, in which anything may happen."""
    run: list[Refresh] = []
    for number in range(refreshes):
        run.append(_refresh(symbols, number, run[-1].after if run else first))
    return run


def _refresh(symbols: Symbols, number: int, before: State) -> Refresh:
    name, context = f"refresh-{number}", symbols.context
    kind = z3.BitVec(f"{name}-kind", 2, context)
    pattern = PatternByte(
        tile=symbols.tile(f"{name}-tile"),
        plane=symbols.plane(f"{name}-plane"),
        row=symbols.row(f"{name}-row"),
        byte=symbols.byte(f"{name}-byte"),
    )
    entry = MapEntry(
        page=symbols.page(f"{name}-page"), cell=symbols.cell(f"{name}-cell"), entry=symbols.tile(f"{name}-entry")
    )
    shows = kind == SHOWS
    after = replace(
        before,
        memory=_written(before.memory, kind, pattern, entry),
        side=z3.If(shows, symbols.page(f"{name}-side"), before.side),
        seen=symbols.flag(f"{name}-seen"),
    )
    return Refresh(kind=kind, pattern=pattern, entry=entry, before=before, after=after)


def _written(memory: PictureMemory, kind: Term, pattern: PatternByte, entry: MapEntry) -> PictureMemory:
    sent, placed = memory.after(pattern).pattern, memory.after(entry).entry
    return replace(
        memory,
        pattern=lambda *at: z3.If(kind == SENDS_PATTERN, sent(*at), memory.pattern(*at)),
        entry=lambda *at: z3.If(kind == SENDS_ENTRY, placed(*at), memory.entry(*at)),
    )


def picture_in_words(symbols: Symbols, picture: SymbolicPicture) -> dict[str, Term]:
    """The bytes of the picture, by names that `planeproof.spec.witness_run` reads again."""
    cells = [z3.BitVecVal(cell, 1, symbols.context) for cell in range(SIZE.cells)]
    return {
        f"picture: cell {cell}, row {row}": picture.row_byte(at, z3.BitVecVal(row, 1, symbols.context), 0)
        for cell, at in enumerate(cells)
        for row in range(SIZE.rows)
    }
