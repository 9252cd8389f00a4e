"""Theorem 10: all rules together admit a schedule that reveals a picture that is not empty.

A bounded run of a tiny machine, one burst a blanking, with every rule said of every cell and pixel: a model of it is a
schedule, and the witness reads as one.
"""

from itertools import product

import z3

from planeproof.spec.bounded_run import (
    SENDS_ENTRY,
    SENDS_PATTERN,
    SHOWS,
    SIZE,
    Refresh,
    empty_memory,
    first_state,
    picture_in_words,
    run_from,
)
from planeproof.spec.obligation import Answer, Obligation, Question
from planeproof.spec.rules import (
    blanking_only,
    exact_reveal,
    in_order,
    own_memory,
    tile_cap,
    whole_reveal,
)
from planeproof.spec.symbols import Symbols
from planeproof.spec.vocabulary import Formula, Pixel, Term, all_of, pixels_of_cell

REFRESHES = 3
POOL = 0b1110
COSTS = {"set-up": 20, "per-byte": 10, "cycles": 100}
VIEW_BYTES = (1 << SIZE.planes) + 1


def _rules(refresh: Refresh, cells: list[Term], pixels: list[Pixel]) -> list[Formula]:
    """Every rule but the two that speak of the whole run."""
    context, after = refresh.kind.ctx, refresh.after
    pool, blank = z3.BitVecVal(POOL, SIZE.tiles, context), z3.BitVecVal(0, 2, context)
    hidden = [refresh.hidden(pixel) for pixel in pixels]
    capped = [tile_cap(after.memory, after.view, cell, pool, blank) for cell in cells]
    owned = z3.Implies(refresh.kind == SENDS_PATTERN, own_memory(refresh.pattern, pool))
    return [*hidden, *capped, owned, *(rule for pixel in pixels for rule in _frame(refresh, pixel))]


def _frame(refresh: Refresh, pixel: Pixel) -> tuple[Formula, ...]:
    shown, current = (state.shown(pixel) for state in (refresh.after, refresh.before))
    after, picture = refresh.after, refresh.after.picture
    return (
        z3.Implies(refresh.kind == SHOWS, exact_reveal(shown, current, picture.look(pixel), after.seen)),
        whole_reveal(after.memory, after.view, pixel, picture, after.seen),
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
        first = first_state(empty_memory(context), self.picture, context)
        self.refreshes = run_from(self.symbols, first, REFRESHES)

    def rules(self, refresh: Refresh) -> Formula:
        cells = [z3.BitVecVal(cell, 1, self.symbols.context) for cell in range(SIZE.cells)]
        pixels = [pixel for cell in cells for pixel in pixels_of_cell(cell, SIZE.rows)]
        known, timely = z3.ULE(refresh.kind, SHOWS), _in_time(self.symbols, refresh.kind)
        kept_order = in_order(refresh.before.seen, refresh.after.seen)
        return all_of(known, timely, kept_order, *_rules(refresh, cells, pixels))

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
        shown={
            **{name: term for number, refresh in numbered for name, term in refresh.in_words(number).items()},
            **picture_in_words(run.symbols, run.picture),
        },
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
