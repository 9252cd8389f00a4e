"""No false alarm: 21,000 scenes drawn independently, and no right scheduler breaks a rule in any of them.

Each reference scheduler plays on relatives of the shapes it is meant for, judged by everything it promises there.
"""

import pytest

from planeproof.candidates import reference
from planeproof.candidates.reference import InPlace, TwoSides
from planeproof.contract import RULES
from planeproof.judge import MakeScheduler, Profile, play
from planeproof.machines import read_machine
from planeproof.scenes.recipes import recipe
from planeproof.scenes.source import RandomSource
from tests.candidates.meant_for import MEANT_FOR

SCENES = 21_000
PARTS = 2
"""Tests for each pair, so that several processes can share the work."""


@pytest.mark.parametrize("part", range(PARTS))
@pytest.mark.parametrize(("name", "scheduler"), MEANT_FOR, ids=lambda value: getattr(value, "__name__", value))
def test_a_right_scheduler_breaks_no_rule(name: str, scheduler: MakeScheduler, part: int) -> None:
    """All rules; in place, what is discipline only, which writing over what is seen can't keep, is left out."""
    base = read_machine(name)
    asked = frozenset(rule for rule in RULES if scheduler is not InPlace or Profile.SEEN.fails_on(rule))
    shown = number = 0
    for number in range(SCENES // (len(MEANT_FOR) * PARTS)):
        scene = recipe(base, RandomSource(f"no false alarm/{name}/{scheduler.__name__}/{part}/{number}"))
        played = play(scene, scheduler)
        assert played.first(asked) is None, f"scene {number}"
        shown += played.shown
    assert shown > number, "hardly anything was shown, so hardly anything could have gone wrong"


def test_the_scenes_are_as_many_as_the_claim_says() -> None:
    """Shared out without a remainder, over every reference scheduler that is meant to be right."""
    assert SCENES % (len(MEANT_FOR) * PARTS) == 0
    strategies = {getattr(reference, name) for name in reference.__all__} - {TwoSides}
    assert {scheduler for _, scheduler in MEANT_FOR} == strategies
    assert len(strategies) >= 8
