"""A refresh of a bounded run with every rule judged by name, also where one is broken: what theorem 9 drops from."""

from dataclasses import dataclass
from functools import cached_property

import z3

from planeproof.spec.bounded_run import SENDS_ENTRY, SENDS_PATTERN, SHOWS, Refresh, State
from planeproof.spec.rules import blanking_only, exact_reveal, in_order, own_memory, tile_cap
from planeproof.spec.rules_over_time import changes_pool_only
from planeproof.spec.vocabulary import Formula, Frame, Pixel, Term, all_of

POOL = 0b0110
SET_UP, PER_BYTE, CYCLES = 20, 10, 100
"""Cycles of a burst, of a byte, of a blanking that is not cut short."""


@dataclass(frozen=True, kw_only=True)
class JudgedRefresh:
    """A refresh and what is judged of it. A byte that comes too late wrecks the frame, which may be anything then.

    ``torn``: the frame is neither the picture nor background, and the picture being seen stays what it was.
    """

    refresh: Refresh
    torn: Formula
    is_next: Formula
    cycles: Term
    wreck: Frame
    pixels: tuple[Pixel, ...]
    pool: Term

    @cached_property
    def in_time(self) -> Formula:
        """The one byte lands inside blanking; a change of view is never late here."""
        spent, set_up, per_byte = (z3.BitVecVal(figure, 32, self.cycles.ctx) for figure in (0, SET_UP, PER_BYTE))
        return z3.Or(self.refresh.kind == SHOWS, blanking_only(spent, set_up, per_byte, 1, self.cycles))

    def frame(self, pixel: Pixel) -> Term:
        """What is seen."""
        return z3.If(self.in_time, self.refresh.after.shown(pixel), self.wreck(pixel))

    def current(self, pixel: Pixel) -> Term:
        """The picture being seen before."""
        return look_of(self.refresh.before, self.refresh.before.seen, pixel)

    @cached_property
    def means(self) -> Formula:
        """What the flags mean, and that a blanking is not cut short for nothing."""
        after, before = self.refresh.after, self.refresh.before
        whole = all_of(*(self.frame(pixel) == look_of(after, after.seen, pixel) for pixel in self.pixels))
        known = z3.ULE(self.refresh.kind, SHOWS)
        cut = z3.If(self.in_time, self.cycles == CYCLES, z3.And(z3.ULT(0, self.cycles), z3.ULT(self.cycles, CYCLES)))
        return z3.And(known, cut, z3.If(self.torn, after.seen == before.seen, whole))

    def rules(self) -> dict[str, Formula]:
        """Every rule that is judged in a refresh."""
        refresh, cell = self.refresh, self.pixels[0].cell
        after, blank = refresh.after, z3.BitVecVal(0, 2, self.cycles.ctx)
        held = refresh.before.memory.pattern(refresh.pattern.tile, refresh.pattern.plane, refresh.pattern.row)
        changed = changes_pool_only(refresh.pattern.tile, held, refresh.pattern.byte, self.pool)
        return {
            "hidden-writes": all_of(*(refresh.hidden(pixel) for pixel in self.pixels)),
            "exact-reveal": z3.Implies(refresh.kind == SHOWS, all_of(*map(self._revealed, self.pixels))),
            "blanking-only": self.in_time,
            "own-memory": z3.And(
                z3.Implies(refresh.kind == SENDS_PATTERN, own_memory(refresh.pattern, self.pool)),
                z3.Implies(refresh.kind == SENDS_ENTRY, refresh.entry.cell == cell),
            ),
            "tile-cap": z3.And(
                tile_cap(after.memory, after.view, cell, self.pool, blank),
                z3.Implies(refresh.kind == SENDS_PATTERN, changed),
            ),
            "in-order": in_order(refresh.before.seen, after.seen),
            "whole-reveal": z3.Not(self.torn),
        }

    def _revealed(self, pixel: Pixel) -> Formula:
        after = self.refresh.after
        return exact_reveal(after.shown(pixel), self.current(pixel), after.picture.look(pixel), self.is_next)


def look_of(state: State, seen: Formula, pixel: Pixel) -> Term:
    """The picture, or background."""
    return z3.If(seen, state.picture.look(pixel), state.picture.shade(z3.BitVecVal(0, 1, seen.ctx)))
