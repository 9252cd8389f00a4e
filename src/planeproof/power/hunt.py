"""One fault, hunted: scenes are counted, and for each rule the scene that first shows it is remembered."""

import time
from dataclasses import dataclass, field

from planeproof.candidates.faults import Fault
from planeproof.contract import RULES, Machine, Scene
from planeproof.judge import CandidateFault, play
from planeproof.machines import read_machine
from planeproof.power.detection import Detection, Outcome, SceneSize

CONTRACT = "contract"
"""What stands for the rule where a fault breaks the contract, which none of ours should."""


class NothingToAsk(Exception):
    """An engine has nothing to ask of this fault; the message says why."""


@dataclass(frozen=True, kw_only=True)
class Limits:
    """When a hunt is given up: after ``scenes`` scenes or ``seconds`` seconds, whichever comes first."""

    scenes: int = 2000
    seconds: float = 60.0

    def __post_init__(self) -> None:
        if self.scenes < 1:
            raise ValueError(f"scenes is {self.scenes}: at least 1 must be played")
        if not self.seconds > 0:
            raise ValueError(f"seconds is {self.seconds}: it must be above 0")


@dataclass(kw_only=True, eq=False)
class Hunt:
    """A hunt under way.

    An engine plays scenes with `shows`, or `sees` what others have played, until it is `over`: the fault's own rule was
    broken first in a scene, or a limit is reached.
    """

    fault: Fault
    engine: str
    seed: int
    limits: Limits
    played: int = 0
    first: dict[str, int] = field(default_factory=dict)
    smallest: SceneSize | None = None
    strayed: str | None = None

    def __post_init__(self) -> None:
        self.began = time.monotonic()
        self.machine: Machine = read_machine(self.fault.machine)

    @property
    def caught(self) -> bool:
        """Whether the fault's own rule was seen broken first."""
        return self.fault.rule.id in self.first

    @property
    def over(self) -> bool:
        """Whether there is no reason to play another scene."""
        found = self.caught or self.strayed is not None
        return found or self.played >= self.limits.scenes or self.late

    @property
    def late(self) -> bool:
        """Whether the time is over."""
        return time.monotonic() - self.began > self.limits.seconds

    def shows(self, scene: Scene) -> str | None:
        """Play ``scene`` and remember what it shows: the id of the rule that is broken first, None for none."""
        try:
            violation = play(scene, self.fault.make).first(frozenset(RULES))
        except CandidateFault:
            self.sees(scene, CONTRACT)
            return CONTRACT
        shown = None if violation is None else violation.rule.id
        self.sees(scene, shown)
        return shown

    def sees(self, scene: Scene, shown: str | None) -> None:
        """Count a scene that has been played, and remember what it showed."""
        self.played += 1
        if shown is None:
            return
        self.first.setdefault(shown, self.played)
        size = SceneSize.of(scene)
        if shown == self.fault.rule.id and (self.smallest is None or size.key < self.smallest.key):
            self.smallest = size

    def hears(self, played: int, first: dict[str, int], smallest: Scene | None) -> None:
        """Take over what somebody else has counted: scenes, when each rule was first seen, and the smallest scene."""
        self.played, self.first = played, first
        self.smallest = None if smallest is None else SceneSize.of(smallest)

    def strays(self, scene: Scene, where: str) -> None:
        """Remember that ``scene`` left the proved steps, and where."""
        self.strayed, self.smallest = where, SceneSize.of(scene)

    def detection(self) -> Detection:
        """What came of it."""
        return Detection(
            fault=self.fault.id,
            wanted=self.fault.rule.id,
            engine=self.engine,
            seed=self.seed,
            outcome=self._outcome,
            rules=tuple(sorted(self.first, key=self.first.__getitem__)),
            scenes=self.first.get(self.fault.rule.id, self.played),
            seconds=round(time.monotonic() - self.began, 4),
            smallest=self.smallest,
            note=self.strayed or "",
        )

    def nothing_to_ask(self, why: str) -> Detection:
        """That the engine has nothing to ask of this fault, and why."""
        return Detection(
            fault=self.fault.id,
            wanted=self.fault.rule.id,
            engine=self.engine,
            seed=self.seed,
            outcome=Outcome.NOT_FOR,
            note=why,
        )

    @property
    def _outcome(self) -> Outcome:
        if self.caught:
            return Outcome.CAUGHT
        if self.strayed is not None:
            return Outcome.STRAYED
        return Outcome.WRONG_RULE if self.first else Outcome.SURVIVED
