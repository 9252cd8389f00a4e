"""Tokens: what stands in a cell, small enough for a solver that needs no pixels.

A token is a bit-vector. Its lowest `LAST_BITS` bits are bits of the last byte; the others, the *shape*, stand for all
the rest. Token 0 is the empty cell. Goals ask of two cells only whether they are equal, whether one is empty, and
whether they differ in one bit of the last byte. A pair of goals looks at four pictures and asks for such a bit at most
twice: so three bits, and a shape for each cell of the four pictures, are as good as all the patterns there are, and a
pair that can't be met in tokens can't be met.
"""

import numpy as np

from planeproof.contract import TILE_SIDE, Machine
from planeproof.scenes.patterns import Rows

LAST_BITS = 3
"""Bits of the last byte that a token tells apart."""

_LAST = (0x80, 0x08, 0x01)
_STROKES = TILE_SIDE - 1


def width(shapes: int) -> int:
    """Bits of a token where there are that many shapes beside the empty one."""
    return shapes.bit_length() + LAST_BITS


def pattern(machine: Machine, token: int) -> Rows:
    """The bytes of one cell, (depth, 8), that ``token`` stands for: no two tokens have the same.

    A shape is a slanting stroke in all but the last byte, in one of the planes of a picture; seven strokes have the
    same bytes, each in another order, so that a scheduler that compares sums is found out. Further shapes have a mark.
    """
    depth = machine.tiles.depth
    rows = np.zeros((depth, TILE_SIDE), dtype=np.uint8)
    shape, last = token >> LAST_BITS, token & (1 << LAST_BITS) - 1
    rows[0, -1] = sum(bit for place, bit in enumerate(_LAST) if last >> place & 1)
    if shape:
        mark, slant = divmod((shape - 1) // depth, _STROKES)
        stroke = rows[(shape - 1) % depth]
        stroke[:_STROKES] = [1 << (row + slant) % _STROKES for row in range(_STROKES)]
        stroke[3] ^= mark & 0xFF
        stroke[4] ^= mark >> 8
    return rows
