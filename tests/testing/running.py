"""Running pytest with the plugin, in a process and a folder of its own."""

from importlib.metadata import entry_points

import pytest

from tests.command.running import CANDIDATES, TINY

PLUGIN = () if entry_points(group="pytest11", name="planeproof") else ("-p", "planeproof.testing.plugin")
"""Where the plugin is installed as such, pytest loads it by itself, and refuses to have it twice."""

ENOUGH = "150"
"""Scenes on the tiny machine, for every rule to be exercised."""


def run(pytester: pytest.Pytester, *arguments: str) -> pytest.RunResult:
    """Pytest with the plugin; mine.py and tiny.toml are there."""
    pytester.makefile(".toml", tiny=TINY)
    pytester.makepyfile(mine=CANDIDATES)
    return pytester.runpytest_subprocess(*PLUGIN, "-p", "no:cacheprovider", *arguments)


def about(target: str, scenes: str = ENOUGH) -> tuple[str, ...]:
    """The options that ask about ``target`` on the tiny machine."""
    named = ("--planeproof-target", f"mine:{target}", "--planeproof-machine", "tiny.toml")
    return (*named, "--planeproof-scenes", scenes, "--planeproof-cases", "kept")
