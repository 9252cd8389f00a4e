"""The order: what is to be checked and by what. All that a process elsewhere must know to do a part of the work."""

import math
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from typing import Any

from planeproof.contract import Machine, Rule, Scene, Scheduler
from planeproof.hosts import Candidate, load
from planeproof.judge import Profile
from planeproof.scenes.recipes import recipe
from planeproof.scenes.source import RandomSource
from planeproof.search.examples import SCHEMES, Examples, Kept
from planeproof.search.own_edges import OwnEdges
from planeproof.search.trial import Trial


def draw(machine: Machine, purpose: str, number: int, *, seed: int, as_given: bool = False) -> Scene:
    """The scene of that number that a check draws for a purpose; ``"scene"`` are those it draws independently."""
    return recipe(machine, RandomSource(f"{seed}/{machine.name}/{purpose}/{number}"), as_given=as_given)


@dataclass(frozen=True, kw_only=True, eq=False)
class Order:
    """A check as it was asked for: ``target`` on ``machines``, judged by the rules ``asked`` for under ``profile``.

    ``excused``: see `Trial`. ``examples``: where what other runs have found is kept, see
    `planeproof.search.examples`. ``edges``: the edge scenes of machines that do not ship. An order can be pickled; the
    candidate is then loaded anew where it arrives.
    """

    target: str | Callable[[], Scheduler]
    machines: tuple[Machine, ...]
    asked: frozenset[Rule]
    profile: Profile
    call_seconds: float
    seed: int
    as_given: bool
    examples: str | None = None
    excused: frozenset[Rule] = frozenset()
    edges: OwnEdges = field(default_factory=OwnEdges)

    @cached_property
    def candidate(self) -> Candidate:
        """The candidate. Raises `planeproof.hosts.TargetError` where ``target`` names none."""
        return load(self.target)

    @cached_property
    def store(self) -> Examples | None:
        """What other runs have found. Raises as `Examples`."""
        return None if self.examples is None else Examples(self.examples)

    def kept(self, machine: Machine, *, ended: Callable[[], bool]) -> Kept | None:
        """What other runs have found with this candidate on ``machine``; ``ended``: see `Kept`."""
        key = f"{_wherever(self.candidate.name)} {machine.name}{' as given' if self.as_given else ''}"
        return None if self.store is None else self.store.of(key, ended=ended)

    def trial(
        self,
        *,
        cases: Path | None = None,
        time_left: Callable[[], float] = lambda: math.inf,
        told: Callable[[Scene], None] | None = None,
    ) -> Trial:
        """A trial of the candidate in which nothing has been played yet."""
        return Trial(
            name=self.candidate.name,
            make=self.candidate.make,
            asked=self.asked,
            profile=self.profile,
            call_seconds=self.call_seconds,
            excused=self.excused,
            time_left=time_left,
            cases=cases,
            told=told,
        )

    def draw(self, machine: Machine, purpose: str, number: int) -> Scene:
        """The scene of that number that is drawn for ``purpose`` on ``machine`` or its relatives."""
        return draw(machine, purpose, number, seed=self.seed, as_given=self.as_given)

    def __getstate__(self) -> dict[str, Any]:
        state = dict(self.__dict__)
        for loaded in ("candidate", "store"):
            state.pop(loaded, None)
        if isinstance(self.target, str):
            state["target"] = _from_anywhere(self.target)
        if self.examples is not None and not self.examples.startswith(SCHEMES):
            state["examples"] = str(Path(self.examples).resolve())
        return state

    def __setstate__(self, state: dict[str, Any]) -> None:
        self.__dict__.update(state)


def _wherever(name: str) -> str:
    """The name of a candidate without the folder of its file, which differs from one computer to the next."""
    place, _, last = name.rpartition(":")
    return f"{Path(place).name if place.endswith('.py') else place}:{last}"


def _from_anywhere(target: str) -> str:
    """A target that means the same in another folder."""
    place, _, name = target.rpartition(":")
    return f"{Path(place).resolve()}:{name}" if place.endswith(".py") else target
