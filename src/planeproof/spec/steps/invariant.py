"""The fixed invariant: what is true of every state that a right scheduler reaches, said at any one place.

It is the same for a hidden plane and for a split pool; what differs is which bytes a side shares with the other and
which tiles it may use.
"""

from dataclasses import dataclass

import z3

from planeproof.spec.steps.state import State
from planeproof.spec.vocabulary import Formula, Term

FRAME = "the viewer sees the current picture"


@dataclass(frozen=True, kw_only=True)
class Spot:
    """A tile, a row and a cell: where the invariant is said."""

    tile: Term
    row: Term
    cell: Term


def invariant(state: State, spot: Spot) -> dict[str, Formula]:
    """Each conjunct by its name. ``FRAME`` is the seen rule: the frame is, everywhere, the current picture."""
    own, tile, row, cell = state.own, spot.tile, spot.row, spot.cell
    hidden, seen = own.hidden, own.seen
    seen_kept, hidden_done = (state.unit(side, tile, row) == own.shadow(side, tile, row) for side in (seen, hidden))
    return {
        "the seen side is remembered": state.seen == seen,
        "it is at work while a picture is due": state.owed == own.busy,
        FRAME: state.shown(cell, row) == state.current(cell, row),
        "what is seen is remembered": z3.Implies(own.may_use(seen, tile), seen_kept),
        "entries that are seen are remembered": state.entries(seen, cell) == own.placed(seen, cell),
        "a byte of the hidden side is pending or as wanted": z3.Implies(
            own.may_use(hidden, tile), z3.Or(own.pending(tile, row), hidden_done)
        ),
        "an entry of the hidden side is pending or as wanted": z3.Or(
            own.entry_pending(cell), state.entries(hidden, cell) == own.placed(hidden, cell)
        ),
        "what is wanted makes the picture that is due": z3.Implies(
            own.busy, own.shadow(hidden, own.placed(hidden, cell), row) == state.due(cell, row)
        ),
        "idle, nothing is pending": z3.Or(
            own.busy, z3.And(z3.Not(own.pending(tile, row)), z3.Not(own.entry_pending(cell)))
        ),
        "entries name the side's tiles or the blank one": z3.And(
            *(_names_own(state, side, state.entries(side, cell)) for side in state.site.sides)
        ),
        "wanted entries name the side's tiles or the blank one": z3.And(
            *(_names_own(state, side, own.placed(side, cell)) for side in state.site.sides)
        ),
        "the blank tile is empty": z3.And(
            *(unit(side, own.blank, row) == 0 for unit in (state.unit, own.shadow) for side in state.site.sides)
        ),
    }


def _names_own(state: State, side: Term, tile: Term) -> Formula:
    return z3.Or(tile == state.own.blank, state.own.may_use(side, tile))


def spots(state: State, spot: Spot) -> list[Spot]:
    """``spot``, and the same with each tile that it speaks of by way of an entry of its cell."""
    own, cell = state.own, spot.cell
    named = [function(side, cell) for function in (state.entries, own.placed) for side in state.site.sides]
    tiles = [spot.tile, *named, own.blank]
    return [Spot(tile=tile, row=spot.row, cell=cell) for tile in tiles]
