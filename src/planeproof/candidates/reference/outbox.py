"""The outbox: bursts waiting for a blanking, sent in the order in which they were put in."""

import math
from collections import deque
from collections.abc import Iterable

from planeproof.contract import Burst, Machine, Rational


class Outbox:
    """Bursts of `put` may be split between bytes; those of `put_together` go in one blanking or wait."""

    def __init__(self, machine: Machine) -> None:
        self._machine = machine
        self._units: deque[tuple[Burst, ...]] = deque()
        self._splits: deque[bool] = deque()

    def __bool__(self) -> bool:
        return bool(self._units)

    def put(self, bursts: Iterable[Burst]) -> None:
        """Add bursts, each of which may be split."""
        for burst in bursts:
            self._units.append((burst,))
            self._splits.append(True)

    def put_together(self, bursts: Iterable[Burst]) -> None:
        """Add bursts that must land in the same blanking."""
        unit = tuple(bursts)
        if unit:
            self._units.append(unit)
            self._splits.append(False)

    def fill(self, cycles: Rational, *, leaving: int = 0) -> list[Burst]:
        """Take out as much as a blanking of ``cycles`` holds; the last ``leaving`` that were put in stay."""
        sent: list[Burst] = []
        left = cycles
        while len(self._units) > leaving:
            cost = sum(self._machine.cost(burst) for burst in self._units[0])
            if cost <= left:
                sent.extend(self._units.popleft())
                self._splits.popleft()
                left -= cost
            elif self._splits[0]:
                return sent + self._split(left)
            else:
                break
        return sent

    def _split(self, left: Rational) -> list[Burst]:
        burst = self._units[0][0]
        setup, per_byte = self._machine.rates(view=self._machine.is_view(burst.address))
        fitting = math.floor((left - setup) / per_byte)
        if fitting < 1:
            return []
        rest = Burst(burst.address + fitting * burst.step, burst.data[fitting:], burst.step)
        self._units[0] = (rest,)
        return [Burst(burst.address, burst.data[:fitting], burst.step)]
