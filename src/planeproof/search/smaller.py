"""Making what a trial has found smaller: by looking for shorter scenes anew, then by taking away from each."""

from collections.abc import Callable, Sequence

from planeproof.contract import Machine, Rule, Scene
from planeproof.judge import CandidateFault, CandidateHung, Play
from planeproof.scenes.recipes import LONGEST, recipe
from planeproof.scenes.source import RandomSource
from planeproof.search.laws import check_again
from planeproof.search.lifting import lift
from planeproof.search.minimising import minimise
from planeproof.search.steering import steer
from planeproof.search.trial import Trial

SHORTER_SCENES = 200
"""Scenes of a given length that are tried on each machine, before scenes of that length are given up."""

OTHER_SCENES, OTHERS_LONGER = 1000, 4
"""Scenes a machine that are hardly longer, and are played for the rules that are broken first in them; pictures more
that they may have."""

LIFTING_TRIES = 150
"""Scenes on the machine as given that are tried for a finding on a small relative, before it is left at that."""


def make_smaller(
    trial: Trial,
    machines: Sequence[Machine],
    *,
    as_given: bool,
    first_seed: int,
    seek_on: Callable[[], bool],
    go_on: Callable[[], bool],
) -> None:
    """Make every finding of ``trial`` smaller for as long as ``go_on`` says; then see each of them again.

    Shorter scenes are sought only as long as ``seek_on`` says so too: what they begin with is still to be made smaller.
    """

    def hung() -> bool:
        return isinstance(trial.fault, CandidateHung)

    def on() -> bool:
        # A scene that is much like one that hung is likely to hang as well, and to take as long.
        return not hung() and go_on()

    def seek() -> bool:
        return seek_on() and on()

    if trial.fault is None and (as_given or not _only_as_given(trial, machines)):
        look_for_shorter(trial, machines, as_given=as_given, first_seed=first_seed, go_on=seek)
    for rule in list(trial.smallest):
        if hung():
            return
        _minimise(trial, rule, machines, as_given=as_given, go_on=on)
        # What is reported must be seen again: once more, and all that the candidate says is compared.
        check_again(trial, trial.smallest[rule])
    if trial.fault is not None and trial.fault_scene is not None:
        minimise(trial.fault_scene, _is_at_fault(trial, trial.fault.method), go_on=on, keep_machine=as_given)


def _only_as_given(trial: Trial, machines: Sequence[Machine]) -> bool:
    """Whether what was found is for machines as large as these: the search of small ones did not find it."""
    return all(play.scene.machine in machines for play in trial.smallest.values())


def _minimise(
    trial: Trial, rule: Rule, machines: Sequence[Machine], *, as_given: bool, go_on: Callable[[], bool]
) -> None:
    """First by what comes after the break; where it was found on a machine as given, that is remembered as it was."""
    found = trial.smallest[rule]
    if found.scene.machine in machines and not as_given:
        trial.given[rule] = found
    _from_the_break(found, trial, rule, go_on=go_on, keep_machine=as_given)


def _from_the_break(found: Play, trial: Trial, rule: Rule, *, go_on: Callable[[], bool], keep_machine: bool) -> None:
    """Make the scene of ``found`` smaller in ``trial``: first what comes after the break goes, if it still shows."""
    scene, shows = _up_to_the_break(found, rule), _breaks(trial, rule)
    minimise(scene if shows(scene) else found.scene, shows, go_on=go_on, keep_machine=keep_machine)


def _up_to_the_break(play: Play, rule: Rule) -> Scene:
    """The scene without pictures that are offered, and disturbances that come, after ``rule`` was broken."""
    scene = play.scene
    last = next(violation.refresh for violation in play.violations if violation.rule is rule)
    offered = max((refresh.offered for refresh in play.refreshes[: last + 1] if refresh.offered is not None), default=0)
    return Scene.of(
        scene.machine,
        scene.pictures[: offered + 1],
        scene.ready[: offered + 1],
        [disturbance for disturbance in scene.disturbances if disturbance.refresh <= last],
    )


def show_as_given(trial: Trial, machines: Sequence[Machine], *, go_on: Callable[[], bool]) -> None:
    """Look for each finding on the machine it was drawn for, as that is, for as long as ``go_on`` says.

    Nobody has a display of a few cells: what shows on the smallest machine is the cause, this is what its owner sees.
    What was found there is made smaller there.
    """
    for rule, found in trial.given.items():
        apart = trial.anew()
        _from_the_break(found, apart, rule, go_on=go_on, keep_machine=True)
        trial.given[rule] = apart.smallest.get(rule, found)
    for rule, play in trial.smallest.items():
        given = next((machine for machine in machines if play.scene.machine.name.endswith(machine.name)), None)
        if given is not None and given != play.scene.machine and rule not in trial.given:
            _lift(trial, rule, given, go_on=go_on)


def _lift(trial: Trial, rule: Rule, given: Machine, *, go_on: Callable[[], bool]) -> None:
    # Apart: what is tried there may break other rules, in scenes that nobody makes smaller.
    apart, left = trial.anew(), iter(range(LIFTING_TRIES))
    shows = _breaks(apart, rule)
    small = trial.smallest[rule].scene
    lift(small, given, shows, lambda: (rule in apart.smallest or next(left, None) is not None) and go_on())
    if rule in apart.smallest:
        trial.given[rule] = apart.smallest[rule]


def look_for_shorter(
    trial: Trial, machines: Sequence[Machine], *, as_given: bool, first_seed: int, go_on: Callable[[], bool]
) -> None:
    """Search again among scenes of 1 picture, then 2 ...: from a long scene no small step may lead to the shortest."""
    length = 1
    while go_on() and length < _longest(trial):
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
    _look_for_others(trial, machines, as_given=as_given, longest=length, first_seed=first_seed, go_on=go_on)


def _longest(trial: Trial) -> int:
    """Pictures of the longest finding, as far as recipes go: of hundreds the rest is cut away, see `minimise`."""
    return min(max((len(play.scene.pictures) for play in trial.smallest.values()), default=0), LONGEST + 1)


def _look_for_others(
    trial: Trial,
    machines: Sequence[Machine],
    *,
    as_given: bool,
    longest: int,
    first_seed: int,
    go_on: Callable[[], bool],
) -> None:
    """Play scenes hardly longer than the shortest, whatever they show: the rule found first may hide another.

    Another may have shown in none so far, not even later in the same scene. Where one rule tells of it at once, and
    another waits to see what becomes of it, the other takes longer scenes.
    """
    for machine in machines:
        for number in range(OTHER_SCENES):
            if not go_on():
                return
            source = RandomSource(f"{first_seed}/{machine.name}/others/{number}")
            trial.play(recipe(machine, source, as_given=as_given, longest=longest + OTHERS_LONGER))


def _breaks(trial: Trial, rule: Rule) -> Callable[[Scene], bool]:
    return lambda scene: trial.shows(scene) is rule


def _is_at_fault(trial: Trial, method: str) -> Callable[[Scene], bool]:
    def same(scene: Scene) -> bool:
        found = trial.shows(scene)
        return isinstance(found, CandidateFault) and found.method == method

    return same
