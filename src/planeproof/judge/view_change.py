"""The view change of a refresh: from the first to the last byte that changes a value of palette or view register."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from planeproof.display import PictureMemory, Piece, View
from planeproof.display.plan import NOBODY


@dataclass(frozen=True)
class ViewChange:
    """The view change of one refresh: old and new view, and the numbers of its first and last byte."""

    old: View
    new: View
    first: int
    last: int

    def views_at(self, byte: int) -> tuple[View, ...]:
        """The views under which byte number ``byte`` of the refresh is judged."""
        if byte < self.first:
            return (self.old,)
        # A view that comes back to what it was is one view, not two.
        return (self.new,) if byte > self.last else tuple(dict.fromkeys((self.old, self.new)))


def view_change(memory: PictureMemory, pieces: Sequence[Piece]) -> ViewChange | None:
    """The change that ``pieces``, all that take effect in a refresh, will make; None if the view stays as it is.

    Bytes are numbered in the order of the pieces, from 0.
    """
    plan = memory.plan
    held = memory.contents[plan.view_addresses].copy()
    clock, changes = 0, []
    for piece in pieces:
        slots = plan.view.take(piece.addresses, mode="clip")
        for byte in np.flatnonzero(slots != NOBODY).tolist():
            slot, value = slots[byte], piece.values[byte]
            # An address out of reach was clipped to one that may be a view byte's.
            if piece.addresses[byte] == plan.view_addresses[slot] and held[slot] != value:
                held[slot] = value
                changes.append(clock + byte)
        clock += len(piece)
    if not changes:
        return None
    return ViewChange(memory.view, memory.view_of(held), changes[0], changes[-1])
