"""One test each: a saved case, a rule on a machine, the contract on a machine, an entry of the expected failures.

What is needed to answer them is imported when they are asked, so that they can be listed at no cost.
"""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that pytest starts at once

from dataclasses import dataclass
from pathlib import Path
from typing import Any, Protocol

from planeproof.testing.asked import Asked, name_of


@dataclass(frozen=True, kw_only=True)
class Failed:
    """The test fails; ``text`` is all there is to say."""

    text: str


@dataclass(frozen=True, kw_only=True)
class LetBe:
    """The rule is broken, which is expected for now: ``reason``."""

    reason: str


Answer = Failed | LetBe | None
"""None: the test passes."""


class Question(Protocol):
    """Something a test asks."""

    @property
    def path(self) -> tuple[str, ...]:
        """Its name, from the outermost group inwards."""

    def answer(self) -> Answer:
        """Find out."""


@dataclass(frozen=True, kw_only=True)
class AboutCase:
    """Whether a saved scene keeps ``rule``, or all rules if None."""

    asked: Asked
    case: Path
    rule: str | None = None

    @property
    def path(self) -> tuple[str, ...]:
        """The name of the file, with the process it was left by, if it was."""
        assert self.asked.cases is not None
        return ("cases", "-".join(self.case.relative_to(self.asked.cases).with_suffix("").parts))

    def answer(self) -> Answer:
        """Play it again."""
        from planeproof.testing.replaying import replayed

        text = replayed(self.asked, self.case, self.rule)
        return None if text is None else Failed(text=text)


@dataclass(frozen=True, kw_only=True)
class AboutRule:
    """Whether ``rule`` is kept on ``machine``; if ``alone``, no other is judged."""

    asked: Asked
    machine: Any
    rule: str
    alone: bool = False

    @property
    def path(self) -> tuple[str, ...]:
        """Machine and rule."""
        return (name_of(self.machine), self.rule)

    def answer(self) -> Answer:
        """From the check of that machine, which is made once."""
        from planeproof.testing.checks import about_rule

        return about_rule(self.asked, self.machine, self.rule, alone=self.alone)


@dataclass(frozen=True, kw_only=True)
class AboutContract:
    """Whether the candidate keeps the laws of the contract on ``machine``."""

    asked: Asked
    machine: Any

    @property
    def path(self) -> tuple[str, ...]:
        """Machine, and what else than a rule it is."""
        return (name_of(self.machine), "contract")

    def answer(self) -> Answer:
        """From the check of that machine, which is made once."""
        from planeproof.testing.checks import about_contract

        return about_contract(self.asked, self.machine)


@dataclass(frozen=True, kw_only=True)
class AboutEntry:
    """Whether entry ``number`` of the expected failures still stands; ``rule`` is the one that it names."""

    asked: Asked
    number: int
    rule: str

    @property
    def path(self) -> tuple[str, ...]:
        """Its place in the file, from 1 on, and its rule."""
        return ("expected", f"{self.number + 1}-{self.rule}")

    def answer(self) -> Answer:
        """Held to its case."""
        from planeproof.testing.checks import about_entry

        return about_entry(self.asked, self.number)


def questions_of(asked: Asked) -> "list[Question]":
    """All there is to ask: saved cases first, then entries of the expected failures, then the machines.

    Raises `planeproof.search.expected.ExpectedFileError`.
    """
    from planeproof.contract import RULES
    from planeproof.search.expected import read_expected
    from planeproof.testing.asked import saved_cases

    entries = () if asked.expected is None else read_expected(asked.expected)
    let_be = {Path(entry.case).resolve() for entry in entries}
    asking: list[Question] = [
        AboutCase(asked=asked, case=case) for case in saved_cases(asked) if case.resolve() not in let_be
    ]
    asking += [AboutEntry(asked=asked, number=number, rule=entry.rule.id) for number, entry in enumerate(entries)]
    for machine in asked.machines:
        asking.append(AboutContract(asked=asked, machine=machine))
        asking += [AboutRule(asked=asked, machine=machine, rule=rule.id) for rule in RULES]
    return asking
