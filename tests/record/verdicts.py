"""Verdicts of every kind, made once for all tests of records."""

import time
from collections.abc import Iterable
from functools import cache

from planeproof.candidates.faults import PaletteBeforePage, PatternsToSeenPlane, WrongPitch
from planeproof.candidates.reference import Delta, Fresh, InPlace
from planeproof.contract import Burst
from planeproof.judge import MakeScheduler, Profile, Verdict
from planeproof.search import check


class Raises(Fresh):
    """Fails in the second blanking."""

    def blank(self, cycles: int) -> Iterable[Burst]:
        """A mistake of its own."""
        raise LookupError("no tile “left”")


class Hangs(Fresh):
    """Never returns."""

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Wait for ever."""
        while True:
            time.sleep(0.01)


KINDS: dict[str, tuple[MakeScheduler, dict[str, object]]] = {
    "pass": (Delta, {}),
    "vacuous": (Delta, {"seconds": 0.001}),
    "exposed": (InPlace, {"machines": "bench", "profile": Profile.SEEN}),
    "fail": (PaletteBeforePage, {}),
    "fail in the set-up": (WrongPitch, {}),
    "fail by several rules": (PatternsToSeenPlane, {"scenes": 200, "machines": "vitrine-50"}),
    "candidate error": (Raises, {}),
    "hung": (Hangs, {"call_seconds": 0.2}),
}
"""Kind of verdict -> candidate and options of a check that comes to it."""


@cache
def verdict_of_kind(kind: str) -> Verdict:
    """The verdict of that kind."""
    make, options = KINDS[kind]
    return check(make, **{"scenes": 60, **options})  # type: ignore[arg-type]
