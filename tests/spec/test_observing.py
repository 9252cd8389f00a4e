from collections import Counter

import pytest

from planeproof.candidates.faults import ZOO, Fault
from planeproof.candidates.reference import Delta, Fresh, Reuse, SplitPool
from planeproof.conformance import Observation, observe
from planeproof.contract import RULES, Machine, Scheduler
from planeproof.judge import Strength, play
from planeproof.machines import read_machine
from planeproof.spec.steps import Steps, reference
from planeproof.spec.steps.addresses import Addresses
from planeproof.spec.steps.sharing import PLANES
from tests.candidates.seeded import seeded_scene, tight
from tests.candidates.small import scene, small

SAFETY = frozenset(rule for rule in RULES if rule.id not in {"progress", "fair-refusal"})
STEPS: dict[str, Steps] = {
    "vitrine-50": reference.Delta(),
    "vitrine-60": reference.Delta(),
    "long-frieze": reference.Delta(),
    "twin-niche": reference.SplitPool(),
    "scroll-case": reference.SplitPool(),
    "drawer-front": reference.PackedDelta(),
    "mosaic-floor": reference.DeepDelta(),
    "pigment-chart": reference.DeepDelta(),
}
"""The proved steps that a candidate of each machine may be compared with."""


def showcase(shape: str) -> Machine:
    """The shipped machine at the size of two cells and three tiles, with some of the panel around it."""
    return small(shape, 2, 1, tiles=4, pool=(1, 2, 3), around=1)


CONFORMING = [
    (Delta, "vitrine-50", reference.Delta()),
    (Fresh, "vitrine-60", reference.Full()),
    (Fresh, "vitrine-60", reference.Delta()),
    (Reuse, "vitrine-50", reference.Delta()),
    (Delta, "long-frieze", reference.Delta()),
    (SplitPool, "twin-niche", reference.SplitPool()),
    (Delta, "drawer-front", reference.PackedDelta()),
    (Delta, "pigment-chart", reference.DeepDelta()),
]


@pytest.mark.parametrize(("make", "shape", "steps"), CONFORMING, ids=lambda value: getattr(value, "name", None))
def test_reference_schedulers_conform(make: type[Scheduler], shape: str, steps: Steps) -> None:
    """Every burst of a scheduler that runs is a step of its counterpart that is proved; that is observed, no more."""
    plays = [play(seeded_scene(showcase(shape), seed), make) for seed in range(2)]
    observation = observe(steps, *plays)
    written = sum(len(p.set_up) + sum(len(refresh.bursts) for refresh in p.refreshes) for p in plays)
    assert (observation.stray, observation.bursts, observation.plays) == (None, written, 2)
    assert observation.basis.strength is Strength.OBSERVED
    assert f"OBSERVED: all {written} bursts of 2 scenes are steps of {steps.name}" in observation.words
    assert "observed in these scenes, not proved" in observation.words


def test_a_scheduler_of_another_strategy_strays() -> None:
    """Sending only what differs is not sending everything: the reveal comes while that still has entries pending."""
    observation = observe(reference.Full(), play(scene(showcase("vitrine-50"), ["A"]), Delta))
    assert str(observation.stray) == (
        "burst 2 of refresh 0 is no step of the scheduler: the hidden side is shown, and this does not hold: "
        "no entry is pending"
    )
    assert observation.words.startswith("After 3 bursts that conform, burst 2 of refresh 0 is no step")


STRAYS = {
    "patterns-to-seen-plane": "is written in the planes of side 0, where steps write to side 1",
    "blank-tile-written": "the tile is one that the hidden side may use",
    "packed-written-whole": "where the step sends 0x",
    "reveal-one-burst-early": "no byte is pending",
    "last-row-not-sent": "no byte is pending",
    "palette-entry-forgotten": "it leaves a view that is of neither side",
    "pool-not-split": "a cell gets a tile that the hidden side may use",
    "flips-when-idle": "it is at work",
    "taken-and-dropped": "it is idle",
    "set-up-not-charged": "it is not over when the blanking is",
    "pool-begins-too-early": "only an empty cell gets the blank tile",
}


def observed(fault: Fault) -> tuple[Observation, str | None, int]:
    """What a fault does in a scene: the observation, the first rule of safety that it breaks, and when."""
    played = play(seeded_scene(tight(showcase(fault.machine)), 1), fault.make)
    violation = played.first(SAFETY)
    said = (None, len(played.refreshes)) if violation is None else (violation.rule.id, violation.refresh)
    return observe(STEPS[fault.machine], played), *said


@pytest.mark.parametrize("name", STRAYS)
def test_the_first_burst_of_a_fault_is_named(name: str) -> None:
    """A fault's first burst, or answer, that is no step is found, and what it lacks is said."""
    (fault,) = (fault for fault in ZOO if fault.id == name)
    machine = tight(showcase(fault.machine)) if name == "set-up-not-charged" else showcase(fault.machine)
    plays = [play(seeded_scene(machine, seed), fault.make) for seed in range(6)]
    assert STRAYS[name] in str(observe(STEPS[fault.machine], *plays).stray)


def test_what_conforms_breaks_no_rule_and_what_breaks_one_has_strayed_by_then() -> None:
    """For every fault of the zoo on a machine of two sides, in one scene each: the theorem, seen on code that runs."""
    counts: Counter[tuple[bool, bool]] = Counter()
    for fault in ZOO:
        if fault.machine in STEPS:
            observation, broken, refresh = observed(fault)
            counts[observation.stray is not None, broken is not None] += 1
            assert observation.stray is not None or broken is None, fault.id
            assert observation.stray is None or observation.stray.refresh <= refresh, fault.id
    assert counts[True, True] > 10
    assert counts[False, False] > 10


def test_half_an_entry_is_no_step() -> None:
    """Where a two-byte entry is split over two blankings, the first half alone is what no step sends."""
    machine = tight(small("long-frieze", 3, 2, tiles=9, pool=(1, 2, 3, 4, 5, 6, 7, 8)))
    observations = [observe(reference.Delta(), play(seeded_scene(machine, seed), Delta)) for seed in range(3)]
    strays = [str(observation.stray) for observation in observations if observation.stray is not None]
    assert strays
    assert all("the entry of cell" in stray and "where the step sends" in stray for stray in strays)


def test_a_machine_that_the_steps_are_not_for_is_refused() -> None:
    """The message says what the machine has, and what the steps need."""
    played = play(scene(showcase("twin-niche"), ["A"]), SplitPool)
    with pytest.raises(ValueError, match="has sets of planes: 1; steps for two planes need 2"):
        observe(reference.Delta(), played)
    one_page = read_machine("case-label")
    with pytest.raises(ValueError, match="has map pages: 1; steps for two planes need 2"):
        Addresses(machine=one_page, sharing=PLANES)
