"""The state of a scheduler's steps as numbers: the same formulas, evaluated.

There is no second reading of a step that could differ from the one that was proved: guards, facts and effects are
the terms of `planeproof.spec.steps.transitions`, on tables of literals, and simplified.
"""

from collections.abc import Iterable, Mapping, Sequence
from functools import partial
from itertools import product

import z3

from planeproof.contract import Machine
from planeproof.spec.steps import transitions
from planeproof.spec.steps.addresses import Addresses
from planeproof.spec.steps.form import SEND_BYTE, SEND_ENTRY, SHOW, TAKE, Named, Steps
from planeproof.spec.steps.site import Site
from planeproof.spec.steps.state import Plan, State
from planeproof.spec.vocabulary import Formula, Term

Broken = tuple[str, ...]
"""Names of the guards or facts that do not hold: none, and the step was taken."""


class Ghost:
    """The steps of ``steps`` on ``machine``, taken one at a time. A step whose guards fail is not taken.

    Raises `ValueError` for a machine that steps of this family can't be for.
    """

    def __init__(self, steps: Steps, machine: Machine) -> None:
        self.steps = steps
        self.addresses = Addresses(machine=machine, sharing=steps.sharing)
        self.site = Site.given(
            z3.Context(),
            steps.sharing,
            tiles=machine.tiles.count,
            cells=machine.cells,
            blank=machine.blank_tile,
            half_of={tile: place % 2 for place, tile in enumerate(machine.pool)},
        )
        self.state = State.first(self.site, partial(steps.usable, self.site))

    # --- what it knows -------------------------------------------------------------------------------------

    @property
    def seen(self) -> int:
        """The side that is taken to be seen."""
        return _number(self.state.own.seen)

    @property
    def busy(self) -> bool:
        """Whether it is at work on a picture."""
        return _holds(self.state.own.busy)

    def pending_bytes(self) -> list[tuple[int, int]]:
        """(tile, row) of each byte of the hidden side that is pending."""
        places = product(range(self.site.tiles), range(self.site.rows))
        return [at for at in places if _holds(self.state.own.pending(*self._at(*at)))]

    def pending_entries(self) -> list[int]:
        """The cells whose entry is pending."""
        return [n for n, cell in enumerate(self.site.all_cells) if _holds(self.state.own.entry_pending(cell))]

    def usable(self, tile: int) -> bool:
        """Whether the hidden side may use ``tile``."""
        return _holds(self.state.own.may_use(self.state.own.hidden, self.site.all_tiles[tile]))

    def placed(self, cell: int) -> int:
        """The tile that the hidden side's page names in ``cell``, or will."""
        return _number(self.state.own.placed(self.state.own.hidden, self.site.all_cells[cell]))

    # --- what it does --------------------------------------------------------------------------------------

    def take(self, units: Sequence[Sequence[int]], place: Sequence[int], cell_of: Mapping[int, int]) -> Broken:
        """Take a picture of these units, with ``place`` for its cells; ``cell_of`` has a cell of each tile in use."""
        site, own = self.site, self.state.own
        plan = Plan(
            own=own,
            picture=site.table("picture", lambda c, r: site.number(units[_number(c)][_number(r)], site.unit_sort)),
            place=site.table("cells", lambda c: site.number(place[_number(c)], site.tile_sort)),
            cell_of=site.table("tiles", lambda t: site.number(cell_of.get(_number(t), 0), site.cell_sort)),
        )
        broken = _broken([self.steps.guards(TAKE, own)])
        if not broken:
            broken = _broken(self.steps.facts(own, plan, *at) for at in product(site.all_cells, site.all_rows))
        if not broken:
            self.state = transitions.taken(self.steps, self.state, plan)
        return broken

    def byte(self, tile: int, row: int) -> tuple[int, int]:
        """The store that a byte sent now would be written for, and the byte."""
        own = self.state.own
        store = 0 if self.site.sharing.packed else _number(self.site.sharing.store(self.steps.byte_goes_to(own)))
        return store, _number(self.steps.byte_sent(own, *self._at(tile, row)))

    def send_byte(self, tile: int, row: int) -> Broken:
        """Send one byte."""
        at = self._at(tile, row)
        broken = _broken([self.steps.guards(SEND_BYTE, self.state.own, *at)])
        if not broken:
            self.state = transitions.byte_sent(self.steps, self.state, *at)
        return broken

    def send_entry(self, cell: int) -> Broken:
        """Send one entry."""
        at = self.site.all_cells[cell]
        broken = _broken([self.steps.guards(SEND_ENTRY, self.state.own, at)])
        if not broken:
            self.state = transitions.entry_sent(self.state, at)
        return broken

    def show(self) -> Broken:
        """Show the hidden side."""
        broken = _broken(self._show_guards())
        if not broken:
            self.state = transitions.shown(self.state)
        return broken

    def lose(self) -> None:
        """A blanking was lost."""
        self.state = transitions.blanking_lost(self.steps, self.state)

    def _show_guards(self) -> Iterable[Named]:
        """At every tile, row and cell, but for each guard only as far as it speaks of them."""
        own, site = self.state.own, self.site
        every = {"tile": site.all_tiles, "row": site.all_rows, "cell": site.all_cells}
        for name, spoken_of in self._spoken_of().items():
            places = (values if what in spoken_of else values[:1] for what, values in every.items())
            yield from ({name: self.steps.guards(SHOW, own, *at)[name]} for at in product(*places))

    def _spoken_of(self) -> dict[str, set[str]]:
        """Which of tile, row and cell each guard of `show` depends on: which names stand in its formula."""
        site = Site.any(z3.Context(), self.site.sharing, tiles=2, cells=2, rows=self.site.rows)
        own = State.any(site, partial(self.steps.usable, site)).own
        sorts = {"tile": site.tile_sort, "row": site.row_sort, "cell": site.cell_sort}
        guards = self.steps.guards(SHOW, own, *(z3.Const(what, sort) for what, sort in sorts.items()))
        return {name: _names(guard) & sorts.keys() for name, guard in guards.items()}

    def _at(self, tile: int, row: int) -> tuple[Term, Term]:
        return self.site.all_tiles[tile], self.site.all_rows[row]


def _broken(conditions: Iterable[Named]) -> Broken:
    """The names of those that do not hold, once each."""
    return tuple(dict.fromkeys(name for named in conditions for name, formula in named.items() if not _holds(formula)))


def _holds(formula: Formula) -> bool:
    return bool(z3.is_true(z3.simplify(formula)))


def _number(term: Term) -> int:
    return int(z3.simplify(term).as_long())


def _names(formula: Formula) -> set[str]:
    if not formula.children():
        return {formula.decl().name()}
    return set().union(*(_names(child) for child in formula.children()))
