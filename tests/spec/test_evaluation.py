"""What numpy makes of a formula is what z3 itself makes of it."""

from itertools import product

import numpy as np
import pytest
import z3

from planeproof.spec.evaluation import Evaluator
from planeproof.spec.vocabulary import bit_at

ONE, OTHER = z3.BitVecs("one other", 4)
NUMBERS = np.array(list(product(range(16), repeat=2)))
TERMS = {
    "arithmetic": ONE + OTHER * 3 - ONE * OTHER,
    "a chain of sums": ONE + OTHER + ONE,
    "shift and complement": z3.LShR(~ONE, OTHER),
    "parts": z3.Concat(z3.Extract(2, 1, ONE), z3.ZeroExt(2, OTHER)),
    "a choice": z3.If(z3.ULT(ONE, OTHER), ONE, OTHER),
    "a bit": bit_at(z3.Concat(ONE, OTHER), z3.Extract(2, 0, OTHER)),
}
FORMULAS = {
    "and, or, not": z3.Or(z3.And(ONE == 3, z3.Not(OTHER == 5)), ONE == OTHER),
    "implies": z3.Implies(z3.ULE(ONE, OTHER), z3.UGE(ONE, 7)),
    "greater": z3.UGT(ONE, OTHER),
    "all differ": z3.Distinct(ONE, OTHER, z3.BitVecVal(3, 4)),
    "constants": z3.And(z3.BoolVal(True), z3.Or(z3.BoolVal(False), ONE == 2)),
}


def by_z3(term: z3.ExprRef, one: int, other: int) -> int:
    """The value that z3 finds by putting in numbers and simplifying."""
    plain = z3.simplify(z3.substitute(term, (ONE, z3.BitVecVal(one, 4)), (OTHER, z3.BitVecVal(other, 4))))
    return int(z3.is_true(plain)) if z3.is_bool(plain) else int(plain.as_long())


@pytest.mark.parametrize("name", [*TERMS, *FORMULAS])
def test_a_term_has_the_value_that_z3_says(name: str) -> None:
    """For all 256 pairs of 4-bit numbers at once."""
    term = (TERMS | FORMULAS)[name]
    found = Evaluator({"it": term})({"one": NUMBERS[:, 0], "other": NUMBERS[:, 1]})["it"]
    assert found.tolist() == [by_z3(term, *pair) for pair in NUMBERS.tolist()]


def test_division_rounds_down() -> None:
    """Unsigned division, for every divisor but 0."""
    pairs = NUMBERS[NUMBERS[:, 1] > 0]
    found = Evaluator({"it": z3.UDiv(ONE, OTHER)})({"one": pairs[:, 0], "other": pairs[:, 1]})["it"]
    assert found.tolist() == [one // other for one, other in pairs.tolist()]


def test_a_free_function_is_called_with_the_values_of_its_arguments() -> None:
    """Also where it is called twice, within itself."""
    square = z3.Function("square", z3.BitVecSort(4), z3.BitVecSort(4))
    evaluator = Evaluator({"it": square(square(ONE) + 1)})
    assert evaluator({"one": np.arange(3), "square": lambda x: x * x})["it"].tolist() == [1, 4, 25]


def test_what_it_does_not_know_is_refused() -> None:
    """An operation that is not in the table, and a free name without a value."""
    with pytest.raises(ValueError, match="bvsdiv is not an operation that is known here"):
        Evaluator({"it": ONE / OTHER})
    with pytest.raises(KeyError, match="other"):
        Evaluator({"it": ONE + OTHER})({"one": 1})
