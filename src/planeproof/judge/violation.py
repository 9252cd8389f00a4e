"""A violation: one rule broken at one place."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import Rational, Rule


def in_pixels(number: int) -> str:
    """``number`` in words: 1 pixel, 2 pixels."""
    return "1 pixel" if number == 1 else f"{number} pixels"


@dataclass(frozen=True, kw_only=True, eq=False)
class Violation:
    """``rule`` was broken in refresh ``refresh`` (-1: in the set-up). ``said`` tells what happened.

    ``burst`` and ``byte`` count from 0 within that blanking's bursts, ``address`` is the byte's; ``cell`` is the
    first cell concerned, ``picture`` the picture, ``pixels`` a mask (height, width) of the pixels of the window that
    changed or are wrong. None where a violation has no such thing. ``margin``: cycles that spared the viewer,
    for a breach of discipline that no frame shows.
    """

    rule: Rule
    refresh: int
    said: str
    burst: int | None = None
    byte: int | None = None
    address: int | None = None
    cell: int | None = None
    picture: int | None = None
    pixels: NDArray[np.bool_] | None = None
    margin: Rational | None = None

    @property
    def pixel_count(self) -> int:
        """How many pixels of the window are concerned."""
        return 0 if self.pixels is None else int(self.pixels.sum())
