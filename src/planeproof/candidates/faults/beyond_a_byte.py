"""Counts kept in eight bits: right as long as there are no more than 255 of something."""

from collections.abc import Iterable, Mapping

from planeproof.candidates.reference import Delta, Fresh, LazyClear, SplitPool
from planeproof.contract import Burst, ByteOrder, Machine

BYTE = 256
"""Values of a byte."""


class BurstIndexInAByte(SplitPool):
    """The place in a burst is kept in a byte, so of a map that is sent in one go the first 256 entries come again."""

    def to_send(self, wanted: Mapping[int, int]) -> Iterable[Burst]:
        """Each burst with byte i modulo 256 in place of byte i."""
        for burst in super().to_send(wanted):
            again = bytes(burst.data[place % BYTE] for place in range(len(burst.data)))
            yield Burst(burst.address, again, burst.step)


class CellNumberInAByte(LazyClear):
    """Cells are numbered in a byte, so in a big window what belongs in the lower rows turns up in the upper ones."""

    def entries(self, tiles: Mapping[int, int]) -> dict[int, int]:
        """Entries by cell modulo 256."""
        return super().entries({cell % BYTE: tile for cell, tile in tiles.items()})


class BytesLeftInAByte(Fresh):
    """How many bytes are left is counted in a byte, so a big picture is revealed when few of its bytes are sent."""

    def to_send(self, wanted: Mapping[int, int]) -> Iterable[Burst]:
        """What is sent while the count is not zero; the rest goes on after the reveal."""
        count, sent = sum(len(burst.data) for burst in super().to_send(wanted)) % BYTE, []
        self.rest = list(super().to_send(wanted))
        while self.rest and count > 0:
            count -= len(self.rest[0].data)
            sent.append(self.rest.pop(0))
        return sent

    def reveal(self) -> None:
        """The view, and then what is left."""
        super().reveal()
        self.outbox.put(self.rest)


class QueuePlacesInAByte(Fresh):
    """The queue has 256 places and begins again at the first, so of more bursts than that the earlier are lost."""

    def to_send(self, wanted: Mapping[int, int]) -> Iterable[Burst]:
        """The bursts since the queue last began again."""
        bursts = list(super().to_send(wanted))
        return bursts[len(bursts) // BYTE * BYTE :]


class HighByteForgotten(Delta):
    """An entry counts as unchanged if its low byte is, so a cell that goes from tile 0 to tile 256 stays empty."""

    def to_send(self, wanted: Mapping[int, int]) -> Iterable[Burst]:
        """What differs, but no high byte beside a low byte that does not."""
        machine, page, held = self.machine, self.machine.page_of(self.hidden), dict(self.shadow.bytes)
        low, high = (1, 0) if machine.map.byte_order is ByteOrder.HIGH_FIRST else (0, 1)
        for first in [machine.map_address(page, cell) for cell in range(machine.cells)]:
            if wanted[first + low] == held[first + low]:
                held[first + high] = wanted[first + high]
        return machine.bursts(wanted, held)


class RevealsCountedInAByte(Delta):
    """Reveals are counted in a byte that stays full, so the 257th picture is written over the one being seen."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Nothing was revealed yet."""
        self.reveals = 0
        return super().start(machine)

    def reveal(self) -> None:
        """Which side is seen is told by the count."""
        super().reveal()
        self.reveals = min(self.reveals + 1, BYTE - 1)
        self.seen = self.reveals % 2
