"""The engine `edges`: the solver's edge scenes for the fault's machine, each played once. There is nothing to seed."""

from importlib import import_module
from typing import TYPE_CHECKING

from planeproof.power.hunt import Hunt, NothingToAsk

if TYPE_CHECKING:
    from collections.abc import Sequence

    from planeproof.contract import Scene


def hunt(hunted: Hunt) -> None:
    """Play the scenes in their order."""
    for scene in _scenes(hunted):
        if hunted.over:
            return
        hunted.shows(scene)


def _scenes(hunted: Hunt) -> "Sequence[Scene]":
    try:
        edges = import_module("planeproof.scenes.edges")
    except ModuleNotFoundError as error:
        raise NothingToAsk("this version has no edge scenes") from error
    return [edge.scene for edge in edges.edge_scenes(hunted.machine)]
