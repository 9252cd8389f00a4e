"""Only what differs: the hidden side still holds the picture before last, so most of it may stay."""

from collections.abc import Iterable, Mapping

from planeproof.candidates.reference.two_sides import TwoSides
from planeproof.contract import Burst, Picture


class Delta(TwoSides):
    """Hidden side, and only the bytes that differ from what it holds already; none at all if nothing differs."""

    def tiles_for(self, picture: Picture) -> Mapping[int, int] | None:
        """A cell keeps the tile that the hidden side has for it; the others get free ones."""
        pool = self.pool
        if len(picture.occupied) > len(pool):
            return None
        kept = self._kept(picture, pool)
        used = set(kept.values())
        free = iter([tile for tile in pool if tile not in used])
        return {cell: kept[cell] if cell in kept else next(free) for cell in picture.occupied}

    def to_send(self, wanted: Mapping[int, int]) -> Iterable[Burst]:
        """What the shadow does not hold."""
        return self.machine.bursts(wanted, self.shadow.bytes)

    def _kept(self, picture: Picture, pool: tuple[int, ...]) -> dict[int, int]:
        page = self.machine.page_of(self.hidden)
        named = {self.machine.map_entry(tile): tile for tile in pool}
        tiles = {cell: named.get(self.shadow.entry_of(page, cell)) for cell in picture.occupied}
        return {cell: tile for cell, tile in tiles.items() if tile is not None}
