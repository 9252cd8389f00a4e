"""Edge scenes: pictures and sequences that a solver supplied, each at a stated edge; those of the shipped machines.

They are cached as cases, so that playing them needs no solver: ``edge_cases/<machine>/<size>/<name>.json``, each goal
by itself on the machine as given, and each goal and all pairs of goals on its small relatives. For another machine
`planeproof.spec.edges` solves anew; what it finds is kept in the same form, in a folder of the user's.
"""

import hashlib
import json
import os
import re
import shutil
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from importlib import resources
from importlib.resources.abc import Traversable
from pathlib import Path
from typing import Self

import msgspec

from planeproof.contract import Machine, Scene
from planeproof.machines import machine_toml, read_machine, shipped
from planeproof.scenes.cases import Case, CaseError, decode_case, encode_case
from planeproof.scenes.edge_goals import goals_met
from planeproof.scenes.edge_relatives import edge_relatives

LEFT_OUT = "left-out.json"
"""Beside the cases of a machine: what can't be met there."""

KEPT = Path(".planeproof/edges")
"""Where the edge scenes of machines that do not ship are kept unless told otherwise."""


class EdgesError(ValueError):
    """Edge scenes that are kept and can't be used. The message says where, why, and what to do."""


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


def kept_edges(machine: Machine, within: Path) -> Edges | None:
    """What is kept for ``machine`` in the folder ``within``; None if nothing is. Raises `EdgesError`."""
    folder = folder_of(machine, within)
    try:
        edges = _in(folder) if folder.is_dir() else None
    except (CaseError, OSError, msgspec.MsgspecError) as error:
        raise EdgesError(f"{folder}: its edge scenes can't be read ({error}); {_ANEW}") from error
    at_home = (machine, *edge_relatives(machine))
    for edge in () if edges is None else edges.scenes:
        if edge.scene.machine not in at_home:
            raise EdgesError(f"{folder}: {edge.name} is neither on {machine.name} nor on a relative of it; {_ANEW}")
    return edges


def keep_edges(edges: Edges, machine: Machine, within: Path) -> Path:
    """Keep ``edges`` of ``machine`` in the folder ``within``, in place of older ones; where. Raises `OSError`.

    Whoever reads meanwhile finds all of them or none.
    """
    folder, part = folder_of(machine, within), within / f".{os.getpid()}.part"
    try:
        for path, text in files_of(edges).items():
            (part / path).parent.mkdir(parents=True, exist_ok=True)
            (part / path).write_bytes(text)
        if folder.is_dir():
            shutil.rmtree(folder)
        return part.rename(folder)
    finally:
        shutil.rmtree(part, ignore_errors=True)


def folder_of(machine: Machine, within: Path) -> Path:
    """The folder ``within`` for the edge scenes of this very machine: one that differs in any figure has another."""
    digest = hashlib.sha256(machine_toml(machine).encode()).hexdigest()
    return within / f"{re.sub('[^A-Za-z0-9]+', '-', machine.name)[:_LONGEST]}-{digest[:16]}"


_ANEW = "delete that folder, and have them solved anew by planeproof edges"
_LONGEST = 40
"""Letters of a machine's name in that of its folder."""


class _LeftOut(msgspec.Struct, frozen=True, kw_only=True):
    impossible: dict[str, tuple[str, ...]]
    unanswered: dict[str, tuple[str, ...]]


def files_of(edges: Edges) -> dict[str, bytes]:
    """What is cached of ``edges``: the text of each file by its path below the machine's folder."""
    left_out = {"impossible": edges.impossible, "unanswered": edges.unanswered}
    cases = {f"{edge.name}.json": encode_case(Case(scene=edge.scene)) for edge in edges.scenes}
    return {**cases, LEFT_OUT: (json.dumps(left_out, indent=1) + "\n").encode()}


@cache
def _read(name: str) -> Edges | None:
    folder = resources.files("planeproof.scenes") / "edge_cases" / name
    return _in(folder) if folder.is_dir() else None


def _in(folder: Traversable) -> Edges:
    left_out = msgspec.json.decode((folder / LEFT_OUT).read_bytes(), type=_LeftOut)
    scenes = [
        EdgeScene.of(
            f"{size.name}/{case.name.removesuffix('.json')}",
            decode_case(case.read_bytes(), f"{size.name}/{case.name}").scene,
        )
        for size in _sorted(folder)
        if size.is_dir()
        for case in _sorted(size)
    ]
    return Edges(scenes=in_order(scenes), impossible=left_out.impossible, unanswered=left_out.unanswered)


def in_order(scenes: Iterator[EdgeScene] | list[EdgeScene]) -> tuple[EdgeScene, ...]:
    """The small first: fewer cells that are filled, and then by name."""
    return tuple(sorted(scenes, key=lambda edge: (edge.scene.occupied, edge.name)))


def _sorted(folder: Traversable) -> list[Traversable]:
    return sorted(folder.iterdir(), key=lambda file: file.name)
