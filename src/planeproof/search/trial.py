"""The trial of one candidate: plays scenes, and adds up what was seen."""

import math
from collections.abc import Callable
from dataclasses import dataclass, field
from itertools import count
from pathlib import Path

from planeproof.contract import Rule, Scene
from planeproof.judge import CandidateFault, MakeScheduler, Play, Profile, play
from planeproof.scenes.cases import Case, Found, save_case
from planeproof.search.tally import Tally

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
class Trial(Tally):
    """One candidate under trial: a tally that plays.

    ``asked``: the rules asked for; ``excused``: those of them that are let be where they are broken first.
    ``call_seconds``: after which a call counts as hung; less where ``time_left`` and `GRACE_SECONDS` come to less.
    ``cases``: folder for the scene that is being played; ``told``: of that scene too. ``last``: the last play, None
    where the candidate broke the contract in it. ``given``: for each rule the smallest play on a machine as given,
    where one was looked for and found.
    """

    name: str
    make: MakeScheduler
    asked: frozenset[Rule]
    profile: Profile
    call_seconds: float
    excused: frozenset[Rule] = frozenset()
    time_left: Callable[[], float] = lambda: math.inf
    cases: Path | None = None
    told: Callable[[Scene], None] | None = None
    last: Play | None = None
    given: dict[Rule, Play] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self._failing = frozenset(rule for rule in self.asked if self.profile.fails_on(rule))

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
        return None if broken is None or broken.rule in self.excused else broken.rule

    def anew(self) -> "Trial":
        """A trial of the same candidate in which nothing has been played."""
        return Trial(
            name=self.name,
            make=self.make,
            asked=self.asked,
            profile=self.profile,
            call_seconds=self.call_seconds,
            excused=self.excused,
            time_left=self.time_left,
            cases=self.cases,
        )

    def finish(self) -> None:
        """Nothing is being played any more."""
        if self.cases is not None:
            (self.cases / PLAYING).unlink(missing_ok=True)

    def _played(self, scene: Scene) -> Play | CandidateFault:
        self._announce(scene)
        self.played += 1
        self.last = None
        try:
            result = play(scene, self.make, call_seconds=min(self.call_seconds, self.time_left() + GRACE_SECONDS))
        except CandidateFault as fault:
            self.blame(fault, scene)
            return fault
        self.last = result
        self.add(result, asked=self.asked, failing=self._failing, excused=self.excused)
        return result

    def _announce(self, scene: Scene) -> None:
        """Save and tell the scene before the candidate runs, so that a crash of the whole process loses nothing."""
        if self.told is not None:
            self.told(scene)
        if self.cases is not None:
            note = "this scene was being played when the process ended"
            found = Found(target=self.name, rule="", profile=self.profile.value, note=note)
            save_case(self.cases / PLAYING, Case(scene=scene, found=found))
