"""No hidden planes: the pool is split between the sides, and the reveal flips the map page or the bank."""

from planeproof.candidates.reference.fresh import Fresh


class SplitPool(Fresh):
    """A bank for each side, or else half of the pool for each; for machines with one set of planes.

    It can show pictures of up to half the pool, which is just what such a machine demands (its ``must_show``).
    """

    @property
    def pool(self) -> tuple[int, ...]:
        """The tiles of this side's bank; where there is one bank, every second tile of the pool."""
        tiles = super().pool
        return tiles if self.machine.map.banks > 1 else tiles[self.hidden :: 2]
