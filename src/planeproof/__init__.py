"""Planeproof: says whether a scheduler for a tile display ever shows what it should not, with the smallest scene.

>>> from planeproof import Answer, Burst, Machine, Picture, check
>>> check.__module__
'planeproof.search.checking'

Everything here is imported when it is first asked for, so that `planeproof --help` answers at once. Start reading
in `planeproof.contract.scheduler`.
"""

import sys
from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from planeproof.contract import (
        RULES,
        Answer,
        Burst,
        ByteDirection,
        ByteOrder,
        Colours,
        Demands,
        Disturbance,
        Machine,
        MachineError,
        Memory,
        Outside,
        Picture,
        Rule,
        Scene,
        SceneError,
        Scheduler,
        Storage,
        TileMap,
        Tiles,
        Timing,
        Window,
    )
    from planeproof.hosts import TargetError
    from planeproof.judge import Finding, Outcome, Play, Profile, RuleStatus, Verdict, Violation, play
    from planeproof.machines import machine_toml, read_machine
    from planeproof.scenes.cases import CaseError, load_case, save_case
    from planeproof.search import Watcher, check

__all__ = [
    "RULES",
    "Answer",
    "Burst",
    "ByteDirection",
    "ByteOrder",
    "CaseError",
    "Colours",
    "Demands",
    "Disturbance",
    "Finding",
    "Machine",
    "MachineError",
    "Memory",
    "Outcome",
    "Outside",
    "Picture",
    "Play",
    "Profile",
    "Rule",
    "RuleStatus",
    "Scene",
    "SceneError",
    "Scheduler",
    "Storage",
    "TargetError",
    "TileMap",
    "Tiles",
    "Timing",
    "Verdict",
    "Violation",
    "Watcher",
    "Window",
    "check",
    "load_case",
    "machine_toml",
    "play",
    "read_machine",
    "save_case",
]

_ELSEWHERE = {
    "CaseError": "scenes.cases",
    "Finding": "judge",
    "Outcome": "judge",
    "Play": "judge",
    "Profile": "judge",
    "RuleStatus": "judge",
    "TargetError": "hosts",
    "Verdict": "judge",
    "Violation": "judge",
    "Watcher": "search",
    "check": "search",
    "load_case": "scenes.cases",
    "machine_toml": "machines",
    "play": "judge",
    "read_machine": "machines",
    "save_case": "scenes.cases",
}
"""The package of each name that is not the contract's."""


if not TYPE_CHECKING:  # a type checker that saw this would believe in every name

    def __getattr__(name: str) -> object:
        if name not in __all__:
            raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
        value = getattr(import_module(f"{__name__}.{_ELSEWHERE.get(name, 'contract')}"), name)
        globals()[name] = value
        return value


def __dir__() -> list[str]:
    return sorted([*globals(), *__all__])


def _show_in_notebooks() -> None:
    """Where IPython runs already, have verdicts, machines and figures show themselves in it; see `notebook`."""
    running = getattr(sys.modules.get("IPython"), "get_ipython", None)
    shell = None if running is None else running()
    if shell is not None:
        import_module(f"{__name__}.notebook").register(shell)


_show_in_notebooks()
