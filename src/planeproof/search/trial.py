"""The trial of one candidate: plays scenes, keeps the smallest that show something, and adds up what was seen."""

import math
from collections.abc import Callable
from dataclasses import dataclass, field
from itertools import count
from pathlib import Path

from planeproof.contract import Rational, Rule, Scene
from planeproof.judge import CandidateFault, CandidateHung, MakeScheduler, Play, Profile, not_applicable, play
from planeproof.scenes.cases import Case, Found, save_case
from planeproof.search.size import Size, size

PLAYING = "playing.json"
"""Name of the case that is being played; it is left behind if the process dies in it."""

GRACE_SECONDS = 5.0
"""With a time limit, a call may take what is left of it and this much more, if `Trial.call_seconds` is not less."""


def keep_left_over(cases: Path) -> None:
    """Put a scene that a crash has left behind out of the way of the next one: ``left-over-1.json`` and so on."""
    if (cases / PLAYING).exists():
        number = next(number for number in count(1) if not (cases / f"left-over-{number}.json").exists())
        (cases / PLAYING).rename(cases / f"left-over-{number}.json")


Shown = Rule | CandidateFault
"""What a scene can show: the rule that is broken first, or that the candidate breaks the contract."""


@dataclass(kw_only=True, eq=False)
class Trial:
    """One candidate under trial.

    ``asked``: the rules asked for. ``call_seconds``: after which a call counts as hung; less where ``time_left`` and
    `GRACE_SECONDS` come to less. ``smallest``: for each rule the smallest play in which it is the first that is broken;
    ``broken``: all that were, also after another one. ``fault`` and ``fault_scene``: the candidate's own breach of the
    contract, if any; that it hung is hidden by no other. ``margins``: for each rule that was broken without the profile
    failing on it, the least cycles that spared the viewer.
    """

    name: str
    make: MakeScheduler
    asked: frozenset[Rule]
    profile: Profile
    call_seconds: float
    time_left: Callable[[], float] = lambda: math.inf
    cases: Path | None = None
    smallest: dict[Rule, Play] = field(default_factory=dict)
    fault: CandidateFault | None = None
    fault_scene: Scene | None = None
    broken: set[Rule] = field(default_factory=set)
    exercised: set[Rule] = field(default_factory=set)
    applicable: set[Rule] = field(default_factory=set)
    margins: dict[Rule, Rational] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self._failing = frozenset(rule for rule in self.asked if self.profile.fails_on(rule))

    @property
    def decided(self) -> bool:
        """Whether something was found, so that more scenes can't change the outcome."""
        return bool(self.smallest) or self.fault is not None

    def play(self, scene: Scene) -> Play | None:
        """Play ``scene`` and add up what it shows; None if the candidate broke the contract in it."""
        result = self._played(scene)
        return result if isinstance(result, Play) else None

    def shows(self, scene: Scene) -> Shown | None:
        """Play ``scene``: the rule that is broken first, the candidate's fault, or None for neither."""
        result = self._played(scene)
        if isinstance(result, CandidateFault):
            return result
        broken = result.first(self._failing)
        return None if broken is None else broken.rule

    def blame(self, fault: CandidateFault, scene: Scene) -> None:
        """Keep the candidate's breach of the contract, the most serious in the smallest scene that shows it."""
        held = None if self.fault is None or self.fault_scene is None else _gravity(self.fault, self.fault_scene)
        if held is None or _gravity(fault, scene) < held:
            self.fault, self.fault_scene = fault, scene

    def finish(self) -> None:
        """Nothing is being played any more."""
        if self.cases is not None:
            (self.cases / PLAYING).unlink(missing_ok=True)

    def _played(self, scene: Scene) -> Play | CandidateFault:
        self._announce(scene)
        try:
            result = play(scene, self.make, call_seconds=min(self.call_seconds, self.time_left() + GRACE_SECONDS))
        except CandidateFault as fault:
            self.blame(fault, scene)
            return fault
        self._add_up(result)
        return result

    def _announce(self, scene: Scene) -> None:
        """Save the scene before the candidate runs, so that a crash of the whole process loses nothing."""
        if self.cases is not None:
            note = "this scene was being played when the process ended"
            found = Found(target=self.name, rule="", profile=self.profile.value, note=note)
            save_case(self.cases / PLAYING, Case(scene=scene, found=found))

    def _add_up(self, result: Play) -> None:
        self.exercised |= result.exercised
        self.broken |= self._failing & result.counts.keys()
        self.applicable |= self.asked - not_applicable(result.scene)
        for violation in result.violations:
            if violation.rule in self.asked - self._failing and violation.margin is not None:
                least = self.margins.get(violation.rule, violation.margin)
                self.margins[violation.rule] = min(least, violation.margin)
        broken = result.first(self._failing)
        if broken is not None:
            held = self.smallest.get(broken.rule)
            if held is None or size(result.scene) < size(held.scene):
                self.smallest[broken.rule] = result


def _gravity(fault: CandidateFault, scene: Scene) -> tuple[bool, Size]:
    """The least of these is kept: that it hung comes before all else."""
    return not isinstance(fault, CandidateHung), size(scene)
