"""The bounded search: a scene on a small machine in which the scheduler, as it stands, breaks what it owes.

Where induction fails, its model may be of a state that is never reached. This runs from the start instead: a few
refreshes, in each of which any subset of the steps may be taken, for pictures and plans of the solver's choice.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import partial
from itertools import product

import z3

from planeproof.spec.solving import RLIMIT, answered
from planeproof.spec.steps import transitions
from planeproof.spec.steps.course import Course, Taken, Turn
from planeproof.spec.steps.form import SEND_BYTE, SEND_ENTRY, SHOW, TAKE, Named, Steps
from planeproof.spec.steps.functions import Function, Table
from planeproof.spec.steps.induction import any_plan
from planeproof.spec.steps.site import Site
from planeproof.spec.steps.state import Plan, State
from planeproof.spec.vocabulary import Formula, Term

TILES, CELLS, BLANK = 4, 2, 0
HALF_OF = {1: 0, 2: 1}
"""The pool, and the side that each tile belongs to where the pool is split: every second one. Tile 3 is outside."""
DRAWN_ROWS = 2
"""Pictures have ink in their first rows only, which makes scenes small; every row is there to be sent."""
REFRESHES = 4


@dataclass(frozen=True, kw_only=True)
class Searched:
    """What came of it: a course that breaks what is owed, or none within ``refreshes``; ``gave_up`` says why if so."""

    refreshes: int
    course: Course | None = None
    gave_up: str | None = None


@dataclass(frozen=True, kw_only=True, eq=False)
class _Choices:
    """What the solver may decide in one refresh."""

    take: Formula
    plan: Plan
    lost: Formula
    sent: dict[tuple[int, int], Formula]
    entries: dict[int, Formula]
    shows: Formula

    def read(self, model: z3.ModelRef, site: Site) -> Turn:
        """The refresh as the model has it."""
        lost = _true(model, self.lost)
        return Turn(
            taken=self._taken(model, site) if _true(model, self.take) else None,
            lost=lost,
            sent=tuple(place for place, done in self.sent.items() if not lost and _true(model, done)),
            entries=tuple(cell for cell, done in self.entries.items() if not lost and _true(model, done)),
            shows=not lost and _true(model, self.shows),
        )

    def wishes(self) -> Iterable[Formula]:
        """What makes a scene smaller: fewer pictures, less ink, fewer steps."""
        assert isinstance(self.plan.picture, Table)
        ink = [unit for unit in self.plan.picture.values.values() if not z3.is_bv_value(unit)]
        yield z3.Not(self.take)
        yield from (unit == 0 for unit in ink)
        yield from (z3.Not(done) for done in (*self.sent.values(), *self.entries.values(), self.shows))

    def _taken(self, model: z3.ModelRef, site: Site) -> Taken:
        units, place, cell_of = (_numbers(model, f) for f in (self.plan.picture, self.plan.place, self.plan.cell_of))
        return Taken(
            units=tuple(tuple(units[cell, row] for row in range(site.rows)) for cell in range(site.cells)),
            place=tuple(place[(cell,)] for cell in range(site.cells)),
            cell_of=tuple(cell_of[(tile,)] for tile in range(site.tiles)),
        )


def search(steps: Steps, refreshes: int = REFRESHES, rlimit: int = RLIMIT) -> Searched:
    """A course of at most ``refreshes`` in which the frame is not what is owed, or tiles outside the pool are used.

    The shortest in which the frame is neither the one before nor the picture to be seen now or next; failing that,
    the shortest in which one of those is seen that is not to be seen now.
    """
    unrolled = _Unrolled(steps)
    overdue: Searched | None = None
    for number in range(refreshes):
        torn, stays = unrolled.refresh(number)
        for breach in (torn, stays) if overdue is None else (torn,):
            said, course = unrolled.ask(breach, rlimit)
            found = Searched(refreshes=number + 1, course=course)
            if said == z3.unknown:
                return replace(found, gave_up=f"z3 gave up in refresh {number}")
            if course is not None and breach is torn:
                return found
            overdue = found if course is not None else overdue
    return overdue or Searched(refreshes=refreshes)


def shows_pictures(steps: Steps, refreshes: int = REFRESHES, rlimit: int = RLIMIT) -> bool:
    """Whether there is a course in which two pictures with ink, one unlike the other, come to be seen.

    Without one a proof says nothing: steps that never take, send or show a picture keep every invariant.
    """
    unrolled = _Unrolled(steps)
    nothing, frames = unrolled.state.shown, list[Function]()
    for number in range(refreshes):
        unrolled.refresh(number)
        frames.append(unrolled.state.shown)
        if unrolled.follow(nothing, frames, rlimit):
            return True
    return False


class _Unrolled:
    def __init__(self, steps: Steps) -> None:
        self.steps = steps
        self.context = z3.Context()
        self.site = Site.given(self.context, steps.sharing, tiles=TILES, cells=CELLS, blank=BLANK, half_of=HALF_OF)
        self.state = State.first(self.site, partial(steps.usable, self.site))
        self.latest = self.state.current
        self.given: list[Formula] = []
        self.choices: list[_Choices] = []

    def refresh(self, number: int) -> tuple[Formula, Formula]:
        """One refresh more. The two ways to break what is owed in it: to tear the frame, to leave the old one."""
        before = self.state.shown
        outside = self._apply(self._choose(number))
        state = self.state
        whole = (before, state.current, state.due)
        torn = z3.And(*(self._differ(state.shown, picture) for picture in whole))
        return z3.Or(outside, torn, self._alien()), self._differ(state.shown, state.current)

    def ask(self, breach: Formula, rlimit: int) -> tuple[z3.CheckSatResult, Course | None]:
        """Whether there is a course to the breach."""
        solver = z3.Solver(ctx=self.context)
        solver.set("rlimit", rlimit)
        solver.add(*self.given, breach)
        said = answered(solver)
        if said != z3.sat:
            return said, None
        model = self._smaller(solver)
        return said, tuple(choice.read(model, self.site) for choice in self.choices)

    def follow(self, nothing: Function, frames: Sequence[Function], rlimit: int) -> bool:
        """Whether the last of ``frames`` can be a picture after another one, neither of them ``nothing``."""
        last, solver = frames[-1], z3.Solver(ctx=self.context)
        solver.set("rlimit", rlimit)
        earlier = [z3.And(self._differ(one, nothing), self._differ(one, last)) for one in frames[:-1]]
        solver.add(
            *self.given, self._differ(last, nothing), z3.Or(*earlier) if earlier else z3.BoolVal(False, self.context)
        )
        return bool(answered(solver) == z3.sat)

    def _alien(self) -> Formula:
        """The shown page names a tile that is neither of the pool nor blank."""
        named = [self.state.entries(self.state.seen, cell) for cell in self.site.all_cells]
        return z3.Or(*(z3.And(tile != self.site.blank, z3.Not(self.site.pool(tile))) for tile in named))

    def _smaller(self, solver: z3.Solver) -> z3.ModelRef:
        """A model with as little in it as can be had by leaving out one thing after another."""
        model, kept = solver.model(), list[Formula]()
        for wish in (wish for choices in self.choices for wish in choices.wishes()):
            if not _true(model, wish):
                if solver.check(*kept, wish) != z3.sat:
                    continue
                model = solver.model()
            kept.append(wish)
        return model

    def _choose(self, number: int) -> _Choices:
        flag = partial(self._flag, number)
        tiles, rows, cells = range(self.site.tiles), range(self.site.rows), range(self.site.cells)
        plan = any_plan(self.state, f"-{number}")
        choices = _Choices(
            take=flag("take"),
            plan=replace(plan, picture=self._drawn(plan.picture)),
            lost=flag("lost"),
            sent={place: flag(f"send-{place[0]}-{place[1]}") for place in product(tiles, rows)},
            entries={cell: flag(f"entry-{cell}") for cell in cells},
            shows=flag("show"),
        )
        self.choices.append(choices)
        if not self.steps.heeds_losses:
            self.given.append(z3.Not(choices.lost))
        return choices

    def _flag(self, number: int, name: str) -> Formula:
        return z3.Bool(f"{name}-in-{number}", self.context)

    def _drawn(self, picture: Function) -> Table:
        assert isinstance(picture, Table)
        nothing = self.site.number(0, self.site.unit_sort)
        values = {place: unit if place[1] < DRAWN_ROWS else nothing for place, unit in picture.values.items()}
        return replace(picture, values=values)

    def _apply(self, choices: _Choices) -> Formula:
        """Take every step that is chosen; the answer says whether a byte went outside the pool."""
        self._take(choices)
        self._step(choices.lost, [{}], transitions.blanking_lost(self.steps, self.state))
        had = z3.Not(choices.lost)
        outside = []
        for (tile, row), done in choices.sent.items():
            at = (self.site.all_tiles[tile], self.site.all_rows[row])
            sends = z3.And(done, had)
            self._step(
                sends,
                [self.steps.guards(SEND_BYTE, self.state.own, *at)],
                transitions.byte_sent(self.steps, self.state, *at),
            )
            outside.append(z3.And(sends, z3.Not(self.site.pool(at[0]))))
        for number, done in choices.entries.items():
            cell = self.site.all_cells[number]
            guards = self.steps.guards(SEND_ENTRY, self.state.own, cell)
            self._step(z3.And(done, had), [guards], transitions.entry_sent(self.state, cell))
        everywhere = product(self.site.all_tiles, self.site.all_rows, self.site.all_cells)
        guards_everywhere = [self.steps.guards(SHOW, self.state.own, *at) for at in everywhere]
        self._step(z3.And(choices.shows, had), guards_everywhere, transitions.shown(self.state))
        return z3.Or(*outside)

    def _take(self, choices: _Choices) -> None:
        own, plan = self.state.own, choices.plan
        places = product(self.site.all_cells, self.site.all_rows)
        facts = [self.steps.facts(own, plan, *at) for at in places]
        # A picture that looks like the one before counts as seen at once, so it would be owed to nobody.
        news = {"the picture differs from the one before": self._differ(plan.picture, self.latest)}
        guards = [self.steps.guards(TAKE, own), news, *facts]
        self._step(choices.take, guards, transitions.taken(self.steps, self.state, plan))
        self.latest = _table(choices.take, plan.picture, self.latest)

    def _step(self, chosen: Formula, guards: Iterable[Named], after: State) -> None:
        conditions = [formula for named in guards for formula in named.values()]
        if conditions:
            self.given.append(z3.Implies(chosen, z3.And(*conditions)))
        self.state = _where(chosen, after, self.state)

    def _differ(self, one: Function, other: Function) -> Formula:
        """Two pictures, or a frame and one, are not the same."""
        places = product(self.site.all_cells, self.site.all_rows[:DRAWN_ROWS])
        return z3.Or(*(one(*at) != other(*at) for at in places))


def _where(chosen: Formula, one: State, other: State) -> State:
    """``one`` if it is chosen, else ``other``."""
    table = partial(_table, chosen)

    def term(first: Term, second: Term) -> Term:
        return first if first is second else z3.If(chosen, first, second)

    own = replace(
        one.own,
        seen=term(one.own.seen, other.own.seen),
        busy=term(one.own.busy, other.own.busy),
        units=table(one.own.units, other.own.units),
        entries=table(one.own.entries, other.own.entries),
        pending_bytes=table(one.own.pending_bytes, other.own.pending_bytes),
        pending_entries=table(one.own.pending_entries, other.own.pending_entries),
    )
    return replace(
        one,
        own=own,
        seen=term(one.seen, other.seen),
        owed=term(one.owed, other.owed),
        units=table(one.units, other.units),
        entries=table(one.entries, other.entries),
        current=table(one.current, other.current),
        due=table(one.due, other.due),
    )


def _table(chosen: Formula, first: Function, second: Function) -> Function:
    if first is second:
        return first
    assert isinstance(first, Table)
    assert isinstance(second, Table)
    return first.where(chosen, second)


def _true(model: z3.ModelRef, formula: Formula) -> bool:
    return bool(z3.is_true(model.eval(formula, model_completion=True)))


def _numbers(model: z3.ModelRef, function: Function) -> dict[tuple[int, ...], int]:
    assert isinstance(function, Table)
    return {at: int(model.eval(term, model_completion=True).as_long()) for at, term in function.values.items()}
