"""The engine `exhaustion`: every scene of a tiny relative of the fault's machine. There is nothing to seed."""

from importlib import import_module

from planeproof.power.hunt import Hunt, NothingToAsk


def hunt(hunted: Hunt) -> None:
    """Have all scenes played, up to the first that shows the fault."""
    try:
        exhausting = import_module("planeproof.search.exhausting")
    except ModuleNotFoundError as error:
        raise NothingToAsk("this version does not exhaust") from error
    for scene in exhausting.scenes(hunted.machine):
        if hunted.over:
            return
        hunted.shows(scene)
