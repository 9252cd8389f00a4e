"""What the solvers answered, as lines of text: the statements by theorem, and below each the sizes it was asked at.

Headings stand at the margin, everything else is indented.
"""

from collections.abc import Iterator
from itertools import groupby
from textwrap import wrap

from planeproof.spec.obligation import Answer, Obligation
from planeproof.spec.proving import Report
from planeproof.spec.solving import Outcome, Result
from planeproof.spec.steps.deciding import Decision
from planeproof.spec.theorems import THEOREMS

WIDTH = 100
WORDS = {Outcome.AS_WANTED: "PASS", Outcome.OPEN: "UNKNOWN", Outcome.CONTRARY: "FAIL"}
_SAID = {
    Outcome.AS_WANTED: "every obligation that was asked is answered as wanted",
    Outcome.OPEN: "an obligation is left without an answer",
    Outcome.CONTRARY: "an obligation is answered contrary to what is wanted",
}
_DECIDED = {
    Answer.PROVED: "every step keeps the invariant",
    Answer.REFUTED: "a scene exists in which its steps break a rule",
    Answer.UNKNOWN: "neither proved nor refuted",
}


def report_lines(report: Report, *, unit: str = "resource units", full: bool = False) -> list[str]:
    """All that one solver answered; ``unit`` is what its limit counts. ``full`` adds premises and witnesses."""
    lines = [*_opening(report, unit)]
    for theorem, results in groupby(report.results, key=lambda result: result.obligation.theorem):
        lines += ["", f"{theorem}  {THEOREMS[theorem]}"]
        by_statement: dict[str, list[Result]] = {}
        for result in results:
            by_statement.setdefault(result.obligation.statement, []).append(result)
        for statement, cases in by_statement.items():
            lines += [*wrap(statement, WIDTH, initial_indent="  ", subsequent_indent="  "), *_cases(cases, full)]
    return lines


def confirmation_lines(report: Report, *, unit: str) -> list[str]:
    """What a further solver answered to the same statements: in sum, and those that are not as wanted."""
    others = [result for result in report.results if result.outcome is not Outcome.AS_WANTED]
    return [*_opening(report, unit), *_cases(others, full=False)]


def decision_lines(decision: Decision, target: str) -> list[str]:
    """What came of somebody's own steps, and what it rests on or where it fails."""
    head = f"{decision.answer.name}  {target}: {_DECIDED[decision.answer]}"
    return [head, *wrap(decision.words, WIDTH, initial_indent="  ", subsequent_indent="  ")]


def _opening(report: Report, unit: str) -> Iterator[str]:
    if not report.results:
        yield f"{WORDS[report.outcome]}  nothing was asked, so nothing is proved"
        return
    first, outcomes = report.results[0], [result.outcome for result in report.results]
    good = outcomes.count(Outcome.AS_WANTED)
    yield f"{WORDS[report.outcome]}  {first.solver}: {_SAID[report.outcome]}"
    counted = [result.used for result in report.results if result.used is not None]
    used = f"{sum(counted):,} {unit}, " if counted else ""
    yield f"  {good} of {len(outcomes)} as wanted; {used}{report.seconds:.1f} s; each within {first.limit:,} {unit}"


def _cases(results: list[Result], full: bool) -> Iterator[str]:
    widest = max((len(result.obligation.id) for result in results), default=0)
    for result in results:
        used = "" if result.used is None else f"{result.used:>12,}"
        row = f"    {result.obligation.id:<{widest}}  {_answer(result)}{used}  {result.seconds:.2f} s"
        yield f"{row}  {result.obligation.size}"
        if full or result.outcome is not Outcome.AS_WANTED:
            yield from _details(result, full)


def _answer(result: Result) -> str:
    wanted = result.obligation.wanted
    said = result.answer.value
    return f"{said}, as wanted" if result.answer is wanted else f"{said.upper()}, wanted {wanted.value}"


def _details(result: Result, full: bool) -> Iterator[str]:
    indent = " " * 6
    if result.reason:
        yield f"{indent}{result.reason}"
    if full:
        yield from _premises(result.obligation, indent)
    if result.witness:
        yield f"{indent}witness: it is not so where"
        yield from (f"{indent}  {name}: {_value(value)}" for name, value in result.witness.items())


def _premises(obligation: Obligation, indent: str) -> Iterator[str]:
    names = obligation.premises
    yield f"{indent}{'premises' if names else 'no premises'}"
    yield from (f"{indent}  {name}" for name in names)


def _value(value: int | bool) -> str:
    return ("true" if value else "false") if isinstance(value, bool) else str(value)
