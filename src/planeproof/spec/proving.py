"""Asks for many obligations, and says what came of it as one value."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from planeproof.spec.obligation import Obligation
from planeproof.spec.solving import Outcome, Result, prove

Ask = Callable[[Obligation], Result]
Watcher = Callable[[Result], None]


@dataclass(frozen=True, kw_only=True)
class Report:
    """The results, in the order in which the obligations were given."""

    results: tuple[Result, ...]

    @property
    def outcome(self) -> Outcome:
        """The weakest result: CONTRARY if any is, else OPEN if any is, or if nothing was asked; else AS_WANTED."""
        outcomes = {result.outcome for result in self.results}
        for weakest in (Outcome.CONTRARY, Outcome.OPEN):
            if weakest in outcomes:
                return weakest
        return Outcome.AS_WANTED if outcomes else Outcome.OPEN

    @property
    def seconds(self) -> float:
        """Time that the solver spent on all of them."""
        return sum(result.seconds for result in self.results)


def prove_all(obligations: Iterable[Obligation], watcher: Watcher | None = None, ask: Ask = prove) -> Report:
    """Ask for each obligation in turn; ``watcher`` is told each result as it comes. ``ask`` is z3 unless given."""
    results = []
    for obligation in obligations:
        results.append(ask(obligation))
        if watcher is not None:
            watcher(results[-1])
    return Report(results=tuple(results))
