"""A check: laws, steered search, independent draws and turning crystals, until something is found; then a verdict."""

import math
import time
from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass, field
from itertools import count
from pathlib import Path

from planeproof.contract import RULES, Machine, Rule, Scene, Scheduler
from planeproof.hosts import Candidate, load
from planeproof.judge import Basis, Cost, Profile, Strength, Verdict
from planeproof.judge.conversation import CALL_SECONDS
from planeproof.machines import read_machine
from planeproof.scenes.crystals import LONG, crystal_scenes
from planeproof.scenes.full import full_scene
from planeproof.scenes.recipes import recipe
from planeproof.scenes.source import RandomSource
from planeproof.search.costs import cost_of
from planeproof.search.laws import check_laws
from planeproof.search.smaller import make_smaller
from planeproof.search.steering import steer
from planeproof.search.trial import Trial, keep_left_over
from planeproof.search.verdicts import verdict_of
from planeproof.search.watching import NoWatcher, Watcher

DEFAULT_MACHINES = ("vitrine-50", "vitrine-60")
"""Checked on both line standards unless told otherwise."""

DEFAULT_SCENES = 2000
"""Enough for every fault that ships to be found, and some ten seconds."""

LAW_SCENES = 4
"""Scenes a machine that are played twice, to see whether the candidate is deterministic."""

SMALLER_SECONDS = 10.0
"""Time for making all that was found smaller; the smallest so far is kept when it is over."""

STEERED_AT_A_TIME = 100
"""Scenes in one round of the steered search; with a time limit, rounds follow one another until it is over."""


def draw(machine: Machine, purpose: str, number: int, *, seed: int, as_given: bool = False) -> Scene:
    """The scene of that number that a check draws for a purpose; ``"scene"`` are those it draws independently."""
    return recipe(machine, RandomSource(f"{seed}/{machine.name}/{purpose}/{number}"), as_given=as_given)


@dataclass(frozen=True, kw_only=True)
class Limits:
    """How much to search: ``scenes`` in all over all machines, or for ``seconds``."""

    scenes: int
    seconds: float | None

    def __post_init__(self) -> None:
        if self.scenes < 1:
            raise ValueError(f"scenes is {self.scenes}: at least 1 must be played")
        if self.seconds is not None and not 0 < self.seconds < math.inf:
            raise ValueError(f"seconds is {self.seconds}: it must be above 0")


def check(
    target: str | Callable[[], Scheduler],
    *,
    machines: Sequence[Machine | str] | Machine | str = DEFAULT_MACHINES,
    profile: Profile = Profile.STRICT,
    scenes: int = DEFAULT_SCENES,
    seconds: float | None = None,
    seed: int = 0,
    only: Collection[Rule] = (),
    as_given: bool = False,
    cases: Path | None = None,
    watcher: Watcher | None = None,
    call_seconds: float = CALL_SECONDS,
) -> Verdict:
    """Check a candidate against the rules, and give a verdict.

    ``target``: a class or function that makes a `Scheduler`, or text that names one (``package.module:Name``,
    ``file.py:Name``). ``machines``: values, names of shipped ones or TOML files; scenes are drawn on small relatives
    of each, or ``as_given`` only on the machines themselves. Half of the ``scenes`` is searched by Hypothesis, half is
    drawn independently; with ``seconds`` the search goes on that long instead. What is found is then made smaller, for
    at most `SMALLER_SECONDS`. ``only``: rules to judge by (default all). ``cases``: folder to save scenes in.
    ``call_seconds``: after which a call of the candidate counts as hung; with ``seconds`` it is at most what is left of
    them and `GRACE_SECONDS` of `planeproof.search.trial`. The clock is asked between scenes, not between two calls:
    a scene that has begun is played to its end.

    Raises `planeproof.hosts.TargetError`, `planeproof.machines.MachineFileError`, `ValueError` for limits or an empty
    list of machines, `OSError` where ``cases`` can't be written. What a candidate does is in the verdict, never raised.
    """
    candidate = load(target)
    named = (machines,) if isinstance(machines, Machine | str) else machines
    chosen = tuple(read_machine(machine) if isinstance(machine, str) else machine for machine in named)
    if not chosen:
        raise ValueError("machines is empty: name at least one machine")
    if not set(only) <= set(RULES) or not isinstance(profile, Profile):
        raise ValueError(f"only is {only!r} and profile {profile!r}: take rules of RULES, and a member of Profile")
    if not call_seconds > 0:
        raise ValueError(f"call_seconds is {call_seconds}: it must be above 0, or no call could return in time")
    if cases is not None:
        cases.mkdir(parents=True, exist_ok=True)
        keep_left_over(cases)
    trial = Trial(
        name=candidate.name,
        make=candidate.make,
        asked=frozenset(only) or frozenset(RULES),
        profile=profile,
        call_seconds=call_seconds,
        cases=cases,
    )
    limits = Limits(scenes=scenes, seconds=seconds)
    run = _Run(
        trial=trial, machines=chosen, limits=limits, seed=seed, as_given=as_given, watcher=watcher or NoWatcher()
    )
    return run.verdict(candidate)


@dataclass(kw_only=True)
class _Run:
    trial: Trial
    machines: tuple[Machine, ...]
    limits: Limits
    seed: int
    as_given: bool
    watcher: Watcher
    basis: list[Basis] = field(default_factory=list)
    costs: list[Cost] = field(default_factory=list)

    def verdict(self, candidate: Candidate) -> Verdict:
        self.began = time.monotonic()
        if self.limits.seconds is not None:
            end = self.began + self.limits.seconds
            self.trial.time_left = lambda: max(end - time.monotonic(), 0.0)
        try:
            self._laws()
            for stage in (self._steered, self._independent, self._full, self._crystals):
                # A rule broken in the scenes of the laws is no reason to stop: the search finds a smaller scene.
                if self.trial.fault is not None or (self.trial.decided and stage != self._steered):
                    break
                stage()
            self._smaller()
        except KeyboardInterrupt:
            # What was found is worth more than how small it is.
            if not self.trial.decided:
                raise
        finally:
            self.trial.finish()
        return verdict_of(
            self.trial,
            machines=tuple(machine.name for machine in self.machines),
            seed=self.seed,
            basis=tuple(self.basis),
            costs=tuple(self.costs),
        )

    # --- stages -------------------------------------------------------------------------------------------

    def _laws(self) -> None:
        self.watcher.stage("laws of the contract", None)
        scenes = [self._draw(machine, "law", number) for machine in self.machines for number in range(LAW_SCENES)]
        check_laws(self.trial, scenes)
        # They ask something else: by them alone no rule has had its chance.
        self.trial.exercised.clear()
        self._rests_on(
            f"{self._recipes}, played twice to see that the candidate keeps the laws", len(scenes), independent=False
        )

    def _steered(self) -> None:
        total = self._half if self.limits.seconds is None else None
        self.watcher.stage("scenes searched by Hypothesis", total)
        played = 0
        for number, (machine, share) in enumerate(self._rounds()):
            played += steer(
                self.trial,
                machine,
                as_given=self.as_given,
                most=share,
                first_seed=self.seed * 1_000_003 + number,
                go_on=self._stepping(played),
            )
            if self.trial.decided:
                break
        self._rests_on(f"{self._recipes}, searched by Hypothesis", played, independent=False)

    def _independent(self) -> None:
        total = self.limits.scenes - self._half if self.limits.seconds is None else None
        self.watcher.stage("scenes drawn independently", total)
        played = 0
        while (played < total) if total is not None else self._time_left(1.0):
            # In turn, not at random: with as many scenes of each machine the bound only becomes safer.
            machine = self.machines[played % len(self.machines)]
            self.trial.play(self._draw(machine, "scene", played // len(self.machines)))
            played += 1
            self.watcher.step(played)
            if self.trial.decided:
                break
        # Whatever was found by now was found here: nothing is drawn independently once something has been.
        failed = self.trial.decided
        self._rests_on(f"{self._recipes}, drawn independently", played, independent=True, failed=failed)

    def _full(self) -> None:
        self.watcher.stage("as many cells as must be shown", len(self.machines))
        played = 0
        for machine in self.machines:
            self.trial.play(full_scene(machine))
            played += 1
            self.watcher.step(played)
            if self.trial.decided:
                break
        self._rests_on("as many cells as must be shown, on the machines as given", played, independent=False)

    def _crystals(self) -> None:
        scenes = [scene for machine in self.machines for scene in crystal_scenes(machine)]
        self.watcher.stage("crystals turning", len(scenes))
        plays = []
        for number, scene in enumerate(scenes, 1):
            result = self.trial.play(scene)
            if result is None or self.trial.decided:
                break
            plays.append(result)
            self.watcher.step(number)
        self._rests_on(
            f"crystals turning, for up to {LONG} pictures, on the machines as given", len(plays), independent=False
        )
        if not self.trial.decided:
            self.costs += [
                cost_of(machine, plays) for machine in self.machines if crystal_scenes(machine, pictures=1, long=1)
            ]

    def _smaller(self) -> None:
        if self.trial.decided:
            self.watcher.stage("making what was found smaller", None)
            end, tried = time.monotonic() + SMALLER_SECONDS, count(1)

            def go_on() -> bool:
                self.watcher.step(next(tried))
                return time.monotonic() < end

            make_smaller(
                self.trial,
                self.machines,
                as_given=self.as_given,
                first_seed=self.seed,
                go_on=go_on,
            )

    # --- what they are made of ----------------------------------------------------------------------------

    @property
    def _recipes(self) -> str:
        if self.as_given:
            return "recipes on the machines as given"
        demanded = any(machine.demands.patience is not None for machine in self.machines)
        own = ", each with its own default patience, not the demanded one" if demanded else ""
        return f"recipes on small relatives of the machines{own}"

    @property
    def _half(self) -> int:
        return self.limits.scenes // 2

    def _rounds(self) -> Iterator[tuple[Machine, int]]:
        """A machine and a number of scenes, over and over until the limits are used up."""
        if self.limits.seconds is None:
            machines = len(self.machines)
            for number, machine in enumerate(self.machines):
                share = self._half // machines + (number < self._half % machines)
                if share:
                    yield machine, share
            return
        while self._time_left(0.5):
            for machine in self.machines:
                yield machine, STEERED_AT_A_TIME

    def _time_left(self, share: float) -> bool:
        assert self.limits.seconds is not None
        return time.monotonic() - self.began < share * self.limits.seconds

    def _stepping(self, before: int) -> Callable[[], bool]:
        done = before

        def go_on() -> bool:
            nonlocal done
            done += 1
            self.watcher.step(done)
            return self.limits.seconds is None or self._time_left(1.0 if self.trial.decided else 0.5)

        return go_on

    def _draw(self, machine: Machine, purpose: str, number: int) -> Scene:
        return draw(machine, purpose, number, seed=self.seed, as_given=self.as_given)

    def _rests_on(self, source: str, scenes: int, *, independent: bool, failed: bool = False) -> None:
        if scenes:
            sampled = Strength.SAMPLED
            self.basis.append(
                Basis(strength=sampled, source=source, scenes=scenes, independent=independent, failed=failed)
            )
