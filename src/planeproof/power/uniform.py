"""The baseline `uniform`: random pictures, as one writes them first.

On the machine as given, all of it: 1 to 6 pictures, all ready at once, no blanking disturbed, every byte of every cell
uniformly random. So nearly every cell is occupied, and all of them differ: where the cells are more than must be shown,
a scheduler may decline every picture. The same judge, the same rules as for our engines.
"""

import numpy as np

from planeproof.contract import Machine, Picture, Scene
from planeproof.power.hunt import Hunt
from planeproof.scenes.patterns import in_shape

LONGEST = 6
"""Pictures in a scene, as many as in one of our recipes."""


def hunt(hunted: Hunt) -> None:
    """Play one random scene after another."""
    source = np.random.default_rng(hunted.seed)
    while not hunted.over:
        hunted.shows(random_scene(hunted.machine, source))


def random_scene(machine: Machine, source: np.random.Generator) -> Scene:
    """1 to `LONGEST` random pictures."""
    return Scene.of(machine, [_picture(machine, source) for _ in range(source.integers(1, LONGEST + 1))])


def _picture(machine: Machine, source: np.random.Generator) -> Picture:
    rows = source.integers(0, 256, size=(machine.cells, machine.tiles.depth, 8), dtype=np.uint8)
    return Picture.from_rows(0, in_shape(machine, rows))
