"""When each byte of a blanking's bursts is written, and so where it lands.

Times are exact. A byte written at time T after the blanking began for the scheduler, which was told it has
``cycles``, is inside if T <= cycles. Otherwise the beam is on displayed line floor((T - cycles) / cycles per
line); past the last displayed line the byte falls into the next blanking, where its time is taken off.
"""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import Burst, Machine, Rational


@dataclass(frozen=True, kw_only=True, eq=False)
class Piece:
    """Bytes that land together, in the order in which they are written.

    ``addresses``, ``values``, ``bursts`` and ``bytes`` have shape (n,): where each goes, what it is, and that it is
    byte ``bytes[i]`` of burst ``bursts[i]`` of blanking ``refresh`` (-1: the set-up). ``line`` is the displayed raster
    line they land on, None inside blanking. ``late`` tells whether they came too late for their own blanking. ``time``
    is when the last was written, in cycles from the beginning of the blanking in which they land, or of the active
    display if they land on a line of it.
    """

    refresh: int
    addresses: NDArray[np.intp]
    values: NDArray[np.uint8]
    bursts: NDArray[np.intp]
    bytes: NDArray[np.intp]
    time: Rational
    line: int | None = None
    late: bool = False

    def __len__(self) -> int:
        return len(self.addresses)

    def __getitem__(self, part: slice) -> "Piece":
        """Some of its bytes."""
        return replace(
            self,
            addresses=self.addresses[part],
            values=self.values[part],
            bursts=self.bursts[part],
            bytes=self.bytes[part],
        )

    @cached_property
    def cuts(self) -> list[int]:
        """Where one burst ends and the next begins, the beginning and the end included."""
        return [0, *(np.flatnonzero(np.diff(self.bursts)) + 1).tolist(), len(self)] if len(self) else []


@dataclass(frozen=True, kw_only=True)
class Arrivals:
    """Where the bytes of one blanking landed.

    ``pieces`` are those of this refresh, in the order of writing; ``overdue`` those that fall into the next
    blanking or later, with ``time`` counted from its beginning. ``used`` is when the last byte was written.
    """

    pieces: tuple[Piece, ...]
    overdue: tuple[Piece, ...]
    used: Rational


def set_up(bursts: Iterable[Burst]) -> tuple[Piece, ...]:
    """The bursts of `Scheduler.start`, written while the display is off."""
    every = tuple(bursts)
    return (_all_of(-1, every, 0),) if every else ()


def land(
    machine: Machine, refresh: int, bursts: Sequence[Burst], cycles: int, overdue: Sequence[Piece] = ()
) -> Arrivals:
    """Where the bytes of ``bursts`` land that were written in blanking ``refresh``, told ``cycles``.

    ``overdue`` are pieces left over from the blanking before; they land first.
    """
    if not bursts and not overdue:
        return Arrivals(pieces=(), overdue=(), used=0)
    pieces = [_placed(machine, piece, piece.time, machine.blank_cycles) for piece in overdue]
    used = _cycles_of(machine, bursts)
    if bursts:
        whole = _all_of(refresh, bursts, used)
        pieces += [whole] if used <= cycles else _split(machine, whole, bursts, cycles)
    past = [piece for piece in pieces if piece.line is not None and piece.line >= machine.time.shown]
    kept = [piece for piece in pieces if piece.line is None or piece.line < machine.time.shown]
    return Arrivals(pieces=tuple(kept), overdue=tuple(_put_off(machine, piece) for piece in past), used=used)


def taken_by(machine: Machine, overdue: Sequence[Piece]) -> int:
    """Whole cycles that overdue pieces take off the blanking in which they land."""
    last = max((piece.time for piece in overdue), default=0)
    return min(math.ceil(last), machine.blank_cycles)


def _all_of(refresh: int, bursts: Sequence[Burst], time: Rational) -> Piece:
    sizes = np.array([len(burst.data) for burst in bursts])
    numbers = np.repeat(np.arange(len(bursts)), sizes)
    bytes_ = np.arange(len(numbers)) - np.repeat(np.cumsum(sizes) - sizes, sizes)
    first, step = np.array([(burst.address, burst.step) for burst in bursts]).T
    return Piece(
        refresh=refresh,
        addresses=first[numbers] + bytes_ * step[numbers],
        values=np.frombuffer(b"".join([burst.data for burst in bursts]), dtype=np.uint8),
        bursts=numbers,
        bytes=bytes_,
        time=time,
    )


def _cycles_of(machine: Machine, bursts: Sequence[Burst]) -> Rational:
    plain, view = machine.rates(view=False), machine.rates(view=True)
    if plain == view:
        return plain[0] * len(bursts) + plain[1] * sum([len(burst.data) for burst in bursts])
    return sum(machine.cost(burst) for burst in bursts)


def _split(machine: Machine, whole: Piece, bursts: Sequence[Burst], cycles: int) -> list[Piece]:
    """Bursts that do not all fit: what is inside together, what is late byte by byte."""
    times = list(_times(machine, bursts))
    inside = sum(time <= cycles for time in times)
    pieces = [replace(whole[:inside], time=times[inside - 1])] if inside else []
    late = [(whole[place : place + 1], times[place]) for place in range(inside, len(times))]
    return pieces + [_placed(machine, replace(piece, late=True), time, cycles) for piece, time in late]


def _times(machine: Machine, bursts: Sequence[Burst]) -> Iterator[Rational]:
    """When each byte is written."""
    spent: Rational = 0
    for burst in bursts:
        setup, per_byte = machine.rates(view=machine.is_view(burst.address))
        spent += setup
        for _ in burst.data:
            spent += per_byte
            yield spent


def _placed(machine: Machine, piece: Piece, time: Rational, cycles: int) -> Piece:
    if time <= cycles:
        return replace(piece, time=time)
    line = math.floor((time - cycles) / Fraction(machine.time.cycles_per_line))
    return replace(piece, line=line, late=True, time=time - cycles)


def _put_off(machine: Machine, piece: Piece) -> Piece:
    return replace(piece, line=None, time=piece.time - machine.time.shown * machine.time.cycles_per_line)
