"""Steps that make the machine of a scene smaller or plainer, or its blanking another one."""

import contextlib
import math
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import TILE_SIDE, Machine, MachineError, Picture, Scene, SceneError, Tiles, Timing, Window
from planeproof.scenes.relatives import laid_out_anew, least_blanking, picture_cycles, with_blanking
from planeproof.search.minimising.shares import shares

MOST_BLANKINGS = 100
"""Blankings that are tried for one smaller scene."""


def smaller_window(scene: Scene) -> Iterator[Scene]:
    """Columns or rows of the window left out, with their cells in all pictures."""
    window = scene.machine.window
    grid = np.arange(scene.machine.cells).reshape(window.rows, window.columns)
    for axis, count, field in ((1, window.columns, "columns"), (0, window.rows, "rows")):
        for places in _fewer(range(count)):
            kept = np.delete(grid, places, axis=axis).ravel()
            yield from _rebuilt(scene, kept, window=replace(window, **{field: count - len(places)}))


def retimed(scenes: Iterator[Scene]) -> Iterator[Scene]:
    """Smaller scenes with other blankings: with less to send, what did not fit any more now does."""
    for smaller in scenes:
        machine = smaller.machine
        below = machine.time.shown - machine.window.first_line - machine.window.rows * TILE_SIDE
        for cycles in blankings(machine):
            yield from _rebuilt(smaller, time=with_blanking(machine, cycles, time=machine.time, below=below).time)


def blankings(machine: Machine) -> range:
    """Cycles of the blankings that are worth a try on ``machine``, from the shortest on, at most `MOST_BLANKINGS`.

    They end a burst above the one it has, or where any picture fits: longer ones are all alike. And they are no closer
    than costs can differ; where that is still too many they are evenly spread.
    """
    least = least_blanking(machine)
    roomy = least + math.ceil(picture_cycles(machine))
    end = min(machine.blank_cycles, roomy) + math.ceil(machine.burst_cycles(TILE_SIDE))
    grain = _grain(machine)
    return range(least, end, grain * max(1, -(-(end - least) // (grain * MOST_BLANKINGS))))


def fewer_tiles(scene: Scene) -> Iterator[Scene]:
    """Tiles left out of the pool, as many in each bank; then memory that ends with the last tile needed."""
    machine, tiles = scene.machine, scene.machine.tiles
    in_a_bank = machine.cap // machine.map.banks
    for places in _fewer(range(in_a_bank)[::-1]):
        pool = tuple(tile for number, tile in enumerate(tiles.pool) if number % in_a_bank not in places)
        yield from _rebuilt(scene, tiles=replace(tiles, pool=pool))
    needed = max(*tiles.pool, tiles.blank) + 1
    if machine.map.banks == 1 and tiles.count > needed:
        yield from _rebuilt(scene, tiles=replace(tiles, count=needed))


def plainer_place(scene: Scene) -> Iterator[Scene]:
    """The window at the beginning of the map and of the screen."""
    window = scene.machine.window
    bare = replace(window, map_columns=None, map_rows=None, origin_column=0, origin_row=0)
    for plainer in (replace(bare, first_line=0), bare, replace(window, first_line=0)):
        yield from _rebuilt(scene, window=plainer)


def _fewer(places: range) -> Iterator[tuple[int, ...]]:
    """What to leave out of ``places``, never all of it: halves, quarters ..., then one at a time."""
    yield from (share for share in shares(tuple(places)) if len(share) < len(places))
    yield from ((place,) for place in places if len(places) > 1)


def _grain(machine: Machine) -> int:
    """The greatest whole number of cycles that every burst costs a multiple of, or 1."""
    costs = [Fraction(cost) for view in (False, True) for cost in machine.rates(view=view)]
    scale = math.lcm(*(cost.denominator for cost in costs))
    return max(1, math.gcd(*(int(cost * scale) for cost in costs)) // scale)


def _rebuilt(scene: Scene, kept: NDArray[np.intp] | None = None, **changes: Window | Tiles | Timing) -> Iterator[Scene]:
    """The scene on its machine with ``changes``, with the cells that are ``kept``; nothing if that is refused."""
    with contextlib.suppress(MachineError, SceneError):
        machine = laid_out_anew(
            replace(scene.machine, memory=None, **changes),  # type: ignore[arg-type]
            scene.machine,
        )
        pictures = [
            Picture.from_rows(0, picture.rows if kept is None else picture.rows[kept]) for picture in scene.pictures
        ]
        yield Scene.of(machine, pictures, scene.ready, scene.disturbances)
