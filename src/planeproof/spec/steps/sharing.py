"""How the two sides of a machine share pattern memory: what one written byte means to each of them.

A *unit* is what one byte holds of one side's picture: 8 pixels where a byte belongs to one plane, 4 where the bits of
two planes stand side by side in it. A unit is addressed by (store, tile, row): sides that own bits have a store each,
sides that differ by their tiles alone have one between them.
"""

from dataclasses import dataclass

import z3

from planeproof.spec.vocabulary import Term, joined


@dataclass(frozen=True, kw_only=True)
class Sharing:
    """``rows`` bytes of a tile hold a side's picture, ``unit_bits`` pixels each.

    ``stores``: how many units there are for one (tile, row). ``packed``: every byte reaches both stores.
    """

    name: str
    rows: int
    unit_bits: int
    stores: int
    packed: bool = False

    def store(self, side: Term) -> Term:
        """The store that holds the units of ``side``."""
        return side if self.stores > 1 else side & 0

    def part(self, store: int, byte: Term) -> Term:
        """What a byte that was written leaves in a store that it reaches."""
        if not self.packed:
            return byte
        return joined([z3.Extract(bit + store, bit + store, byte) for bit in (6, 4, 2, 0)])

    def byte(self, units: list[Term], store: Term) -> Term:
        """The byte to write for ``store`` so that every unit of ``units``, one a store, is as given."""
        if self.packed:
            return joined([z3.Extract(bit, bit, units[plane]) for bit in (3, 2, 1, 0) for plane in (1, 0)])
        return units[0] if self.stores == 1 else z3.If(store == 0, units[0], units[1])


PLANES = Sharing(name="two planes", rows=8, unit_bits=8, stores=2)
PACKED = Sharing(name="two packed planes", rows=16, unit_bits=4, stores=2, packed=True)
ONE_PLANE = Sharing(name="one plane", rows=8, unit_bits=8, stores=1)
DEEP_PLANES = Sharing(name="two pairs of planes", rows=16, unit_bits=8, stores=2)
"""Depth 2: a side's two planes are 16 bytes of a tile, one after the other."""
