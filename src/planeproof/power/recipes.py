"""The engine `recipes`: what `planeproof.search.check` plays, in its order, without making anything smaller.

The laws' scenes count, for a rule may be broken in them. Like the check, it ends with the stage in which something was
found: a fault of which only another rule has been seen by then is a catch by the wrong rule.
"""

from collections.abc import Iterator
from itertools import chain

from planeproof.contract import RULES, Scene
from planeproof.judge import CandidateFault, Play, Profile
from planeproof.power.hunt import CONTRACT, Hunt
from planeproof.scenes.crystals import crystal_scenes
from planeproof.scenes.full import full_scene
from planeproof.search.checking import LAW_SCENES, draw
from planeproof.search.laws import check_laws
from planeproof.search.steering import steer
from planeproof.search.trial import Shown, Trial


def hunt(hunted: Hunt) -> None:
    """Search as a check of the fault with this seed does."""
    check_to_the_first(hunted)


def check_to_the_first(hunted: Hunt) -> None:
    """The only place that knows how a check is put together; ``hunted`` is told of every scene that it plays."""
    trial, machine, seed = _Counted(hunted), hunted.machine, hunted.seed
    check_laws(trial, [draw(machine, "law", number, seed=seed) for number in range(LAW_SCENES)])
    if not hunted.over:
        most = max(hunted.limits.scenes // 2, 1)
        # The first number of a round of a check; see `planeproof.search.checking`.
        first_seed = seed * 1_000_003
        steer(trial, machine, as_given=False, most=most, first_seed=first_seed, go_on=lambda: not hunted.over)
    for scene in _afterwards(hunted):
        if hunted.over or trial.decided:
            return
        trial.play(scene)


def _afterwards(hunted: Hunt) -> Iterator[Scene]:
    machine = hunted.machine
    independent = range(hunted.limits.scenes - hunted.limits.scenes // 2)
    return chain(
        (draw(machine, "scene", number, seed=hunted.seed) for number in independent),
        (scene for scenes in ((full_scene(machine),), crystal_scenes(machine)) for scene in scenes),
    )


class _Counted(Trial):
    """A trial that tells a hunt of every scene it plays."""

    def __init__(self, hunted: Hunt) -> None:
        super().__init__(
            name=hunted.fault.id,
            make=hunted.fault.make,
            asked=frozenset(RULES),
            profile=Profile.STRICT,
            call_seconds=60.0,
        )
        self._hunted = hunted

    def play(self, scene: Scene) -> Play | None:
        result = super().play(scene)
        broken = None if result is None else result.first(self.asked)
        shown = CONTRACT if result is None else None if broken is None else broken.rule.id
        self._hunted.sees(scene, shown)
        return result

    def shows(self, scene: Scene) -> Shown | None:
        shown = super().shows(scene)
        name = CONTRACT if isinstance(shown, CandidateFault) else None if shown is None else shown.id
        self._hunted.sees(scene, name)
        return shown
