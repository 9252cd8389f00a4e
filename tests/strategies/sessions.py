"""Sessions: anything written into a machine's memory, by nobody in particular, over a few refreshes."""

import math
from dataclasses import dataclass

from hypothesis import strategies as st

from planeproof.contract import Burst, Machine
from tests.strategies.machines import Draw, machines

Refresh = tuple[int, tuple[Burst, ...]]
"""Cycles cut off the blanking, and what is written from it on."""


@dataclass(frozen=True, kw_only=True)
class Session:
    """What stands in memory at first, as a few bytes for each region (``noise``), and then the refreshes."""

    machine: Machine
    noise: tuple[bytes, ...]
    refreshes: tuple[Refresh, ...]

    @property
    def fills(self) -> tuple[Burst, ...]:
        """The bursts that write the noise over and over into the regions."""
        return tuple(
            Burst(region.start, repeated(data, region.length))
            for region, data in zip(self.machine.regions, self.noise, strict=True)
        )


def repeated(data: bytes, length: int) -> bytes:
    """``data`` over and over, ``length`` bytes of it."""
    return (data * (length // len(data) + 1))[:length]


@st.composite
def bursts(draw: Draw, machine: Machine) -> Burst:
    """A burst that begins in some region and ends where it will, gaps between regions included."""
    region = draw(st.sampled_from(machine.regions))
    address = draw(st.integers(region.start, region.end - 1))
    step = draw(st.sampled_from(machine.layout.steps))
    room = (max(region.end for region in machine.regions) - 1 - address) // step + 1
    length = draw(st.integers(1, min(room, 8)) | st.integers(1, min(room, 24)) | st.integers(1, min(room, 250)))
    return Burst(address, repeated(draw(st.binary(min_size=1, max_size=11)), length), step)


@st.composite
def refreshes(draw: Draw, machine: Machine) -> Refresh:
    """A few bursts, in a blanking cut a little, much, whole, or so that the last byte lands on a drawn line."""
    written = tuple(draw(st.lists(bursts(machine), max_size=4)))
    line = draw(st.integers(0, machine.time.shown))
    aimed = machine.blank_cycles - math.floor(sum(map(machine.cost, written)) - line * machine.time.cycles_per_line)
    near = st.just(min(max(aimed, 0), machine.blank_cycles))
    return draw(st.integers(0, 3) | near | st.integers(0, machine.blank_cycles)), written


@st.composite
def sessions(draw: Draw, *, most_refreshes: int = 4) -> Session:
    """A few refreshes of any machine; registers and map entries beyond range are among the noise."""
    machine = draw(machines())
    noise = st.tuples(*[st.binary(min_size=1, max_size=23)] * len(machine.regions))
    several = st.lists(refreshes(machine), min_size=min(1, most_refreshes), max_size=most_refreshes)
    return Session(machine=machine, noise=draw(noise), refreshes=tuple(draw(several)))
