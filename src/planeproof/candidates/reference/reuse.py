"""Tiles re-used: a cell that moved is repositioned in the map, not redrawn."""

from collections.abc import Iterable, Mapping

from planeproof.candidates.reference.two_sides import TwoSides
from planeproof.contract import Burst, Picture


class Reuse(TwoSides):
    """Hidden side; a cell gets a tile that already holds its bytes there, wherever it stood before.

    Equal cells share a tile, so what counts against the cap is different patterns, not occupied cells.
    """

    def tiles_for(self, picture: Picture) -> Mapping[int, int] | None:
        """Tiles that hold the wanted bytes already, and for other patterns those that nobody wants."""
        patterns = {cell: picture.planes[cell].tobytes() for cell in picture.occupied}
        wanted = dict.fromkeys(patterns.values())
        pool = self.pool
        if len(wanted) > len(pool):
            return None
        tile_of = self._holding(pool, set(wanted))
        used = set(tile_of.values())
        free = iter([tile for tile in pool if tile not in used])
        for pattern in wanted:
            if pattern not in tile_of:
                tile_of[pattern] = next(free)
        return {cell: tile_of[pattern] for cell, pattern in patterns.items()}

    def to_send(self, wanted: Mapping[int, int]) -> Iterable[Burst]:
        """What the shadow does not hold: nothing of a tile that is re-used."""
        return self.machine.bursts(wanted, self.shadow.bytes)

    def _holding(self, pool: tuple[int, ...], wanted: set[bytes]) -> dict[bytes, int]:
        held: dict[bytes, int] = {}
        for tile in pool:
            pattern = self.shadow.pattern_of(tile, self.hidden).tobytes()
            if pattern in wanted:
                held.setdefault(pattern, tile)
        return held
