"""The symbolic reading of the rules that need more than one moment, or an address: the counting ones among them.

Same style as `planeproof.spec.rules`: functions on terms, no quantifier. What a viewer has seen so far is `Watched`;
its steps are an answer and a frame. Pictures count by their looks: ``look`` is a number, equal where two look alike.
"""

from dataclasses import dataclass, replace

import z3

from planeproof.contract import Machine, RegionKind
from planeproof.spec.rules import in_pool, keeps_hidden_writes
from planeproof.spec.vocabulary import Formula, PictureMemory, Pixel, Term, View, Write, all_of

COUNT_BITS = 16
"""Width of places, blankings and cells that are counted; wide enough that none wraps round."""


# --- discipline and own rules -------------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class ViewChange:
    """The view change of one blanking: old and new view, and the numbers of its first and last byte among its writes.

    Without a change of view ``first`` and ``last`` are beyond every write.
    """

    old: View
    new: View
    first: Term
    last: Term

    def keeps_hidden_writes(self, memory: PictureMemory, write: Write, number: Term, pixel: Pixel) -> Formula:
        """hidden-writes, for one pixel: hidden under the old view up to the last byte, the new one from the first."""
        return z3.And(
            z3.Implies(z3.ULE(number, self.last), keeps_hidden_writes(memory, self.old, write, pixel)),
            z3.Implies(z3.UGE(number, self.first), keeps_hidden_writes(memory, self.new, write, pixel)),
        )


def owns(machine: Machine, address: Term) -> Formula:
    """own-memory, for a byte at ``address``: a pattern of the pool, a map cell of the window, a byte of its view."""
    pool = z3.BitVecVal(sum(1 << tile for tile in machine.pool), max(machine.tiles.count, address.size()), address.ctx)
    parts = []
    for region in machine.regions:
        inside = z3.And(z3.UGE(address, region.start), z3.ULT(address, region.end))
        offset = address - region.start
        if region.kind is RegionKind.PATTERNS:
            parts.append(z3.And(inside, in_pool(z3.UDiv(offset, machine.tile_bytes), pool)))
        elif region.kind is RegionKind.MAP:
            parts.append(z3.And(inside, _in_window(machine, z3.UDiv(offset, machine.map.entry_bytes))))
        elif region.kind is RegionKind.PALETTE:
            entry = address - machine.palette_address
            parts.append(z3.And(inside, z3.ULT(entry, 1 << machine.tiles.planes)))
        else:
            parts.append(inside)
    return z3.Or(*parts)


def _in_window(machine: Machine, place: Term) -> Formula:
    """Whether a place of the map, counted row by row, is a cell of the window."""
    window = machine.window
    row = z3.UDiv(place, window.pitch)
    column = place - row * window.pitch
    return all_of(
        *(
            z3.And(z3.UGE(term, origin), z3.ULT(term, origin + count))
            for term, origin, count in (
                (row, window.origin_row, window.rows),
                (column, window.origin_column, window.columns),
            )
        )
    )


def changes_pool_only(tile: Term, held: Term, byte: Term, pool: Term) -> Formula:
    """tile-cap, for a pattern byte: one whose value changes is of a tile of the pool."""
    return z3.Or(held == byte, in_pool(tile, pool))


# --- seen rules ---------------------------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class Answered:
    """The answer to an offer, at most one of the three: the picture's ``look``, and its ``occupied`` cells."""

    taken: Formula
    busy: Formula
    declined: Formula
    look: Term
    occupied: Term


@dataclass(frozen=True, kw_only=True)
class Watched:
    """What the viewer has seen so far.

    ``looks`` are those of the background and of the pictures taken, in this order, of which ``line`` are there
    already; ``place`` is the one being seen. ``had`` counts full blankings; ``taken_at`` tells what it was when each
    picture was taken, ``seen_at`` when the one being seen was, ``busy_since`` at the first BUSY, where ``busy``.
    """

    looks: tuple[Term, ...]
    taken_at: tuple[Term, ...]
    line: Term
    place: Term
    had: Term
    seen_at: Term
    busy: Formula
    busy_since: Term

    @property
    def waiting(self) -> Formula:
        """A taken picture is still to be seen."""
        return z3.ULT(self.place + 1, self.line)

    @property
    def current(self) -> Term:
        """The look of the picture being seen."""
        return _at(self.looks, self.place)

    @property
    def following(self) -> Term:
        """The look of the next one taken."""
        return _at(self.looks, self.place + 1)

    def answered(self, answer: Answered) -> "Watched":
        """After an offer."""
        here = [z3.And(answer.taken, self.line == place) for place in range(len(self.looks))]
        ended = z3.Or(answer.taken, answer.declined)
        after = replace(
            self,
            looks=tuple(z3.If(new, answer.look, look) for new, look in zip(here, self.looks, strict=True)),
            taken_at=tuple(z3.If(new, self.had, at) for new, at in zip(here, self.taken_at, strict=True)),
            line=z3.If(answer.taken, self.line + 1, self.line),
            busy=z3.And(z3.Not(ended), z3.Or(self.busy, answer.busy)),
            busy_since=z3.If(z3.And(answer.busy, z3.Not(self.busy)), self.had, self.busy_since),
        )
        return after.past_look_alikes()

    def blanked(self, full: Formula) -> "Watched":
        """After a blanking, ``full`` or not."""
        return replace(self, had=z3.If(full, self.had + 1, self.had))

    def saw(self, frame: Term) -> "Watched":
        """After a frame: the first later picture that looks like it is the one being seen, unless the current does."""
        place = self.place
        for later in reversed(range(1, len(self.looks))):
            ahead = z3.And(z3.UGT(later, self.place), z3.ULT(later, self.line), self.looks[later] == frame)
            place = z3.If(ahead, later, place)
        stays = z3.Or(self.current == frame, place == self.place)
        moved = replace(self, place=z3.If(stays, self.place, place), seen_at=z3.If(stays, self.seen_at, self.had))
        return moved.past_look_alikes()

    def past_look_alikes(self) -> "Watched":
        """A picture that looks like the current one is seen at once."""
        viewer = self
        for _ in self.looks[1:]:
            alike = z3.And(viewer.waiting, viewer.following == viewer.current)
            viewer = replace(
                viewer,
                place=z3.If(alike, viewer.place + 1, viewer.place),
                seen_at=z3.If(alike, viewer.had, viewer.seen_at),
            )
        return viewer


def exact_reveal_of_line(viewer: Watched, shown: Term) -> Formula:
    """exact-reveal, by looks: what the new view shows is the current picture or the next one taken."""
    return z3.Or(shown == viewer.current, z3.And(viewer.waiting, shown == viewer.following))


def whole_reveal_of_line(viewer: Watched, frame: Term) -> Formula:
    """whole-reveal, by looks: the frame is the background or a picture taken so far."""
    return z3.Or(*(z3.And(z3.ULT(place, viewer.line), look == frame) for place, look in _numbered(viewer)))


def in_order_of_line(viewer: Watched, frame: Term) -> Formula:
    """in-order: a whole frame is the one seen before or the next taken."""
    return z3.Implies(whole_reveal_of_line(viewer, frame), exact_reveal_of_line(viewer, frame))


def progress(viewer: Watched, patience: Term) -> Formula:
    """progress, after a blanking: neither the next picture nor the end of BUSY is overdue."""
    since_taken = viewer.had - _later(_at(viewer.taken_at, viewer.place + 1), viewer.seen_at)
    since_busy = viewer.had - _later(viewer.busy_since, viewer.seen_at)
    return z3.And(
        z3.Implies(viewer.waiting, z3.ULE(since_taken, patience)),
        z3.Implies(z3.And(z3.Not(viewer.waiting), viewer.busy), z3.ULE(since_busy, patience)),
    )


def fair_refusal(answer: Answered, must_show: Term) -> Formula:
    """fair-refusal: a declined picture has more than ``must_show`` occupied cells."""
    return z3.Implies(answer.declined, z3.UGT(answer.occupied, must_show))


def _numbered(viewer: Watched) -> list[tuple[Term, Term]]:
    return [(z3.BitVecVal(place, COUNT_BITS, look.ctx), look) for place, look in enumerate(viewer.looks)]


def _at(terms: tuple[Term, ...], place: Term) -> Term:
    """The term at ``place``; the last one beyond the end."""
    chosen = terms[-1]
    for number in reversed(range(len(terms) - 1)):
        chosen = z3.If(place == number, terms[number], chosen)
    return chosen


def _later(one: Term, other: Term) -> Term:
    return z3.If(z3.UGE(one, other), one, other)
