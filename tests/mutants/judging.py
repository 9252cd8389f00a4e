"""One mutant on trial: the scenes of a short check, until the first that shows something.

What kills is Planeproof alone: a rule that is broken, a breach of the contract, a call that hangs, or a rule that the
right scheduler exercised and the mutant no longer does (VACUOUS). None of our unit tests has a say.
"""

import resource
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from enum import Enum
from functools import cache
from itertools import count
from pathlib import Path
from typing import Self

from planeproof.contract import RULES, Rule, Scene
from planeproof.judge import CandidateFault, CandidateHung, MakeScheduler, Play, not_applicable, play
from tests.mutants.making import Mutant
from tests.mutants.sources import loaded, made
from tests.mutants.trials import Trial, scene_of, scenes_each, trials_of

CALL_SECONDS = 15.0
"""Longer than a busy computer makes anything take that ends."""

MORE_MEMORY = 2 << 30
"""Bytes that a mutant may take beside what was there already: some count to the end of the world."""


_HELD = Path("/proc/self/statm")


class Fate(Enum):
    """What becomes of a mutant. The order is that of the summary."""

    RULE = "rule"
    ERROR = "error"
    HUNG = "hung"
    VACUOUS = "vacuous"
    SURVIVED = "survived"


@dataclass(frozen=True, kw_only=True)
class Judgement:
    """``fate`` of a mutant: ``by`` what (a rule's id, an error), in which ``trial``, after how many ``scenes`` in all.

    Of a survivor ``unlike`` counts scenes in which it said something else than the right scheduler, and ``sent`` is
    what it sent in bytes, as a share of what that one sent.
    """

    fate: Fate
    by: str = ""
    trial: str = ""
    scenes: int = 0
    unlike: int = 0
    sent: float = 1.0


@dataclass(frozen=True, kw_only=True)
class Said:
    """What a scheduler said in one scene: a hash of all of it, the bytes it sent, the rules it exercised."""

    transcript: int
    sent: int
    exercised: frozenset[Rule]

    @classmethod
    def of(cls, found: Play) -> Self:
        """What it said in a play."""
        sent = sum(len(burst.data) for refresh in found.refreshes for burst in refresh.bursts)
        return cls(transcript=hash(found.transcript), sent=sent, exercised=found.exercised)


@cache
def said_by_the_right_one(trial: Trial, number: int) -> Said:
    """Play a scene as the scheduler is; it breaks nothing, or nothing that is said of its mutants would hold."""
    found = play(scene_of(trial.shape, number), made(trial.module, trial.name))
    assert found.first(trial.asked) is None, (trial, number)
    return Said.of(found)


def judge(mutant: Mutant, texts: Mapping[str, str]) -> Judgement:
    """What becomes of ``mutant``, made of one of ``texts``, in the trials that it concerns."""
    trials = trials_of(mutant.module, texts)
    with loaded({**texts, mutant.module: mutant.source}), _bounded_memory():
        try:
            makers = {trial: made(trial.module, trial.name) for trial in trials}
        except Exception as error:
            return Judgement(fate=Fate.ERROR, by=f"{type(error).__name__} on import", trial=str(trials[0]))
        found = _tried(makers)
    return found if isinstance(found, Judgement) else _beside_the_right_ones(found)


def _tried(makers: Mapping[Trial, MakeScheduler]) -> Judgement | dict[Trial, list[Said]]:
    """A scene of each trial in turn, until one shows something; what was said in all of them where none does."""
    said: dict[Trial, list[Said]] = {trial: [] for trial in makers}
    played = count(1)
    for number in range(scenes_each(len(makers))):
        for trial, make in makers.items():
            found = _judged(trial, make, scene_of(trial.shape, number), next(played))
            if isinstance(found, Judgement):
                return found
            said[trial].append(Said.of(found))
    return said


def _judged(trial: Trial, make: MakeScheduler, scene: Scene, played: int) -> Play | Judgement:
    try:
        found = play(scene, make, call_seconds=CALL_SECONDS)
    except CandidateHung:
        return Judgement(fate=Fate.HUNG, trial=str(trial), scenes=played)
    except CandidateFault as fault:
        return Judgement(fate=Fate.ERROR, by=_kind(fault), trial=str(trial), scenes=played)
    violation = found.first(trial.asked - not_applicable(scene))
    if violation is None:
        return found
    return Judgement(fate=Fate.RULE, by=violation.rule.id, trial=str(trial), scenes=played)


def _kind(fault: CandidateFault) -> str:
    """The class of what it raised, or else what it did, without the figures."""
    said = fault.said.removeprefix("raised ")
    return said.partition(":")[0] if said != fault.said else f"{fault.method} {said.split()[0]}"


def _beside_the_right_ones(said: Mapping[Trial, list[Said]]) -> Judgement:
    right = {trial: [said_by_the_right_one(trial, number) for number in range(len(said[trial]))] for trial in said}
    scenes = sum(map(len, said.values()))
    for trial in said:
        missed = _exercised(right[trial]) - _exercised(said[trial])
        idle = [rule.id for rule in RULES if rule in trial.asked & missed]
        if idle:
            return Judgement(fate=Fate.VACUOUS, by=", ".join(idle), trial=str(trial), scenes=scenes)
    pairs = [pair for trial in said for pair in zip(said[trial], right[trial], strict=True)]
    return Judgement(
        fate=Fate.SURVIVED,
        scenes=scenes,
        unlike=sum(one.transcript != other.transcript for one, other in pairs),
        sent=sum(one.sent for one, _ in pairs) / sum(other.sent for _, other in pairs),
    )


def _exercised(said: Iterable[Said]) -> frozenset[Rule]:
    return frozenset[Rule]().union(*(each.exercised for each in said))


@contextmanager
def _bounded_memory() -> Iterator[None]:
    """Within, the process may take `MORE_MEMORY` more than it has, where the system tells how much that is."""
    if not _HELD.exists():
        yield
        return
    before, hard = resource.getrlimit(resource.RLIMIT_AS)
    pages = int(_HELD.read_text("ascii").split()[0])
    resource.setrlimit(resource.RLIMIT_AS, (pages * resource.getpagesize() + MORE_MEMORY, hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_AS, (before, hard))
