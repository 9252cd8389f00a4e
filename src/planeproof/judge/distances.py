"""How near a play came to each edge, from what the play holds: nothing is played again, and playing is not slowed."""

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import Answer, Burst, Machine, Picture, Rational
from planeproof.display import PictureMemory, View
from planeproof.display.plan import NOBODY
from planeproof.judge.edges import (
    BEFORE_LAST,
    BLANKING_END,
    CAP,
    CUT,
    LINE,
    LOST,
    MUST_SHOW,
    ONE_BIT,
    ONE_OVER,
    ONE_TOO_MANY,
    REFILLED,
    REUSE,
    Edge,
    hardest,
)
from planeproof.judge.play import Play, Refresh

Distances = Mapping[Edge, Rational]
"""For each edge how near a play came; an edge is missing where there was nothing to measure from."""


def distances(play: Play) -> Distances:
    """The least distance of ``play`` to each edge, in the edge's own unit, 0 or more.

    Bytes that came late are counted as written: what they do to a frame is for the rules to say.
    """
    found: dict[Edge, Rational] = {}
    for edge, distance in _all(play):
        found[edge] = min(found.get(edge, distance), distance)
    return found


def taken(play: Play) -> list[Picture]:
    """The pictures that were taken, in order."""
    answers = ((refresh.offered, refresh.answer) for refresh in play.refreshes)
    return [play.scene.pictures[number] for number, answer in answers if number is not None and answer is Answer.TAKEN]


Found = Iterator[tuple[Edge, Rational]]


def _all(play: Play) -> Found:
    yield from _of_size(play)
    yield from _of_tiles(play)
    yield from _of_time(play)
    yield from _of_line(play.refreshes)
    yield from _of_history(taken(play))
    yield from _of_disturbance(play)


def _of_size(play: Play) -> Found:
    machine = play.scene.machine
    most, one_more = hardest(machine), machine.cap_of_view + 1
    for number in {refresh.offered for refresh in play.refreshes if refresh.offered is not None}:
        picture = play.scene.pictures[number]
        different = len({picture.rows[cell].tobytes() for cell in picture.occupied})
        alike = len(picture.occupied) - different
        yield MUST_SHOW, abs(len(picture.occupied) - most) + alike
        yield ONE_TOO_MANY, abs(different - one_more)


def _of_time(play: Play) -> Found:
    machine = play.scene.machine
    for refresh in play.refreshes:
        if refresh.used and refresh.upcoming is not None:
            yield BLANKING_END, max(refresh.cycles - refresh.used, 0)
    for before, refresh in pairwise(play.refreshes):
        if refresh.current != before.current and before.upcoming is not None and before.used:
            sent = (len(burst.data) for burst in refresh.bursts if not machine.is_view(burst.address))
            yield ONE_OVER, sum(sent)


def _of_line(refreshes: Sequence[Refresh]) -> Found:
    """How many refreshes after the last picture was seen the next was offered for the first time."""
    seen_at = None
    for before, refresh in pairwise(refreshes):
        if before.number == 0 or before.current != refreshes[before.number - 1].current:
            seen_at = before.number
        if refresh.offered is not None and refresh.offered != before.offered:
            if before.upcoming is not None:
                yield LINE, 0
            elif seen_at is not None and before.current >= 0:
                yield LINE, refresh.number - seen_at


def _of_history(pictures: Sequence[Picture]) -> Found:
    if not pictures:
        return
    rows = np.stack([picture.planes for picture in pictures])
    occupied: NDArray[np.bool_] = np.asarray(rows.any(axis=(2, 3)))
    yield REFILLED, 3 - _steps(occupied)
    for one, other in pairwise(rows):
        bits = int(np.bitwise_count(one ^ other).sum())
        if bits:
            yield ONE_BIT, bits - 1
    for first, last, again in zip(rows, rows[1:], rows[2:], strict=False):
        if not np.array_equal(last, again):
            yield BEFORE_LAST, int((first != again).any(axis=(1, 2)).sum())


def _steps(occupied: NDArray[np.bool_]) -> int:
    """Of occupied, emptied, occupied again: how many steps the cell that got farthest has gone; (pictures, cells)."""
    gone = np.zeros(occupied.shape[1], dtype=np.intp)
    for now in occupied:
        gone += (gone < 3) & (now == (gone % 2 == 0))
    return int(gone.max())


def _of_disturbance(play: Play) -> Found:
    waiting = np.array([refresh.number for refresh in play.refreshes if refresh.upcoming is not None])
    if not len(waiting):
        return
    for disturbance in play.scene.disturbances:
        # One that came after the end of the play was none; that it is told of here does no harm.
        away = int(np.abs(waiting - disturbance.refresh).min())
        yield (CUT if disturbance.cycles else LOST), away


# --- tiles ------------------------------------------------------------------------------------------------


def _of_tiles(play: Play) -> Found:
    machine = play.scene.machine
    tiles = _Tiles(machine)
    tiles.write(play.set_up, -1)
    yield CAP, tiles.spare
    for refresh in play.refreshes:
        if refresh.bursts:
            age = tiles.write(refresh.bursts, refresh.number)
            if age is not None:
                yield REUSE, age
            yield CAP, tiles.spare


class _Tiles:
    """Picture memory followed through the bursts of a play: which tiles are named, and when a byte was last seen."""

    def __init__(self, machine: Machine) -> None:
        self._machine = machine
        self._memory = PictureMemory(machine)
        self._plan = self._memory.plan
        # One more of each than there are: the last stands for what belongs to no tile.
        self._seen = np.full((machine.tiles.count + 1, machine.tile_bytes + 1), NOBODY)
        self._shown: tuple[NDArray[np.intp], ...] = (np.zeros((0, 1), dtype=np.intp), np.zeros(0, dtype=np.intp))
        self._offsets_of: dict[bytes, NDArray[np.intp]] = {}
        self.spare = machine.cap_of_view

    def write(self, bursts: Sequence[Burst], number: int) -> int | None:
        """The bursts of blanking ``number``: how long ago the latest of the bytes that they change was seen, if any."""
        addresses, values = self._bytes(bursts)
        plan, held = self._plan, self._memory.contents
        changed = held[addresses] != values
        places = addresses[changed]
        turned = bool((plan.tile[places] == NOBODY).any())
        # What is named now has been seen up to the last frame.
        self._seen[self._shown] = number - 1
        last = int(self._seen[plan.tile[places], plan.offset[places]].max(initial=NOBODY))
        self._memory.store(addresses, values, unseen=not turned)
        if turned:
            self._look()
        return number - last if last != NOBODY else None

    def _bytes(self, bursts: Sequence[Burst]) -> tuple[NDArray[np.intp], NDArray[np.uint8]]:
        """Addresses and values of all bytes that picture memory has room for."""
        spans = [np.arange(len(burst.data)) * burst.step + burst.address for burst in bursts]
        addresses = np.concatenate([np.zeros(0, dtype=np.intp), *spans])
        values = np.frombuffer(b"".join(burst.data for burst in bursts), dtype=np.uint8)
        inside = (addresses >= 0) & (addresses < self._plan.extent)
        return addresses[inside], values[inside]

    def _look(self) -> None:
        view = self._memory.view
        named = np.unique(self._memory.tiles_named(view.page, view.bank))
        named = named[(named != NOBODY) & self._plan.pooled[named]]
        self._shown = (named[:, None], self._offsets_that_show(view))
        self.spare = min(self.spare, max(self._machine.cap_of_view - len(named), 0))

    def _offsets_that_show(self, view: View) -> NDArray[np.intp]:
        """The bytes of a tile that the palette lets be seen."""
        if view.palette not in self._offsets_of:
            shades, planes = self._memory.shades(view), self._machine.tiles.planes
            values = np.arange(1 << planes)
            shown = [plane for plane in range(planes) if (shades[values ^ (1 << plane)] != shades).any()]
            self._offsets_of[view.palette] = np.flatnonzero(self._plan.bits_of[shown, :-1].any(axis=0))
        return self._offsets_of[view.palette]
