"""A scheduler to begin with: it sends every picture whole to the hidden side, then reveals it.

It is right, but slow. Make it faster, and check it after every change: planeproof check this_file.py:Starter
The rules it must keep: planeproof rules. All conventions: python -m pydoc planeproof.contract.scheduler
It is for displays with two map pages, and planes of their own for two pictures, stored plane by plane.
"""

from collections.abc import Iterable

from planeproof import Answer, Burst, Machine, Picture
from planeproof.contract import Rational


class Starter:
    """Made anew, without arguments, for every scene."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """The display is off: show side 0, which is empty. Side 1 is the hidden one."""
        self.machine = machine
        self.seen = 0
        self.queue: list[tuple[Burst, ...]] = []  # the bursts of one entry go together, in one blanking
        return machine.view_bursts(0)

    def offer(self, picture: Picture) -> Answer:
        """Take a picture when the one before is done, and queue all the bursts that it needs."""
        machine, hidden = self.machine, 1 - self.seen
        if self.queue:
            return Answer.BUSY
        if len(picture.occupied) > machine.cap:
            return Answer.TOO_BIG
        # A tile of the pool for each occupied cell; its hidden planes get the pattern, 8 bytes a plane.
        tiles = dict(zip(picture.occupied, machine.pool, strict=False))
        for cell, tile in tiles.items():
            for plane, rows in zip(machine.planes_of(hidden), picture.planes[cell], strict=True):
                self.queue.append((Burst(machine.pattern_address(tile, plane), rows.tobytes()),))
        # Every cell of the hidden map page, the empty ones too: they may still name a tile of an older picture.
        for cell in range(machine.cells):
            entry = machine.map_entry(tiles.get(cell, machine.blank_tile))
            self.queue.append((Burst(machine.map_address(machine.page_of(hidden), cell), entry),))
        # Last of all the reveal: colours and map page together.
        self.queue.append(machine.view_bursts(hidden, self.seen))
        self.seen = hidden
        return Answer.TAKEN

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Send what fits, in order. Count on nothing but the cycles of this call: a blanking may be cut short."""
        bursts: list[Burst] = []
        spent: Rational = 0
        while self.queue:
            spent += sum(map(self.machine.cost, self.queue[0]))
            if spent > cycles:
                break
            bursts.extend(self.queue.pop(0))
        return bursts
