"""In place: the whole difference is written to what is being seen, inside one blanking."""

from collections.abc import Iterable, Mapping

from planeproof.candidates.reference.shadow import Shadow
from planeproof.contract import Answer, Burst, Machine, Picture


class InPlace:
    """No hidden side at all. Right to the eye where a picture fits one blanking; exposed by intention.

    Between the first and the last byte of a picture what is being seen is half old and half new, and only the
    cycles left in that blanking spare the viewer.
    """

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Show side 0, which is empty."""
        self.machine = machine
        self.shadow = Shadow(machine)
        self.pending: tuple[Burst, ...] = ()
        return machine.view_bursts(0)

    def offer(self, picture: Picture) -> Answer:
        """Take the picture if its difference fits one whole blanking."""
        if self.pending:
            return Answer.BUSY
        tiles = self._tiles(picture)
        if tiles is None:
            return Answer.TOO_BIG
        wanted = self._wanted(picture, tiles)
        bursts = self.machine.bursts(wanted, self.shadow.bytes)
        if sum(self.machine.cost(burst) for burst in bursts) > self.machine.blank_cycles:
            return Answer.TOO_BIG
        self.shadow.bytes |= wanted
        self.pending = bursts
        return Answer.TAKEN

    def blank(self, cycles: int) -> Iterable[Burst]:
        """All of it, or nothing yet."""
        if sum(self.machine.cost(burst) for burst in self.pending) > cycles:
            return ()
        sent, self.pending = self.pending, ()
        return sent

    def _tiles(self, picture: Picture) -> Mapping[int, int] | None:
        pool = [tile for tile in self.machine.pool if tile < self.machine.tiles_per_bank]
        return dict(zip(picture.occupied, pool, strict=False)) if len(picture.occupied) <= len(pool) else None

    def _wanted(self, picture: Picture, tiles: Mapping[int, int]) -> dict[int, int]:
        wanted: dict[int, int] = {}
        for cell in range(self.machine.cells):
            wanted |= self.shadow.entry(0, cell, tiles.get(cell, self.machine.blank_tile))
        for cell, tile in tiles.items():
            wanted |= self.shadow.pattern(tile, 0, picture.planes[cell])
        return wanted
