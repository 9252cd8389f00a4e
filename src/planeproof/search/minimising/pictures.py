"""Steps that make the pictures of a scene fewer, sooner, emptier or plainer."""

from collections.abc import Collection, Iterable, Iterator, Sequence
from contextlib import suppress
from dataclasses import replace
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import TILE_SIDE, Disturbance, Picture, Scene, SceneError
from planeproof.search.minimising.shares import shares

MOST_PARTS = 8
"""Parts of a picture that are emptied before other things are tried."""


def fewer_pictures(scene: Scene) -> Iterator[Scene]:
    """One picture dropped; of a long scene halves and quarters first, or there would be too many to try."""
    places = tuple(reversed(range(len(scene.pictures))))
    several = [share for share in shares(places) if len(share) > 2]
    yield from _dropped(scene, [*several, *combinations(places, 1)])


def two_pictures_fewer(scene: Scene) -> Iterator[Scene]:
    """Two dropped, since with one less what was sent to one side would go to the other."""
    yield from _dropped(scene, combinations(reversed(range(len(scene.pictures))), 2))


def _dropped(scene: Scene, several: Iterable[tuple[int, ...]]) -> Iterator[Scene]:
    for dropped in several:
        fewer = _without(scene, dropped)
        yield fewer
        yield _with(fewer, list(fewer.pictures), [0] * len(fewer.ready))
        if not scene.disturbances:
            # A lost blanking can take the place of a picture that kept the scheduler busy.
            yield Scene.of(scene.machine, fewer.pictures, fewer.ready, [Disturbance(0, 0)])


def one_picture_fewer(scene: Scene) -> Iterator[Scene]:
    """Each picture left out by itself, the last one first."""
    return (_without(scene, [place]) for place in reversed(range(len(scene.pictures))))


def many_cells_fewer(scene: Scene) -> Iterator[Scene]:
    """Cells of one picture emptied, all of them, halves, quarters ...: of hundreds, each by itself would take long."""
    for place, picture in enumerate(scene.pictures):
        for cells in shares(picture.occupied):
            if len(cells) * MOST_PARTS >= len(picture.occupied):
                yield _emptied(scene, place, cells)


def fewer_cells(scene: Scene) -> Iterator[Scene]:
    """Cells of one picture emptied, in ever smaller parts, then one by one; then one in all pictures."""
    for place, picture in enumerate(scene.pictures):
        for cells in [*shares(picture.occupied), *((cell,) for cell in picture.occupied)]:
            yield _emptied(scene, place, cells)
    yield from _cells_everywhere(scene)


def sooner(scene: Scene) -> Iterator[Scene]:
    """Pictures that are ready sooner, each with all that come after it; with the disturbances after it, and without."""
    for place in range(len(scene.ready)):
        since = scene.ready[place - 1] if place else 0
        gap = scene.ready[place] - since
        for less in sorted({gap, gap // 2, 1} - {0}, reverse=True):
            if gap >= less:
                moved = [time - less if later >= place else time for later, time in enumerate(scene.ready)]
                with suppress(SceneError):  # two disturbances in one refresh
                    yield Scene.of(scene.machine, scene.pictures, moved, _sooner(scene, since, less))
                yield _with(scene, list(scene.pictures), moved)


def _sooner(scene: Scene, since: int, less: int) -> list[Disturbance]:
    """Those that are ``less`` refreshes or more after refresh ``since``, so much sooner."""
    return [
        replace(each, refresh=each.refresh - less) if each.refresh >= since + less else each
        for each in scene.disturbances
    ]


def less_ink(scene: Scene) -> Iterator[Scene]:
    """Rows of cells emptied, left with one bit or one bit less; then one row in all cells, and ink in all pictures."""
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


def _without(scene: Scene, dropped: Collection[int]) -> Scene:
    kept = [place for place in range(len(scene.pictures)) if place not in dropped]
    return _with(scene, [scene.pictures[place] for place in kept], [scene.ready[place] for place in kept])


def _with(scene: Scene, pictures: list[Picture], ready: list[int] | None = None) -> Scene:
    times = scene.ready if ready is None else ready
    return Scene.of(scene.machine, pictures, times, scene.disturbances)


def _emptied(scene: Scene, place: int, cells: Sequence[int]) -> Scene:
    rows = scene.pictures[place].rows.copy()
    rows[list(cells)] = 0
    return _changed(scene, place, rows)


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


def _ink_everywhere(scene: Scene) -> Iterator[Scene]:
    """One byte of one cell made plainer wherever it stands, in all pictures."""
    for byte in sorted({int(value) for picture in scene.pictures for value in np.unique(picture.rows)} - {0}):
        for less in sorted({byte & -byte, byte & (byte - 1)} - {byte, 0}):
            pictures = [
                Picture.from_rows(0, np.where(picture.rows == byte, np.uint8(less), picture.rows))
                for picture in scene.pictures
            ]
            yield _with(scene, pictures)
