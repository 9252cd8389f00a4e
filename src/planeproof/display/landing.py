"""When each byte of a blanking's bursts is written, and so where it lands.

Times are exact. A byte written at time T after the blanking began for the scheduler, which was told it has
``cycles``, is inside if T <= cycles. Otherwise the beam is on displayed line floor((T - cycles) / cycles per
line); past the last displayed line the byte falls into the next blanking, where its time is taken off.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import Burst, Machine, Rational


@dataclass(frozen=True, slots=True)
class Piece:
    """Neighbouring bytes of one burst that land together.

    ``addresses`` and ``values`` have shape (n,). They are bytes ``first``, ``first`` + 1 ... of burst number
    ``burst`` of blanking ``refresh``. ``line`` is the displayed raster line they land on, None inside blanking.
    ``late`` tells whether they came too late for their own blanking. ``time`` is when the last was written, in cycles
    from the beginning of the blanking in which they land, or of the active display if they land on a line of it.
    """

    refresh: int
    burst: int
    first: int
    addresses: NDArray[np.intp]
    values: NDArray[np.uint8]
    line: int | None
    late: bool
    time: Rational


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
    return tuple(_piece(-1, number, burst, 0, len(burst.data), 0) for number, burst in enumerate(bursts))


def land(
    machine: Machine, refresh: int, bursts: Sequence[Burst], cycles: int, overdue: Sequence[Piece] = ()
) -> Arrivals:
    """Where the bytes of ``bursts`` land that were written in blanking ``refresh``, told ``cycles``.

    ``overdue`` are pieces left over from the blanking before; they land first.
    """
    pieces: list[Piece] = []
    spent: Rational = 0
    for piece in overdue:
        pieces += _placed(machine, piece, piece.time, machine.blank_cycles)
    for number, burst in enumerate(bursts):
        setup, per_byte = machine.rates(view=machine.is_view(burst.address))
        size, begins = len(burst.data), spent + setup
        spent = begins + per_byte * size
        if spent <= cycles:
            pieces.append(_piece(refresh, number, burst, 0, size, spent))
        else:
            pieces += _split(machine, refresh, number, burst, begins, cycles)
    past = [piece for piece in pieces if piece.line is not None and piece.line >= machine.time.shown]
    kept = [piece for piece in pieces if piece.line is None or piece.line < machine.time.shown]
    return Arrivals(pieces=tuple(kept), overdue=tuple(_put_off(machine, piece) for piece in past), used=spent)


def taken_by(machine: Machine, overdue: Sequence[Piece]) -> int:
    """Whole cycles that overdue pieces take off the blanking in which they land."""
    last = max((piece.time for piece in overdue), default=0)
    return min(math.ceil(last), machine.blank_cycles)


def _split(
    machine: Machine, refresh: int, number: int, burst: Burst, begins: Rational, cycles: int
) -> list[Piece]:
    """A burst that does not fit: what is inside together, what is late byte by byte."""
    per_byte = machine.rates(view=machine.is_view(burst.address))[1]
    fitting = max(math.floor((cycles - begins) / Fraction(per_byte)), 0)
    inside = begins + fitting * per_byte
    pieces = [_piece(refresh, number, burst, 0, fitting, inside)] if fitting else []
    for byte in range(fitting, len(burst.data)):
        time = begins + (byte + 1) * per_byte
        pieces += _placed(machine, _piece(refresh, number, burst, byte, byte + 1, time, late=True), time, cycles)
    return pieces


def _placed(machine: Machine, piece: Piece, time: Rational, cycles: int) -> list[Piece]:
    if time <= cycles:
        return [piece]
    line = math.floor((time - cycles) / Fraction(machine.time.cycles_per_line))
    beyond = time - cycles
    return [Piece(piece.refresh, piece.burst, piece.first, piece.addresses, piece.values, line, True, beyond)]


def _put_off(machine: Machine, piece: Piece) -> Piece:
    time = piece.time - machine.time.shown * machine.time.cycles_per_line
    return Piece(piece.refresh, piece.burst, piece.first, piece.addresses, piece.values, None, True, time)


def _piece(
    refresh: int, number: int, burst: Burst, first: int, end: int, time: Rational, *, late: bool = False
) -> Piece:
    addresses = np.arange(burst.address + first * burst.step, burst.address + end * burst.step, burst.step)
    values = np.frombuffer(burst.data, dtype=np.uint8)[first:end]
    return Piece(refresh, number, first, addresses, values, None, late, time)
