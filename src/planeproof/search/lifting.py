"""Lifting a finding from a small relative to the machine as given: scenes there that are likely to show the same.

The small scene is put into the big window; counts that were at a limit of the small machine go to the same limit of the
big one; and blankings are cut until sending takes about as many of them as it did. What all that does not show, full
sized recipes may. The first scene that shows it is then made smaller on the machine as it is.
"""

import math
from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction
from itertools import count, islice, product

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import Disturbance, Machine, Picture, Rational, Scene
from planeproof.scenes.patterns import different, in_shape
from planeproof.scenes.recipes import recipe
from planeproof.scenes.relatives import least_blanking, picture_cycles
from planeproof.scenes.source import RandomSource
from planeproof.search.minimising import minimise

MOST_CUT = 400
"""Blankings in a row that are cut at the most, from the first on."""

ROOM = 12
"""Refreshes more than the small scene names, to which its cuts go on."""

LOW_BYTE = 1 << 8
"""Tile numbers that one byte can hold."""

FILLING = 255
"""The first pattern of the series to fill up with: those below differ in one row only, as small scenes often do."""

SHIFTED_A_RECIPE = 4
"""Scenes with every blanking cut that are tried between two recipes."""

Rows = NDArray[np.uint8]
Shows = Callable[[Scene], bool]


def lift(small: Scene, given: Machine, shows: Shows, go_on: Callable[[], bool]) -> Scene | None:
    """The smallest scene found on ``given`` itself that ``shows`` what ``small`` shows, None if none was found.

    ``go_on`` is asked before each try; when it says no, the smallest so far is what comes back.
    """
    for scene in likely(small, given):
        if not go_on():
            return None
        if shows(scene):
            return minimise(scene, shows, go_on=go_on, keep_machine=True)
    return None


def likely(small: Scene, given: Machine) -> Iterator[Scene]:
    """Scenes on ``given`` that may show what ``small`` shows, the plainest first; they never end."""
    tight = [_shortened(small, given, cycles) for cycles in _tight(small.machine, given)]
    corner, *elsewhere = ([_picture(given, rows) for rows in each] for each in _placed(small, given))
    full = [[_picture(given, rows) for rows in each] for each in _scaled_up(small, given)]
    usual = list(_as_they_are(small, given))
    for pictures, disturbances in (
        *product([corner], usual),
        *product([corner], tight),
        *product(full, usual),
        *product(elsewhere, [*usual, *tight]),
        *product(full, tight),
    ):
        yield Scene.of(given, pictures, small.ready, disturbances)
    for rows in _crowded(small, given):
        yield Scene.of(given, [_picture(given, each) for each in rows], [0, *small.ready], usual[0])
    shifted = _shifted(small, given)
    for number in count():
        for cuts in islice(shifted, SHIFTED_A_RECIPE):
            yield Scene.of(given, corner, small.ready, cuts)
        yield recipe(given, RandomSource(f"lifting/{number}"), as_given=True)


# --- pictures ---------------------------------------------------------------------------------------------


def _placed(small: Scene, given: Machine) -> Iterator[list[Rows]]:
    """The pictures as they are, in the last corner of the window, in the first, and in its last and first cells."""
    for places in _places(small.machine, given):
        yield [_in_window(picture, given, places) for picture in small.pictures]


def _scaled_up(small: Scene, given: Machine) -> Iterator[list[Rows]]:
    """The pictures in the last corner, those of them filled up that were at a limit of the small machine."""
    corner = next(_placed(small, given))
    for old, new in _limits(small.machine, given):
        counts = [len(picture.occupied) for picture in small.pictures]
        if old and old in counts and new != old:
            yield [_filled(given, rows, new) if n == old else rows for rows, n in zip(corner, counts, strict=True)]


def _crowded(small: Scene, given: Machine) -> Iterator[list[Rows]]:
    """A picture of as many cells as it takes to come to the same tile numbers, and then all with those cells besides.

    That is where a map entry's low byte is full: a small pool may begin just below it, the given one far below.
    """
    below = [sum(tile < LOW_BYTE for tile in machine.pool) for machine in (small.machine, given)]
    fillers = below[1] - below[0]
    if given.map.entry_bytes == 2 and fillers > 0:
        corner = next(_placed(small, given))
        last: NDArray[np.bool_] = np.asarray(np.stack(corner).any(axis=(0, 2, 3)))[:, None, None]
        free = np.flatnonzero(~last)[:fillers]
        crowd = np.zeros_like(corner[0])
        crowd[free] = [different(given, FILLING + cell) for cell in free.tolist()]
        yield [crowd, *(np.where(last, rows, crowd) for rows in corner)]


def _limits(small: Machine, given: Machine) -> list[tuple[int, int]]:
    """Occupied cells at which something ends, on one machine and on the other."""
    return [
        (small.must_show, min(given.must_show, given.cells)),
        (small.cap_of_view, min(given.cap_of_view, given.cells)),
        (small.cap_of_view + 1, min(given.cap_of_view + 1, given.cells)),
        (small.cells, given.cells),
    ]


def _places(small: Machine, given: Machine) -> list[NDArray[np.intp]]:
    """For each cell of the small window a cell of the given one: by corners where it fits, and in a row."""
    cells = min(small.cells, given.cells)
    found = [np.arange(cells), np.arange(given.cells - cells, given.cells)]
    window, inner = given.window, small.window
    if inner.rows <= window.rows and inner.columns <= window.columns:
        grid = np.arange(given.cells).reshape(window.rows, window.columns)
        found.insert(0, grid[-inner.rows :, -inner.columns :].ravel())
        found.insert(1, grid[: inner.rows, : inner.columns].ravel())
    return list({place.tobytes(): place for place in found}.values())


def _in_window(picture: Picture, given: Machine, places: NDArray[np.intp]) -> Rows:
    rows = np.zeros((given.cells, given.tiles.depth, 8), dtype=np.uint8)
    rows[places] = picture.planes[: len(places)]
    return rows


def _filled(given: Machine, rows: Rows, wanted: int) -> Rows:
    """Further cells of different patterns, the same ones in every picture, until so many are occupied."""
    filled = rows.copy()
    empty = np.flatnonzero(~rows.any(axis=(1, 2)))
    missing = max(wanted - (given.cells - len(empty)), 0)
    for cell in empty[:missing].tolist():
        filled[cell] = different(given, FILLING + cell)
    return filled


def _picture(given: Machine, rows: Rows) -> Picture:
    return Picture.from_rows(0, in_shape(given, rows))


# --- blankings --------------------------------------------------------------------------------------------


def _as_they_are(small: Scene, given: Machine) -> Iterator[list[Disturbance]]:
    """No disturbance but those of the small scene: lost is lost, cut is cut by the same share, and in full before."""
    shares = [
        Disturbance(cut.refresh, cut.cycles * given.blank_cycles // small.machine.blank_cycles)
        for cut in small.disturbances
    ]
    yield shares
    if small.disturbances:
        yield []


def _shortened(small: Scene, given: Machine, cycles: int) -> list[Disturbance]:
    """Every blanking cut to ``cycles`` for as long as sending may take, or to less where the small scene has a cut."""
    longest = (small.ready[-1] if small.ready else 0) + ROOM
    refreshes = min(math.ceil(longest * _slower(small, given, cycles)), MOST_CUT)
    usual = dict.fromkeys(range(refreshes), cycles)
    own = {cut.refresh: min(cut.cycles, cycles) for cut in small.disturbances}
    return [Disturbance(*one) for one in {**usual, **own}.items()]


def _shifted(small: Scene, given: Machine) -> Iterator[list[Disturbance]]:
    """Every blanking cut to the same number of one-byte bursts, and so on through all numbers, far apart ones first.

    What takes a few cycles too many at the end of some blanking does so after some of these, in whichever picture.
    """
    step = given.burst_cycles(1)
    steps = math.ceil(given.blank_cycles / step)
    stride = next(stride for stride in count(round(steps * 0.618) + 1) if math.gcd(stride, steps) == 1)
    for number in range(steps):
        cycles = math.floor((steps - number * stride % steps) * step)
        if least_blanking(given) <= cycles < given.blank_cycles:
            yield _shortened(small, given, cycles)


def _tight(small: Machine, given: Machine) -> Sequence[int]:
    """Cycles of a blanking that are worth a try: those of the small one, the same share of a picture, a few bursts."""
    share = Fraction(small.blank_cycles) / Fraction(picture_cycles(small))
    least = least_blanking(given)
    tries: list[Rational] = [
        small.blank_cycles,
        share * picture_cycles(given),
        least,
        *(least + number * given.burst_cycles(1) for number in (1, 2)),
        2 * least,
        4 * least,
        given.blank_cycles // 2,
    ]
    fitting = (min(max(math.floor(cycles), 1), given.blank_cycles - 1) for cycles in tries)
    return list(dict.fromkeys(fitting))


def _slower(small: Scene, given: Machine, cycles: int) -> Fraction:
    """How many times as many blankings a whole picture takes; never less than one."""
    here = Fraction(picture_cycles(small.machine)) / small.machine.blank_cycles
    return max(Fraction(picture_cycles(given)) / cycles / max(here, Fraction(1)), Fraction(1))
