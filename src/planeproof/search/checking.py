"""A check: stage by stage, until something is found; what was found is made smaller; then a verdict."""

import math
import time
from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from itertools import count
from pathlib import Path

from planeproof.contract import RULES, Machine, Rule, Scheduler
from planeproof.judge import Basis, Profile, Source, Strength, Verdict
from planeproof.judge.conversation import CALL_SECONDS
from planeproof.judge.expected import Expected
from planeproof.machines import read_machine
from planeproof.scenes.edges import KEPT
from planeproof.search.cluster import Cluster
from planeproof.search.expected import excused, held
from planeproof.search.journal import Journal
from planeproof.search.order import Order
from planeproof.search.own_edges import OwnEdges
from planeproof.search.smaller import make_smaller, show_as_given
from planeproof.search.stages import Limits, Plan, plans
from planeproof.search.tally import Tally
from planeproof.search.trial import keep_left_over
from planeproof.search.units import Stage, Unit, until
from planeproof.search.verdicts import verdict_of
from planeproof.search.watching import NoWatcher, Steps, Watcher
from planeproof.search.workers import Here, Pending, Processes, Workers, in_order

DEFAULT_MACHINES = ("vitrine-50", "vitrine-60")
"""Checked on both line standards unless told otherwise."""

DEFAULT_SCENES = 2000
"""Enough for every fault that ships to be found, and some ten seconds."""

SMALLER_SECONDS = 10.0
"""Time for making all that was found smaller; the smallest so far is kept when it is over."""


SEEKING_SHARE = 0.5
"""Of that time, how much may go into seeking shorter scenes, before what was found is made smaller."""

GIVEN_SHARE = 0.5
"""Time for showing what was found on the machines as given, as a share of that for making it smaller."""


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
    smaller_seconds: float | None = None,
    jobs: int = 1,
    cluster: str | None = None,
    journal: Path | None = None,
    examples: str | None = None,
    edges: Path = KEPT,
    expected: Sequence[Expected] = (),
    today: date | None = None,
) -> Verdict:
    """Check a candidate against the rules, and give a verdict.

    ``target``: a class or function that makes a `Scheduler`, or text that names one (``package.module:Name``,
    ``file.py:Name``). ``machines``: values, names of shipped ones or TOML files; scenes are drawn on small relatives
    of each, or ``as_given`` only on the machines themselves. Half of the ``scenes`` is searched by Hypothesis, half is
    drawn independently; with ``seconds`` the search goes on that long instead. What is found is then made smaller, for
    at most ``smaller_seconds`` (default `SMALLER_SECONDS`), and shown on the machine as given, in half that time.
    ``only``: rules to judge by (default all). ``cases``: folder to save scenes in. ``call_seconds``: after which a call
    of the candidate counts as hung; with ``seconds`` it is at most what is left of them and `GRACE_SECONDS` of
    `planeproof.search.trial`. The clock is asked between scenes,
    not between two calls: a scene that has begun is played to its end.

    ``jobs``: processes that share the work; ``cluster``: address of a Dask scheduler whose workers share it instead.
    What is found does not depend on either. ``journal``: file to keep what each part of the work came to; a check of
    the same things that finds it there goes on from it. ``examples``: folder, or address of a Redis server
    (``redis://...``), where Hypothesis keeps what it finds; what is there of the same candidate is tried first, so
    that the seed alone does not repeat the check any more.

    ``edges``: folder in which ``planeproof edges`` keeps the edge scenes of machines that do not ship. Those of
    ``machines`` that are not there are not played, which the verdict says; the others are part of what is checked.

    ``expected``: failures to let be, as `planeproof.search.expected.read_expected` reads them; each is first held to
    its own case as of ``today`` (default: the computer's date).

    Raises `planeproof.hosts.TargetError`, `planeproof.machines.MachineFileError`, `JournalError` for a journal of
    something else, `planeproof.scenes.edges.EdgesError` for edge scenes that can't be used, `ClusterError` and
    `ExamplesError` for a cluster and a server that can't be used, `ValueError` for limits or an empty list of machines,
    `OSError` where ``cases``, ``journal`` or ``examples`` can't be written. What a candidate does is in the verdict,
    never raised.
    """
    named = (machines,) if isinstance(machines, Machine | str) else machines
    values = tuple(read_machine(machine) if isinstance(machine, str) else machine for machine in named)
    files = (machine if isinstance(machine, str) else None for machine in named)
    order = Order(
        target=target,
        machines=values,
        asked=frozenset(only) or frozenset(RULES),
        profile=profile,
        call_seconds=call_seconds,
        seed=seed,
        as_given=as_given,
        examples=examples,
        edges=OwnEdges.of(dict(zip(values, files, strict=True)), edges),
    )
    _require(order, jobs, cluster)
    entries = held(expected, order.trial(), today=today or date.today())
    order = replace(order, excused=excused(entries))
    limits = Limits(scenes=scenes, seconds=seconds)
    if cases is not None:
        cases.mkdir(parents=True, exist_ok=True)
        keep_left_over(cases)
    run = _Run(
        order=order,
        limits=limits,
        smaller_seconds=SMALLER_SECONDS if smaller_seconds is None else smaller_seconds,
        jobs=jobs,
        cluster=cluster,
        cases=cases,
        journal=Journal.none() if journal is None else Journal.of(journal, order),
        watcher=watcher or NoWatcher(),
        expected=entries,
    )
    return run.verdict()


def _require(order: Order, jobs: int, cluster: str | None) -> None:
    order.candidate  # noqa: B018 -- loaded first: a target that names nothing is refused before all else
    if not order.machines:
        raise ValueError("machines is empty: name at least one machine")
    if not order.asked <= set(RULES) or not isinstance(order.profile, Profile):
        raise ValueError(f"only is {order.asked!r} and profile {order.profile!r}: take rules of RULES, and of Profile")
    if not order.call_seconds > 0:
        raise ValueError(f"call_seconds is {order.call_seconds}: it must be above 0, or no call could return in time")
    if jobs < 1:
        raise ValueError(f"jobs is {jobs}: at least 1 process must do the work")
    if cluster is not None and jobs > 1:
        raise ValueError(
            f"jobs is {jobs} and cluster {cluster!r}: the work is done here or there, leave one of them out"
        )
    order.store  # noqa: B018 -- a place that can't be used is refused before anything is played


@dataclass(kw_only=True)
class _Run:
    order: Order
    limits: Limits
    smaller_seconds: float
    jobs: int
    cluster: str | None
    cases: Path | None
    journal: Journal
    watcher: Watcher
    expected: tuple[Expected, ...]
    basis: dict[Stage, Basis] = field(default_factory=dict)
    over: set[Stage] = field(default_factory=set)
    steps: dict[Stage, Steps] = field(default_factory=dict)

    def verdict(self) -> Verdict:
        self.end = math.inf if self.limits.seconds is None else time.monotonic() + self.limits.seconds
        self.trial = self.order.trial(cases=self.cases, time_left=self._time_left)
        self.here = Here(self.order, cases=self.cases, time_left=self._time_left)
        self.workers = self._workers(self.here)
        try:
            self._play(plans(self.order, self.limits))
            self._smaller()
        except KeyboardInterrupt:
            # What was found is worth more than how small it is.
            if not self.trial.decided:
                raise
        finally:
            self.workers.stop()
            self.trial.finish()
        written = self.order.candidate.written
        return verdict_of(
            self.trial,
            machines=tuple(machine.name for machine in self.order.machines),
            seed=self.order.seed,
            basis=tuple(self.basis.values()),
            source=None if written is None else Source(file=written[0], line=written[1]),
            expected=self.expected,
        )

    def _workers(self, here: Here) -> Workers:
        if self.cluster is not None:
            return Cluster(self.order, self.cluster, here)
        return here if self.jobs == 1 else Processes(self.order, self.jobs, here)

    def _play(self, stages: Sequence[Plan]) -> None:
        """One after the other; while the last units of one are under way, those of the next are begun."""
        handed = in_order(self._units(stages), lambda step: self._begin(*step), self.workers.ahead)
        for (plan, unit), pending in handed:
            if unit is None:
                self._enter(plan)
            elif plan.stage not in self.over:
                self._add(plan, unit, pending())
        if self.trial.interrupted:
            raise KeyboardInterrupt

    def _units(self, stages: Sequence[Plan]) -> Iterator[tuple[Plan, Unit | None]]:
        """Those of each stage, after None, with which it is entered."""
        for plan in stages:
            yield plan, None
            for unit in () if plan.stage in self.over else plan.units():
                if self._seconds(plan) == 0 or self.trial.interrupted or plan.stage in self.over:
                    break
                yield plan, unit

    def _enter(self, plan: Plan) -> None:
        if plan.is_over(self.trial) or self.trial.interrupted:
            self.over.add(plan.stage)
            return
        self.watcher.stage(plan.title, plan.total)
        if plan.told:
            self.basis[plan.stage] = self._basis(plan, 0, 0)

    def _add(self, plan: Plan, unit: Unit, tally: Tally) -> None:
        self.trial.merge(tally)
        self.trial.interrupted |= tally.interrupted
        self.journal.keep(unit, tally)
        before = self.basis.get(plan.stage, self._basis(plan, 0, 0))
        played = before.scenes + (unit.scenes if plan.stage is Stage.LAWS else tally.played)
        if played:
            self.basis[plan.stage] = self._basis(plan, played, before.let_be + tally.let_be)
        if plan.ends_with(tally):
            self.over.add(plan.stage)

    def _basis(self, plan: Plan, played: int, let_be: int) -> Basis:
        return Basis(
            strength=Strength.SAMPLED,
            source=plan.source,
            scenes=played,
            independent=plan.independent,
            failed=plan.independent and self.trial.decided,
            singletons=self.trial.behaviours.singletons if plan.independent else None,
            let_be=let_be,
        )

    def _seconds(self, plan: Plan) -> float | None:
        """What is left of the time of a stage; None if there is no limit."""
        if self.limits.seconds is None or plan.share is None:
            return None
        return max(self._time_left() - (1 - plan.share) * self.limits.seconds, 0.0)

    def _time_left(self) -> float:
        return max(self.end - time.monotonic(), 0.0)

    def _begin(self, plan: Plan, unit: Unit | None) -> Pending:
        if unit is None:
            return Tally
        steps = self.steps.setdefault(plan.stage, Steps(self.watcher))
        if unit in self.journal:
            return lambda: steps.arrived(self.journal.of_unit(unit, self.order))
        # The laws are for this process: they are few, and what was kept from earlier plays is kept here.
        workers = self.here if plan.stage is Stage.LAWS else self.workers
        return workers.begin(unit, seconds=self._seconds(plan), steps=steps)

    def _smaller(self) -> None:
        if not self.trial.decided or not self.smaller_seconds:
            return
        self.watcher.stage("making what was found smaller", None)
        make_smaller(
            self.trial,
            self.order.machines,
            as_given=self.order.as_given,
            first_seed=self.order.seed,
            seek_on=until(SEEKING_SHARE * self.smaller_seconds),
            go_on=self._counting(self.smaller_seconds),
        )
        if self.trial.fault is None:
            self.watcher.stage("showing it on the machine as given", None)
            show_as_given(self.trial, self.order.machines, go_on=self._counting(GIVEN_SHARE * self.smaller_seconds))

    def _counting(self, seconds: float) -> Callable[[], bool]:
        """Goes on for so long, and tells the watcher each time it is asked."""
        end, tried = time.monotonic() + seconds, count(1)

        def go_on() -> bool:
            self.watcher.step(next(tried))
            return time.monotonic() < end

        return go_on
