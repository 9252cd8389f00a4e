"""What a search has not seen yet: the Good-Turing residual over the behaviours it has observed.

Of n plays, f1 showed a behaviour that no other play showed. f1 / n estimates the chance that the next play shows one
never seen before (Good 1953, MEM; in testing Boehme 2018, abstract READ-2; "When To Stop Fuzzing" of the fuzzingbook,
READ). It is an estimate, no bound, and it says something of behaviours as `behaviour` tells them apart, no more. It is
printed beside the bound, never instead.
"""

import hashlib
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, field

from planeproof.contract import Machine, RegionKind
from planeproof.judge import Play, Refresh
from planeproof.judge.seen import BACKGROUND


def good_turing(counts: Iterable[int]) -> float:
    """f1 / n: the share of behaviours seen once among all that was seen; 1 where nothing was, for all is still new.

    ``counts``: how often each behaviour was seen. Raises `ValueError` for a negative one.
    """
    seen = list(counts)
    if any(count < 0 for count in seen):
        raise ValueError(f"counts has {min(seen)}: each must be how often a behaviour was seen, 0 or more")
    return seen.count(1) / sum(seen) if sum(seen) else 1.0


@dataclass(kw_only=True, eq=False)
class Behaviours:
    """How often each behaviour was seen. Two of these add up to one, in any order, wherever they were made."""

    counts: Counter[str] = field(default_factory=Counter)

    def add(self, play: Play) -> None:
        """Add one play."""
        self.counts[behaviour(play)] += 1

    def merge(self, other: "Behaviours") -> None:
        """Add all that ``other`` has."""
        self.counts.update(other.counts)

    @property
    def plays(self) -> int:
        """How many plays there were."""
        return self.counts.total()

    @property
    def singletons(self) -> int:
        """f1: behaviours that were seen just once."""
        return list(self.counts.values()).count(1)

    @property
    def residual(self) -> float:
        """The Good-Turing estimate of the chance that one more play shows a new behaviour."""
        return good_turing(self.counts.values())


def behaviour(play: Play) -> str:
    """A name for what a candidate did in a play, the same on every computer: 16 hexadecimal digits.

    Plays are of one behaviour if the candidate gave the same answers, broke the same rules, and went through the same
    kinds of blanking, each counted once, in whatever order: full, cut or lost; which of patterns, map and view were
    written; whether another picture came to be seen. Of 1,000 recipes on a shipped machine that gave 170 to 530
    behaviours, of which the commonest had about a tenth (RUN). Told apart by bytes, lengths or order nearly every play
    would be the only one of its kind, and the residual would say nothing; by answers alone all would be of a few kinds,
    and it would say that nothing is left to see.
    """
    answers = sorted({refresh.answer.value for refresh in play.refreshes if refresh.answer is not None})
    seen_before = [BACKGROUND, *(refresh.current for refresh in play.refreshes)]
    kinds = {
        _kind(play, refresh, turned=refresh.current != before)
        for before, refresh in zip(seen_before, play.refreshes, strict=False)
    }
    broken = sorted(rule.id for rule in play.counts)
    said = "\n".join([",".join(answers), ",".join(broken), *sorted(kinds)])
    return hashlib.sha256(said.encode()).hexdigest()[:16]


def _kind(play: Play, refresh: Refresh, *, turned: bool) -> str:
    had = play.scene.cycles_of(refresh.number)
    length = "full" if had == play.scene.machine.blank_cycles else "cut" if had else "lost"
    written = "+".join(sorted(_written(play.scene.machine, refresh)))
    return f"{length} [{written}]{' turned' if turned else ''}"


def _written(machine: Machine, refresh: Refresh) -> set[str]:
    kinds = set()
    for burst in refresh.bursts:
        region = next((region for region in machine.regions if burst.address in region), None)
        kinds.add("nowhere" if region is None else _region(region.kind))
    return kinds


def _region(kind: RegionKind) -> str:
    return "view" if kind.is_view else kind.value
