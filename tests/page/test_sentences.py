"""What is wrong in one sentence: what a reader takes from the head of the page is so."""

import re

from planeproof.candidates.faults import ZOO
from planeproof.contract import rule
from planeproof.judge import Play
from planeproof.page.sentences import sentence
from planeproof.report.refreshes import OUT_OF_TURN, Names
from tests.candidates.test_zoo import LEAST, played

FAULT = {fault.id: fault for fault in ZOO}


def said(fault: str, of: str) -> tuple[str, Play, int]:
    """The sentence about rule ``of`` in the least scene of ``fault``, its play, and the refresh it is about."""
    play = played(LEAST[fault], FAULT[fault].make)
    violation = next(violation for violation in play.violations if violation.rule is rule(of))
    return sentence(violation, play), play, violation.refresh


def test_what_overruns_is_told_with_its_cycles() -> None:
    """How many it used of those that there were, so that one sees what was reckoned wrong."""
    told, play, refresh = said("set-up-not-charged", "blanking-only")
    figures = [int(figure) for figure in re.findall(r"\d+", told)[1:]]
    used, had = play.refreshes[refresh].used, play.refreshes[refresh].cycles
    assert figures == [used - had, used, had]


def test_an_old_picture_is_no_half_picture() -> None:
    """Where the viewer sees a whole picture that is not due, its name is told; else that none is whole."""
    told = {}
    for fault in ("stale-entry", "last-row-not-sent"):
        text, play, refresh = said(fault, "exact-reveal")
        told[fault] = text
        name = Names(play).of(play.refreshes[refresh])
        assert (f"what is seen then is {name}." in text) is name.endswith(OUT_OF_TURN)
        assert ("over to the wrong picture" in text) is name.endswith(OUT_OF_TURN)
    assert told["stale-entry"].endswith("what is seen then is picture 0, out of turn.")
    assert told["last-row-not-sent"].endswith("what it shows is no whole picture.")
