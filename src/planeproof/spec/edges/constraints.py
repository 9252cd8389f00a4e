"""What each goal asks, in terms. The checks in `planeproof.scenes.edge_goals` are the other reading of its sentence."""

from collections.abc import Callable, Mapping

import z3

from planeproof.scenes.edge_relatives import uploads
from planeproof.scenes.uploads import Tariff
from planeproof.spec.edges.drawing import Drawn, TermMoment, at_most, empty, equal, exactly, filled, never
from planeproof.spec.edges.tokens import LAST_BITS
from planeproof.spec.vocabulary import Formula

Ends = Callable[..., bool]
"""Whether sending so many ``patterns`` and ``entries`` ends as is wanted."""

Constraint = Callable[[TermMoment], Formula]


def _at_the_limit(moment: TermMoment) -> Formula:
    most = min(moment.machine.must_show, moment.machine.cells)
    if not most:
        return never(moment.now)
    return z3.And(exactly(most, [filled(cell) for cell in moment.now]), moment.wording.all_different(moment.now))


def _shared_tiles(moment: TermMoment) -> Formula:
    cap = moment.machine.cap_of_view
    if cap >= moment.machine.cells:
        return never(moment.now)
    return z3.And(exactly(cap + 1, [filled(cell) for cell in moment.now]), moment.wording.different(moment.now, cap))


def _fills_blankings(moment: TermMoment) -> Formula:
    return _upload(moment, Tariff.of(moment.machine).ends_full)


def _a_byte_over(moment: TermMoment) -> Formula:
    return _upload(moment, Tariff.of(moment.machine).ends_a_byte_late)


def _upload(moment: TermMoment, ends: Ends) -> Formula:
    """The arithmetic of time is done beforehand: the solver chooses among the numbers of bursts that end so."""
    most = moment.machine.must_show
    within = (at_most(most, [filled(cell) for cell in picture]) for picture in (moment.now, moment.held))
    numbers = [(p, e) for p, e in uploads(moment.machine) if ends(patterns=p, entries=e)]
    return z3.And(*within, moment.wording.upload(moment.now, moment.held, numbers))


def _before_last(moment: TermMoment) -> Formula:
    again = z3.And(equal(moment.now, moment.before), z3.Not(equal(moment.now, moment.last)))
    return z3.And(again, z3.Not(empty(moment.now)))


def _same_again(moment: TermMoment) -> Formula:
    return z3.And(equal(moment.now, moment.last), z3.Not(empty(moment.now)))


def _moved(moment: TermMoment) -> Formula:
    return _all_moved(moment, moment.last)


def _hidden_moved(moment: TermMoment) -> Formula:
    return _all_moved(moment, moment.held)


def _all_moved(moment: TermMoment, was: Drawn) -> Formula:
    away = (z3.Or(a != b, a == 0) for a, b in zip(moment.now, was, strict=True))
    return z3.And(*away, z3.Not(empty(moment.now)), moment.wording.rearranged(moment.now, was))


def _emptied(moment: TermMoment) -> Formula:
    return z3.And(empty(moment.now), z3.Not(empty(moment.last)))


def _refilled(moment: TermMoment) -> Formula:
    cells = zip(moment.now, moment.last, moment.before, strict=True)
    return z3.Or(*(z3.And(filled(c), a == 0, filled(now), now != c) for now, a, c in cells))


def _one_bit(moment: TermMoment) -> Formula:
    return _last_bit(moment.now, moment.last)


def _one_bit_hidden(moment: TermMoment) -> Formula:
    return _last_bit(moment.now, moment.held)


def _last_bit(now: Drawn, was: Drawn) -> Formula:
    differ = now[-1] ^ was[-1]
    one = z3.Or(*(differ == 1 << place for place in range(LAST_BITS)))
    return z3.And(one, *(a == b for a, b in zip(now[:-1], was[:-1], strict=True)))


CONSTRAINTS: Mapping[str, Constraint] = {
    "at-the-limit": _at_the_limit,
    "shared-tiles": _shared_tiles,
    "fills-blankings": _fills_blankings,
    "a-byte-over": _a_byte_over,
    "before-last": _before_last,
    "same-again": _same_again,
    "moved": _moved,
    "hidden-moved": _hidden_moved,
    "emptied": _emptied,
    "refilled": _refilled,
    "one-bit": _one_bit,
    "one-bit-hidden": _one_bit_hidden,
}
"""By the ids of the goals."""
