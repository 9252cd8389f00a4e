"""The way down: steps of each kind as far as they go, in turn, until none makes the scene smaller."""

from collections.abc import Callable, Iterator, Sequence
from itertools import cycle, islice

from planeproof.contract import Scene
from planeproof.search.minimising.disturbances import fewer_disturbances, otherwise_disturbed, plainer_disturbances
from planeproof.search.minimising.machines import fewer_tiles, plainer_place, retimed, smaller_window
from planeproof.search.minimising.pictures import (
    fewer_cells,
    fewer_pictures,
    less_ink,
    many_cells_fewer,
    one_picture_fewer,
    sooner,
    two_pictures_fewer,
)
from planeproof.search.size import size

FEW_CELLS = 4
"""Occupied cells up to which it is worth while to try every blanking for every cell that could be emptied."""

FEW_PLACES = 64
"""Cells of a window up to which every blanking is tried for every row and column that could go."""

Shows = Callable[[Scene], bool]
Steps = Callable[[Scene], Iterator[Scene]]


def minimise(scene: Scene, shows: Shows, *, go_on: Callable[[], bool], keep_machine: bool = False) -> Scene:
    """The smallest scene found that still ``shows`` it, by steps each of which makes it smaller.

    ``go_on`` is asked before each try. ``keep_machine`` leaves the machine as it is. Of a large scene large parts go
    first: each try takes long there, and there are thousands of cells.
    """
    if scene.machine.cells > FEW_PLACES:
        scene = _down(scene, _COARSE_MACHINE_KEPT if keep_machine else _COARSE, shows, go_on)
    return _down(scene, _MACHINE_KEPT if keep_machine else _ALL, shows, go_on)


def _down(scene: Scene, kinds: Sequence[Steps], shows: Shows, go_on: Callable[[], bool]) -> Scene:
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


def _otherwise_cut(scene: Scene) -> Iterator[Scene]:
    return otherwise_disturbed(one_picture_fewer(scene))


def _retimed_with_less(scene: Scene) -> Iterator[Scene]:
    yield from retimed(one_picture_fewer(scene))
    if scene.machine.cells <= FEW_PLACES:
        yield from retimed(smaller_window(scene))
    if scene.occupied <= FEW_CELLS:
        yield from retimed(fewer_cells(scene))


def _all_pictures(scene: Scene) -> Iterator[Scene]:
    yield from fewer_pictures(scene)
    yield from two_pictures_fewer(scene)


def _all_disturbances(scene: Scene) -> Iterator[Scene]:
    yield from fewer_disturbances(scene)
    yield from plainer_disturbances(scene)


_COARSE_MACHINE_KEPT: tuple[Steps, ...] = (fewer_pictures, fewer_disturbances, many_cells_fewer)

_COARSE: tuple[Steps, ...] = (*_COARSE_MACHINE_KEPT, smaller_window)
"""Steps that are few however large the scene is."""

_MACHINE_KEPT: tuple[Steps, ...] = (
    _all_pictures,
    _all_disturbances,
    fewer_cells,
    sooner,
    _otherwise_cut,
    less_ink,
)
"""Steps that leave the machine as it is: those that save most come first."""

_ALL: tuple[Steps, ...] = (
    *_MACHINE_KEPT[:3],
    smaller_window,
    fewer_tiles,
    plainer_place,
    *_MACHINE_KEPT[3:],
    _retimed_with_less,
)
