"""A wrong belief about what picture memory holds."""

from collections import defaultdict
from collections.abc import Iterable, Mapping

from planeproof.candidates.reference import Delta, Fresh, Reuse
from planeproof.candidates.reference.outbox import Outbox
from planeproof.contract import Answer, Burst, Machine, Picture


class ChecksumForCompare(Delta):
    """Tiles are compared by the sum of their bytes, so a line that only moved within its cell stays where it was."""

    def to_send(self, wanted: Mapping[int, int]) -> Iterable[Burst]:
        """Tiles of another sum, and map entries."""
        held, tiles = dict(self.shadow.bytes), defaultdict[int, list[int]](list)
        first, size = self.machine.layout.patterns, self.machine.tile_bytes
        for address in wanted:
            if first <= address < first + size * self.machine.tiles.count:
                tiles[(address - first) // size].append(address)
        for addresses in tiles.values():
            if sum(wanted[a] for a in addresses) == sum(held[a] for a in addresses):
                held |= {a: wanted[a] for a in addresses}
        return self.machine.bursts(wanted, held)


class TileInUseReused(Reuse):
    """A new pattern may get a tile that another cell of the picture re-uses, so that cell shows the new pattern too."""

    def tiles_for(self, picture: Picture) -> Mapping[int, int] | None:
        """Tiles that hold the wanted bytes already, and for other patterns just the first ones of the pool."""
        if super().tiles_for(picture) is None:
            return None
        patterns = {cell: picture.planes[cell].tobytes() for cell in picture.occupied}
        held = self._holding(self.pool, set(patterns.values()))
        new = [pattern for pattern in dict.fromkeys(patterns.values()) if pattern not in held]
        tile_of = held | dict(zip(new, self.pool, strict=False))
        return {cell: tile_of[pattern] for cell, pattern in patterns.items()}


class FoundOnSeenSide(Reuse):
    """A pattern that is found on the seen side is not sent to the hidden one, so its cell is empty after the reveal."""

    def patterns(self, picture: Picture, tiles: Mapping[int, int]) -> dict[int, int]:
        """The patterns that were not found."""
        found = set(self._found.values())
        return super().patterns(picture, {cell: tile for cell, tile in tiles.items() if tile not in found})

    def _holding(self, pool: tuple[int, ...], wanted: set[bytes]) -> dict[bytes, int]:
        self._found: dict[bytes, int] = {}
        for tile in pool:
            pattern = self.shadow.pattern_of(tile, self.seen).tobytes()
            if pattern in wanted:
                self._found.setdefault(pattern, tile)
        return dict(self._found)


class ShadowAhead(Delta):
    """After a lost blanking it starts over from a shadow that has the lost bytes already, so they are never seen."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Nothing is lost yet."""
        self.had = True
        return super().start(machine)

    def offer(self, picture: Picture) -> Answer:
        """Notice a lost blanking, and send again whatever the shadow lacks: nothing but the view."""
        if self.outbox and not self.had:
            self.outbox = Outbox(self.machine)
            self.outbox.put_together(self.machine.view_bursts(self.seen, self.hidden))
        self.had = False
        return super().offer(picture)

    def blank(self, cycles: int) -> Iterable[Burst]:
        """This blanking was had."""
        self.had = True
        return super().blank(cycles)


class LostBlankingCounted(Fresh):
    """A lost blanking is counted as had, so what it should have sent is missing in the picture."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Nothing is lost yet."""
        self.had = True
        return super().start(machine)

    def offer(self, picture: Picture) -> Answer:
        """A refresh went by: strike off what its blanking holds, had or not, all but the view."""
        if self.outbox and not self.had:
            self.outbox.fill(self.machine.blank_cycles)
            if not self.outbox:
                self.outbox.put_together(self.machine.view_bursts(self.seen, self.hidden))
        self.had = False
        return super().offer(picture)

    def blank(self, cycles: int) -> Iterable[Burst]:
        """This blanking was had."""
        self.had = True
        return super().blank(cycles)


class FoundByLowestPlane(Reuse):
    """Patterns are told apart by their lowest plane alone, so cells that differ only in the other share a tile."""

    def tiles_for(self, picture: Picture) -> Mapping[int, int] | None:
        """The tile of the first cell that has the same lowest plane."""
        tiles, first = super().tiles_for(picture), dict[bytes, int]()
        if tiles is None:
            return None
        return {cell: first.setdefault(picture.planes[cell, 0].tobytes(), tile) for cell, tile in tiles.items()}
