"""Exhausting tiny machines: every scene within stated bounds is played, or the first that breaks a rule is found."""

import contextlib
import math
import time
from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from planeproof.contract import RULES, Rule, Scheduler
from planeproof.hosts import load
from planeproof.judge import Basis, CandidateHung, Outcome, Profile, RuleStatus, Verdict, by_seriousness
from planeproof.judge.conversation import CALL_SECONDS
from planeproof.search.exhausting.bounds import Bounds
from planeproof.search.exhausting.one_machine import OneMachine, TimeOver
from planeproof.search.exhausting.tiny import TINY, Tiny, tiny
from planeproof.search.trial import Trial, keep_left_over
from planeproof.search.verdicts import verdict_of
from planeproof.search.watching import NoWatcher, Watcher

DEFAULT_TINY = (TINY[0].name,)
"""What is exhausted unless something else is named: the kind that most schedulers are for."""


def exhaust(  # noqa: PLR0913 -- the knobs of one run, all by keyword
    target: str | Callable[[], Scheduler],
    *,
    machines: Sequence[Tiny | str] | Tiny | str = DEFAULT_TINY,
    profile: Profile = Profile.STRICT,
    only: Collection[Rule] = (),
    bounds: Bounds | None = None,
    seconds: float | None = None,
    cases: Path | None = None,
    watcher: Watcher | None = None,
    call_seconds: float = CALL_SECONDS,
) -> Verdict:
    """Play every scene of tiny machines within their bounds, and give a verdict.

    ``machines``: of `TINY`, by name or as values, or your own. ``bounds`` stand for those of each machine, save where
    the candidate computes with bytes and all values are tried. Scenes come in order of size, pictures first, then
    occupied cells, and the first that breaks a rule ends the search. ``seconds``: how long it may take; what is not
    finished by then is UNKNOWN, as after Ctrl-C. ``target``, ``profile``, ``only``, ``cases`` and ``call_seconds`` are
    as for `planeproof.check`.

    Raises `planeproof.hosts.TargetError`, `ValueError` for machines or limits that can't be, `OSError` where ``cases``
    can't be written. What a candidate does is in the verdict, never raised.
    """
    candidate = load(target)
    named = (machines,) if isinstance(machines, Tiny | str) else machines
    chosen = tuple(tiny(each) if isinstance(each, str) else each for each in named)
    _require(chosen, only, profile, seconds, call_seconds)
    if bounds is not None:
        chosen = tuple(replace(each, patterns=bounds, bytes=bounds) for each in chosen)
    if cases is not None:
        cases.mkdir(parents=True, exist_ok=True)
        keep_left_over(cases)
    asked = frozenset(only) or frozenset(RULES)
    trial = Trial(
        name=candidate.name, make=candidate.make, asked=asked, profile=profile, call_seconds=call_seconds, cases=cases
    )
    return _Run(trial=trial, machines=chosen, seconds=seconds, watcher=watcher or NoWatcher()).verdict()


def _require(
    chosen: tuple[Tiny, ...], only: Collection[Rule], profile: Profile, seconds: float | None, call_seconds: float
) -> None:
    if not chosen:
        raise ValueError("machines is empty: name at least one tiny machine")
    if not set(only) <= set(RULES) or not isinstance(profile, Profile):
        raise ValueError(f"only is {only!r} and profile {profile!r}: take rules of RULES, and a member of Profile")
    if seconds is not None and not 0 < seconds < math.inf:
        raise ValueError(f"seconds is {seconds}: it must be above 0")
    if not call_seconds > 0:
        raise ValueError(f"call_seconds is {call_seconds}: it must be above 0, or no call could return in time")


@dataclass(kw_only=True)
class _Run:
    trial: Trial
    machines: tuple[Tiny, ...]
    seconds: float | None
    watcher: Watcher
    basis: list[Basis] = field(default_factory=list)
    finished: bool = False

    def verdict(self) -> Verdict:
        end = math.inf if self.seconds is None else time.monotonic() + self.seconds
        # Whether or not it comes to its end, what it has come to is in the basis.
        with contextlib.suppress(TimeOver, KeyboardInterrupt):
            for each in self.machines:
                OneMachine(tiny=each, trial=self.trial, watcher=self.watcher, end=end, basis=self.basis).exhaust()
                if self.trial.decided:
                    break
            self.finished = True
        self.trial.finish()
        names = tuple(each.name for each in self.machines)
        verdict = verdict_of(self.trial, machines=names, seed=0, basis=tuple(self.basis))
        return replace(verdict, outcomes=by_seriousness(self._outcomes(verdict)))

    def _outcomes(self, verdict: Verdict) -> list[Outcome]:
        found = []
        if verdict.fault is not None:
            found.append(Outcome.HUNG if isinstance(verdict.fault, CandidateHung) else Outcome.CANDIDATE_ERROR)
        if verdict.findings:
            found.append(Outcome.FAIL)
        if found or not self.finished:
            return found or [Outcome.UNKNOWN]
        states = {report.status for report in verdict.rules if verdict.profile.fails_on(report.rule)}
        idle = RuleStatus.NOT_EXERCISED in states or RuleStatus.KEPT not in states
        return [Outcome.VACUOUS] if idle else [Outcome.PASS]
