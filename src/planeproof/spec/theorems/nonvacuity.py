"""Theorem 10: all rules together admit a schedule that reveals a picture that is not empty.

A bounded run of a tiny machine, one burst a blanking, with every rule said of every cell and pixel: a model of it is a
schedule, and the witness reads as one.
"""

from dataclasses import dataclass, replace
from functools import cached_property
from itertools import product

import z3

from planeproof.spec.obligation import Answer, Obligation, Question
from planeproof.spec.rules import (
    blanking_only,
    exact_reveal,
    in_order,
    keeps_hidden_writes,
    own_memory,
    tile_cap,
    whole_reveal,
)
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
    all_of,
    pixels_of_cell,
    side_bits,
)

SIZE = Size(planes=2, tiles=4, cells=2, rows=2)
REFRESHES = 3
POOL = 0b1110
COSTS = {"set-up": 20, "per-byte": 10, "cycles": 100}
VIEW_BYTES = (1 << SIZE.planes) + 1
SENDS_PATTERN, SENDS_ENTRY, SHOWS = 0, 1, 2


@dataclass(frozen=True, kw_only=True)
class _State:
    """Memory, the side that palette and page show, and whether what is seen is the picture."""

    memory: PictureMemory
    picture: SymbolicPicture
    side: Term
    seen: Formula

    @cached_property
    def view(self) -> View:
        return View(colour=self._colour, page=self.side, bank=z3.BitVecVal(0, 1, self.side.ctx))

    def _colour(self, value: Term) -> Term:
        return self.picture.shade(side_bits(value, self.side, 1))


@dataclass(frozen=True, kw_only=True)
class _Refresh:
    """One blanking with one burst in it, then one frame."""

    kind: Term
    pattern: PatternByte
    entry: MapEntry
    before: _State
    after: _State

    def rules(self, cells: list[Term], pixels: list[Pixel]) -> list[Formula]:
        """Every rule but the two that speak of the whole run."""
        hidden = [self._hidden(pixel) for pixel in pixels]
        pool, blank = z3.BitVecVal(POOL, SIZE.tiles, self.kind.ctx), z3.BitVecVal(0, 2, self.kind.ctx)
        capped = [tile_cap(self.after.memory, self.after.view, cell, pool, blank) for cell in cells]
        owned = z3.Implies(self.kind == SENDS_PATTERN, own_memory(self.pattern, pool))
        return [*hidden, *capped, owned, *(rule for pixel in pixels for rule in self._frame(pixel))]

    def _hidden(self, pixel: Pixel) -> Formula:
        memory, view = self.before.memory, self.before.view
        return z3.And(
            z3.Implies(self.kind == SENDS_PATTERN, keeps_hidden_writes(memory, view, self.pattern, pixel)),
            z3.Implies(self.kind == SENDS_ENTRY, keeps_hidden_writes(memory, view, self.entry, pixel)),
        )

    def _frame(self, pixel: Pixel) -> tuple[Formula, ...]:
        shown, current = (state.memory.shown(state.view, pixel) for state in (self.after, self.before))
        picture = self.after.picture
        return (
            z3.Implies(self.kind == SHOWS, exact_reveal(shown, current, picture.look(pixel), self.after.seen)),
            whole_reveal(self.after.memory, self.after.view, pixel, picture, self.after.seen),
        )


def _first(symbols: Symbols, picture: SymbolicPicture) -> _State:
    """After set-up: patterns zero, every map entry the blank tile, side 0 shown."""
    byte, tile = z3.BitVecVal(0, 8, symbols.context), z3.BitVecVal(0, 2, symbols.context)
    memory = PictureMemory(
        planes=SIZE.planes,
        pattern=lambda _tile, _plane, _row: byte,
        entry=lambda _page, _cell: tile,
        tile_of=lambda _bank, entry: entry,
    )
    unseen = z3.BoolVal(False, symbols.context)
    return _State(memory=memory, picture=picture, side=z3.BitVecVal(0, 1, symbols.context), seen=unseen)


def _refresh(symbols: Symbols, number: int, before: _State) -> _Refresh:
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
    return _Refresh(kind=kind, pattern=pattern, entry=entry, before=before, after=after)


def _written(memory: PictureMemory, kind: Term, pattern: PatternByte, entry: MapEntry) -> PictureMemory:
    sent, placed = memory.after(pattern).pattern, memory.after(entry).entry
    return replace(
        memory,
        pattern=lambda *at: z3.If(kind == SENDS_PATTERN, sent(*at), memory.pattern(*at)),
        entry=lambda *at: z3.If(kind == SENDS_ENTRY, placed(*at), memory.entry(*at)),
    )


def _in_time(symbols: Symbols, kind: Term) -> Formula:
    """The one burst of a blanking fits it, at any costs of a machine."""
    set_up, per_byte, cycles = (z3.BitVec(name, 32, symbols.context) for name in ("set-up", "per-byte", "cycles"))
    spent = z3.BitVecVal(0, 32, symbols.context)
    small = z3.And(*(z3.ULT(figure, 1 << 16) for figure in (set_up, per_byte, cycles)))
    shows = blanking_only(spent, set_up, per_byte, VIEW_BYTES, cycles)
    return z3.And(small, z3.If(kind == SHOWS, shows, blanking_only(spent, set_up, per_byte, 1, cycles)))


class _Run:
    """The refreshes of a run from the set-up on, and the rules of each, said of every cell and pixel."""

    def __init__(self, context: z3.Context) -> None:
        self.symbols = Symbols(context, SIZE)
        self.picture = self.symbols.picture("picture")
        self.refreshes: list[_Refresh] = []
        for number in range(REFRESHES):
            before = self.refreshes[-1].after if self.refreshes else _first(self.symbols, self.picture)
            self.refreshes.append(_refresh(self.symbols, number, before))

    def rules(self, refresh: _Refresh) -> Formula:
        cells = [z3.BitVecVal(cell, 1, self.symbols.context) for cell in range(SIZE.cells)]
        pixels = [pixel for cell in cells for pixel in pixels_of_cell(cell, SIZE.rows)]
        known, timely = z3.ULE(refresh.kind, SHOWS), _in_time(self.symbols, refresh.kind)
        kept_order = in_order(refresh.before.seen, refresh.after.seen)
        return all_of(known, timely, kept_order, *refresh.rules(cells, pixels))

    @property
    def ink_differs(self) -> Formula:
        empty, drawn = (z3.BitVecVal(value, 1, self.symbols.context) for value in range(2))
        return self.picture.shade(empty) != self.picture.shade(drawn)


def _reveals_nothing(context: z3.Context) -> Question:
    """The search: the solver finds the schedule."""
    run = _Run(context)
    numbered = list(enumerate(run.refreshes))
    rules = {f"refresh {number} keeps the rules": run.rules(refresh) for number, refresh in numbered}
    drawn = run.picture.value(run.symbols.pixel("drawn")) == 1
    return Question(
        premises={**rules, "the picture is not empty": drawn, "ink and background differ": run.ink_differs},
        goal=z3.Not(run.refreshes[-1].after.seen),
        shown={name: term for number, refresh in numbered for name, term in _in_words(number, refresh).items()},
    )


def _one_schedule(context: z3.Context) -> Question:
    """A schedule written down, for solvers that do not find one: plane 1 of tile 2, the other page, the view."""
    run = _Run(context)
    sends, places, shows = run.refreshes
    cell, row, byte, side = 1, 1, 0x20, 1
    rows = [
        (c, r, run.picture.row_byte(z3.BitVecVal(c, 1, context), z3.BitVecVal(r, 1, context), 0))
        for c, r in product(range(SIZE.cells), range(SIZE.rows))
    ]
    pattern, entry = sends.pattern, places.entry
    return Question(
        premises={
            "the picture has pixels in one row of cell 1": all_of(
                *(held == (byte if (c, r) == (cell, row) else 0) for c, r, held in rows)
            ),
            "first that row is sent to plane 1 of tile 2": z3.And(
                sends.kind == SENDS_PATTERN,
                pattern.tile == 2,
                pattern.plane == side,
                pattern.row == row,
                pattern.byte == byte,
            ),
            "then page 1 names tile 2 in cell 1": z3.And(
                places.kind == SENDS_ENTRY, entry.page == side, entry.cell == cell, entry.entry == 2
            ),
            "then the view shows side 1": z3.And(shows.kind == SHOWS, shows.after.side == side),
            "the picture is seen from then on": z3.And(
                z3.Not(sends.after.seen), z3.Not(places.after.seen), shows.after.seen
            ),
            "the blanking has cycles to spare": z3.And(
                *(z3.BitVec(name, 32, context) == figure for name, figure in COSTS.items())
            ),
        },
        goal=all_of(*(run.rules(refresh) for refresh in run.refreshes)),
    )


def _in_words(number: int, refresh: _Refresh) -> dict[str, Term]:
    """What a reader wants to know of a refresh; of the three writes only the one that its kind says was made."""
    name = f"refresh {number}"
    return {
        f"{name}: 0 sends a pattern byte, 1 a map entry, 2 shows": refresh.kind,
        f"{name}: tile": refresh.pattern.tile,
        f"{name}: plane": refresh.pattern.plane,
        f"{name}: row": refresh.pattern.row,
        f"{name}: byte": refresh.pattern.byte,
        f"{name}: page": refresh.entry.page,
        f"{name}: cell": refresh.entry.cell,
        f"{name}: entry": refresh.entry.entry,
        f"{name}: side then seen": refresh.after.side,
        f"{name}: the picture is seen": refresh.after.seen,
    }


WORDS = f"{SIZE}, {SIZE.rows} rows a tile, every cell and pixel"

OBLIGATIONS: tuple[Obligation, ...] = (
    Obligation(
        id="rules-let-nothing-be-seen",
        theorem=10,
        statement=f"No run of {REFRESHES} refreshes that keeps all rules shows a picture that is not empty.",
        size=WORDS,
        build=_reveals_nothing,
        wanted=Answer.REFUTED,
    ),
    Obligation(
        id="a-schedule-within-the-rules",
        theorem=10,
        statement="Sending the hidden plane, then naming the tile on the hidden page, then showing that side, one "
        "burst a blanking, keeps all rules, and a picture that is not empty is seen.",
        size=WORDS,
        build=_one_schedule,
    ),
)
