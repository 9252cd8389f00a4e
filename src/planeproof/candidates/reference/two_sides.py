"""What the schedulers have in common that prepare one picture at a time on a hidden side."""

from abc import ABC, abstractmethod
from collections.abc import Iterable, Mapping

from planeproof.candidates.reference.outbox import Outbox
from planeproof.candidates.reference.shadow import Shadow
from planeproof.contract import Answer, Burst, Machine, Picture


class TwoSides(ABC):
    """Takes a picture, sends it to the hidden side over as many blankings as it takes, then reveals it.

    While it is at work it answers BUSY. A strategy says which tile each occupied cell gets (`tiles_for`), and what
    of the bytes wanted need be sent (`to_send`).
    """

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Show side 0, which is empty."""
        self.machine = machine
        self.seen = 0
        self.outbox = Outbox(machine)
        self.shadow = Shadow(machine)
        return machine.view_bursts(0)

    def offer(self, picture: Picture) -> Answer:
        """Take the picture if nothing is under way and there are tiles enough."""
        if self.outbox:
            return Answer.BUSY
        tiles = self.tiles_for(picture)
        if tiles is None:
            return Answer.TOO_BIG
        self.send(picture, tiles)
        self.reveal()
        return Answer.TAKEN

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Send what fits."""
        return self.outbox.fill(cycles)

    @property
    def hidden(self) -> int:
        """The side that the next picture is prepared on."""
        return 1 - self.seen

    @property
    def pool(self) -> tuple[int, ...]:
        """The tiles that the hidden side may use: with planes of its own, all of its bank."""
        machine, bank = self.machine, self.machine.bank_of(self.hidden)
        return tuple(tile for tile in machine.pool if tile // machine.tiles_per_bank == bank)

    def send(self, picture: Picture, tiles: Mapping[int, int]) -> None:
        """Put all that the hidden side lacks in the outbox."""
        wanted = self.patterns(picture, tiles) | self.entries(tiles)
        self.outbox.put(self.to_send(wanted))
        self.shadow.bytes |= wanted

    @abstractmethod
    def tiles_for(self, picture: Picture) -> Mapping[int, int] | None:
        """A tile for each occupied cell, None if there are not enough."""

    @abstractmethod
    def to_send(self, wanted: Mapping[int, int]) -> Iterable[Burst]:
        """The bursts that make picture memory hold ``wanted``."""

    def patterns(self, picture: Picture, tiles: Mapping[int, int]) -> dict[int, int]:
        """The pattern bytes that the hidden side must hold, by address."""
        wanted: dict[int, int] = {}
        for cell, tile in tiles.items():
            wanted |= self.shadow.pattern(tile, self.hidden, picture.planes[cell])
        return wanted

    def entries(self, tiles: Mapping[int, int]) -> dict[int, int]:
        """The map bytes that the hidden side must hold, by address: empty cells name the blank tile."""
        page, blank = self.machine.page_of(self.hidden), self.machine.blank_tile
        wanted: dict[int, int] = {}
        for cell in range(self.machine.cells):
            wanted |= self.shadow.entry(page, cell, tiles.get(cell, blank))
        return wanted

    def reveal(self) -> None:
        """Turn the view to the hidden side once all is sent."""
        self.outbox.put_together(self.machine.view_bursts(self.hidden, self.seen))
        self.seen = self.hidden
