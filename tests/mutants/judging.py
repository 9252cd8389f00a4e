"""One mutant on trial: the scenes of a short check, until the first that shows something.

What kills is Planeproof alone: a rule that is broken, a breach of the contract, a call that hangs, or a rule that the
right scheduler exercised and the mutant no longer does (VACUOUS). None of our unit tests has a say.
"""

import resource
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from enum import Enum
from functools import cache
from itertools import count
from pathlib import Path

from planeproof.contract import RULES, Rule, Scene
from planeproof.judge import CandidateFault, CandidateHung, MakeScheduler, Play, not_applicable, play
from tests.mutants.making import Mutant
from tests.mutants.sources import loaded, made
from tests.mutants.trials import Trial, scene_of, scenes_each, trials_of

CALL_SECONDS = 2.0
MORE_MEMORY = 2 << 30
"""Bytes that a mutant may take beside what was there already: some count to the end of the world."""


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


@dataclass(kw_only=True)
class Account:
    """What a scheduler said in the scenes of a trial: hashes of all of it, bytes sent, rules exercised."""

    transcripts: list[int] = field(default_factory=list)
    sent: int = 0
    exercised: set[Rule] = field(default_factory=set)

    def add(self, found: Play) -> None:
        """One more scene."""
        self.transcripts.append(hash(found.transcript))
        self.sent += sum(len(burst.data) for refresh in found.refreshes for burst in refresh.bursts)
        self.exercised |= found.exercised


@cache
def said_by_the_right_one(trial: Trial, scenes: int) -> Account:
    """Play ``scenes`` of a trial as the scheduler is; it breaks nothing, or nothing said of its mutants would hold."""
    make, account = made(trial.module, trial.name), Account()
    for number in range(scenes):
        found = play(scene_of(trial.shape, number), make)
        assert found.first(trial.asked) is None, trial
        account.add(found)
    return account


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


def _tried(makers: Mapping[Trial, MakeScheduler]) -> Judgement | dict[Trial, Account]:
    """A scene of each trial in turn, until one shows something; the accounts where none does."""
    accounts, played = {trial: Account() for trial in makers}, count(1)
    for number in range(scenes_each(len(makers))):
        for trial, make in makers.items():
            found = _judged(trial, make, scene_of(trial.shape, number), next(played))
            if isinstance(found, Judgement):
                return found
            accounts[trial].add(found)
    return accounts


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


def _beside_the_right_ones(accounts: Mapping[Trial, Account]) -> Judgement:
    each = scenes_each(len(accounts))
    right = {trial: said_by_the_right_one(trial, each) for trial in accounts}
    for trial, account in accounts.items():
        idle = [rule.id for rule in RULES if rule in trial.asked & right[trial].exercised - account.exercised]
        if idle:
            return Judgement(fate=Fate.VACUOUS, by=", ".join(idle), trial=str(trial), scenes=each * len(accounts))
    pairs = [zip(accounts[trial].transcripts, right[trial].transcripts, strict=True) for trial in accounts]
    return Judgement(
        fate=Fate.SURVIVED,
        scenes=each * len(accounts),
        unlike=sum(one != other for pair in pairs for one, other in pair),
        sent=sum(account.sent for account in accounts.values()) / sum(account.sent for account in right.values()),
    )


@contextmanager
def _bounded_memory() -> Iterator[None]:
    """Within, the process may take `MORE_MEMORY` more than it has: where that is limited, an error comes of it."""
    before, hard = resource.getrlimit(resource.RLIMIT_AS)
    pages = int(Path("/proc/self/statm").read_text("ascii").split()[0])
    resource.setrlimit(resource.RLIMIT_AS, (pages * resource.getpagesize() + MORE_MEMORY, hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_AS, (before, hard))
