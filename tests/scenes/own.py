"""A machine of a user's own, and edge scenes for it that took no solver."""

from planeproof.contract import Machine
from planeproof.machines import parse_machine
from planeproof.scenes.edge_relatives import edge_relatives
from planeproof.scenes.edges import Edges, EdgeScene
from planeproof.scenes.full import full_scene

TOML = """
[window]
columns = 4
rows = 3
[tiles]
count = 16
pool = [{ first = 1, count = 6 }]
"""

OWN = parse_machine(TOML, "my plate")


def some_edges(machine: Machine = OWN) -> Edges:
    """As many cells as must be shown, on ``machine`` and on its first relative."""
    small = edge_relatives(machine)[0]
    size = f"small-{small.blank_cycles}"
    return Edges(
        scenes=(
            EdgeScene.of(f"{size}/at-the-limit", full_scene(small)),
            EdgeScene.of("as-given/at-the-limit", full_scene(machine)),
        ),
        impossible={"as-given": ("a-byte-over",), size: ()},
        unanswered={"as-given": (), size: ("emptied then moved",)},
    )
