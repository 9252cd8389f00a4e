"""What is asked about one candidate: the options of the plugin, or the arguments of `holds`."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

MACHINES = ("vitrine-50", "vitrine-60")
SCENES = 2000
PROFILE = "strict"
"""Unless told otherwise; as ``planeproof check`` has them, which is not imported for this."""


@dataclass(frozen=True, kw_only=True)
class Asked:
    """A candidate on ``machines``, by so many ``scenes`` under a profile.

    ``target`` and ``machines``: as `planeproof.check` takes them. ``cases``: folder of the scenes that are replayed
    and where what is found is saved. ``expected``: file of the failures that are let be.
    """

    target: str | Callable[[], Any]
    machines: tuple[Any, ...] = MACHINES
    scenes: int = SCENES
    profile: str = PROFILE
    cases: Path | None = None
    expected: Path | None = None


def name_of(machine: Any) -> str:  # noqa: ANN401 -- text or a Machine, which is not imported here
    """What a machine is called in the name of a test: its own name, or that of its file."""
    if not isinstance(machine, str):
        return str(machine.name)
    return Path(machine).stem if machine.endswith(".toml") else machine


PLAYING = "playing"
"""Begins the names of folders, in that of the cases, for scenes that are being played: each process has its own."""


def saved_cases(asked: Asked) -> list[Path]:
    """The scenes to replay: those in the folder, and those that a process left behind that ended in them."""
    if asked.cases is None or not asked.cases.is_dir():
        return []
    return [*sorted(asked.cases.glob("*.json")), *sorted(asked.cases.glob(f"{PLAYING}-*/*.json"))]
