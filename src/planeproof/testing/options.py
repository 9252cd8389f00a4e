"""The plugin's options, on the command line and in the ini file, and what they ask for."""

from pathlib import Path
from typing import Any

import pytest

from planeproof.testing.asked import MACHINES, PROFILE, SCENES, Asked

CASES = ".planeproof"

_OPTIONS: dict[str, dict[str, Any]] = {
    "target": {"metavar": "TARGET", "help": "add a test for each rule of this scheduler: package.module:Name"},
    "machine": {
        "metavar": "NAME|FILE.toml",
        "action": "append",
        "help": f"machine to test it on; may be given several times (default: {' '.join(MACHINES)})",
    },
    "scenes": {"metavar": "N", "help": f"scenes to play on each machine (default: {SCENES})"},
    "profile": {"choices": ["strict", "seen"], "help": f"what fails, as for planeproof check (default: {PROFILE})"},
    "cases": {"metavar": "DIR", "help": f"folder of scenes, replayed first and added to (default: {CASES})"},
    "expected": {"metavar": "FILE", "help": "TOML file of failures that are expected, each with a case and a date"},
}
"""``--planeproof-target`` and so on; in the ini file ``planeproof_target`` and so on."""

_MACHINES = "planeproof_machines"
"""In the ini file there is one option for all machines, a line each."""


def add_options(parser: pytest.Parser) -> None:
    """Add them all, in both places."""
    group = parser.getgroup("planeproof", "rules of tile displays")
    for name, settings in _OPTIONS.items():
        group.addoption(f"--planeproof-{name}", dest=f"planeproof_{name}", default=None, **settings)
        if name != "machine":
            parser.addini(f"planeproof_{name}", settings["help"], default="")
    parser.addini(_MACHINES, "machines to test it on, a line each", type="linelist")


def asked_of(config: pytest.Config) -> Asked | None:
    """What the options ask for; None if they name no target. Raises `pytest.UsageError`."""
    target = _text(config, "target")
    if not target:
        _refuse_idle(config)
        return None
    return Asked(
        target=target,
        machines=_machines(config),
        scenes=_scenes(config),
        profile=_text(config, "profile") or PROFILE,
        cases=_path(config, "cases") or config.rootpath / CASES,
        expected=_path(config, "expected"),
    )


def rooted(machine: Any, folder: Path) -> Any:  # noqa: ANN401 -- text or a Machine, which is not imported here
    """A file of a machine stands in ``folder``; names and values are left as they are."""
    return str(folder / machine) if isinstance(machine, str) and machine.endswith(".toml") else machine


def _refuse_idle(config: pytest.Config) -> None:
    idle = [name for name in _OPTIONS if config.getoption(f"planeproof_{name}") is not None]
    if idle:
        raise pytest.UsageError(f"--planeproof-{idle[0]} is about a target: give --planeproof-target too")


def _text(config: pytest.Config, name: str) -> str:
    given = config.getoption(f"planeproof_{name}")
    return str(config.getini(f"planeproof_{name}") if given is None else given)


def _path(config: pytest.Config, name: str) -> Path | None:
    """A path of the command line is relative to the current folder, one of the ini file to pytest's rootdir."""
    given, written = config.getoption(f"planeproof_{name}"), str(config.getini(f"planeproof_{name}"))
    if given is not None:
        return Path(config.invocation_params.dir, given)
    return config.rootpath / written if written else None


def _machines(config: pytest.Config) -> tuple[str, ...]:
    given = config.getoption("planeproof_machine")
    if given is not None:
        return tuple(rooted(machine, config.invocation_params.dir) for machine in given)
    return tuple(rooted(machine, config.rootpath) for machine in config.getini(_MACHINES)) or MACHINES


def _scenes(config: pytest.Config) -> int:
    written = _text(config, "scenes") or str(SCENES)
    if not written.isdecimal() or int(written) < 1:
        raise pytest.UsageError(f"planeproof_scenes is {written!r}: it must be a whole number, 1 or more")
    return int(written)
