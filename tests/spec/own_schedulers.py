"""Schedulers as a user would write them: some right, some with one mistake each."""

import z3

from planeproof.spec.steps import Own, Plan
from planeproof.spec.steps.form import Named
from planeproof.spec.steps.reference import Delta, Full, PackedDelta, SplitPool
from planeproof.spec.steps.site import Site
from planeproof.spec.vocabulary import Formula, Term

# ruff: noqa: D102 -- the class says what is different, the method that it overrides what it is for


class SendsUsedTilesWhole(Delta):
    """Right: a tile of which one row differs is sent whole."""

    def byte_becomes_pending(self, own: Own, plan: Plan, tile: Term, row: Term) -> Formula:
        differing = [super(SendsUsedTilesWhole, self).byte_becomes_pending(own, plan, tile, one) for one in own.rows]
        return z3.Or(*differing)


class OnlyPending(Delta):
    """Right: sends nothing again, and nothing at all while idle."""

    def byte_guards(self, own: Own, tile: Term, row: Term) -> Named:
        return {"the byte is pending": own.pending(tile, row), **super().byte_guards(own, tile, row)}

    def entry_guards(self, own: Own, cell: Term) -> Named:
        return {"the entry is pending": own.entry_pending(cell)}


class ChecksumForCompare(Delta):
    """Compares the sums of the bytes of a tile instead of the bytes."""

    def byte_becomes_pending(self, own: Own, plan: Plan, tile: Term, row: Term) -> Formula:
        wanted = sum((plan.wanted(tile, one) for one in own.rows[1:]), plan.wanted(tile, own.rows[0]))
        held = [own.shadow(own.hidden, tile, one) for one in own.rows]
        return wanted != sum(held[1:], held[0])


class EmptiedCellKeepsEntry(Delta):
    """Does not send the entry of a cell that has become empty."""

    def entry_becomes_pending(self, own: Own, plan: Plan, cell: Term) -> Formula:
        return z3.And(plan.place(cell) != own.blank, super().entry_becomes_pending(own, plan, cell))


class TwoPatternsOneTile(Full):
    """Gives one tile to cells that do not look the same."""

    def plan_facts(self, own: Own, plan: Plan, cell: Term, row: Term) -> Named:
        facts = super().plan_facts(own, plan, cell, row)
        return {name: fact for name, fact in facts.items() if name != "cells of one tile look the same"}


class ShowsBeforeMap(Delta):
    """Shows once the bytes are sent, whatever the entries."""

    def show_guards(self, own: Own, tile: Term, row: Term, cell: Term) -> Named:
        guards = super().show_guards(own, tile, row, cell)
        return {name: guard for name, guard in guards.items() if name != "no entry is pending"}


class PatternToSeenPlane(Full):
    """Writes patterns to the planes that are being seen."""

    def byte_goes_to(self, own: Own) -> Term:
        return own.seen


class PendingForgotten(Full):
    """Strikes off what a lost blanking should have sent."""

    def byte_pending_after_loss(self, own: Own, tile: Term, row: Term) -> Formula:
        return z3.BoolVal(False, own.site.context)


class PackedWithoutReading(PackedDelta):
    """Writes packed bytes as if the other plane were empty."""

    def byte_sent(self, own: Own, tile: Term, row: Term) -> Term:
        return own.byte_alone(own.hidden, tile, row)


class PoolNotSplit(SplitPool):
    """Flips pages, and gives the hidden side tiles that are being seen."""

    def usable(self, site: Site, side: Term, tile: Term) -> Formula:
        return site.pool(tile)


class HiddenSideWiped(Full):
    """Right, but outside the fixed invariant: while idle it may clear what the hidden side holds."""

    def byte_sent(self, own: Own, tile: Term, row: Term) -> Term:
        wanted = own.byte(own.hidden, tile, row)
        return z3.If(own.busy, wanted, wanted & 0)


RIGHT = (SendsUsedTilesWhole(), OnlyPending())
WRONG = (
    ChecksumForCompare(),
    EmptiedCellKeepsEntry(),
    TwoPatternsOneTile(),
    ShowsBeforeMap(),
    PatternToSeenPlane(),
    PendingForgotten(),
    PackedWithoutReading(),
    PoolNotSplit(),
)
