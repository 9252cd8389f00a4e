"""The texts as a person reads them, kept whole."""

import re
from dataclasses import replace

import pytest

from planeproof.candidates.reference import InPlace
from planeproof.machines import read_machine
from planeproof.report.story import given_lines
from planeproof.scenes.relatives import RELATIVE
from planeproof.search import check
from tests.report.stories import GOLDEN, STORIES

WIDEST = 100


@pytest.mark.parametrize("name", STORIES)
def test_a_story_is_told_as_it_is_kept(name: str) -> None:
    """Each text is the one in ``golden/``; after a change that is meant: python -m tests.report.stories."""
    told = "\n".join(STORIES[name]()) + "\n"
    kept = (GOLDEN / f"{name}.txt").read_text("utf-8")
    assert told == kept, "if this is meant, run: python -m tests.report.stories"


def test_every_kept_story_is_told() -> None:
    """No golden file is left over from a story that is no longer told."""
    assert {file.stem for file in GOLDEN.iterdir()} == set(STORIES)


@pytest.mark.parametrize("name", STORIES)
def test_a_story_fits_a_page_and_is_plain(name: str) -> None:
    """No line is wider than 100 columns, ends in blanks, holds an escape or a line break of its own."""
    for line in STORIES[name]():
        assert len(line) <= WIDEST, line
        assert line == line.rstrip(), line
        assert line.isprintable(), line


@pytest.mark.parametrize("name", ["vacuous", "unknown"])
def test_no_answer_never_reads_like_a_good_one(name: str) -> None:
    """UNKNOWN and VACUOUS say neither pass nor ok nor right-all-through, in any form."""
    text = "\n".join(STORIES[name]())
    assert re.findall(r"\b(pass(es|ed|ing)?|ok(ay)?|success\w*|correct)\b", text, re.IGNORECASE) == []


@pytest.mark.parametrize("name", ["fail-early-reveal", "fail-late-byte", "candidate-error", "unknown"])
def test_a_check_that_ended_early_claims_no_bound_and_no_rule_kept(name: str) -> None:
    """Only scenes without a failure bound anything, and a rule is called kept only after a whole check."""
    text = "\n".join(STORIES[name]())
    assert "confidence" not in text
    assert not re.search(r": kept$", text, re.MULTILINE)


def test_a_violation_is_told_with_all_that_is_needed_to_see_it() -> None:
    """The rule's sentence, where, why, the scene, the course, the byte in brackets, both pictures, what to paste."""
    text = "\n".join(STORIES["fail-early-reveal"]())
    for part in (
        "hidden-writes: No pattern or map byte changes a pixel that can be seen under the current view.",
        "Broken in refresh 0, burst 2, byte 0",
        "Why it matters:",
        'machine "two cells": window of 2 x 1 cells, pool of 3 tiles (1-3), blank tile 0',
        "picture 0 offered, answered TAKEN; blanking of 7884 cycles, 140 used",
        "burst 2: pattern of tile 1, plane 1, rows 0-7",
        "[ff] 81 81 81 81 81 81 ff  <-- here, byte 0",
        "8 pixels unlike before",
        "planeproof replay cases/found.json",
    ):
        assert part in text


def test_violations_beyond_those_kept_are_said_to_be_only_counted() -> None:
    """Where a rule was broken more often than violations are kept, the text says so."""
    assert "the first 64 were kept, the other 1406 only counted" in "\n".join(STORIES["fail-stray-writes"]())


def test_the_candidates_trace_is_its_own_lines_only() -> None:
    """What the judge adds to a traceback is left out, what the candidate did is not."""
    text = "\n".join(STORIES["candidate-error"]())
    assert "conversation.py" not in text
    assert "return [1 / 0]" in text


def test_what_was_not_seen_on_the_machine_as_given_is_said() -> None:
    """Of a finding on a small relative of it; not where it was found on the machine itself."""
    machine = read_machine("bench")
    small = replace(machine, name=f"{RELATIVE}bench")
    for shown, said in ((small, True), (machine, False)):
        (finding,) = check(InPlace, machines=[shown], scenes=20, as_given=True, smaller_seconds=0).findings[:1]
        told = " ".join(" ".join(given_lines(finding)).split())
        assert ("It has not been seen on bench as given" in told) is said
