"""Asks for many obligations, and says what came of it as one value and as a table of text."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from planeproof.spec.obligation import Obligation
from planeproof.spec.solving import Outcome, Result, prove
from planeproof.spec.theorems import THEOREMS

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


COLUMNS = ("theorem", "obligation", "size", "wanted", "answer", "resources", "seconds")


def table(report: Report) -> list[str]:
    """The report as lines of text: a heading, a line for each result, reasons below those not as wanted."""
    rows = [COLUMNS, *(_row(result) for result in report.results)]
    widths = [max(len(row[column]) for row in rows) for column in range(len(COLUMNS))]
    lines = ["  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip() for row in rows]
    remarks = [[], *(_remarks(result) for result in report.results)]
    return [text for line, below in zip(lines, remarks, strict=True) for text in (line, *below)]


def _row(result: Result) -> tuple[str, ...]:
    obligation = result.obligation
    return (
        f"{obligation.theorem} {THEOREMS[obligation.theorem]}",
        obligation.id,
        obligation.size,
        obligation.wanted.value,
        result.answer.value,
        "not counted" if result.used is None else f"{result.used:,} of {result.limit:,}",
        f"{result.seconds:.2f}",
    )


def _remarks(result: Result) -> list[str]:
    if result.outcome is Outcome.AS_WANTED:
        return []
    words = [result.obligation.statement, *([result.reason] if result.reason else [])]
    return [f"    {word}" for word in words] + [
        f"    {name}: {value}" for name, value in (result.witness or {}).items()
    ]
