"""The guards of a scheduler, and the scheduler without one of them: to see that each is needed, and what for."""

from copy import copy
from functools import partial

import z3

from planeproof.spec.steps.form import SEND_BYTE, SEND_ENTRY, SHOW, TAKE, Steps
from planeproof.spec.steps.induction import full_site
from planeproof.spec.steps.state import State


def guards_of(steps: Steps) -> tuple[str, ...]:
    """The names of all guards, in the order of the steps."""
    site = full_site(steps.sharing, z3.Context())
    own = State.any(site, partial(steps.usable, site)).own
    sorts = {"tile": site.tile_sort, "row": site.row_sort, "cell": site.cell_sort}
    tile, row, cell = (z3.Const(name, sort) for name, sort in sorts.items())
    places = {TAKE: (), SEND_BYTE: (tile, row), SEND_ENTRY: (cell,), SHOW: (tile, row, cell)}
    return tuple(name for step, at in places.items() for name in steps.guards(step, own, *at))


def without_guard(steps: Steps, guard: str) -> Steps:
    """The same scheduler without one guard. Raises `ValueError`, naming those there are, if it has no such guard."""
    if guard not in guards_of(steps):
        raise ValueError(f"{steps.name}: no guard {guard!r}; there are: {', '.join(guards_of(steps))}")
    changed = copy(steps)
    changed.waived = steps.waived | {guard}
    return changed
