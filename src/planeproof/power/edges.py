"""The engine `edges`: the solver's edge scenes for the fault's machine, the smallest first, each played once.

They are on the machine as given and on its small relatives. There is nothing to seed.
"""

from planeproof.power.hunt import Hunt, NothingToAsk


def hunt(hunted: Hunt) -> None:
    """Play the scenes in their order."""
    try:
        from planeproof.scenes.edges import edge_scenes  # noqa: PLC0415 -- not there in every checkout yet
    except ModuleNotFoundError as error:
        raise NothingToAsk("this version has no edge scenes") from error
    scenes = edge_scenes(hunted.machine)
    if not scenes:
        raise NothingToAsk(f"no edge scenes are kept for {hunted.machine.name}")
    for edge in scenes:
        if hunted.over:
            return
        hunted.shows(edge.scene)
