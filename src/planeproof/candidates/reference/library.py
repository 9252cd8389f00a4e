"""The library: patterns stay in their tiles from picture to picture, and pictures are made of map entries."""

from collections.abc import Collection, Iterable, Mapping

from planeproof.candidates.reference.two_sides import TwoSides
from planeproof.contract import Burst, Machine, Picture


class Library(TwoSides):
    """Both map pages draw from the same tiles, or from a bank each; what was drawn before costs map entries only.

    A pattern that is wanted anew takes the place of the one that has been out of use longest. Where tiles have one
    set of planes and there is one bank, a picture may have half of the pool: the other half then holds patterns that
    are longer out of use than those being seen, so that what is seen stays as it is.
    """

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Show side 0, which is empty; nothing is on the shelves."""
        self.shelves: list[dict[bytes, int]] = [{} for _ in range(max(machine.plane_sets, machine.map.banks))]
        return super().start(machine)

    @property
    def shelf(self) -> dict[bytes, int]:
        """The tile of each pattern that the hidden side can show, the longest out of use first."""
        return self.shelves[self.hidden % len(self.shelves)]

    def tiles_for(self, picture: Picture) -> Mapping[int, int] | None:
        """Tiles from the shelf; new patterns are put on it."""
        patterns = {cell: self.pattern(picture, cell) for cell in picture.occupied}
        wanted = dict.fromkeys(patterns.values())
        if len(wanted) > len(self.pool) // (2 if len(self.shelves) == 1 else 1):
            return None
        self.make_room(wanted)
        return {cell: self.shelf[pattern] for cell, pattern in patterns.items()}

    def pattern(self, picture: Picture, cell: int) -> bytes:
        """What a cell's pattern is known by."""
        return bytes(picture.planes[cell].tobytes())

    def to_send(self, wanted: Mapping[int, int]) -> Iterable[Burst]:
        """What the shadow does not hold: of a tile from the shelf nothing."""
        return self.machine.bursts(wanted, self.shadow.bytes)

    def make_room(self, wanted: Collection[bytes]) -> None:
        """Put all that is wanted at the end of the shelf, new patterns in the tiles that can be spared."""
        shelf = self.shelf
        for pattern in wanted:
            if pattern in shelf:
                shelf[pattern] = shelf.pop(pattern)
        spare = iter([*sorted(set(self.pool) - set(shelf.values())), *shelf.values()])
        for pattern in wanted:
            if pattern not in shelf:
                self.replace(pattern, next(spare))

    def replace(self, pattern: bytes, tile: int) -> None:
        """Put a pattern on the shelf, in a tile whose old pattern leaves it."""
        for old in [old for old, place in self.shelf.items() if place == tile]:
            del self.shelf[old]
        self.shelf[pattern] = tile
