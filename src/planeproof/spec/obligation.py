"""An obligation: one statement that a solver is to prove, or to refute where a wrong wording is kept on purpose."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from enum import Enum
from functools import cached_property

import z3

from planeproof.spec.vocabulary import Formula, Term


class Answer(Enum):
    """What a solver said. UNKNOWN is neither of the others, ever."""

    PROVED = "proved"
    REFUTED = "refuted"
    UNKNOWN = "unknown"


@dataclass(frozen=True, kw_only=True, eq=False)
class Question:
    """An obligation as formulas of one context.

    The statement is: whatever the free terms are, the ``premises`` together imply the ``goal``. ``shown`` are the
    terms that make a counterexample readable; ``mutants`` are wrong goals that the same premises must not imply.
    """

    premises: Mapping[str, Formula]
    goal: Formula
    shown: Mapping[str, Term] = field(default_factory=dict)
    mutants: Mapping[str, Formula] = field(default_factory=dict)

    @property
    def denial(self) -> tuple[Formula, ...]:
        """What a counterexample satisfies: every premise, and not the goal."""
        return (*self.premises.values(), z3.Not(self.goal))


Build = Callable[[z3.Context], Question]


@dataclass(frozen=True, kw_only=True)
class Obligation:
    """One statement, built anew in a fresh context each time it is asked.

    ``id`` is unique; ``theorem`` is 1 to 10; ``statement`` a sentence; ``size`` what it speaks of, in words.
    ``wanted`` is PROVED, or REFUTED for a wording that is kept because it is wrong, or to show that something can
    happen. Not ``exact`` means that a premise about *every* place is given at chosen places only: a proof is then
    still a proof, but a model of the denial is no counterexample, and the answer is UNKNOWN. ``small`` is then the
    same statement on a machine so small that such a premise is given at every place: what is changed is asked there,
    where a model is a counterexample.
    """

    id: str
    theorem: int
    statement: str
    size: str
    build: Build
    wanted: Answer = Answer.PROVED
    exact: bool = True
    small: Build | None = None
    dropped: frozenset[str] = frozenset()
    mutant: str | None = None

    def question(self) -> Question:
        """The formulas, in a context of their own; without what was dropped, with the goal that was chosen."""
        whole = self.build(z3.Context())
        premises = {name: formula for name, formula in whole.premises.items() if name not in self.dropped}
        goal = whole.goal if self.mutant is None else whole.mutants[self.mutant]
        return replace(whole, premises=premises, goal=goal)

    @cached_property
    def premises(self) -> tuple[str, ...]:
        """The names of its premises, each of which can be dropped."""
        return tuple(self.question().premises)

    def without(self, premise: str) -> "Obligation":
        """The same statement without one premise, which is wanted REFUTED: the premise is needed.

        Raises `ValueError`, naming those there are, if it has no such premise.
        """
        if premise not in self.premises:
            raise ValueError(f"{self.id}: no premise {premise!r}; there are: {', '.join(self.premises) or 'none'}")
        return self._changed(dropped=self.dropped | {premise})

    def mutants(self) -> tuple["Obligation", ...]:
        """The same premises with each of the wrong goals, which are wanted REFUTED."""
        return tuple(self._changed(mutant=name) for name in self.question().mutants)

    def _changed(self, *, dropped: frozenset[str] | None = None, mutant: str | None = None) -> "Obligation":
        """What is wanted REFUTED, asked where a model says so."""
        return replace(
            self,
            dropped=self.dropped if dropped is None else dropped,
            mutant=mutant,
            wanted=Answer.REFUTED,
            build=self.small or self.build,
            exact=self.exact or self.small is not None,
        )
