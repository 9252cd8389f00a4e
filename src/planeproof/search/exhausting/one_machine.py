"""Exhausting one tiny machine: premises, then level by level, until all scenes are counted or one shows something."""

import time
from dataclasses import dataclass, field, replace

from planeproof.judge import Basis, Play, Strength
from planeproof.search.exhausting.letters import Letters
from planeproof.search.exhausting.premises import Premises, premises_of
from planeproof.search.exhausting.telling import Progress, source_of
from planeproof.search.exhausting.tiny import Tiny
from planeproof.search.exhausting.tree import SceneTree
from planeproof.search.exhausting.walking import Leaf, Walk
from planeproof.search.laws import check_again
from planeproof.search.trial import Trial
from planeproof.search.watching import Watcher

SECONDS_BETWEEN_STEPS = 0.1
"""A watcher is told no more often: there are thousands of scenes a second."""

UNLIKE = "a copy of it did not say what it says when it is played from the beginning"


class TimeOver(Exception):
    """The seconds are over."""


class _Unlike(Exception):
    """What a copy of the candidate has said is not what it says when it is played from the beginning."""


@dataclass(kw_only=True)
class OneMachine:
    """``basis`` gets what this comes to, also where `TimeOver` or Ctrl-C ends it at ``end`` or before."""

    tiny: Tiny
    trial: Trial
    watcher: Watcher
    end: float
    basis: list[Basis]
    progress: Progress = field(default_factory=Progress)

    def exhaust(self) -> None:
        """Play all scenes, up to the first that breaks a rule or the contract."""
        self.watcher.stage(f"premises on {self.tiny.name}", None)
        premises = premises_of(self.trial, self.tiny, go_on=self._in_time)
        if premises is None:
            return
        for letters in premises.walked:
            if not self.trial.decided:
                premises = self._walked(premises, letters)

    def _walked(self, premises: Premises, letters: Letters) -> Premises:
        try:
            self._walk(premises, letters)
        except _Unlike:
            premises = replace(premises, unlike=UNLIKE)
            self._walk(premises, letters)
        return premises

    def _walk(self, premises: Premises, letters: Letters) -> None:
        tree = SceneTree(self.tiny.machine, self.tiny.bounds(letters), letters)
        copying = premises.unlike is None
        walk = Walk(tree=tree, make=self.trial.make, call_seconds=self.trial.call_seconds, copying=copying)
        self.progress = Progress(total=tree.total)
        self.watcher.stage(f"all scenes of {self.tiny.name}", self.progress.total)
        try:
            self._levels(walk)
        except (TimeOver, KeyboardInterrupt) as ended:
            self.progress.ended = "the time was over" if isinstance(ended, TimeOver) else "it was interrupted"
            self._rests_on(premises, walk)
            raise
        if not self.trial.decided and self.progress.scenes != self.progress.total:
            raise AssertionError(f"{self.progress.scenes} scenes were counted of {self.progress.total} that there are")
        self._rests_on(premises, walk)

    def _levels(self, walk: Walk) -> None:
        told = 0.0
        for leaf in (leaf for level in walk.tree.levels for leaf in walk.leaves(level)):
            self.progress.add(leaf)
            self._see(leaf, copies=walk.copying)
            if self.trial.decided:
                return
            self._in_time()
            if time.monotonic() - told > SECONDS_BETWEEN_STEPS:
                told = time.monotonic()
                self.watcher.step(self.progress.scenes)

    def _in_time(self) -> None:
        if time.monotonic() > self.end:
            raise TimeOver

    def _see(self, leaf: Leaf, *, copies: bool) -> None:
        """Play a scene that shows something new again, from its beginning: nothing that is told rests on a copy."""
        if leaf.play is not None and not self._shows_new(leaf.play):
            return
        if copies and not self._alike(leaf):
            raise _Unlike
        if leaf.fault is not None:
            self.trial.blame(leaf.fault, leaf.scene)
        elif leaf.play is not None:
            check_again(self.trial, leaf.play)

    def _alike(self, leaf: Leaf) -> bool:
        again = self.trial.play(leaf.scene)
        if again is None or leaf.play is None:
            return again is None and leaf.play is None
        return again.transcript == leaf.play.transcript

    def _shows_new(self, play: Play) -> bool:
        trial = self.trial
        broken = play.counts.keys() & trial.asked
        if any(trial.profile.fails_on(rule) for rule in broken) or (play.exercised & trial.asked) - trial.exercised:
            return True
        margins = [(v.rule, v.margin) for v in play.violations if v.rule in trial.asked and v.margin is not None]
        return any(rule not in trial.margins or margin < trial.margins[rule] for rule, margin in margins)

    def _rests_on(self, premises: Premises, walk: Walk) -> None:
        """Only what was finished is EXHAUSTED; up to a scene that breaks a rule all were, in their order."""
        strength = Strength.SAMPLED if self.progress.ended else Strength.EXHAUSTED
        source = source_of(self.tiny, premises, walk, self.progress, decided=self.trial.decided)
        scenes = self.progress.scenes
        self.basis.append(Basis(strength=strength, source=source, scenes=scenes, failed=self.trial.decided))
