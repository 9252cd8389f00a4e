"""Shipped machines at the size of a few cells, and scenes on them, each written in a line."""

from collections.abc import Iterable
from dataclasses import replace

import numpy as np

from planeproof.contract import Demands, Disturbance, Machine, Picture, Scene, TileMap, Window
from planeproof.machines import read_machine
from planeproof.scenes.relatives import laid_out_anew

PATTERNS: dict[str, tuple[int, ...]] = {
    ".": (0, 0, 0, 0, 0, 0, 0, 0),
    "A": (1, 2, 4, 8, 16, 32, 64, 128),
    "B": (128, 64, 32, 16, 8, 4, 2, 1),  # the bytes of A in another order: no ink in common, and the same sum
    "C": (0, 0, 0, 255, 0, 0, 0, 0),
}
"""Patterns by letter; on machines with more inks, lower-case letters are the same in the second ink."""


def small(
    shape: str,
    columns: int = 1,
    rows: int = 1,
    *,
    tiles: int = 2,
    pool: tuple[int, ...] = (1,),
    around: int = 0,
    tile_map: TileMap | None = None,
    planes: int | None = None,
    demands: Demands | None = None,
) -> Machine:
    """The shipped machine ``shape`` with a small window, ``around`` cells of panel on every side, and few tiles.

    A burst may step a map row where it may on the shipped machine.
    """
    whole = read_machine(shape)
    window = Window(
        columns=columns,
        rows=rows,
        map_columns=columns + 2 * around,
        map_rows=rows + 2 * around,
        origin_column=around,
        origin_row=around,
    )
    machine = replace(
        whole,
        name=f"{shape}, small",
        window=window,
        tiles=replace(whole.tiles, count=tiles, pool=pool, planes=planes or whole.tiles.planes),
        map=tile_map or whole.map,
        memory=None,
        demands=demands or Demands(),
    )
    return laid_out_anew(machine, whole)


def picture(machine: Machine, letters: str) -> Picture:
    """A picture of one letter a cell (see `PATTERNS`), in the lowest bit of the pixels; lower case: in the highest."""
    rows = np.zeros((machine.cells, machine.tiles.depth, 8), dtype=np.uint8)
    for cell, letter in enumerate(letters):
        rows[cell, -1 if letter.islower() else 0] = PATTERNS[letter.upper()]
    return Picture.from_rows(0, rows[:, 0] if machine.tiles.depth == 1 else rows)


def scene(machine: Machine, pictures: Iterable[str], cut: dict[int, int] | None = None) -> Scene:
    """The pictures in letters, all ready at once; ``cut`` is what is left of some blankings, by refresh."""
    disturbances = [Disturbance(refresh, cycles) for refresh, cycles in (cut or {}).items()]
    return Scene.of(machine, [picture(machine, letters) for letters in pictures], disturbances=disturbances)
