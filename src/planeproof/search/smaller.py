"""Making what a trial has found smaller: by looking for shorter scenes anew, then by taking away from each."""

from collections.abc import Callable, Sequence

from planeproof.contract import Machine, Rule, Scene
from planeproof.judge import CandidateFault, CandidateHung
from planeproof.search.laws import check_again
from planeproof.search.minimising import minimise
from planeproof.search.steering import steer
from planeproof.search.trial import Trial

SHORTER_SCENES = 200
"""Scenes of a given length that are tried on each machine, before scenes of that length are given up."""


def make_smaller(
    trial: Trial, machines: Sequence[Machine], *, as_given: bool, first_seed: int, go_on: Callable[[], bool]
) -> None:
    """Make every finding of ``trial`` smaller for as long as ``go_on`` says; then see each of them again."""

    def hung() -> bool:
        return isinstance(trial.fault, CandidateHung)

    def on() -> bool:
        # A scene that is much like one that hung is likely to hang as well, and to take as long.
        return not hung() and go_on()

    if trial.fault is None:
        _look_for_shorter(trial, machines, as_given=as_given, first_seed=first_seed, go_on=on)
    for rule in list(trial.smallest):
        scene = trial.smallest[rule].scene
        keep_machine = as_given or scene.machine in machines
        if hung():
            return
        minimise(scene, _breaks(trial, rule), go_on=on, keep_machine=keep_machine)
        # What is reported must be seen again: once more, and all that the candidate says is compared.
        check_again(trial, trial.smallest[rule])
    if trial.fault is not None and trial.fault_scene is not None:
        minimise(trial.fault_scene, _is_at_fault(trial, trial.fault.method), go_on=on, keep_machine=as_given)


def _look_for_shorter(
    trial: Trial, machines: Sequence[Machine], *, as_given: bool, first_seed: int, go_on: Callable[[], bool]
) -> None:
    """Search again among scenes of 1 picture, then 2 ...: from a long scene no small step may lead to the shortest."""
    length = 1
    while length < max((len(play.scene.pictures) for play in trial.smallest.values()), default=0):
        for machine in machines:
            steer(
                trial,
                machine,
                as_given=as_given,
                most=SHORTER_SCENES,
                first_seed=first_seed,
                go_on=go_on,
                longest=length,
            )
        length += 1


def _breaks(trial: Trial, rule: Rule) -> Callable[[Scene], bool]:
    return lambda scene: trial.shows(scene) is rule


def _is_at_fault(trial: Trial, method: str) -> Callable[[Scene], bool]:
    def same(scene: Scene) -> bool:
        found = trial.shows(scene)
        return isinstance(found, CandidateFault) and found.method == method

    return same
