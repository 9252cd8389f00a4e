"""Making a scene smaller, in the terms of the problem: fewer pictures, cells, bytes, tiles, less waiting.

Hypothesis shrinks the choices of a recipe, which can't reach every smaller scene, and knows nothing of scenes that
no recipe made. This works on any scene. The smallest so far is always kept, so it may be stopped at any time.
"""

import contextlib
import math
from collections.abc import Callable, Collection, Iterator
from dataclasses import replace
from fractions import Fraction
from itertools import combinations, cycle, islice, product
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import (
    TILE_SIDE,
    Disturbance,
    Machine,
    MachineError,
    Picture,
    Scene,
    SceneError,
    Tiles,
    Timing,
    Window,
)
from planeproof.scenes.relatives import laid_out_anew, least_blanking, picture_cycles, with_blanking
from planeproof.search.size import size

FEW_CELLS = 4
"""Occupied cells up to which it is worth while to try every blanking for every cell that could be emptied."""

FEW_BURSTS = 16
"""One-byte bursts up to which a cut blanking is tried."""

FEW_PLACES = 64
"""Cells of a window up to which every blanking is tried for every row and column that could go."""

MOST_BLANKINGS = 100
"""Blankings that are tried for one smaller scene."""

Shows = Callable[[Scene], bool]
Steps = Callable[[Scene], Iterator[Scene]]
T = TypeVar("T")


def minimise(scene: Scene, shows: Shows, *, go_on: Callable[[], bool], keep_machine: bool = False) -> Scene:
    """The smallest scene found that still ``shows`` it, by steps each of which makes it smaller.

    ``go_on`` is asked before each try. ``keep_machine`` leaves the machine as it is.
    """
    kinds = _MACHINE_KEPT if keep_machine else _ALL
    in_vain = 0
    for steps in cycle(kinds):
        smaller = _as_far_as_it_goes(scene, steps, shows, go_on)
        in_vain = in_vain + 1 if smaller is scene else 0
        scene = smaller
        if in_vain == len(kinds) or not go_on():
            break
    return scene


def _as_far_as_it_goes(scene: Scene, steps: Steps, shows: Shows, go_on: Callable[[], bool]) -> Scene:
    """The smallest scene found by ``steps`` of one kind, each of which is gone on from where the last one was."""
    place = 0
    while True:
        for smaller in islice(steps(scene), place, None):
            if not go_on():
                return scene
            if size(smaller) < size(scene) and shows(smaller):
                scene = smaller
                break
            place += 1
        else:
            return scene


def _with(scene: Scene, pictures: list[Picture], ready: list[int] | None = None) -> Scene:
    times = scene.ready if ready is None else ready
    return Scene.of(scene.machine, pictures, times, scene.disturbances)


def _fewer_pictures(scene: Scene) -> Iterator[Scene]:
    """One picture dropped; or two, since with one less what was sent to one side would go to the other.

    Of a long scene halves and quarters first, or there would be too many to try.
    """
    places = tuple(reversed(range(len(scene.pictures))))
    several = [share for share in _shares(places) if len(share) > 2]
    for dropped in [*several, *combinations(places, 1), *combinations(places, 2)]:
        fewer = _without(scene, dropped)
        yield fewer
        yield _with(fewer, list(fewer.pictures), [0] * len(fewer.ready))
        if not scene.disturbances:
            # A lost blanking can take the place of a picture that kept the scheduler busy.
            yield Scene.of(scene.machine, fewer.pictures, fewer.ready, [Disturbance(0, 0)])


def _one_picture_fewer(scene: Scene) -> Iterator[Scene]:
    return (_without(scene, [place]) for place in reversed(range(len(scene.pictures))))


def _without(scene: Scene, dropped: Collection[int]) -> Scene:
    kept = [place for place in range(len(scene.pictures)) if place not in dropped]
    return _with(scene, [scene.pictures[place] for place in kept], [scene.ready[place] for place in kept])


def _less_disturbed(scene: Scene) -> Iterator[Scene]:
    for dropped in _shares(scene.disturbances):
        kept = [disturbance for disturbance in scene.disturbances if disturbance not in dropped]
        yield Scene.of(scene.machine, scene.pictures, scene.ready, kept)
    for place, disturbance in enumerate(scene.disturbances):
        rest = [*scene.disturbances[:place], *scene.disturbances[place + 1 :]]
        yield Scene.of(scene.machine, scene.pictures, scene.ready, rest)
        sooner = {0, disturbance.refresh // 2, disturbance.refresh - 1} - {other.refresh for other in rest}
        for refresh in sorted(refresh for refresh in sooner if 0 <= refresh < disturbance.refresh):
            moved = replace(disturbance, refresh=refresh)
            yield Scene.of(scene.machine, scene.pictures, scene.ready, [*rest, moved])
        # How short it may be and still be written in tells how many cycles the scheduler reckons with.
        for cycles in sorted({disturbance.cycles // 2, *(disturbance.cycles - less for less in (16, 4, 1))}):
            if 0 < cycles < disturbance.cycles:
                shorter = replace(disturbance, cycles=cycles)
                yield Scene.of(scene.machine, scene.pictures, scene.ready, [*rest, shorter])


def _otherwise_disturbed(scenes: Iterator[Scene]) -> Iterator[Scene]:
    """Smaller scenes in which one blanking, or the one before, is cut to some number of one-byte bursts."""
    for smaller in scenes:
        machine = smaller.machine
        cuts = [math.ceil(number * machine.burst_cycles(1)) for number in range(FEW_BURSTS)]
        for cut, sooner in product(smaller.disturbances, (0, 1)):
            refresh = cut.refresh - sooner
            rest = [other for other in smaller.disturbances if other.refresh not in (cut.refresh, refresh)]
            for cycles in cuts if refresh >= 0 else ():
                if cycles < machine.blank_cycles:
                    again = [*rest, Disturbance(refresh, cycles)]
                    yield Scene.of(machine, smaller.pictures, smaller.ready, again)


def _fewer_cells(scene: Scene) -> Iterator[Scene]:
    for place, picture in enumerate(scene.pictures):
        for cells in _shares(picture.occupied):
            rows = picture.rows.copy()
            rows[list(cells)] = 0
            yield _changed(scene, place, rows)
        for cell in picture.occupied:
            rows = picture.rows.copy()
            rows[cell] = 0
            yield _changed(scene, place, rows)
    yield from _cells_everywhere(scene)


def _shares(all_of_them: tuple[T, ...]) -> Iterator[tuple[T, ...]]:
    """All of them, then halves, quarters ...: where there are many, one at a time would take too long."""
    size = len(all_of_them)
    while size > 1:
        yield from (all_of_them[start : start + size] for start in range(0, len(all_of_them), size))
        size = -(-size // 2)


def _cells_everywhere(scene: Scene) -> Iterator[Scene]:
    """One cell emptied in all pictures at once: what two pictures have in common can't go one by one."""
    for cell in sorted({cell for picture in scene.pictures for cell in picture.occupied}):
        pictures = []
        for picture in scene.pictures:
            rows = picture.rows.copy()
            rows[cell] = 0
            pictures.append(Picture.from_rows(0, rows))
        yield _with(scene, pictures)


def _changed(scene: Scene, place: int, rows: NDArray[np.uint8]) -> Scene:
    pictures = list(scene.pictures)
    pictures[place] = Picture.from_rows(0, rows)
    return _with(scene, pictures)


def _sooner(scene: Scene) -> Iterator[Scene]:
    for place in range(len(scene.ready)):
        gap = scene.ready[place] - (scene.ready[place - 1] if place else 0)
        for less in sorted({gap, gap // 2, 1} - {0}, reverse=True):
            if gap >= less:
                moved = [time - less if later >= place else time for later, time in enumerate(scene.ready)]
                yield _with(scene, list(scene.pictures), moved)


def _less_ink(scene: Scene) -> Iterator[Scene]:
    for place, picture in enumerate(scene.pictures):
        for index in np.argwhere(picture.rows):
            byte = int(picture.rows[tuple(index)])
            for less in sorted({0, byte & -byte, byte & (byte - 1)} - {byte}):
                rows = picture.rows.copy()
                rows[tuple(index)] = less
                yield _changed(scene, place, rows)
    for row in range(TILE_SIDE):
        emptied = np.arange(TILE_SIDE) == row
        yield _with(scene, [Picture.from_rows(0, np.where(emptied, 0, picture.rows)) for picture in scene.pictures])
    yield from _ink_everywhere(scene)


def _ink_everywhere(scene: Scene) -> Iterator[Scene]:
    """One byte of one cell made plainer wherever it stands, in all pictures."""
    for byte in sorted({int(value) for picture in scene.pictures for value in np.unique(picture.rows)} - {0}):
        for less in sorted({byte & -byte, byte & (byte - 1)} - {byte, 0}):
            pictures = [
                Picture.from_rows(0, np.where(picture.rows == byte, np.uint8(less), picture.rows))
                for picture in scene.pictures
            ]
            yield _with(scene, pictures)


# --- the machine ------------------------------------------------------------------------------------------


def _fewer(places: range) -> Iterator[tuple[int, ...]]:
    """What to leave out of ``places``, never all of it: halves, quarters ..., then one at a time."""
    yield from (share for share in _shares(tuple(places)) if len(share) < len(places))
    yield from ((place,) for place in places if len(places) > 1)


def _smaller_window(scene: Scene) -> Iterator[Scene]:
    window = scene.machine.window
    grid = np.arange(scene.machine.cells).reshape(window.rows, window.columns)
    for axis, count, field in ((1, window.columns, "columns"), (0, window.rows, "rows")):
        for places in _fewer(range(count)):
            kept = np.delete(grid, places, axis=axis).ravel()
            yield from _rebuilt(scene, kept, window=replace(window, **{field: count - len(places)}))


def _retimed(scenes: Iterator[Scene]) -> Iterator[Scene]:
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


def _grain(machine: Machine) -> int:
    """The greatest whole number of cycles that every burst costs a multiple of, or 1."""
    costs = [Fraction(cost) for view in (False, True) for cost in machine.rates(view=view)]
    scale = math.lcm(*(cost.denominator for cost in costs))
    return max(1, math.gcd(*(int(cost * scale) for cost in costs)) // scale)


def _fewer_tiles(scene: Scene) -> Iterator[Scene]:
    machine, tiles = scene.machine, scene.machine.tiles
    in_a_bank = machine.cap // machine.map.banks
    for places in _fewer(range(in_a_bank)[::-1]):
        pool = tuple(tile for number, tile in enumerate(tiles.pool) if number % in_a_bank not in places)
        yield from _rebuilt(scene, tiles=replace(tiles, pool=pool))
    needed = max(*tiles.pool, tiles.blank) + 1
    if machine.map.banks == 1 and tiles.count > needed:
        yield from _rebuilt(scene, tiles=replace(tiles, count=needed))


def _plainer_place(scene: Scene) -> Iterator[Scene]:
    window = scene.machine.window
    bare = replace(window, map_columns=None, map_rows=None, origin_column=0, origin_row=0)
    for plainer in (replace(bare, first_line=0), bare, replace(window, first_line=0)):
        yield from _rebuilt(scene, window=plainer)


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


# --- all of them ------------------------------------------------------------------------------------------


def _otherwise_cut(scene: Scene) -> Iterator[Scene]:
    return _otherwise_disturbed(_one_picture_fewer(scene))


def _retimed_with_less(scene: Scene) -> Iterator[Scene]:
    yield from _retimed(_one_picture_fewer(scene))
    if scene.machine.cells <= FEW_PLACES:
        yield from _retimed(_smaller_window(scene))
    if scene.occupied <= FEW_CELLS:
        yield from _retimed(_fewer_cells(scene))


_MACHINE_KEPT: tuple[Steps, ...] = (
    _fewer_pictures,
    _less_disturbed,
    _fewer_cells,
    _sooner,
    _otherwise_cut,
    _less_ink,
)
"""Steps that leave the machine as it is: those that save most come first."""

_ALL: tuple[Steps, ...] = (
    *_MACHINE_KEPT[:3],
    _smaller_window,
    _fewer_tiles,
    _plainer_place,
    *_MACHINE_KEPT[3:],
    _retimed_with_less,
)
