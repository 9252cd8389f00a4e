"""The real thing: line drawings of crystals that turn, delivered at the pace of a renderer."""

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import TILE_SIDE, Machine, Picture, Scene
from planeproof.scenes.solids import SOLIDS, Solid, turn

PACE = 3
"""Refreshes from one picture to the next: what drawing one takes the renderer. Invented, for the showcase."""

LEAST_CELLS = 3
"""Cells across, below which a solid is a blot."""


LONG = 40
"""Pictures of the long scene: what goes wrong now and then, or leaks slowly, has the time to show."""


def crystal_scenes(machine: Machine, *, pictures: int = 6, long: int = LONG) -> tuple[Scene, ...]:
    """One scene for each of the solids, turning, the last of them for ``long`` pictures.

    None where the window is too small for a drawing.
    """
    if min(machine.window.columns, machine.window.rows) < LEAST_CELLS:
        return ()
    lengths = [pictures] * (len(SOLIDS) - 1) + [long]
    return tuple(turning(machine, solid, pictures=each) for solid, each in zip(SOLIDS, lengths, strict=True))


def turning(machine: Machine, solid: Solid, *, pictures: int, step_degrees: float = 5.0) -> Scene:
    """``solid`` turning by ``step_degrees`` from picture to picture, in the whole window of ``machine``."""
    width, height = machine.window.columns * TILE_SIDE, machine.window.rows * TILE_SIDE
    drawings = turn(
        solid, pictures=pictures, width=width, height=height, step_degrees=step_degrees, depth=machine.tiles.depth
    )
    return Scene.of(
        machine,
        [_picture(machine, drawing) for drawing in drawings],
        [PACE * number for number in range(pictures)],
    )


def _picture(machine: Machine, drawing: NDArray[np.uint8]) -> Picture:
    rows, columns = machine.window.rows, machine.window.columns
    grid = drawing.reshape(rows, TILE_SIDE, columns, TILE_SIDE).transpose(0, 2, 1, 3)
    cells = grid.reshape(machine.cells, TILE_SIDE, TILE_SIDE)
    return Picture.from_pixels(0, cells, depth=machine.tiles.depth, direction=machine.tiles.byte)
