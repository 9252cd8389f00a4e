"""Edge scenes: pictures and sequences that a solver supplied, each at a stated edge; those of the shipped machines.

They are cached as cases, so that playing them needs no solver: ``edge_cases/<machine>/<size>/<name>.json``, each goal
by itself on the machine as given, and each goal and all pairs of goals on its small relatives. For another machine
`planeproof.spec.edges` solves anew.
"""

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from importlib import resources
from importlib.resources.abc import Traversable
from typing import Self

from planeproof.contract import Machine, Scene
from planeproof.machines import read_machine, shipped
from planeproof.scenes.cases import Case, decode_case, encode_case
from planeproof.scenes.edge_goals import goals_met

LEFT_OUT = "left-out.json"
"""Beside the cases of a machine: what can't be met there."""


@dataclass(frozen=True, kw_only=True, eq=False)
class EdgeScene:
    """A scene at an edge, its ``name`` (size and what was asked for), and the ``goals`` that each picture meets."""

    name: str
    goals: tuple[frozenset[str], ...]
    scene: Scene

    @classmethod
    def of(cls, name: str, scene: Scene) -> Self:
        """The goals are looked for in the scene, not believed."""
        return cls(name=name, goals=goals_met(scene), scene=scene)


@dataclass(frozen=True, kw_only=True, eq=False)
class Edges:
    """The edge scenes of a machine, the cheapest first.

    ``impossible``: by size of the machine, the goals, and of the pairs that no relative before admits, those that are
    proved to be met by no scene there at all; ``unanswered``: where the solver found no scene and no proof.
    """

    scenes: tuple[EdgeScene, ...]
    impossible: Mapping[str, tuple[str, ...]]
    unanswered: Mapping[str, tuple[str, ...]]


def edge_scenes(machine: Machine) -> tuple[EdgeScene, ...]:
    """The cached edge scenes of ``machine``; none where it does not ship, equal in every field."""
    found = cached_edges(machine)
    return () if found is None else found.scenes


def cached_edges(machine: Machine) -> Edges | None:
    """What is cached for ``machine``; None where it does not ship, equal in every field."""
    ships = machine.name in shipped() and read_machine(machine.name) == machine
    return _read(machine.name) if ships else None


def files_of(edges: Edges) -> dict[str, bytes]:
    """What is cached of ``edges``: the text of each file by its path below the machine's folder."""
    left_out = {"impossible": edges.impossible, "unanswered": edges.unanswered}
    cases = {f"{edge.name}.json": encode_case(Case(scene=edge.scene)) for edge in edges.scenes}
    return {**cases, LEFT_OUT: (json.dumps(left_out, indent=1) + "\n").encode()}


@cache
def _read(name: str) -> Edges | None:
    folder = resources.files("planeproof.scenes") / "edge_cases" / name
    if not folder.is_dir():
        return None
    left_out = json.loads((folder / LEFT_OUT).read_bytes())
    scenes = [
        EdgeScene.of(f"{size.name}/{case.name.removesuffix('.json')}", decode_case(case.read_bytes(), case.name).scene)
        for size in _sorted(folder)
        if size.is_dir()
        for case in _sorted(size)
    ]
    return Edges(
        scenes=in_order(scenes),
        impossible={size: tuple(names) for size, names in left_out["impossible"].items()},
        unanswered={size: tuple(names) for size, names in left_out["unanswered"].items()},
    )


def in_order(scenes: Iterator[EdgeScene] | list[EdgeScene]) -> tuple[EdgeScene, ...]:
    """The small first: fewer cells that are filled, and then by name."""
    return tuple(sorted(scenes, key=lambda edge: (edge.scene.occupied, edge.name)))


def _sorted(folder: Traversable) -> list[Traversable]:
    return sorted(folder.iterdir(), key=lambda file: file.name)
