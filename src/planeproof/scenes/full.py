"""Scenes at a machine's own size and limits, and a long one: what small and short scenes can't show for being so."""

import numpy as np

from planeproof.contract import Machine, Picture, Scene
from planeproof.scenes.patterns import different, in_shape
from planeproof.scenes.relatives import relative
from planeproof.scenes.source import RandomSource

LONG = 300
"""Pictures of the long scene: some more than a byte can count."""


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


def long_scene(machine: Machine, *, pictures: int = LONG) -> Scene:
    """More pictures than a byte can count, of a cell or two, on the first small relative that is drawn.

    Cells are filled, changed and emptied in turn, so that each picture differs from those before and after it.
    """
    small = relative(machine, RandomSource(f"long/{machine.name}"))
    shown = min(small.must_show, small.cells, 2)
    cells = [[(number + place) % small.cells for place in range(number % (shown + 1))] for number in range(pictures)]
    return Scene.of(small, [_picture(small, cells[number], number) for number in range(pictures)])


def _picture(machine: Machine, cells: list[int], number: int | None) -> Picture:
    """Each of ``cells`` with a pattern of its own, from the ``number``-th on; with None all of them with the same."""
    rows = np.zeros((machine.cells, machine.tiles.depth, 8), dtype=np.uint8)
    for place, cell in enumerate(cells):
        rows[cell] = different(machine, 0 if number is None else number + place)
    return Picture.from_rows(0, in_shape(machine, rows))
