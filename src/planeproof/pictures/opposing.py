"""Changes to and fro, pixel by pixel: of luminance from valley to peak and back, of colour to a saturated red and back.

Each watcher is fed frame after frame and says which pixels have just completed a change up (or towards red) and which
one down (or away from red). Changes of a pixel alternate, and each is told once.
"""

from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from planeproof.pictures.luminance import Levels, chromaticity, relative_luminance, saturated_red
from planeproof.pictures.marks import Canvas

Mask = NDArray[np.bool_]

STEP, BRIGHT, APART = 0.1, 0.8, 0.2
"""WCAG 2.2: a change of luminance, what the darker image must lie below, and how far apart colours must be."""

_TINY = 1e-9
"""Rounding: what is as good as at a limit counts as beyond it."""

_RED = chromaticity(np.array([255, 0, 0], dtype=np.uint8))


class Opposing(Protocol):
    """Something that watches frames for changes to and fro."""

    def see(self, frame: Canvas) -> tuple[Mask, Mask]:
        """(up, down) of shape (height, width): the pixels that have just changed one way and the other."""
        ...


class Luminance:
    """Changes of relative luminance by a tenth or more, the darker end below 0.80.

    ``_way`` is 1 for pixels on their way up, -1 down, 0 where nothing large has happened yet; ``_start`` is the peak or
    valley that a pixel comes from, ``_tip`` the farthest it has got. A way back that is smaller than a tenth is no
    change, and does not end one. While nothing has happened, start is the lowest and tip the highest there was.
    """

    def __init__(self, frame: Canvas) -> None:
        self._start = relative_luminance(frame)
        self._tip = self._start.copy()
        self._way = np.zeros(self._start.shape, dtype=np.int8)
        self._told = np.zeros(self._start.shape, dtype=np.bool_)

    def see(self, frame: Canvas) -> tuple[Mask, Mask]:
        """As `Opposing.see`."""
        now = relative_luminance(frame)
        self._go_on(now)
        self._turn(now)
        large = (self._way != 0) & ~self._told & (np.minimum(self._start, self._tip) < BRIGHT)
        self._told |= large
        return large & (self._way > 0), large & (self._way < 0)

    def _go_on(self, now: Levels) -> None:
        resting = self._way == 0
        self._start = np.where(resting, np.minimum(self._start, now), self._start)
        farther = np.where(self._way < 0, np.minimum(self._tip, now), np.maximum(self._tip, now))
        self._tip = farther

    def _turn(self, now: Levels) -> None:
        resting = self._way == 0
        high = np.where(self._way < 0, self._start, self._tip)
        low = np.where(self._way < 0, self._tip, self._start)
        falls = (self._way >= 0) & (high - now >= STEP - _TINY)
        rises = ((self._way < 0) & (now - self._tip >= STEP - _TINY)) | (resting & (now - low >= STEP - _TINY))
        self._start = np.where(falls, high, np.where(rises, low, self._start))
        self._tip = np.where(falls | rises, now, self._tip)
        self._way = np.where(falls, -1, np.where(rises, 1, self._way)).astype(np.int8)
        self._told &= ~(falls | rises)


class Redness:
    """Changes to or from a saturated red, the two colours more than 0.2 apart.

    ``_red`` is the reddest colour that a pixel has had since it last became red (valid where ``_has_red``), ``_other``
    the one farthest from red since it last ceased to be; ``_way`` is 1 for pixels that have become red, -1 for those
    that have ceased to be, 0 where neither has happened yet.
    """

    def __init__(self, frame: Canvas) -> None:
        self._other = chromaticity(frame)
        self._red = self._other.copy()
        self._has_red = saturated_red(frame)
        self._way = np.zeros(self._has_red.shape, dtype=np.int8)

    def see(self, frame: Canvas) -> tuple[Mask, Mask]:
        """As `Opposing.see`."""
        now, is_red = chromaticity(frame), saturated_red(frame)
        reddens = (self._way <= 0) & is_red & (_between(now, self._other) > APART - _TINY)
        pales = (self._way >= 0) & self._has_red & (_between(now, self._red) > APART - _TINY) & ~reddens
        self._way = np.where(reddens, 1, np.where(pales, -1, self._way)).astype(np.int8)
        reddest = is_red & (~self._has_red | (_from_red(now) < _from_red(self._red)))
        palest = _from_red(now) > _from_red(self._other)
        self._red = np.where((reddens | reddest)[..., None], now, self._red)
        self._other = np.where((pales | palest)[..., None], now, self._other)
        self._has_red = (self._has_red | is_red) & ~pales
        self._other = np.where(reddens[..., None], now, self._other)
        return reddens, pales


def _between(one: Levels, other: Levels) -> Levels:
    return np.asarray(np.hypot(*np.moveaxis(one - other, -1, 0)))


def _from_red(colours: Levels) -> Levels:
    return _between(colours, _RED)
