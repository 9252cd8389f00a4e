"""What generated scenes put a scheduler through: every rule exercised, blankings with any few cycles left."""

import math
from collections import Counter
from dataclasses import dataclass
from functools import cache

import pytest

from planeproof.candidates.reference import Delta, Fresh, InPlace, Pairs, Reuse, SplitPool
from planeproof.contract import RULES, Rule
from planeproof.contract.rules import BLANKING_ONLY, EXACT_REVEAL, HIDDEN_WRITES
from planeproof.judge import MakeScheduler, Profile, play
from planeproof.machines import read_machine
from planeproof.scenes.recipes import recipe
from planeproof.scenes.source import RandomSource

MEANT_FOR: tuple[tuple[str, MakeScheduler], ...] = (
    ("vitrine-50", Fresh),
    ("vitrine-50", Delta),
    ("vitrine-50", Reuse),
    ("vitrine-60", Fresh),
    ("case-label", Pairs),
    ("drawer-front", Delta),
    ("pigment-chart", Reuse),
    ("mosaic-floor", Fresh),
    ("two-wings", SplitPool),
    ("twin-niche", SplitPool),
    ("scroll-case", SplitPool),
    ("long-frieze", Delta),
    ("bench", InPlace),
)
"""Shapes, and a reference scheduler that is right on each."""

SCENES = 120
"""Scenes of which the first third already exercises every rule; see `WITHIN`."""

WITHIN = 40
"""Scenes within which every rule is exercised; measured: 16 at the most, of 15 seeds (blanking-only, case-label)."""

each_pair = pytest.mark.parametrize(
    ("name", "scheduler"), MEANT_FOR, ids=lambda value: getattr(value, "__name__", value)
)


@dataclass(frozen=True, kw_only=True)
class _Situations:
    """``since``: the number of the first scene that exercised a rule. ``left``: whole cycles left, how often."""

    since: dict[Rule, int]
    left: Counter[int]
    broken: frozenset[Rule]


@cache
def situations(name: str, scheduler: MakeScheduler) -> _Situations:
    """What `SCENES` scenes of one seed put the scheduler through; played once for all tests."""
    base, left, broken = read_machine(name), Counter[int](), set[Rule]()
    since: dict[Rule, int] = {}
    for number in range(SCENES):
        result = play(recipe(base, RandomSource(f"situations/{number}")), scheduler)
        for rule in result.exercised:
            since.setdefault(rule, number + 1)
        left.update(math.floor(r.cycles - r.used) for r in result.refreshes if r.bursts)
        broken |= set(result.counts)
    return _Situations(since=since, left=left, broken=frozenset(broken))


@each_pair
def test_every_rule_is_exercised(name: str, scheduler: MakeScheduler) -> None:
    """Within forty scenes; a rule that generated scenes starve would make every check VACUOUS.

    In place nothing is ever revealed, and a blanking that always has room never ends with work left for want of
    it, so two rules of discipline are not asked of that strategy.
    """
    expected = set(RULES) - ({EXACT_REVEAL, BLANKING_ONLY} if scheduler is InPlace else set())
    since = situations(name, scheduler).since
    late = {rule.id: since.get(rule) for rule in expected if since.get(rule, math.inf) > WITHIN}
    assert late == {}


@each_pair
def test_no_false_alarm(name: str, scheduler: MakeScheduler) -> None:
    """On the shape it is meant for, a reference scheduler breaks no rule (in place: none but hidden-writes)."""
    assert situations(name, scheduler).broken == ({HIDDEN_WRITES} if scheduler is InPlace else set())


@pytest.mark.parametrize(("name", "scheduler"), [("vitrine-50", Delta), ("vitrine-60", Reuse)])
def test_blankings_end_with_every_small_number_of_cycles_left(name: str, scheduler: MakeScheduler) -> None:
    """From 0 cycles to 15: an error of one cycle in what a burst costs shows when just that many are left."""
    left = Counter[int]()
    base = read_machine(name)
    for number in range(250):
        result = play(recipe(base, RandomSource(f"left/{number}")), scheduler)
        left.update(math.floor(r.cycles - r.used) for r in result.refreshes if r.bursts)
    assert [cycles for cycles in range(16) if not left[cycles]] == []


@each_pair
def test_blankings_end_with_none_and_with_one_cycle_left(name: str, scheduler: MakeScheduler) -> None:
    """On every shape whose blankings are short: the edge itself, and a cycle beside it."""
    left = situations(name, scheduler).left
    if scheduler is InPlace:
        # Measured, and a limit of recipes: a whole picture must fit there, and what is really sent is far less.
        assert min(left) > 0
    else:
        assert left[0] > 0
        assert left[1] > 0


def test_in_place_is_seen_to_be_right() -> None:
    """What it breaks is discipline alone, so the profile `seen` does not fail on it."""
    broken = situations("bench", InPlace).broken
    assert broken == {HIDDEN_WRITES}
    assert not any(Profile.SEEN.fails_on(rule) for rule in broken)
