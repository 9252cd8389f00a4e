"""Every obligation as SMT-LIB 2 text, so that any solver can confirm it. ``unsat`` means proved."""

from collections.abc import Iterable, Iterator
from pathlib import Path
from textwrap import wrap

import z3

from planeproof.spec.obligation import Answer, Obligation
from planeproof.spec.vocabulary import Formula

WIDTH = 100
STATUS = {Answer.PROVED: "unsat", Answer.REFUTED: "sat"}


def file_name(obligation: Obligation) -> str:
    """The name of its file, from theorem and id."""
    return f"{obligation.theorem}-{obligation.id}.smt2"


def certificate(obligation: Obligation) -> str:
    """The denial of ``obligation`` as text: what it says, each premise by its name, the goal denied."""
    question = obligation.question()
    parts = [*question.premises.items(), ("not the goal", z3.Not(question.goal))]
    declared = _declarations([formula for _, formula in parts])
    lines = [
        *_comment(f"Theorem {obligation.theorem}, {obligation.id}: {obligation.statement}"),
        *_comment(f"Size: {obligation.size}. Wanted: {obligation.wanted.value}."),
        f"(set-info :status {STATUS[obligation.wanted]})",
        f"(set-logic {'QF_UFBV' if any(function.arity() for function in declared) else 'QF_BV'})",
        *(function.sexpr() for function in declared),
        *(line for name, formula in parts for line in (*_comment(name), f"(assert {formula.sexpr()})")),
        "(check-sat)",
    ]
    return "\n".join(lines) + "\n"


def write_all(obligations: Iterable[Obligation], folder: Path) -> None:
    """Write the certificate of each obligation into ``folder``, and remove those of no obligation any more."""
    folder.mkdir(parents=True, exist_ok=True)
    texts = {file_name(obligation): certificate(obligation) for obligation in obligations}
    for file in folder.glob("*.smt2"):
        if file.name not in texts:
            file.unlink()
    for name, text in texts.items():
        (folder / name).write_text(text, encoding="utf-8")


def stale(obligations: Iterable[Obligation], folder: Path) -> list[str]:
    """The names of files in ``folder`` that are missing, left over, or not what would be written now."""
    wanted = {file_name(obligation): certificate(obligation) for obligation in obligations}
    found = {file.name: file.read_text("utf-8") for file in folder.glob("*.smt2")}
    return sorted(name for name in wanted.keys() | found.keys() if wanted.get(name) != found.get(name))


def _comment(text: str) -> list[str]:
    return [f"; {line}" for line in wrap(text, WIDTH)]


def _declarations(formulas: list[Formula]) -> list[z3.FuncDeclRef]:
    """The free constants and functions of the formulas, by name, so that the text is the same each time."""
    found: dict[str, z3.FuncDeclRef] = {}
    for term in _terms(formulas):
        if z3.is_app(term) and term.decl().kind() == z3.Z3_OP_UNINTERPRETED:
            found[term.decl().name()] = term.decl()
    return [found[name] for name in sorted(found)]


def _terms(formulas: list[Formula]) -> Iterator[z3.ExprRef]:
    """Every term below the formulas once, however often it is shared."""
    waiting, known = list(formulas), set()
    while waiting:
        term = waiting.pop()
        if term.get_id() not in known:
            known.add(term.get_id())
            waiting.extend(term.children())
            yield term
