"""What happens to each proof without each of its premises, and with each wrong goal: the proof that they matter."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

from planeproof.spec.obligation import Answer, Obligation
from planeproof.spec.solving import prove
from planeproof.spec.theorems import THEOREMS


@dataclass(frozen=True, kw_only=True)
class Change:
    """One change to one obligation, in words, and what z3 answered to it."""

    obligation: Obligation
    words: str
    answer: Answer


def changes(obligations: Iterable[Obligation]) -> Iterator[Change]:
    """Each obligation that is wanted PROVED, without each premise in turn and with each wrong goal in turn."""
    for obligation in obligations:
        if obligation.wanted is Answer.PROVED:
            yield from _changes(obligation)


def _changes(obligation: Obligation) -> Iterator[Change]:
    for premise in obligation.premises:
        answer = prove(obligation.without(premise)).answer
        yield Change(obligation=obligation, words=f"without: {premise}", answer=answer)
    for mutant in obligation.mutants():
        yield Change(obligation=obligation, words=f"goal: {mutant.mutant}", answer=prove(mutant).answer)


HEADING = """\
# Every premise is needed

Each obligation that is proved, asked again without each of its premises in turn ("without"), and with a wrong goal in
place of its own ("goal"). Where a proof at full size is given its premises at chosen places, the change is asked of the
same statement on a machine so small that they are given everywhere. Written by `planeproof.spec.premises`; a test says
when it is stale.
"""


def text(found: Iterable[Change]) -> str:
    """The changes as a page, one table a theorem."""
    found = list(found)
    parts = [HEADING]
    for theorem in sorted({change.obligation.theorem for change in found}):
        rows = [change for change in found if change.obligation.theorem == theorem]
        table = [f"| {change.obligation.id} | {change.words} | {change.answer.value} |" for change in rows]
        heading = [
            f"## {theorem}. {THEOREMS[theorem].capitalize()}",
            "",
            "| obligation | change | answer |",
            "|---|---|---|",
        ]
        parts.append("\n".join([*heading, *table]) + "\n")
    return "\n".join(parts)


def write_table(obligations: Iterable[Obligation], file: Path) -> None:
    """Write the page for ``obligations``."""
    file.write_text(text(changes(obligations)), encoding="utf-8")
