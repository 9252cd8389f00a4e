"""Tests of ``--planeproof-target``: not from a file, but from the questions that there are."""

from collections.abc import Iterator, Sequence
from itertools import groupby
from typing import Any

import pytest

from planeproof.testing.asked import Asked
from planeproof.testing.holding import told
from planeproof.testing.questions import Question, questions_of

ROOT = "planeproof"
"""What their names begin with, as those of others do with their file."""


class Target(pytest.Collector):
    """All tests about what is asked."""

    def __init__(self, *, asked: Asked, **others: Any) -> None:  # noqa: ANN401 -- as pytest has it
        super().__init__(**others)
        self.asked = asked

    @classmethod
    def of(cls, session: pytest.Session, asked: Asked) -> "Target":
        """The collector of them."""
        made: Target = cls.from_parent(session, name=ROOT, nodeid=ROOT, asked=asked)
        return made

    def collect(self) -> "Iterator[pytest.Collector]":
        """A group each for saved cases, expected failures and every machine."""
        for name, questions in groupby(questions_of(self.asked), lambda question: question.path[0]):
            yield Group.from_parent(self, name=name, questions=tuple(questions))


class Group(pytest.Collector):
    """Tests that belong together."""

    def __init__(self, *, questions: Sequence[Question], **others: Any) -> None:  # noqa: ANN401 -- as pytest has it
        super().__init__(**others)
        self.questions = questions

    def collect(self) -> "Iterator[pytest.Item]":
        """A test for each question."""
        for question in self.questions:
            item = Ask.from_parent(self, name=question.path[1], question=question)
            if self.config.pluginmanager.hasplugin("xdist"):
                # With --dist loadgroup, one worker has all of a machine, and makes its check only once.
                item.add_marker(pytest.mark.xdist_group(f"planeproof-{self.name}"))
            yield item


class Ask(pytest.Item):
    """One question."""

    def __init__(self, *, question: Question, **others: Any) -> None:  # noqa: ANN401 -- as pytest has it
        super().__init__(**others)
        self.question = question

    def runtest(self) -> None:
        """Ask it."""
        told(self.question)

    def reportinfo(self) -> tuple[str, None, str]:
        """It stands in no file."""
        return ROOT, None, "::".join(self.question.path)
