"""What a step changes: the scheduler's own memory, and picture memory with what the viewer is owed."""

from dataclasses import dataclass

import z3

from planeproof.spec.steps.functions import Function
from planeproof.spec.steps.site import Site
from planeproof.spec.vocabulary import Formula, Term


@dataclass(frozen=True, kw_only=True, eq=False)
class Own:
    """All that a scheduler knows, and so all that its guards may read.

    A shadow of picture memory *as it will be once everything pending is sent*, which bytes and entries are pending,
    which side it takes to be seen, and whether it is at work on a picture.
    """

    site: Site
    seen: Term
    units: Function
    entries: Function
    pending_bytes: Function
    pending_entries: Function
    busy: Formula
    usable: Function

    @property
    def hidden(self) -> Term:
        """The side that is not seen."""
        return ~self.seen

    @property
    def blank(self) -> Term:
        """The blank tile."""
        return self.site.blank

    @property
    def rows(self) -> tuple[Term, ...]:
        """Every row of a tile."""
        return self.site.all_rows

    def shadow(self, side: Term, tile: Term, row: Term) -> Term:
        """The unit that ``side`` has, or will have, in a byte of ``tile``."""
        return self.units(self.site.sharing.store(side), tile, row)

    def placed(self, side: Term, cell: Term) -> Term:
        """The tile that the page of ``side`` names, or will name, in ``cell``."""
        return self.entries(side, cell)

    def pending(self, tile: Term, row: Term) -> Formula:
        """Whether that byte of the hidden side is still to be sent."""
        return self.pending_bytes(tile, row)

    def entry_pending(self, cell: Term) -> Formula:
        """Whether that entry of the hidden side's page is still to be sent."""
        return self.pending_entries(cell)

    def may_use(self, side: Term, tile: Term) -> Formula:
        """Whether ``side`` may use ``tile``, by the scheduler's own division of the pool."""
        return self.usable(side, tile)

    def byte(self, side: Term, tile: Term, row: Term) -> Term:
        """The byte that memory is to hold there: on packed storage with the other side's bits as they are."""
        sharing = self.site.sharing
        stores = self.site.sides[: sharing.stores]
        return sharing.byte([self.units(store, tile, row) for store in stores], sharing.store(side))

    def byte_alone(self, side: Term, tile: Term, row: Term) -> Term:
        """The same byte with the bits of the other side 0, as if nobody had a use for them."""
        sharing, units = self.site.sharing, []
        for store in self.site.sides[: sharing.stores]:
            kept = self.units(store, tile, row)
            units.append(z3.If(sharing.store(side) == store, kept, kept & 0))
        return sharing.byte(units, sharing.store(side))


@dataclass(frozen=True, kw_only=True, eq=False)
class Plan:
    """What a scheduler decides when it takes ``picture``: a tile for each cell, a cell for each tile in use."""

    own: Own
    picture: Function
    place: Function
    cell_of: Function

    def used(self, tile: Term) -> Formula:
        """Whether the picture is to have ``tile`` on the hidden side."""
        return z3.And(self.own.may_use(self.own.hidden, tile), self.place(self.cell_of(tile)) == tile)

    def wanted(self, tile: Term, row: Term) -> Term:
        """The unit that the hidden side is to have there: the picture's if the tile is used, else what it has."""
        kept = self.own.shadow(self.own.hidden, tile, row)
        return z3.If(self.used(tile), self.picture(self.cell_of(tile), row), kept)


@dataclass(frozen=True, kw_only=True, eq=False)
class State:
    """Picture memory, the view, what the viewer sees and is owed, and the scheduler's own memory.

    ``seen`` is the side that palette and page show. ``current`` is the picture seen last as it should be, ``due`` the
    one that was taken first of those not shown yet, if one is ``owed``.
    """

    site: Site
    units: Function
    entries: Function
    seen: Term
    current: Function
    due: Function
    owed: Formula
    own: Own

    def unit(self, side: Term, tile: Term, row: Term) -> Term:
        """The unit that ``side`` has in a byte of ``tile``."""
        return self.units(self.site.sharing.store(side), tile, row)

    def shown(self, cell: Term, row: Term) -> Term:
        """What the viewer sees there."""
        return self.unit(self.seen, self.entries(self.seen, cell), row)

    @classmethod
    def any(cls, site: Site, usable: Function) -> "State":
        """A state in which nothing is known."""
        unit, tile, truth = site.unit_sort, site.tile_sort, site.truth
        own = Own(
            site=site,
            seen=z3.Const("side-remembered", site.side_sort),
            units=site.free("shadow", "units", unit),
            entries=site.free("placed", "entries", tile),
            pending_bytes=site.free("pending", "bytes", truth),
            pending_entries=site.free("entry-pending", "cells", truth),
            busy=z3.Const("busy", truth),
            usable=usable,
        )
        return cls(
            site=site,
            units=site.free("memory", "units", unit),
            entries=site.free("entry", "entries", tile),
            seen=z3.Const("side-seen", site.side_sort),
            current=site.free("current", "picture", unit),
            due=site.free("due", "picture", unit),
            owed=z3.Const("owed", truth),
            own=own,
        )

    @classmethod
    def first(cls, site: Site, usable: Function) -> "State":
        """The state that the set-up leaves, on a site that is listed: patterns zero, every entry blank, side 0 seen."""
        nothing, no = site.number(0, site.unit_sort), site.constant(False)
        units, entries = site.table("units", lambda *_: nothing), site.table("entries", lambda *_: site.blank)
        background = site.table("picture", lambda *_: nothing)
        own = Own(
            site=site,
            seen=site.sides[0],
            units=units,
            entries=entries,
            pending_bytes=site.table("bytes", lambda *_: no),
            pending_entries=site.table("cells", lambda *_: no),
            busy=no,
            usable=usable,
        )
        return cls(
            site=site,
            units=units,
            entries=entries,
            seen=site.sides[0],
            current=background,
            due=background,
            owed=no,
            own=own,
        )
