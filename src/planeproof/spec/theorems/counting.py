"""Theorem 6, the counting: n + 1 things never fit n tiles, and n occupied cells always do.

Both by induction, one step of it an obligation, so that they hold for every size that 16 bits can count. A step speaks
of the two or three items it needs, whichever they are.
"""

import z3

from planeproof.spec.obligation import Obligation, Question

BITS = 16
ANY_SIZE = f"any number of tiles and cells below {(1 << BITS) - 2:,}"


def _counts(context: z3.Context, names: str) -> list[z3.ExprRef]:
    return [z3.BitVec(name, BITS, context) for name in names.split()]


def _pigeonhole_step(context: z3.Context) -> Question:
    i, j, n = _counts(context, "i j n")
    place = z3.Function("place", n.sort(), n.sort())
    last = n + 1

    def moved(item: z3.ExprRef) -> z3.ExprRef:
        return z3.If(place(item) == n, place(last), place(item))

    apart = [z3.Implies(x != y, place(x) != place(y)) for x, y in ((i, j), (i, last), (j, last))]
    return Question(
        premises={
            "i and j are two of the first n + 1 items": z3.And(i != j, z3.ULE(i, n), z3.ULE(j, n)),
            "n + 2 items can be counted": z3.ULT(n, (1 << BITS) - 2),
            "no two items share a place": z3.And(*apart),
            "every item has one of the first n + 1 places": z3.And(
                *(z3.Implies(z3.ULE(item, last), z3.ULE(place(item), n)) for item in (i, j, last))
            ),
        },
        goal=z3.And(moved(i) != moved(j), z3.ULT(moved(i), n), z3.ULT(moved(j), n)),
        shown={
            "n": n,
            "i": i,
            "j": j,
            "place of i": place(i),
            "place of j": place(j),
            "place of the last": place(last),
        },
        mutants={"nobody has to move": z3.ULT(place(i), n)},
    )


def _pigeonhole_base(context: z3.Context) -> Question:
    first, second = _counts(context, "first second")
    return Question(
        premises={"there is one place": z3.And(z3.ULT(first, 1), z3.ULT(second, 1))},
        goal=first == second,
        shown={"place of the first": first, "place of the second": second},
    )


def _rank_step(context: z3.Context) -> Question:
    i, k = _counts(context, "i k")
    rank, occupied = z3.Function("rank", k.sort(), k.sort()), z3.Function("occupied", k.sort(), z3.BoolSort(context))
    return Question(
        premises={
            "a rank counts the occupied cells before": rank(k + 1) == rank(k) + z3.If(occupied(k), _one(k), _none(k)),
            "so far ranks did not fall": z3.ULE(rank(i), rank(k)),
            "so far ranks were no more than the cells": z3.ULE(rank(k), k),
            "the next cell can be counted": z3.ULT(k, (1 << BITS) - 2),
        },
        goal=z3.And(z3.ULE(rank(i), rank(k + 1)), z3.ULE(rank(k + 1), k + 1)),
        shown={"i": i, "k": k, "rank of i": rank(i), "rank of k": rank(k), "rank of k + 1": rank(k + 1)},
        mutants={"ranks always grow": z3.ULT(rank(k), rank(k + 1))},
    )


def _rank_apart(context: z3.Context) -> Question:
    i, j = _counts(context, "i j")
    rank, occupied = z3.Function("rank", i.sort(), i.sort()), z3.Function("occupied", i.sort(), z3.BoolSort(context))
    return Question(
        premises={
            "a rank counts the occupied cells before": rank(i + 1) == rank(i) + z3.If(occupied(i), _one(i), _none(i)),
            "ranks do not fall from i + 1 to j": z3.ULE(rank(i + 1), rank(j)),
            "cell i is occupied": occupied(i),
            "no rank is more than the cells": z3.ULE(rank(i), i),
            "cell i + 1 can be counted": z3.ULT(i, (1 << BITS) - 2),
        },
        goal=z3.ULT(rank(i), rank(j)),
        shown={"i": i, "j": j, "rank of i": rank(i), "rank of j": rank(j)},
        mutants={"the ranks are neighbours": rank(j) == rank(i) + 1},
    )


def _one(like: z3.ExprRef) -> z3.ExprRef:
    return z3.BitVecVal(1, like.sort())


def _none(like: z3.ExprRef) -> z3.ExprRef:
    return z3.BitVecVal(0, like.sort())


OBLIGATIONS: tuple[Obligation, ...] = (
    Obligation(
        id="pigeonhole-base",
        theorem=6,
        statement="Two items share a place if there is one place.",
        size=ANY_SIZE,
        build=_pigeonhole_base,
    ),
    Obligation(
        id="pigeonhole-step",
        theorem=6,
        statement="If n + 2 items had places of their own among n + 1, then n + 1 items would have places of their own "
        "among n: whoever stands in the last place moves to that of the last item. With the base: never.",
        size=ANY_SIZE,
        build=_pigeonhole_step,
    ),
    Obligation(
        id="rank-step",
        theorem=6,
        statement="The number of occupied cells before a cell does not fall from cell to cell, nor exceed the cells.",
        size=ANY_SIZE,
        build=_rank_step,
    ),
    Obligation(
        id="rank-apart",
        theorem=6,
        statement="An occupied cell has a lower rank than every later cell, and than the count of all: given the tile "
        "of its rank, n occupied cells stand in n tiles of their own, the first n of the pool.",
        size=ANY_SIZE,
        build=_rank_apart,
    ),
)
