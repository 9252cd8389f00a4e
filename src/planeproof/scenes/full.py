"""Scenes at a machine's own size and limits: what small relatives can't show, because they are small."""

import numpy as np

from planeproof.contract import Machine, Picture, Scene
from planeproof.scenes.patterns import different, in_shape


def full_scene(machine: Machine) -> Scene:
    """Pictures of just as many cells as must be shown, all different: first cells, last cells, spread, other patterns.

    Between them the empty picture and one of equal patterns, so that every tile is taken, given back and taken again.
    """
    count = min(machine.must_show, machine.cells)
    first, last = list(range(count)), list(range(machine.cells - count, machine.cells))
    spread = np.linspace(0, machine.cells - 1, count).astype(int).tolist() if count else []
    pictures = [
        _picture(machine, first, 0),
        _picture(machine, last, count),
        _picture(machine, [], 0),
        _picture(machine, spread, 2 * count),
        _picture(machine, last[::-1], 0),
        _picture(machine, first, None),
    ]
    return Scene.of(machine, pictures)


def _picture(machine: Machine, cells: list[int], number: int | None) -> Picture:
    """Each of ``cells`` with a pattern of its own, from the ``number``-th on; with None all of them with the same."""
    rows = np.zeros((machine.cells, machine.tiles.depth, 8), dtype=np.uint8)
    for place, cell in enumerate(cells):
        rows[cell] = different(machine, 0 if number is None else number + place)
    return Picture.from_rows(0, in_shape(machine, rows))
