"""The guards and plan facts of a scheduler, and the scheduler without one: to see that each is needed, and for what."""

from copy import copy
from functools import partial

import z3

from planeproof.spec.steps.form import SEND_BYTE, SEND_ENTRY, SHOW, TAKE, Steps
from planeproof.spec.steps.induction import any_plan, full_site
from planeproof.spec.steps.state import State


def guards_of(steps: Steps) -> tuple[str, ...]:
    """The names of all guards, in the order of the steps."""
    state = _any_state(steps)
    site, own = state.site, state.own
    sorts = {"tile": site.tile_sort, "row": site.row_sort, "cell": site.cell_sort}
    tile, row, cell = (z3.Const(name, sort) for name, sort in sorts.items())
    places = {TAKE: (), SEND_BYTE: (tile, row), SEND_ENTRY: (cell,), SHOW: (tile, row, cell)}
    return tuple(name for step, at in places.items() for name in steps.guards(step, own, *at))


def facts_of(steps: Steps) -> tuple[str, ...]:
    """The names of all plan facts."""
    state = _any_state(steps)
    site = state.site
    return tuple(
        steps.facts(state.own, any_plan(state), z3.Const("cell", site.cell_sort), z3.Const("row", site.row_sort))
    )


def without(steps: Steps, name: str) -> Steps:
    """The same scheduler without the guard or plan fact of that name.

    Raises `ValueError`, naming those there are, if it has none such.
    """
    there = (*guards_of(steps), *facts_of(steps))
    if name not in there:
        raise ValueError(f"{steps.name}: no guard or plan fact {name!r}; there are: {', '.join(there)}")
    changed = copy(steps)
    changed.waived = steps.waived | {name}
    return changed


def refuse_unknown_waivers(steps: Steps) -> None:
    """Raise `ValueError` where ``waived`` names a guard or plan fact that there is not: it would waive nothing."""
    whole = copy(steps)
    whole.waived = frozenset()
    there = (*guards_of(whole), *facts_of(whole))
    unknown = sorted(steps.waived - set(there))
    if unknown:
        raise ValueError(f"waived names {', '.join(map(repr, unknown))}; there are: {', '.join(there)}")


def _any_state(steps: Steps) -> State:
    site = full_site(steps.sharing, z3.Context())
    return State.any(site, partial(steps.usable, site))
