"""What cells are filled with: tokens where a candidate can't tell them apart, all bytes where it might.

A slot is one part of one bit of one cell of one picture. **Up to renaming** a filling of slots is a word in which a
token appears for the first time only after all tokens with lower numbers (a restricted growth string), 0 being empty.
There are Bell(slots + 1) of them, for the slots that are empty are one more block. As many tokens as slots are enough:
no scene can hold more.

Nothing but the names of tokens is taken as symmetric. To mirror a window or exchange two cells is a symmetry of the
display, and not of a scheduler, which may go through its cells in any order: the zoo has a fault in the last one.
"""

from collections.abc import Iterator
from enum import Enum
from itertools import product

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import TILE_SIDE


class Letters(Enum):
    """What a slot may hold, beside nothing.

    ``PATTERNS``: a token that stands for a whole pattern. ``BYTES``: one that stands for a byte, in all rows of a part.
    ``VALUES``: a byte itself, in the last row of its part.
    """

    PATTERNS = "patterns up to renaming"
    BYTES = "bytes up to renaming"
    VALUES = "all values of a byte"

    def words(self, slots: int, used: int, *, values: int) -> Iterator[tuple[tuple[int, ...], int]]:
        """All fillings of ``slots`` after ``used`` tokens have appeared, each with how many have then.

        Bytes themselves are 0 to ``values`` - 1, and none of them is ever new.
        """
        if self is Letters.VALUES:
            yield from ((word, 0) for word in product(range(values), repeat=slots))
        else:
            yield from _growing(slots, used)

    def pattern(self, word: tuple[int, ...]) -> NDArray[np.uint8]:
        """The 8 bytes of a pattern with those letters, a part each."""
        part = TILE_SIDE // len(word)
        return np.array([self._byte(letter, row, part) for letter in word for row in range(part)], dtype=np.uint8)

    def _byte(self, letter: int, row: int, part: int) -> int:
        if letter == 0:
            return 0
        if self is Letters.VALUES:
            return letter if row == part - 1 else 0
        # Far apart, so that two tokens are as unlike in their bits as may be; no byte is of two tokens.
        number = (letter - 1) * TILE_SIDE + row if self is Letters.PATTERNS else letter - 1
        return number * 73 % 255 + 1


def _growing(slots: int, used: int) -> Iterator[tuple[tuple[int, ...], int]]:
    if slots == 0:
        yield (), used
        return
    for letter in range(used + 2):
        for rest, now in _growing(slots - 1, max(used, letter)):
            yield (letter, *rest), now
