"""The baseline `fitting`: random pictures by somebody who has read the contract.

As `uniform`, but a picture has a uniformly random number of cells, from 0 to as many as must be shown, in uniformly
random places. Its author has seen that pictures of more cells may be declined; that is the whole of the thought.
"""

import numpy as np

from planeproof.contract import Machine, Picture, Scene
from planeproof.power.hunt import Hunt
from planeproof.power.uniform import LONGEST
from planeproof.scenes.patterns import in_shape


def hunt(hunted: Hunt) -> None:
    """Play one random scene after another."""
    source = np.random.default_rng(hunted.seed)
    while not hunted.over:
        hunted.shows(random_scene(hunted.machine, source))


def random_scene(machine: Machine, source: np.random.Generator) -> Scene:
    """1 to `LONGEST` random pictures, all ready at once, no blanking disturbed."""
    return Scene.of(machine, [_picture(machine, source) for _ in range(source.integers(1, LONGEST + 1))])


def _picture(machine: Machine, source: np.random.Generator) -> Picture:
    rows = np.zeros((machine.cells, machine.tiles.depth, 8), dtype=np.uint8)
    count = source.integers(0, min(machine.must_show, machine.cells) + 1)
    cells = source.choice(machine.cells, size=count, replace=False)
    rows[cells] = source.integers(0, 256, size=(count, *rows.shape[1:]), dtype=np.uint8)
    return Picture.from_rows(0, in_shape(machine, rows))
