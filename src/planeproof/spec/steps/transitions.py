"""What each step does to memory, to what the viewer is owed, and to the scheduler's own memory.

Only here is it said, once, for proofs, for the bounded search and for the scheduler that runs.
"""

from dataclasses import replace

import z3

from planeproof.spec.steps.form import Steps
from planeproof.spec.steps.functions import changed, replaced
from planeproof.spec.steps.state import Plan, State
from planeproof.spec.vocabulary import Formula, Term


def taken(steps: Steps, state: State, plan: Plan) -> State:
    """A picture is taken: its plan is what the hidden side will have once what becomes pending is sent."""
    own, sharing = state.own, state.site.sharing

    def units(store: Term, tile: Term, row: Term) -> Term:
        return z3.If(store == sharing.store(own.hidden), plan.wanted(tile, row), own.units(store, tile, row))

    def entries(side: Term, cell: Term) -> Term:
        return z3.If(side == own.hidden, plan.place(cell), own.entries(side, cell))

    def pending(tile: Term, row: Term) -> Formula:
        return steps.byte_becomes_pending(own, plan, tile, row)

    def entry_pending(cell: Term) -> Formula:
        return steps.entry_becomes_pending(own, plan, cell)

    def due(cell: Term, row: Term) -> Term:
        return z3.If(state.owed, state.due(cell, row), plan.picture(cell, row))

    yes = state.site.constant(True)
    later = replace(
        own,
        units=replaced(own.units, units),
        entries=replaced(own.entries, entries),
        pending_bytes=replaced(own.pending_bytes, pending),
        pending_entries=replaced(own.pending_entries, entry_pending),
        busy=yes,
    )
    return replace(state, own=later, due=replaced(state.due, due), owed=yes)


def byte_sent(steps: Steps, state: State, tile: Term, row: Term) -> State:
    """One byte of one tile is written, and is pending no longer."""
    own, sharing = state.own, state.site.sharing
    goes_to, byte = sharing.store(steps.byte_goes_to(own)), steps.byte_sent(own, tile, row)
    units = state.units
    for number, store in enumerate(state.site.sides[: sharing.stores]):
        reached = state.site.constant(True) if sharing.packed else store == goes_to
        held = state.units(store, tile, row)
        units = changed(units, (store, tile, row), z3.If(reached, sharing.part(number, byte), held))
    pending = changed(own.pending_bytes, (tile, row), state.site.constant(False))
    return replace(state, units=units, own=replace(own, pending_bytes=pending))


def entry_sent(state: State, cell: Term) -> State:
    """One entry of the hidden side's page is written, and is pending no longer."""
    own, entries = state.own, state.entries
    for side in state.site.sides:
        placed = z3.If(side == own.hidden, own.placed(side, cell), state.entries(side, cell))
        entries = changed(entries, (side, cell), placed)
    pending = changed(own.pending_entries, (cell,), state.site.constant(False))
    return replace(state, entries=entries, own=replace(own, pending_entries=pending))


def shown(state: State) -> State:
    """The view changes to the side that the scheduler takes to be hidden; the viewer gets what they are owed."""
    own = state.own

    def current(cell: Term, row: Term) -> Term:
        return z3.If(state.owed, state.due(cell, row), state.current(cell, row))

    no = state.site.constant(False)
    return replace(
        state,
        seen=own.hidden,
        current=replaced(state.current, current),
        owed=no,
        own=replace(own, seen=own.hidden, busy=no),
    )


def blanking_lost(steps: Steps, state: State) -> State:
    """A blanking goes by that was not had."""
    own = state.own
    pending = replaced(own.pending_bytes, lambda tile, row: steps.byte_pending_after_loss(own, tile, row))
    return replace(state, own=replace(own, pending_bytes=pending))
