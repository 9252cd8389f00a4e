"""The form in which you write a scheduler, to have it proved or refuted: a few lines a decision, never an invariant.

A scheduler here is a set of guarded steps. Each step may be taken at any time its guards hold, in any order, split
over blankings in any way: one step writes one pattern byte, or one map entry, or changes the view. So a proof speaks
of every way to spread the work, and a guard that only saves work is none of the proof's business: leave it out.

    take         the picture that is offered, with a plan: a tile for each cell (guard: idle)
    send_byte    one byte of the hidden side (guard: the tile is one that this side may use)
    send_entry   one entry of the hidden side's page (no guard: sending it again does no harm)
    show         the hidden side (guards: at work, nothing pending)

The framework owns memory, the view, the viewer and the invariant. You say what becomes pending when a picture is
taken, and may replace any other decision. All you are given is ``own``, the scheduler's own memory, and ``plan``;
write conditions with z3: ``==``, ``!=``, ``z3.And``, ``z3.Or``, ``z3.Not``, ``z3.If``. The one that sends only what
differs:

>>> class Delta(HiddenPlane):
...     def byte_becomes_pending(self, own, plan, tile, row):
...         return plan.wanted(tile, row) != own.shadow(own.hidden, tile, row)
...
...     def entry_becomes_pending(self, own, plan, cell):
...         return plan.place(cell) != own.placed(own.hidden, cell)

>>> from planeproof.spec.steps import decide
>>> decide(Delta()).answer.name
'PROVED'
"""

from abc import ABC, abstractmethod
from collections.abc import Callable, Mapping
from typing import TypeAlias

import z3

from planeproof.spec.steps.sharing import ONE_PLANE, PACKED, PLANES, Sharing
from planeproof.spec.steps.site import Site
from planeproof.spec.steps.state import Own, Plan
from planeproof.spec.vocabulary import Formula, Term

Named: TypeAlias = Mapping[str, Formula]
"""Conditions by their names: what a refutation, or a burst that does not conform, is told by."""


TAKE, SEND_BYTE, SEND_ENTRY, SHOW = "take", "send-byte", "send-entry", "show"
"""The steps that have guards."""


class Steps(ABC):
    """A scheduler as guarded steps. Derive from one of the families: `HiddenPlane`, `Packed`, `PageFlip`."""

    sharing: Sharing
    waived: frozenset[str] = frozenset()
    """Guards and plan facts that are left out, to see what for they are; see `planeproof.spec.steps.guards`."""

    @property
    def name(self) -> str:
        """What reports call it."""
        return " without ".join([type(self).__name__, *map(repr, sorted(self.waived))])

    def guards(self, step: str, own: Own, *at: Term) -> Named:
        """The guards of ``step`` at a place: none, a tile and a row, a cell, or all three."""
        asked: dict[str, Callable[..., Named]] = {
            TAKE: self.take_guards,
            SEND_BYTE: self.byte_guards,
            SEND_ENTRY: self.entry_guards,
            SHOW: self.show_guards,
        }
        return {name: guard for name, guard in asked[step](own, *at).items() if name not in self.waived}

    def facts(self, own: Own, plan: Plan, cell: Term, row: Term) -> Named:
        """The plan facts at one cell and row."""
        return {name: f for name, f in self.plan_facts(own, plan, cell, row).items() if name not in self.waived}

    @property
    def heeds_losses(self) -> bool:
        """Whether a lost blanking means anything to it."""
        return type(self).byte_pending_after_loss is not Steps.byte_pending_after_loss

    # --- yours to say --------------------------------------------------------------------------------------

    @abstractmethod
    def byte_becomes_pending(self, own: Own, plan: Plan, tile: Term, row: Term) -> Formula:
        """Whether that byte of the hidden side must be sent for the picture that was just taken."""

    @abstractmethod
    def entry_becomes_pending(self, own: Own, plan: Plan, cell: Term) -> Formula:
        """Whether that entry of the hidden side's page must be sent."""

    # --- yours to replace ----------------------------------------------------------------------------------

    def plan_facts(self, own: Own, plan: Plan, cell: Term, row: Term) -> Named:
        """What every plan keeps, at any one cell and row. A proof holds for code whose plans keep these facts."""
        place = plan.place(cell)
        empty, first = place == own.blank, plan.cell_of(place)
        return {
            "a cell gets a tile that the hidden side may use, or the blank one": z3.Or(
                empty, own.may_use(own.hidden, place)
            ),
            "only an empty cell gets the blank tile": z3.Implies(empty, plan.picture(cell, row) == 0),
            "a tile in use has a cell": z3.Or(empty, plan.place(first) == place),
            "cells of one tile look the same": z3.Or(empty, plan.picture(first, row) == plan.picture(cell, row)),
        }

    def take_guards(self, own: Own) -> Named:
        """When a picture may be taken."""
        return {"it is idle": z3.Not(own.busy)}

    def byte_guards(self, own: Own, tile: Term, row: Term) -> Named:
        """When a byte may be sent."""
        return {"the tile is one that the hidden side may use": own.may_use(own.hidden, tile)}

    def entry_guards(self, own: Own, cell: Term) -> Named:
        """When an entry may be sent."""
        return {}

    def show_guards(self, own: Own, tile: Term, row: Term, cell: Term) -> Named:
        """When the hidden side may be shown: each must hold for every tile, row and cell."""
        return {
            "it is at work": own.busy,
            "no byte is pending": z3.Not(own.pending(tile, row)),
            "no entry is pending": z3.Not(own.entry_pending(cell)),
        }

    def byte_goes_to(self, own: Own) -> Term:
        """The side whose planes are written."""
        return own.hidden

    def byte_sent(self, own: Own, tile: Term, row: Term) -> Term:
        """The byte that is written; on packed storage by reading the shadow, changing it and writing the whole."""
        return own.byte(own.hidden, tile, row)

    def byte_pending_after_loss(self, own: Own, tile: Term, row: Term) -> Formula:
        """Whether that byte is pending after a blanking that was lost. As before, unless the scheduler miscounts."""
        return own.pending(tile, row)

    def usable(self, site: Site, side: Term, tile: Term) -> Formula:
        """Whether ``side`` may use ``tile``: where it has planes of its own, any tile of the pool."""
        return site.pool(tile)


class HiddenPlane(Steps):
    """Two planes and two map pages: a tile holds both pictures, and a palette hides one."""

    sharing = PLANES


class Packed(HiddenPlane):
    """The same, where each byte holds bits of both planes."""

    sharing = PACKED


class PageFlip(Steps):
    """One plane and two map pages: nothing is hidden in a tile, so each side has half of the pool for itself."""

    sharing = ONE_PLANE

    def usable(self, site: Site, side: Term, tile: Term) -> Formula:
        """The tiles of the side's own half."""
        return z3.And(site.pool(tile), site.half(tile) == side)
