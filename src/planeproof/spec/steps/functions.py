"""Functions on terms that can be changed at a place: free ones, of any size, and tables, of a small one.

A step is written once, on functions. Read with free functions it is a formula about every machine of that size; read
with tables of literals it runs; read with tables of free terms it is one step of a bounded search.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cached_property
from itertools import product
from typing import TypeAlias

import z3

from planeproof.spec.vocabulary import Formula, Term

Function: TypeAlias = Callable[..., Term]
"""From terms to a term: a bit-vector or a truth value."""

Place = tuple[int, ...]


@dataclass(frozen=True, kw_only=True, eq=False)
class Table:
    """A function given value by value. ``sorts`` are the bit-vector sorts of its arguments, ``counts`` how many."""

    sorts: tuple[z3.SortRef, ...]
    counts: tuple[int, ...]
    values: Mapping[Place, Term]

    @classmethod
    def of(cls, sorts: tuple[z3.SortRef, ...], counts: tuple[int, ...], function: Function) -> "Table":
        """The table of ``function``."""
        empty = cls(sorts=sorts, counts=counts, values={})
        return empty.over(function)

    def __call__(self, *index: Term) -> Term:
        """The value at ``index``: itself where that is of literals, else a choice among the values."""
        return self._at((), index)

    def _at(self, place: Place, rest: tuple[Term, ...]) -> Term:
        if not rest:
            return self.values[place]
        if z3.is_bv_value(rest[0]):
            return self._at((*place, rest[0].as_long()), rest[1:])
        numbers = range(self.counts[len(place)])
        found = self._at((*place, numbers[-1]), rest[1:])
        for number in reversed(numbers[:-1]):
            found = z3.If(rest[0] == number, self._at((*place, number), rest[1:]), found)
        return found

    def put(self, index: tuple[Term, ...], value: Term) -> "Table":
        """The table with one value changed; ``index`` is of literals."""
        place = tuple(term.as_long() for term in index)
        return Table(sorts=self.sorts, counts=self.counts, values={**self.values, place: z3.simplify(value)})

    def over(self, function: Function) -> "Table":
        """The table of another function of the same arguments."""
        values = {place: z3.simplify(function(*self._literals(place))) for place in self.places}
        return Table(sorts=self.sorts, counts=self.counts, values=values)

    def where(self, condition: Formula, other: "Table") -> "Table":
        """This table where the condition holds, else the other."""
        values = {
            place: value if value is other.values[place] else z3.If(condition, value, other.values[place])
            for place, value in self.values.items()
        }
        return Table(sorts=self.sorts, counts=self.counts, values=values)

    @property
    def places(self) -> tuple[Place, ...]:
        """Every place there is a value for."""
        return tuple(product(*(range(count) for count in self.counts)))

    @cached_property
    def _numbers(self) -> tuple[list[Term], ...]:
        pairs = zip(self.sorts, self.counts, strict=True)
        return tuple([z3.BitVecVal(number, sort) for number in range(count)] for sort, count in pairs)

    def _literals(self, place: Place) -> list[Term]:
        return [numbers[number] for numbers, number in zip(self._numbers, place, strict=True)]


def changed(function: Function, index: tuple[Term, ...], value: Term) -> Function:
    """The function with ``value`` at ``index``, and as it was elsewhere."""
    if isinstance(function, Table) and all(z3.is_bv_value(term) for term in index):
        return function.put(index, value)

    def after(*at: Term) -> Term:
        here = [one == other for one, other in zip(at, index, strict=True)]
        return z3.If(here[0] if len(here) == 1 else z3.And(*here), value, function(*at))

    return after


def replaced(function: Function, new: Function) -> Function:
    """``new`` in the place of ``function``, as a table if that was one."""
    return function.over(new) if isinstance(function, Table) else new
