"""The edge scenes of the machines of an order: those that ship with a machine, and those that a user had solved."""

import hashlib
import shlex
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Self

from planeproof.contract import Machine, Scene
from planeproof.scenes.cases import Case, encode_case
from planeproof.scenes.edges import KEPT, Edges, cached_edges, edge_scenes, kept_edges


@dataclass(frozen=True, kw_only=True, eq=False)
class OwnEdges:
    """Edge scenes ``kept`` for machines that do not ship; ``lacking``: for which there are none, and what to type.

    The scenes themselves, not where they are, so that an order means the same on another computer.
    """

    kept: Mapping[Machine, tuple[Scene, ...]] = field(default_factory=dict)
    lacking: str = ""

    @classmethod
    def of(cls, machines: Mapping[Machine, str | None], folder: Path) -> Self:
        """Those kept in ``folder``. With each machine: how it was named, if by name or file.

        Raises `planeproof.scenes.edges.EdgesError`.
        """
        found = {machine: kept_edges(machine, folder) for machine in machines if cached_edges(machine) is None}
        return cls(
            kept={machine: _scenes(edges) for machine, edges in found.items() if edges is not None},
            lacking=_lacking([(machine, machines[machine]) for machine in found if found[machine] is None], folder),
        )

    def scenes(self, machine: Machine) -> tuple[Scene, ...]:
        """The edge scenes of ``machine``, wherever they are from; none where there are none."""
        return self.kept.get(machine) or tuple(edge.scene for edge in edge_scenes(machine))

    @property
    def digests(self) -> list[str]:
        """What tells one set of ``kept`` scenes from another: a line for each machine."""
        return [f"{machine.name} {_digest(scenes)}" for machine, scenes in self.kept.items()]


def _scenes(edges: Edges) -> tuple[Scene, ...]:
    return tuple(edge.scene for edge in edges.scenes)


def _lacking(missing: Sequence[tuple[Machine, str | None]], folder: Path) -> str:
    if not missing:
        return ""
    into = "" if folder == KEPT else f" --into {shlex.quote(str(folder))}"
    lines = [f"planeproof edges {'FILE.toml' if file is None else shlex.quote(file)}{into}" for _, file in missing]
    names = ", ".join(machine.name for machine, _ in missing)
    return f"none are kept for {names}, to have them solved: {', '.join(dict.fromkeys(lines))}"


def _digest(scenes: Sequence[Scene]) -> str:
    return hashlib.sha256(b"".join(encode_case(Case(scene=scene)) for scene in scenes)).hexdigest()[:16]
