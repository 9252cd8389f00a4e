"""Every mutant of a source text: Cosmic Ray's operators, and three of ours after its pattern.

Cosmic Ray replaces operators, comparisons, numbers and truth values one by one, in decorated functions and properties
too. What its set lacks, and what schedulers live on, is added: a statement that is forgotten, a guard that is left
out, and a shadow that is replaced where it should be added to.
"""

import ast
import difflib
import hashlib
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

import parso
from cosmic_ray.ast import ast_nodes, get_ast  # type: ignore[import-untyped]
from cosmic_ray.mutating import mutate_code  # type: ignore[import-untyped]
from cosmic_ray.operators.operator import Example, Operator  # type: ignore[import-untyped]
from cosmic_ray.plugins import get_operator, operator_names  # type: ignore[import-untyped]
from parso.python.tree import IfStmt, PythonLeaf
from parso.tree import BaseNode, NodeOrLeaf

Place = tuple[int, int]
"""Line, from 1, and column, from 0."""

Span = tuple[Place, Place]


@dataclass(frozen=True, kw_only=True)
class Mutant:
    """One mutant: ``source`` is that of its ``module`` but for one change, made by ``operator`` in ``line``.

    ``before`` and ``after`` are what that changes, without indentation. ``id`` stays the same as long as that does, and
    what reads like it.
    """

    id: str
    module: str
    operator: str
    line: int
    before: str
    after: str
    source: str


class StatementForgotten(Operator):  # type: ignore[misc]
    """An assignment or a call that stands by itself is left out."""

    def mutation_positions(self, node: NodeOrLeaf) -> Iterator[Span]:
        """The whole statement."""
        if node.type == "simple_stmt" and isinstance(node, BaseNode):
            first = node.children[0]
            if first.type in ("expr_stmt", "atom_expr") and not _declares(first):
                yield first.start_pos, first.end_pos

    def mutate(self, node: BaseNode, index: int) -> BaseNode:
        """``pass`` instead."""
        assert index == 0
        node.children[0] = _parsed(f"{node.children[0].get_first_leaf().prefix}pass")
        return node

    @classmethod
    def examples(cls) -> Iterable[Example]:
        """As Cosmic Ray tests its own."""
        return (Example("f(x)\n", "pass\n"), Example("x |= y\n", "pass\n"), Example("x: int\n", "x: int\n"))


class GuardLeftOut(Operator):  # type: ignore[misc]
    """An ``if`` that never holds; in a comprehension, one that always does."""

    def mutation_positions(self, node: NodeOrLeaf) -> Iterator[Span]:
        """The condition."""
        if isinstance(node, BaseNode) and (isinstance(node, IfStmt) or node.type == "comp_if"):
            condition = node.children[1]
            yield condition.start_pos, condition.end_pos

    def mutate(self, node: BaseNode, index: int) -> BaseNode:
        """A constant instead."""
        assert index == 0
        node.children[1] = _parsed(" False" if isinstance(node, IfStmt) else " True")
        return node

    @classmethod
    def examples(cls) -> Iterable[Example]:
        """As Cosmic Ray tests its own."""
        return (
            Example("if x: f()\n", "if False: f()\n"),
            Example("[x for x in y if x > 1]", "[x for x in y if True]"),
        )


class ReplacedNotAddedTo(Operator):  # type: ignore[misc]
    """``x |= y`` becomes ``x = y``, and so for ``+=`` and the like."""

    def mutation_positions(self, node: NodeOrLeaf) -> Iterator[Span]:
        """The sign."""
        if node.type == "operator" and isinstance(node, PythonLeaf) and node.value in ("|=", "+=", "-=", "&="):
            yield node.start_pos, node.end_pos

    def mutate(self, node: PythonLeaf, index: int) -> PythonLeaf:
        """A plain assignment."""
        assert index == 0
        node.value = "="
        return node

    @classmethod
    def examples(cls) -> Iterable[Example]:
        """As Cosmic Ray tests its own."""
        return (Example("x |= y\n", "x = y\n"), Example("x -= 1\n", "x = 1\n"))


OURS = (StatementForgotten, GuardLeftOut, ReplacedNotAddedTo)


def mutants_of(module: str, source: str) -> list[Mutant]:
    """Every mutant of ``source``, in the order of its lines; two that are the same program count once."""
    annotations, seen, found = list(_annotations(source)), {_program(source)}, list[Mutant]()
    taken: set[str] = set()
    for name, operator in _operators():
        positions = [span for node in ast_nodes(get_ast(source)) for span in operator.mutation_positions(node)]
        for occurrence, (start, _) in enumerate(positions):
            if any(first <= start < last for first, last in annotations):
                continue  # it would be the type checker's to find, or fail on import
            mutated = mutate_code(source, operator, occurrence)
            program = _program(mutated)
            if program is not None and program not in seen:
                seen.add(program)
                found.append(_mutant(module, name, start[0], source, mutated, taken))
    return sorted(found, key=lambda mutant: (mutant.line, mutant.operator, mutant.after, mutant.id))


def _operators() -> Iterator[tuple[str, Operator]]:
    for name in operator_names():
        kind = get_operator(name)
        if not kind.arguments():  # those with arguments ask for names of variables, and choose at random
            yield name.removeprefix("core/"), kind()
    for ours in OURS:
        yield ours.__name__, ours()


def _mutant(module: str, operator: str, line: int, source: str, mutated: str, taken: set[str]) -> Mutant:
    changed = [line for line in difflib.ndiff(source.splitlines(), mutated.splitlines()) if line[0] in "-+"]
    before, after = (" ".join(" ".join(one[1:] for one in changed if one[0] == sign).split()) for sign in "-+")
    digest = next(each for each in _digests(f"{operator}|{before}|{after}") if each not in taken)
    taken.add(digest)
    return Mutant(
        id=f"{module}-{digest}", module=module, operator=operator, line=line, before=before, after=after, source=mutated
    )


def _digests(text: str) -> Iterator[str]:
    """Six digits for ``text``; others where it stands in more lines than one."""
    number = 0
    while True:
        yield hashlib.sha256(f"{text}|{number}".encode()).hexdigest()[:6]
        number += 1


def _program(source: str) -> str | None:
    """What is the same for two texts of one program; None for none (a bare star among parameters is no product)."""
    try:
        return ast.dump(ast.parse(source))
    except SyntaxError:
        return None


def _annotations(source: str) -> Iterator[Span]:
    for node in ast.walk(ast.parse(source)):
        annotation = getattr(node, "returns" if isinstance(node, ast.FunctionDef) else "annotation", None)
        if isinstance(annotation, ast.expr):
            assert annotation.end_lineno is not None
            assert annotation.end_col_offset is not None
            yield (annotation.lineno, annotation.col_offset), (annotation.end_lineno, annotation.end_col_offset)


def _parsed(text: str) -> NodeOrLeaf:
    parsed: NodeOrLeaf = parso.parse(text)  # type: ignore[no-untyped-call]
    return parsed


def _declares(statement: NodeOrLeaf) -> bool:
    """A bare ``x: int``."""
    last = statement.children[-1] if isinstance(statement, BaseNode) else statement
    return last.type == "annassign" and isinstance(last, BaseNode) and len(last.children) == 2
