"""Theorem 5 for one scheduler: each step keeps the invariant, as obligations without quantifiers.

At full size every premise about all tiles, rows and cells is given at the few places that matter, which is enough
for a proof, but a model is then no counterexample: the answer is UNKNOWN, and a search for a scene decides. The same
obligation on a small machine is given everywhere; there a model is an exact counterexample to the induction.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import partial
from itertools import product

import z3

from planeproof.spec.obligation import Obligation, Question
from planeproof.spec.steps import transitions
from planeproof.spec.steps.form import SEND_BYTE, SEND_ENTRY, SHOW, TAKE, Named, Steps
from planeproof.spec.steps.functions import Function
from planeproof.spec.steps.invariant import Spot, invariant, spots
from planeproof.spec.steps.sharing import Sharing
from planeproof.spec.steps.site import FULL_CELLS, FULL_TILES, Site
from planeproof.spec.steps.state import Plan, State
from planeproof.spec.vocabulary import Formula, Term, all_of

SMALL_TILES, SMALL_CELLS, SMALL_ROWS = 2, 2, 2

START, LOSE = "start", "lose"
"""The cases besides those of `planeproof.spec.steps.form`."""


@dataclass(frozen=True, kw_only=True, eq=False)
class Move:
    """One step: the state after it, what may be assumed before it, and what must hold besides the invariant."""

    after: State
    guards: Callable[[Spot], Named] = lambda _: {}
    owned: Named = field(default_factory=dict)
    wrong: Callable[[Spot], Named] = lambda _: {}
    besides: Callable[[Spot], tuple[Spot, ...]] = lambda _: ()


def any_plan(state: State, name: str = "") -> Plan:
    """Any picture, with any plan for it."""
    site = state.site
    return Plan(
        own=state.own,
        picture=site.free(f"picture{name}", "picture", site.unit_sort),
        place=site.free(f"place{name}", "cells", site.tile_sort),
        cell_of=site.free(f"cell-of{name}", "tiles", site.cell_sort),
    )


def _take(steps: Steps, before: State) -> Move:
    plan = any_plan(before)
    after = transitions.taken(steps, before, plan)

    def guards(spot: Spot) -> Named:
        facts = steps.facts(before.own, plan, spot.cell, spot.row)
        return _titled("guard", steps.guards(TAKE, before.own)) | _titled("plan", facts)

    def wrong(spot: Spot) -> Named:
        return {"the picture is seen at once": after.shown(spot.cell, spot.row) == after.due(spot.cell, spot.row)}

    def besides(spot: Spot) -> tuple[Spot, ...]:
        blank = before.own.blank
        return (replace(spot, tile=plan.place(spot.cell)), replace(spot, tile=blank, cell=plan.cell_of(blank)))

    return Move(after=after, guards=guards, wrong=wrong, besides=besides)


def _send_byte(steps: Steps, before: State) -> Move:
    site, own = before.site, before.own
    tile, row = z3.Const("sent-tile", site.tile_sort), z3.Const("sent-row", site.row_sort)
    after = transitions.byte_sent(steps, before, tile, row)

    def wrong(spot: Spot) -> Named:
        return {"nothing is pending any more": z3.Not(after.own.pending(spot.tile, spot.row))}

    return Move(
        after=after,
        guards=lambda _: _titled("guard", steps.guards(SEND_BYTE, own, tile, row)),
        owned={"the byte is in a tile of the pool": site.pool(tile)},
        wrong=wrong,
        besides=lambda spot: (replace(spot, tile=tile),),
    )


def _send_entry(steps: Steps, before: State) -> Move:
    cell = z3.Const("sent-cell", before.site.cell_sort)
    after = transitions.entry_sent(before, cell)

    def wrong(spot: Spot) -> Named:
        return {"no entry is pending any more": z3.Not(after.own.entry_pending(spot.cell))}

    return Move(after=after, guards=lambda _: _titled("guard", steps.guards(SEND_ENTRY, before.own, cell)), wrong=wrong)


def _show(steps: Steps, before: State) -> Move:
    after = transitions.shown(before)

    def guards(spot: Spot) -> Named:
        return _titled("guard", steps.guards(SHOW, before.own, spot.tile, spot.row, spot.cell))

    def wrong(spot: Spot) -> Named:
        return {
            "the picture before stays": after.shown(spot.cell, spot.row) == before.current(spot.cell, spot.row),
            "the next one is due": after.owed,
        }

    return Move(after=after, guards=guards, wrong=wrong)


def _lose(steps: Steps, before: State) -> Move:
    return Move(after=transitions.blanking_lost(steps, before))


_MOVES = {TAKE: _take, SEND_BYTE: _send_byte, SEND_ENTRY: _send_entry, SHOW: _show, LOSE: _lose}


def _titled(title: str, named: Named) -> dict[str, Formula]:
    return {f"{title}: {name}": formula for name, formula in named.items()}


# --- questions ---------------------------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True, eq=False)
class Case:
    """One case of the induction: what is assumed, and each goal by its name."""

    premises: Named
    goals: Named
    shown: Mapping[str, Term]
    wrong: Named = field(default_factory=dict)

    @property
    def question(self) -> Question:
        """All goals at once."""
        return Question(premises=self.premises, goal=all_of(*self.goals.values()), shown=self.shown, mutants=self.wrong)


def cases(steps: Steps) -> tuple[str, ...]:
    """The names of the cases."""
    return (START, TAKE, SEND_BYTE, SEND_ENTRY, SHOW, *([LOSE] if steps.heeds_losses else []))


def case(steps: Steps, step: str, site: Site) -> Case:
    """The invariant and the guards before ``step``, and the invariant after it."""
    before = State.any(site, partial(steps.usable, site))
    spot = Spot(
        tile=z3.Const("tile", site.tile_sort),
        row=z3.Const("row", site.row_sort),
        cell=z3.Const("cell", site.cell_sort),
    )
    if step == START:
        return _start(before, spot)
    move = _MOVES[step](steps, before)
    return Case(
        premises=_premises(before, move, spot),
        goals={**invariant(move.after, spot), **move.owned},
        shown=_shown(before, move, spot),
        wrong=move.wrong(spot),
    )


def _premises(before: State, move: Move, spot: Spot) -> dict[str, Formula]:
    site = before.site
    where = everywhere(site) if site.listed else [*spots(before, spot), *move.besides(spot)]
    given = [{**invariant(before, at), **move.guards(at)} for at in where]
    return each_once(given)


def everywhere(site: Site) -> list[Spot]:
    """Every tile, row and cell of a site that is listed, with every other."""
    places = product(site.all_tiles, site.all_rows, site.all_cells)
    return [Spot(tile=tile, row=row, cell=cell) for tile, row, cell in places]


def each_once(given: Iterable[Mapping[str, Formula]]) -> dict[str, Formula]:
    """Each premise as the conjunction of its different instances."""
    instances: dict[str, dict[int, Formula]] = {}
    for one in given:
        for name, formula in one.items():
            instances.setdefault(name, {})[formula.get_id()] = formula
    return {name: all_of(*formulas.values()) for name, formulas in instances.items()}


def _start(state: State, spot: Spot) -> Case:
    own, tile, cell = state.own, spot.tile, spot.cell
    functions: dict[str, tuple[Function, Function]] = {
        "in memory": (state.unit, state.entries),
        "in the shadow": (own.shadow, own.placed),
    }
    given: dict[str, Formula] = {}
    for where, (unit, entry) in functions.items():
        sides = state.site.sides
        entries = [entry(side, cell) for side in sides]
        units = [unit(side, at, spot.row) == 0 for side in sides for at in (tile, own.blank, *entries)]
        given[f"patterns are zero {where}"] = z3.And(*units)
        given[f"entries name the blank tile {where}"] = z3.And(*(named == own.blank for named in entries))
    given |= {
        "side 0 is shown": state.seen == 0,
        "side 0 is taken to be seen": own.seen == 0,
        "the viewer has the background": state.current(cell, spot.row) == 0,
        "no picture is due": z3.Not(state.owed),
        "it is idle": z3.Not(own.busy),
        "no byte is pending": z3.Not(own.pending(tile, spot.row)),
        "no entry is pending": z3.Not(own.entry_pending(cell)),
    }
    return Case(premises=given, goals=invariant(state, spot), shown={"side seen": state.seen, "busy": own.busy})


def _shown(before: State, move: Move, spot: Spot) -> dict[str, Term]:
    return {
        "side seen": before.seen,
        "busy": before.own.busy,
        "tile": spot.tile,
        "cell": spot.cell,
        "row": spot.row,
        "seen there before": before.shown(spot.cell, spot.row),
        "seen there after": move.after.shown(spot.cell, spot.row),
        "to be seen there after": move.after.current(spot.cell, spot.row),
    }


# --- obligations -------------------------------------------------------------------------------------------

SAYS = {
    START: "What the contract says of memory before the set-up, and a view of side 0, fulfil the invariant.",
    TAKE: "Taking a picture, with any plan that keeps the plan facts, keeps the invariant.",
    SEND_BYTE: "Sending one byte keeps the invariant: the frame stays, and the byte is in a tile of the pool.",
    SEND_ENTRY: "Sending one map entry keeps the invariant: the frame stays.",
    SHOW: "Showing the hidden side keeps the invariant: the frame is then the picture that was due, whole.",
    LOSE: "A lost blanking keeps the invariant.",
}


def full_site(sharing: Sharing, context: z3.Context) -> Site:
    """Any pool of 512 tiles, 1,024 cells, every row."""
    return Site.any(context, sharing, tiles=FULL_TILES, cells=FULL_CELLS, rows=sharing.rows)


def small_site(sharing: Sharing, context: z3.Context) -> Site:
    """Any pool of two tiles, two cells, two rows."""
    return Site.any(context, sharing, tiles=SMALL_TILES, cells=SMALL_CELLS, rows=SMALL_ROWS, listed=True)


def obligation(steps: Steps, step: str, *, name: str = "", spared: frozenset[str] = frozenset()) -> Obligation:
    """The obligation that ``step`` keeps the invariant, without the premises that it can do without.

    ``name`` is what its id begins with, the scheduler's own unless given. At the start a model is exact, for each
    premise there speaks of one value, so that what holds at the chosen places can be made to hold at all.
    """
    sharing = steps.sharing
    return Obligation(
        id=f"{name or steps.name.lower()}-{step}",
        theorem=5,
        statement=SAYS[step],
        size=f"any pool of {FULL_TILES} tiles, {sharing.name}, {FULL_CELLS:,} cells, {sharing.rows} rows",
        build=lambda context: case(steps, step, full_site(sharing, context)).question,
        small=lambda context: case(steps, step, small_site(sharing, context)).question,
        exact=step == START,
        dropped=spared,
    )
