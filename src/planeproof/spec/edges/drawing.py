"""Pictures as terms: a token for each cell, and what goals say of them, exactly or in a form that only suffices.

On a few cells everything is said exactly, so that *no* is a proof. Exactness takes a formula for every two cells; on a
window of hundreds each statement is replaced by a stronger one, a formula a cell: *yes* is still an answer.
"""

from abc import ABC, abstractmethod
from collections.abc import Sequence
from dataclasses import dataclass

import z3

from planeproof.contract import Machine
from planeproof.spec.edges.tokens import LAST_BITS
from planeproof.spec.vocabulary import Formula, Term

Drawn = tuple[Term, ...]
"""One picture: a token a cell."""


def filled(cell: Term) -> Formula:
    """The cell is not empty."""
    return cell != 0


def exactly(count: int, flags: Sequence[Formula]) -> Formula:
    """Just so many of them are true."""
    return z3.PbEq([(flag, 1) for flag in flags], count)


def at_most(count: int, flags: Sequence[Formula]) -> Formula:
    """No more of them are true."""
    return z3.PbLe([(flag, 1) for flag in flags], count)


def sent(now: Term, held: Term) -> Formula:
    """A pattern has to be sent for the cell."""
    return z3.And(filled(now), now != held)


def always(drawn: Drawn) -> Formula:
    """True, of the context of the picture."""
    return z3.BoolVal(True, drawn[0].ctx)


def never(drawn: Drawn) -> Formula:
    """False, of the context of the picture."""
    return z3.BoolVal(False, drawn[0].ctx)


def equal(one: Drawn, other: Drawn) -> Formula:
    """The two pictures are the same."""
    return z3.And(*(a == b for a, b in zip(one, other, strict=True)))


def empty(drawn: Drawn) -> Formula:
    """Nothing is in the picture."""
    return z3.And(*(cell == 0 for cell in drawn))


class Wording(ABC):
    """How those statements are put that compare every cell with every other."""

    @abstractmethod
    def different(self, drawn: Drawn, most: int) -> Formula:
        """There are no more than ``most`` different patterns in the picture."""

    @abstractmethod
    def all_different(self, drawn: Drawn) -> Formula:
        """No two filled cells of the picture are alike."""

    @abstractmethod
    def rearranged(self, now: Drawn, was: Drawn) -> Formula:
        """The filled cells of both hold the same patterns, each as often."""

    @abstractmethod
    def upload(self, now: Drawn, held: Drawn, numbers: Sequence[tuple[int, int]]) -> Formula:
        """So many (patterns, entries) as one of ``numbers`` says must be sent for ``now``, where ``held`` is held."""


class Exact(Wording):
    """For windows of a few cells."""

    def different(self, drawn: Drawn, most: int) -> Formula:
        """A pattern counts where it stands first."""
        new = [z3.And(filled(cell), *(cell != seen for seen in drawn[:i])) for i, cell in enumerate(drawn)]
        return at_most(most, new)

    def all_different(self, drawn: Drawn) -> Formula:
        """Any two of them."""
        pairs = [(a, b) for i, a in enumerate(drawn) for b in drawn[:i]]
        return z3.And(*(z3.Or(a != b, a == 0) for a, b in pairs)) if pairs else always(drawn)

    def rearranged(self, now: Drawn, was: Drawn) -> Formula:
        """There is a permutation, whose matrix the solver chooses."""
        size, ctx = len(now), now[0].ctx
        goes = [[z3.FreshBool("goes", ctx) for _ in range(size)] for _ in range(size)]
        once = [exactly(1, line) for line in (*goes, *zip(*goes, strict=True))]
        same = [z3.Implies(goes[a][b], now[a] == was[b]) for a in range(size) for b in range(size)]
        return z3.And(*once, *same)

    def upload(self, now: Drawn, held: Drawn, numbers: Sequence[tuple[int, int]]) -> Formula:
        """Counted over the cells."""
        cells = list(zip(now, held, strict=True))
        patterns, entries = [sent(a, b) for a, b in cells], [filled(a) != filled(b) for a, b in cells]
        choices = (z3.And(exactly(p, patterns), exactly(e, entries)) for p, e in numbers)
        return z3.Or(never(now), *choices)


class Sufficient(Wording):
    """For windows of any size: each statement follows from what is said instead."""

    def different(self, drawn: Drawn, most: int) -> Formula:
        """The shapes are of the first ``most``, and the last byte is empty."""
        few = [z3.And(z3.ULE(shape_of(cell), most), z3.Extract(LAST_BITS - 1, 0, cell) == 0) for cell in drawn]
        return z3.And(*few)

    def all_different(self, drawn: Drawn) -> Formula:
        """Each filled cell has the shape of its number."""
        return z3.And(*(z3.Or(cell == 0, shape_of(cell) == number) for number, cell in enumerate(drawn, 1)))

    def rearranged(self, now: Drawn, was: Drawn) -> Formula:
        """Everything moves on by a cell."""
        return z3.And(*(cell == was[number - 1] for number, cell in enumerate(now)))

    def upload(self, now: Drawn, held: Drawn, numbers: Sequence[tuple[int, int]]) -> Formula:
        """The last of the numbers: the first cells are newly filled, some change or are emptied, the others stay."""
        if not numbers:
            return never(now)
        patterns, entries = numbers[-1]
        new, busy = min(numbers[-1]), max(numbers[-1])
        cells = list(zip(now, held, strict=True))
        filling = (z3.And(filled(a), b == 0) for a, b in cells[:new])
        other = (z3.And(filled(b), sent(a, b) if patterns > entries else a == 0) for a, b in cells[new:busy])
        return z3.And(*filling, *other, *(a == b for a, b in cells[busy:]))


class Necessary(Wording):
    """For windows of any size: each statement is replaced by one that follows from it, so that *no* is a proof."""

    def different(self, drawn: Drawn, most: int) -> Formula:
        """Anything goes."""
        return always(drawn)

    def all_different(self, drawn: Drawn) -> Formula:
        """Anything goes."""
        return always(drawn)

    def rearranged(self, now: Drawn, was: Drawn) -> Formula:
        """Some are filled in both, or in neither."""
        return empty(now) == empty(was)

    def upload(self, now: Drawn, held: Drawn, numbers: Sequence[tuple[int, int]]) -> Formula:
        """There are such numbers."""
        return always(now) if numbers else never(now)


def shape_of(cell: Term) -> Term:
    """The token's shape."""
    return z3.Extract(cell.size() - 1, LAST_BITS, cell)


@dataclass(frozen=True, kw_only=True)
class TermMoment:
    """What `planeproof.scenes.edge_goals.Moment` is, in terms."""

    machine: Machine
    now: Drawn
    last: Drawn
    before: Drawn
    wording: Wording

    @property
    def held(self) -> Drawn:
        """What the side that ``now`` is written to holds: where there is one side, the last picture."""
        return self.last if self.machine.sides == 1 else self.before
