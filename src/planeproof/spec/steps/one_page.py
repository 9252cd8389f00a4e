"""The third family: one map page, so that a tile holds what a cell shows and, in its hidden plane, what it will show.

The invariant of two pages does not fit: entries that are being seen are written, which changes nothing if the new tile
looks the same. So the plan is by pairs (seen, next), and the scheduler remembers what is seen. The strategy is given
here as guarded steps like the others; it is proved, but has no form of its own for users yet, and no search for
scenes.

    take         with a tile for each pair (guard: idle)
    release      a cell that looks empty names the blank tile (guard: it looks empty)
    send_byte    one byte of either plane (guards: a tile of the pool; what is being seen does not change)
    send_entry   one entry (guard: its tile has all of what is being seen)
    show         the hidden plane (guards: at work, nothing pending, every entry sent)
"""

from collections.abc import Callable
from dataclasses import dataclass, replace

import z3

from planeproof.spec.obligation import Obligation, Question
from planeproof.spec.steps.form import SEND_BYTE, SEND_ENTRY, SHOW, TAKE, Named
from planeproof.spec.steps.functions import Function, changed
from planeproof.spec.steps.induction import START, Case, each_once, everywhere, full_site, small_site
from planeproof.spec.steps.invariant import FRAME, Spot
from planeproof.spec.steps.sharing import PLANES
from planeproof.spec.steps.site import FULL_CELLS, FULL_TILES, Site
from planeproof.spec.vocabulary import Formula, Term

RELEASE = "release"


@dataclass(frozen=True, kw_only=True, eq=False)
class PageState:
    """Memory, what the viewer sees and is owed; then the scheduler's own: side, look, shadow, entries, pending, busy.

    ``look`` is its copy of the picture that is seen, ``held`` the entries as they are now, ``placed`` as they will be.
    """

    site: Site
    units: Function
    entries: Function
    seen: Term
    current: Function
    due: Function
    owed: Formula
    side: Term
    look: Function
    shadow: Function
    held: Function
    placed: Function
    pending: Function
    busy: Formula

    @classmethod
    def any(cls, site: Site) -> "PageState":
        """A state in which nothing is known."""
        unit, tile = site.unit_sort, site.tile_sort
        return cls(
            site=site,
            units=site.free("memory", "units", unit),
            entries=site.free("entry", "cells", tile),
            seen=z3.Const("side-seen", site.side_sort),
            current=site.free("current", "picture", unit),
            due=site.free("due", "picture", unit),
            owed=z3.Const("owed", site.truth),
            side=z3.Const("side-remembered", site.side_sort),
            look=site.free("look", "picture", unit),
            shadow=site.free("shadow", "units", unit),
            held=site.free("held", "cells", tile),
            placed=site.free("placed", "cells", tile),
            pending=site.free("pending", "units", site.truth),
            busy=z3.Const("busy", site.truth),
        )

    @property
    def blank(self) -> Term:
        """The blank tile."""
        return self.site.blank

    def invariant(self, spot: Spot) -> dict[str, Formula]:
        """Each conjunct by its name, said at one place."""
        tile, row, cell = spot.tile, spot.row, spot.cell
        sides, look, place = self.site.sides, self.look(cell, row), self.placed(cell)
        done = [z3.Or(self.pending(s, tile, row), self.units(s, tile, row) == self.shadow(s, tile, row)) for s in sides]
        idle = [z3.Not(self.pending(side, tile, row)) for side in sides]
        empty = [unit(side, self.blank, row) == 0 for unit in (self.units, self.shadow) for side in sides]
        return {
            "the seen side is remembered": self.seen == self.side,
            "it is at work while a picture is due": self.owed == self.busy,
            FRAME: self.units(self.seen, self.entries(cell), row) == self.current(cell, row),
            "what is seen is remembered": look == self.current(cell, row),
            "entries are remembered": self.held(cell) == self.entries(cell),
            "a byte is pending or as wanted": z3.Implies(self.site.pool(tile), z3.And(*done)),
            "wanted tiles look as what is seen": self.shadow(self.side, place, row) == look,
            "what is wanted makes the picture that is due": z3.Implies(
                self.busy, self.shadow(~self.side, place, row) == self.due(cell, row)
            ),
            "idle, nothing is pending": z3.Or(self.busy, z3.And(*idle)),
            "entries name the pool or the blank tile": self._named(self.entries(cell)),
            "wanted entries name the pool or the blank tile": self._named(place),
            "the blank tile is empty": z3.And(*empty),
        }

    def _named(self, tile: Term) -> Formula:
        return z3.Or(tile == self.blank, self.site.pool(tile))

    def spots(self, spot: Spot) -> list[Spot]:
        """The tiles that ``spot`` speaks of, by way of the entries of its cell."""
        return [replace(spot, tile=tile) for tile in (spot.tile, self.entries(spot.cell), self.placed(spot.cell))]


Guards = Callable[[Spot], Named]
Move = tuple[PageState, Guards, Callable[[Spot], list[Spot]], Named]
"""The state after, the guards before, the places besides, and what must hold besides the invariant."""


def _nowhere(_: Spot) -> list[Spot]:
    return []


def _take(before: PageState) -> Move:
    site, side, blank = before.site, before.side, before.blank
    picture, place = site.free("picture", "picture", site.unit_sort), site.free("place", "cells", site.tile_sort)
    cell_of = site.free("cell-of", "tiles", site.cell_sort)

    def shadow(of: Term, tile: Term, row: Term) -> Term:
        used = z3.And(site.pool(tile), place(cell_of(tile)) == tile)
        pair = z3.If(of == side, before.look(cell_of(tile), row), picture(cell_of(tile), row))
        return z3.If(used, pair, before.shadow(of, tile, row))

    def due(cell: Term, row: Term) -> Term:
        return z3.If(before.owed, before.due(cell, row), picture(cell, row))

    def guards(spot: Spot) -> Named:
        cell, row, tile = spot.cell, spot.row, place(spot.cell)
        empty, first = tile == blank, cell_of(tile)
        pairs = {"next": picture, "seen": before.look}
        return {
            "guard: it is idle": z3.Not(before.busy),
            "plan: a cell gets a tile of the pool, or the blank one": z3.Or(empty, site.pool(tile)),
            "plan: a tile in use has a cell": z3.Or(empty, place(first) == tile),
            **{
                f"plan: only a cell that is empty in what is {what} gets the blank tile": z3.Implies(
                    empty, of(cell, row) == 0
                )
                for what, of in pairs.items()
            },
            **{
                f"plan: cells of one tile are the same in what is {what}": z3.Or(empty, of(first, row) == of(cell, row))
                for what, of in pairs.items()
            },
        }

    after = replace(
        before,
        shadow=shadow,
        placed=place,
        pending=lambda of, tile, row: shadow(of, tile, row) != before.shadow(of, tile, row),
        due=due,
        owed=site.constant(True),
        busy=site.constant(True),
    )

    def besides(spot: Spot) -> list[Spot]:
        return [replace(spot, tile=place(spot.cell)), replace(spot, tile=blank, cell=cell_of(blank))]

    return after, guards, besides, {}


def _release(before: PageState) -> Move:
    cell = z3.Const("released-cell", before.site.cell_sort)
    after = replace(
        before,
        entries=changed(before.entries, (cell,), before.blank),
        held=changed(before.held, (cell,), before.blank),
    )
    return after, lambda spot: {"guard: the cell looks empty": before.look(cell, spot.row) == 0}, _nowhere, {}


def _send_byte(before: PageState) -> Move:
    site = before.site
    side, tile = z3.Const("sent-side", site.side_sort), z3.Const("sent-tile", site.tile_sort)
    row = z3.Const("sent-row", site.row_sort)
    at = (side, tile, row)
    after = replace(
        before,
        units=changed(before.units, at, before.shadow(*at)),
        pending=changed(before.pending, at, site.constant(False)),
    )

    def guards(spot: Spot) -> Named:
        unseen = z3.Or(side != before.side, before.held(spot.cell) != tile, z3.Not(before.pending(*at)))
        return {
            "guard: the tile is one of the pool": site.pool(tile),
            "guard: what is written is not being seen, or stays": unseen,
        }

    return after, guards, _nowhere, {"the byte is in a tile of the pool": site.pool(tile)}


def _send_entry(before: PageState) -> Move:
    cell = z3.Const("sent-cell", before.site.cell_sort)
    placed = before.placed(cell)
    after = replace(
        before, entries=changed(before.entries, (cell,), placed), held=changed(before.held, (cell,), placed)
    )

    def guards(spot: Spot) -> Named:
        waits = z3.And(placed != before.blank, before.pending(before.side, placed, spot.row))
        return {"guard: its tile has all of what is being seen": z3.Not(waits)}

    return after, guards, _nowhere, {}


def _show(before: PageState) -> Move:
    def guards(spot: Spot) -> Named:
        pending = [before.pending(side, spot.tile, spot.row) for side in before.site.sides]
        return {
            "guard: it is at work": before.busy,
            "guard: no byte is pending": z3.Not(z3.Or(*pending)),
            "guard: every entry is sent": before.held(spot.cell) == before.placed(spot.cell),
        }

    def current(cell: Term, row: Term) -> Term:
        return z3.If(before.owed, before.due(cell, row), before.current(cell, row))

    no = before.site.constant(False)

    def look(cell: Term, row: Term) -> Term:
        return before.shadow(~before.side, before.placed(cell), row)

    after = replace(before, seen=~before.side, side=~before.side, current=current, look=look, owed=no, busy=no)
    return after, guards, _nowhere, {}


MOVES: dict[str, Callable[[PageState], Move]] = {
    TAKE: _take,
    RELEASE: _release,
    SEND_BYTE: _send_byte,
    SEND_ENTRY: _send_entry,
    SHOW: _show,
}


def case(step: str, site: Site) -> Case:
    """The invariant and the guards before ``step``, and the invariant after it."""
    before = PageState.any(site)
    spot = Spot(
        tile=z3.Const("tile", site.tile_sort),
        row=z3.Const("row", site.row_sort),
        cell=z3.Const("cell", site.cell_sort),
    )
    shown = {"side seen": before.seen, "busy": before.busy, "tile": spot.tile, "cell": spot.cell, "row": spot.row}
    if step == START:
        return Case(premises=_nothing_yet(before, spot), goals=before.invariant(spot), shown=shown)
    after, guards, besides, owned = MOVES[step](before)
    where = everywhere(site) if site.listed else [*before.spots(spot), *besides(spot)]
    premises = each_once({**before.invariant(at), **guards(at)} for at in where)
    return Case(premises=premises, goals={**after.invariant(spot), **owned}, shown=shown)


def _nothing_yet(state: PageState, spot: Spot) -> Named:
    tile, row, cell = spot.tile, spot.row, spot.cell
    places = [(side, at) for side in state.site.sides for at in (tile, state.blank, state.entries(cell))]
    places += [(side, state.placed(cell)) for side in state.site.sides]
    named = {"in memory": state.entries, "as held": state.held, "as wanted": state.placed}
    return {
        "patterns are zero": z3.And(*(state.units(side, at, row) == 0 for side, at in places)),
        "the shadow is zero": z3.And(*(state.shadow(side, at, row) == 0 for side, at in places)),
        **{f"entries name the blank tile {where}": entries(cell) == state.blank for where, entries in named.items()},
        "side 0 is shown": state.seen == 0,
        "side 0 is taken to be seen": state.side == 0,
        "the viewer has the background": state.current(cell, row) == 0,
        "the copy of what is seen is empty": state.look(cell, row) == 0,
        "no picture is due": z3.Not(state.owed),
        "it is idle": z3.Not(state.busy),
        "no byte is pending": z3.Not(z3.Or(*(state.pending(side, tile, row) for side in state.site.sides))),
    }


SAYS = {
    START: "What the contract says of memory before the set-up, and a view of side 0, fulfil the invariant.",
    TAKE: "Taking a picture, with a tile for each pair of what is seen and what is next, keeps the invariant.",
    RELEASE: "Giving a cell that looks empty the blank tile keeps the invariant: the frame stays.",
    SEND_BYTE: "Sending one byte of either plane keeps the invariant: the frame stays.",
    SEND_ENTRY: "Sending one entry of the page that is being seen keeps the invariant: the frame stays.",
    SHOW: "Showing the hidden plane keeps the invariant: the frame is then the picture that was due, whole.",
}


def obligation(step: str, spared: frozenset[str] = frozenset()) -> Obligation:
    """The obligation that ``step`` keeps the invariant, without the premises that it can do without."""

    def question(site: Site) -> Question:
        return case(step, site).question

    return Obligation(
        id=f"one-page-{step}",
        theorem=5,
        statement=SAYS[step],
        size=f"any pool of {FULL_TILES} tiles, two planes, one page, {FULL_CELLS:,} cells, 8 rows",
        build=lambda context: question(full_site(PLANES, context)),
        small=lambda context: question(small_site(PLANES, context)),
        exact=step == START,
        dropped=spared,
    )
