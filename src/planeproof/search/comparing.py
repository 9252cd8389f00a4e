"""Several candidates on the same scenes: what each broke, and what each spent, side by side."""

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field

from planeproof.contract import RULES, Machine, Rule, Scene, Scheduler
from planeproof.hosts import Candidate, load
from planeproof.judge import (
    Basis,
    CandidateFault,
    CandidateHung,
    Outcome,
    Play,
    Profile,
    Strength,
    by_seriousness,
    not_applicable,
    play,
)
from planeproof.judge.conversation import CALL_SECONDS
from planeproof.machines import read_machine
from planeproof.scenes.crystals import crystal_scenes
from planeproof.scenes.full import full_scene
from planeproof.scenes.recipes import recipe
from planeproof.scenes.source import RandomSource
from planeproof.search.spending import Spending, declined_in, spending_of
from planeproof.search.watching import NoWatcher, Watcher

DEFAULT_SCENES = 400
"""Recipes, over all machines: enough for most faults, and a few seconds a candidate."""


@dataclass(frozen=True, kw_only=True, eq=False)
class Standing:
    """How one candidate did.

    ``outcomes``: those that apply, the most serious first. ``played``: scenes in which it kept to the contract; it
    plays no more once it has not. ``broken``: rules that were broken, each with the number of scenes; ``exposed`` the
    same of rules that the profile lets be. ``idle``: rules that it gave no scene the chance to break. ``declined``:
    pictures declined in all scenes. ``spent``: a value a machine, none where ``fault`` cut it short.
    """

    target: str
    outcomes: tuple[Outcome, ...]
    played: int
    broken: tuple[tuple[Rule, int], ...]
    exposed: tuple[tuple[Rule, int], ...]
    idle: tuple[Rule, ...]
    declined: int
    spent: tuple[Spending, ...]
    fault: CandidateFault | None = None
    fault_scene: Scene | None = None

    @property
    def outcome(self) -> Outcome:
        """The most serious outcome."""
        return self.outcomes[0]


@dataclass(frozen=True, kw_only=True, eq=False)
class Comparison:
    """What came of a comparison. ``basis``: the scenes, which were the same for all, by where they are from."""

    machines: tuple[str, ...]
    profile: Profile
    seed: int
    basis: tuple[Basis, ...]
    standings: tuple[Standing, ...]

    @property
    def outcome(self) -> Outcome:
        """The most serious outcome of any candidate."""
        return by_seriousness(outcome for standing in self.standings for outcome in standing.outcomes)[0]

    @property
    def scenes(self) -> int:
        """How many scenes there were for each."""
        return sum(basis.scenes for basis in self.basis)


def compare(
    targets: Sequence[str | Callable[[], Scheduler]],
    *,
    machines: Sequence[Machine | str],
    scenes: int = DEFAULT_SCENES,
    seed: int = 0,
    profile: Profile = Profile.STRICT,
    watcher: Watcher | None = None,
    call_seconds: float = CALL_SECONDS,
) -> Comparison:
    """Play the same scenes with each of ``targets`` (see `planeproof.search.check`, also for ``machines``).

    ``scenes`` recipes in all, drawn independently on small relatives of the machines by ``seed`` alone, then the
    machines as given: pictures of as many cells as must be shown, and crystals turning. Only the latter two count
    for what is spent. A rule that is broken ends nothing, so that all are judged by the same; a candidate that
    breaks the contract is left out from there on, and the others go on.

    Raises `planeproof.hosts.TargetError`, `planeproof.machines.MachineFileError`, `ValueError` where there are no
    targets, machines or scenes. What a candidate does is in the comparison, never raised.
    """
    if not targets or not machines or scenes < 1:
        raise ValueError(
            f"targets is {targets!r}, machines {machines!r} and scenes {scenes}: name at least one target and one "
            "machine, and ask for at least 1 scene"
        )
    candidates = [load(target) for target in targets]
    chosen = tuple(read_machine(machine) if isinstance(machine, str) else machine for machine in machines)
    drawn = [_recipe(chosen, seed, number) for number in range(scenes)]
    full = [full_scene(machine) for machine in chosen]
    crystals = [scene for machine in chosen for scene in crystal_scenes(machine)]
    seen_by = watcher or NoWatcher()
    standings = [
        _Run(candidate=candidate, profile=profile, call_seconds=call_seconds).standing(
            chosen, [*drawn, *full, *crystals], seen_by
        )
        for candidate in candidates
    ]
    return Comparison(
        machines=tuple(machine.name for machine in chosen),
        profile=profile,
        seed=seed,
        basis=tuple(_basis(len(drawn), len(full), len(crystals))),
        standings=tuple(standings),
    )


def _recipe(machines: Sequence[Machine], seed: int, number: int) -> Scene:
    # In turn, not at random: with as many scenes of each machine the bound only becomes safer.
    machine = machines[number % len(machines)]
    return recipe(machine, RandomSource(f"compare/{seed}/{machine.name}/{number // len(machines)}"))


def _basis(drawn: int, full: int, crystals: int) -> Iterator[Basis]:
    for source, scenes, independent in (
        ("recipes on small relatives of the machines, drawn independently", drawn, True),
        ("as many cells as must be shown, on the machines as given", full, False),
        ("crystals turning, on the machines as given", crystals, False),
    ):
        if scenes:
            yield Basis(strength=Strength.SAMPLED, source=source, scenes=scenes, independent=independent)


@dataclass(kw_only=True)
class _Run:
    """One candidate's way through the scenes."""

    candidate: Candidate
    profile: Profile
    call_seconds: float
    played: int = 0
    declined: int = 0
    broken: Counter[Rule] = field(default_factory=Counter)
    exercised: set[Rule] = field(default_factory=set)
    applicable: set[Rule] = field(default_factory=set)
    fault: CandidateFault | None = None
    fault_scene: Scene | None = None

    def standing(self, machines: Sequence[Machine], scenes: Sequence[Scene], watcher: Watcher) -> Standing:
        """How it did in ``scenes``, and what it spent in those that are on ``machines`` themselves."""
        watcher.stage(self.candidate.name, len(scenes))
        on_machines: list[Play] = []
        for number, scene in enumerate(scenes, 1):
            result = self._play(scene)
            if result is None:
                break
            if any(scene.machine is machine for machine in machines):
                on_machines.append(result)
            watcher.step(number)
        spent = () if self.fault is not None else tuple(spending_of(machine, on_machines) for machine in machines)
        failing = [rule for rule in RULES if self.profile.fails_on(rule)]
        idle = [rule for rule in failing if rule in self.applicable - self.exercised - set(self.broken)]
        return Standing(
            target=self.candidate.name,
            outcomes=by_seriousness(self._outcomes(failing, idle)),
            played=self.played,
            broken=tuple((rule, self.broken[rule]) for rule in RULES if rule in failing and self.broken[rule]),
            exposed=tuple((rule, self.broken[rule]) for rule in RULES if rule not in failing and self.broken[rule]),
            idle=tuple(idle) if self.fault is None else (),
            declined=self.declined,
            spent=spent,
            fault=self.fault,
            fault_scene=self.fault_scene,
        )

    def _play(self, scene: Scene) -> Play | None:
        try:
            result = play(scene, self.candidate.make, call_seconds=self.call_seconds)
        except CandidateFault as fault:
            self.fault, self.fault_scene = fault, scene
            return None
        self.played += 1
        self.declined += declined_in(result)
        self.broken.update(result.counts.keys())
        self.exercised |= result.exercised
        self.applicable |= set(RULES) - not_applicable(scene)
        return result

    def _outcomes(self, failing: Sequence[Rule], idle: Sequence[Rule]) -> Iterator[Outcome]:
        if self.fault is not None:
            yield Outcome.HUNG if isinstance(self.fault, CandidateHung) else Outcome.CANDIDATE_ERROR
        if any(self.broken[rule] for rule in failing):
            yield Outcome.FAIL
        elif idle and self.fault is None:
            yield Outcome.VACUOUS
