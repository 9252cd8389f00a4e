"""The values of a formula for concrete values of its free terms, of as many cases at once as one likes.

So a rule's symbolic reading is asked about what really happened by the very formula that the theorems are about. A
formula is compiled once; each evaluation is then numpy on arrays, an element a case.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import partial, reduce
from typing import TypeAlias

import numpy as np
import z3
from numpy.typing import NDArray

Values: TypeAlias = NDArray[np.int64]
"""The value of a term in each case; a truth value is 0 or 1."""
Function: TypeAlias = Callable[..., Values]
"""What a free function is: arrays of arguments in, the array of its values out."""
Given: TypeAlias = Values | int | bool | Function
"""The value of a free name: one for each case, or the same for all."""
_Step: TypeAlias = tuple[Callable[..., Values], tuple[int, ...]]


class Evaluator:
    """Compiled terms, each by a name of one's own. ``evaluator(values)`` has the value of each in every case.

    ``values`` has an array or number for every free constant and a `Function` for every free function, by its name in
    the terms; names that they do not speak of are left alone. Raises `KeyError` for a free name without a value.
    """

    def __init__(self, terms: Mapping[str, z3.ExprRef]) -> None:
        self._steps: list[_Step | str] = []
        places: dict[int, int] = {}
        for node in _children_first(terms.values()):
            places[node.get_id()] = len(self._steps)
            self._steps.append(_compiled(node, tuple(places[child.get_id()] for child in node.children())))
        self._ends = {name: places[term.get_id()] for name, term in terms.items()}

    def __call__(self, values: Mapping[str, Given]) -> dict[str, Values]:
        """The value of each term in each case."""
        found: list[Values] = []
        for step in self._steps:
            if isinstance(step, str):
                found.append(np.asarray(values[step], dtype=np.int64))
            else:
                function, below = step
                found.append(function(*(found[place] for place in below), **_bound(function, values)))
        return {name: found[place] for name, place in self._ends.items()}


class _Free:
    """A free function, called by its name."""

    def __init__(self, name: str) -> None:
        self.name = name

    def __call__(self, *arguments: Values, function: Function) -> Values:
        return np.asarray(function(*arguments), dtype=np.int64)


def _bound(function: object, values: Mapping[str, object]) -> dict[str, object]:
    return {"function": values[function.name]} if isinstance(function, _Free) else {}


def _children_first(terms: Iterable[z3.ExprRef]) -> Iterator[z3.ExprRef]:
    """Every term of ``terms`` and below once, each after its children."""
    waiting, known = [(term, False) for term in terms], set[int]()
    while waiting:
        node, opened = waiting.pop()
        if opened:
            yield node
        elif node.get_id() not in known:
            known.add(node.get_id())
            waiting.append((node, True))
            waiting.extend((child, False) for child in node.children())


def _compiled(node: z3.ExprRef, below: tuple[int, ...]) -> _Step | str:
    kind = node.decl().kind()
    if kind == z3.Z3_OP_UNINTERPRETED:
        return (_Free(node.decl().name()), below) if below else node.decl().name()
    if kind in _CONSTANTS or z3.is_bv_value(node):
        value = np.int64(node.as_long() if z3.is_bv_value(node) else _CONSTANTS[kind])
        return partial(np.asarray, value), ()
    if kind not in _OPERATIONS:
        raise ValueError(
            f"evaluation: {node.decl().name()} is not an operation that is known here; add it to the table"
        )
    return partial(_OPERATIONS[kind], node), below


def _mask(node: z3.ExprRef) -> int:
    return (1 << int(node.size())) - 1


def _joined(node: z3.ExprRef, *parts: Values) -> Values:
    joined: Values = parts[0]
    for child, part in zip(node.children()[1:], parts[1:], strict=True):
        joined = (joined << child.size()) | part
    return joined


def _extracted(node: z3.ExprRef, value: Values) -> Values:
    high, low = node.params()
    found: Values = (value >> low) & ((1 << (high - low + 1)) - 1)
    return found


def _all_differ(_node: z3.ExprRef, *values: Values) -> Values:
    pairs = [a != b for place, a in enumerate(values) for b in values[place + 1 :]]
    return np.asarray(reduce(np.logical_and, pairs), dtype=np.int64)


def _truth(test: Callable[..., object]) -> Callable[..., Values]:
    return lambda _node, *values: np.asarray(reduce(test, values), dtype=np.int64)


def _chosen(_node: z3.ExprRef, chosen: Values, one: Values, other: Values) -> Values:
    return np.asarray(np.where(chosen == 1, one, other), dtype=np.int64)


def _divided(_node: z3.ExprRef, value: Values, by: Values) -> Values:
    return np.asarray(value // by, dtype=np.int64)


_CONSTANTS = {z3.Z3_OP_TRUE: 1, z3.Z3_OP_FALSE: 0}
_OPERATIONS: dict[int, Callable[..., Values]] = {
    z3.Z3_OP_EQ: _truth(np.equal),
    z3.Z3_OP_DISTINCT: _all_differ,
    z3.Z3_OP_AND: _truth(np.bitwise_and),
    z3.Z3_OP_OR: _truth(np.bitwise_or),
    z3.Z3_OP_NOT: lambda _node, value: 1 - value,
    z3.Z3_OP_IMPLIES: lambda _node, one, other: (1 - one) | other,
    z3.Z3_OP_ITE: _chosen,
    z3.Z3_OP_ULEQ: _truth(np.less_equal),
    z3.Z3_OP_ULT: _truth(np.less),
    z3.Z3_OP_UGEQ: _truth(np.greater_equal),
    z3.Z3_OP_UGT: _truth(np.greater),
    z3.Z3_OP_BADD: lambda node, *values: reduce(np.add, values) & _mask(node),
    z3.Z3_OP_BSUB: lambda node, one, other: (one - other) & _mask(node),
    z3.Z3_OP_BMUL: lambda node, *values: reduce(np.multiply, values) & _mask(node),
    z3.Z3_OP_BUDIV: _divided,
    z3.Z3_OP_BUDIV_I: _divided,
    z3.Z3_OP_BNOT: lambda node, value: ~value & _mask(node),
    z3.Z3_OP_BLSHR: lambda _node, value, by: value >> np.minimum(by, 62),
    z3.Z3_OP_ZERO_EXT: lambda _node, value: value,
    z3.Z3_OP_CONCAT: _joined,
    z3.Z3_OP_EXTRACT: _extracted,
}
"""z3's operations -> what they do, given the term and the values of its children. Below 63 bits everywhere."""
