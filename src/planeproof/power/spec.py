"""The engine `spec`: does what the fault writes leave the proved steps of the scheduler that it is made from?

For bases that are written as steps, on machines that these are for. It names no rule: a fault that has strayed from
what is proved need not have broken anything, and a fault that breaks a rule of progress alone never strays. The scenes
are those that a check draws independently; each byte takes the proof's own formula, so they are slow, and few.
"""

from typing import TYPE_CHECKING

from planeproof.candidates.reference import Delta, Fresh, Reuse, SplitPool
from planeproof.judge import CandidateFault, play
from planeproof.power.hunt import Hunt, NothingToAsk
from planeproof.search.order import draw

if TYPE_CHECKING:
    from planeproof.contract import Machine
    from planeproof.spec.steps import Steps

MOST = 20
"""Scenes that are observed, as many as `planeproof check --conforms` does."""


def hunt(hunted: Hunt) -> None:
    """Observe scene after scene, until one of them strays."""
    try:
        from planeproof.conformance import observe  # noqa: PLC0415 -- z3 is an extra
    except ModuleNotFoundError as error:
        raise NothingToAsk("z3 is missing: pip install 'planeproof[spec]'") from error
    steps = _steps(hunted)
    for number in range(min(MOST, hunted.limits.scenes)):
        scene = draw(hunted.machine, "scene", number, seed=hunted.seed)
        try:
            observation = observe(steps, play(scene, hunted.fault.make))
        except CandidateFault:
            observation = None
        hunted.sees(scene, None)
        if observation is None or observation.stray is not None:
            hunted.strays(scene, "it breaks the contract" if observation is None else str(observation.stray))
        if hunted.over:
            return


def _steps(hunted: Hunt) -> "Steps":
    """The proved steps that the base takes on the machine of the fault."""
    from planeproof.spec.steps import reference  # noqa: PLC0415 -- z3 is an extra

    two_planes = (reference.Delta(), reference.DeepDelta(), reference.PackedDelta())
    known: dict[type, tuple[Steps, ...]] = {
        Delta: two_planes,
        Reuse: two_planes,
        Fresh: (reference.Delta(), reference.DeepDelta(), reference.PackedDelta()),
        SplitPool: (reference.SplitPool(),),
    }
    written = next((steps for base, steps in known.items() if hunted.fault.base is base), ())
    fitting = [steps for steps in written if _fits(steps, hunted.machine)]
    if not fitting:
        raise NothingToAsk(f"{hunted.fault.base.__name__} is not written as steps for {hunted.machine.name}")
    return fitting[0]


def _fits(steps: "Steps", machine: "Machine") -> bool:
    from planeproof.spec.steps.addresses import Addresses  # noqa: PLC0415 -- z3 is an extra

    try:
        Addresses(machine=machine, sharing=steps.sharing)
    except ValueError:
        return False
    return True
