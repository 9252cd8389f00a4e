"""The tally: what playing scenes has shown so far. Two tallies add up to one, wherever they were made."""

from dataclasses import dataclass, field

from planeproof.contract import Rational, Rule, Scene
from planeproof.judge import CandidateFault, CandidateHung, Cost, Play, not_applicable
from planeproof.judge.reached import Reached
from planeproof.search.residual import Behaviours
from planeproof.search.size import Size, size


@dataclass(kw_only=True, eq=False)
class Tally:
    """What the scenes played so far have shown.

    ``played``: how many there were. ``smallest``: for each rule the smallest play in which it is the first that is
    broken; ``after``: how many scenes had been played when it first was; ``broken``: all that were, also after another
    one. ``fault`` and ``fault_scene``: the candidate's own breach of the contract, if any; that it hung is hidden by no
    other. ``margins``: for each rule that was broken without the profile failing on it, the least cycles that spared
    the viewer. ``let_be``: scenes in which a failure that is expected came first; ``masked``: the other rules that were
    broken in those. ``costs``: what showing pictures cost, where that was asked. ``reached``: the edges, over generated
    scenes; ``behaviours``: those observed over scenes drawn independently. ``cut_short``: not all that should have
    been played was, for the time was over; ``interrupted``: nor was it, for somebody ended it.
    """

    played: int = 0
    smallest: dict[Rule, Play] = field(default_factory=dict)
    after: dict[Rule, int] = field(default_factory=dict)
    broken: set[Rule] = field(default_factory=set)
    fault: CandidateFault | None = None
    fault_scene: Scene | None = None
    exercised: set[Rule] = field(default_factory=set)
    applicable: set[Rule] = field(default_factory=set)
    margins: dict[Rule, Rational] = field(default_factory=dict)
    let_be: int = 0
    masked: set[Rule] = field(default_factory=set)
    costs: list[Cost] = field(default_factory=list)
    reached: Reached = field(default_factory=Reached)
    behaviours: Behaviours = field(default_factory=Behaviours)
    cut_short: bool = False
    interrupted: bool = False

    @property
    def decided(self) -> bool:
        """Whether something was found, so that more scenes can't change the outcome."""
        return bool(self.smallest) or self.fault is not None

    def add(
        self, play: Play, *, asked: frozenset[Rule], failing: frozenset[Rule], excused: frozenset[Rule] = frozenset()
    ) -> None:
        """Add what one scene has shown, judged by the rules ``asked`` for, of which breaking the ``failing`` counts.

        Unless one of the ``excused`` is broken first: what follows from that is excused too.
        """
        self.exercised |= play.exercised
        self.applicable |= asked - not_applicable(play.scene)
        for violation in play.violations:
            if violation.rule in asked - failing and violation.margin is not None:
                self._spare(violation.rule, violation.margin)
        broken = play.first(failing)
        if broken is not None and broken.rule in excused:
            self.let_be += 1
            self.masked |= (failing & play.counts.keys()) - excused
        elif broken is not None:
            self.broken |= failing & play.counts.keys()
            self.after.setdefault(broken.rule, self.played)
            self._keep(broken.rule, play)

    def blame(self, fault: CandidateFault, scene: Scene) -> None:
        """Keep the candidate's breach of the contract, the most serious in the smallest scene that shows it."""
        held = None if self.fault is None or self.fault_scene is None else _gravity(self.fault, self.fault_scene)
        if held is None or _gravity(fault, scene) < held:
            self.fault, self.fault_scene = fault, scene

    def merge(self, later: "Tally") -> None:
        """Add all that ``later`` has, which was played after this."""
        for rule, play in later.smallest.items():
            self._keep(rule, play)
        for rule, after in later.after.items():
            self.after.setdefault(rule, self.played + after)
        for rule, margin in later.margins.items():
            self._spare(rule, margin)
        if later.fault is not None and later.fault_scene is not None:
            self.blame(later.fault, later.fault_scene)
        self.played += later.played
        self.broken |= later.broken
        self.let_be += later.let_be
        self.masked |= later.masked
        self.exercised |= later.exercised
        self.applicable |= later.applicable
        self.costs += later.costs
        self.reached.merge(later.reached)
        self.behaviours.merge(later.behaviours)

    def _keep(self, rule: Rule, play: Play) -> None:
        held = self.smallest.get(rule)
        if held is None or size(play.scene) < size(held.scene):
            self.smallest[rule] = play

    def _spare(self, rule: Rule, margin: Rational) -> None:
        self.margins[rule] = min(self.margins.get(rule, margin), margin)


def _gravity(fault: CandidateFault, scene: Scene) -> tuple[bool, Size]:
    """The least of these is kept: that it hung comes before all else."""
    return not isinstance(fault, CandidateHung), size(scene)
