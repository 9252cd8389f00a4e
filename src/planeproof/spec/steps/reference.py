"""The reference strategies as guarded steps: what theorem 5 is about."""

import z3

from planeproof.spec.steps.form import HiddenPlane, Packed, PageFlip, Steps
from planeproof.spec.steps.sharing import DEEP_PLANES
from planeproof.spec.steps.state import Own, Plan
from planeproof.spec.vocabulary import Formula, Term


class _Differing(Steps):
    """Only what differs from what the hidden side holds becomes pending."""

    def byte_becomes_pending(self, own: Own, plan: Plan, tile: Term, row: Term) -> Formula:
        return plan.wanted(tile, row) != own.shadow(own.hidden, tile, row)

    def entry_becomes_pending(self, own: Own, plan: Plan, cell: Term) -> Formula:
        return plan.place(cell) != own.placed(own.hidden, cell)


class _Everything(Steps):
    """Every byte of every tile in use becomes pending, and every entry."""

    def byte_becomes_pending(self, own: Own, plan: Plan, tile: Term, row: Term) -> Formula:
        return plan.used(tile)

    def entry_becomes_pending(self, own: Own, plan: Plan, cell: Term) -> Formula:
        return z3.BoolVal(True, own.site.context)


class Delta(_Differing, HiddenPlane):
    """Hidden plane, only what differs."""


class Full(_Everything, HiddenPlane):
    """Hidden plane, every picture sent whole."""


class DeepDelta(_Differing, HiddenPlane):
    """Hidden planes of pictures of two bits a pixel, only what differs."""

    sharing = DEEP_PLANES


class PackedDelta(_Differing, Packed):
    """Packed storage: bytes read from the shadow, changed and written whole; only those that differ."""


class SplitPool(_Everything, PageFlip):
    """No hidden plane: a half of the pool for each side, a page flip, every picture sent whole."""


class SplitPoolDelta(_Differing, PageFlip):
    """The same, sending only what differs."""


REFERENCES: tuple[Steps, ...] = (Delta(), Full(), DeepDelta(), PackedDelta(), SplitPool(), SplitPoolDelta())
"""Every strategy that is proved."""
