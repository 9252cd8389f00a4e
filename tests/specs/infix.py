"""A formula as text that an engineer reads: infix, a part a line where it is long."""

from collections.abc import Callable

import z3

WIDTH = 96
_OPERATORS = {
    z3.Z3_OP_OR: "or",
    z3.Z3_OP_AND: "and",
    z3.Z3_OP_EQ: "=",
    z3.Z3_OP_IMPLIES: "implies",
    z3.Z3_OP_ULEQ: "<=",
    z3.Z3_OP_UGEQ: ">=",
    z3.Z3_OP_ULT: "<",
    z3.Z3_OP_UGT: ">",
    z3.Z3_OP_BADD: "+",
    z3.Z3_OP_BSUB: "-",
    z3.Z3_OP_BMUL: "x",
}
_JOINING = {z3.Z3_OP_OR, z3.Z3_OP_AND}
_BREAKING = {*_JOINING, z3.Z3_OP_IMPLIES}


def infix(term: z3.ExprRef, indent: int = 0) -> str:
    """``term`` in one line if it fits, otherwise its parts below one another.

    Raises `NotImplementedError` for a term that it has no words for, so that nothing is left out in silence.
    """
    line = " " * indent + _said(term)
    kind = term.decl().kind()
    if len(line) <= WIDTH or kind not in _BREAKING:
        return line
    return f"\n{' ' * indent}{_OPERATORS[kind]}\n".join(infix(part, indent + 2) for part in _parts(term, kind))


def _said(term: z3.ExprRef) -> str:
    kind, parts = term.decl().kind(), term.children()
    if kind in _OPERATORS:
        return f" {_OPERATORS[kind]} ".join(_within(part) for part in _parts(term, kind))
    if z3.is_bv_value(term):
        return str(term.as_long())
    if kind == z3.Z3_OP_UNINTERPRETED:
        return f"{term.decl().name()}({', '.join(map(_said, parts))})" if parts else str(term.decl().name())
    return _OTHERS.get(kind, _unknown)(term)


def _unknown(term: z3.ExprRef) -> str:
    raise NotImplementedError(f"no words for {term.decl().name()} in {term}")


def _parts(term: z3.ExprRef, kind: int) -> list[z3.ExprRef]:
    """The parts of a term; of an `or` within an `or`, the parts of both."""
    if kind not in _JOINING:
        return list(term.children())
    return [inner for part in term.children() for inner in (_parts(part, kind) if _is(part, kind) else [part])]


def _is(term: z3.ExprRef, kind: int) -> bool:
    return bool(term.decl().kind() == kind)


def _within(term: z3.ExprRef) -> str:
    plain = term.decl().kind() in {z3.Z3_OP_UNINTERPRETED, z3.Z3_OP_BNUM, z3.Z3_OP_DISTINCT, z3.Z3_OP_ZERO_EXT}
    return _said(term) if plain else f"({_said(term)})"


def _not(term: z3.ExprRef) -> str:
    (inner,) = term.children()
    if _is(inner, z3.Z3_OP_EQ):
        return " is not ".join(map(_within, inner.children()))
    return f"not {_within(inner)}"


def _if(term: z3.ExprRef) -> str:
    condition, yes, no = term.children()
    return f"{_within(yes)} if {_within(condition)}, else {_within(no)}"


def _extract(term: z3.ExprRef) -> str:
    (inner,), (high, low) = term.children(), term.params()
    if high != low:
        return _unknown(term)
    if low == 0 and _is(inner, z3.Z3_OP_BLSHR):
        shifted, by = inner.children()
        return f"bit {_within(by)} of {_within(shifted)}"
    return f"bit {low} of {_within(inner)}"


_OTHERS: dict[int, Callable[[z3.ExprRef], str]] = {
    z3.Z3_OP_TRUE: lambda _: "true",
    z3.Z3_OP_NOT: _not,
    z3.Z3_OP_DISTINCT: lambda term: " is not ".join(map(_within, term.children())),
    z3.Z3_OP_ITE: _if,
    z3.Z3_OP_EXTRACT: _extract,
    z3.Z3_OP_ZERO_EXT: lambda term: _said(term.children()[0]),
}
