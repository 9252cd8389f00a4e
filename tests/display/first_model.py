"""The first model, played byte by byte and told in the words of the second, so that the two can be compared."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from planeproof.contract import Burst, Colours, Machine
from planeproof.display import UNDEFINED, Arrivals, Frame, PictureMemory, Piece, active_display, land, set_up
from planeproof.display.landing import taken_by
from tests.oracle.plain_display import Rows


@dataclass(frozen=True, kw_only=True)
class Told:
    """One refresh of the first model: see `Seen`, and ``contents``, all of memory afterwards."""

    frame: Rows
    landed: list[tuple[int, int, int | None]]
    late: list[bool]
    overdue: list[tuple[int, int, Fraction]]  # address, value, time
    contents: bytes


def in_colours(colours: Colours, frame: Frame) -> Rows:
    """A frame as rows of colours, None for what is undefined."""
    return [[None if byte == UNDEFINED else colours.look(int(byte)) for byte in row] for row in frame]


def write(memory: PictureMemory, piece: Piece) -> None:
    """Store one piece."""
    memory.store(piece.addresses, piece.values)


def filled(machine: Machine, fills: Sequence[Burst]) -> PictureMemory:
    """Picture memory after the bursts of a set-up."""
    memory = PictureMemory(machine)
    for piece in set_up(fills):
        write(memory, piece)
    return memory


def bytes_of(pieces: Iterable[Piece]) -> list[tuple[int, int, Piece]]:
    """Each byte of ``pieces``: address, value, and the piece that it belongs to."""
    return [
        (int(address), int(value), piece)
        for piece in pieces
        for address, value in zip(piece.addresses, piece.values, strict=True)
    ]


def one_refresh(memory: PictureMemory, arrivals: Arrivals) -> Told:
    """Let bytes land in ``memory``, those inside blanking first, and draw the frame."""
    for piece in arrivals.pieces:
        if piece.line is None:
            write(memory, piece)
    on_lines = [piece for piece in arrivals.pieces if piece.line is not None]
    frame = active_display(memory, on_lines, lambda piece: write(memory, piece))
    landed = bytes_of(arrivals.pieces)
    return Told(
        frame=in_colours(memory.machine.colours, frame),
        landed=[(address, value, piece.line) for address, value, piece in landed],
        late=[piece.late for *_, piece in landed],
        overdue=[(address, value, Fraction(piece.time)) for address, value, piece in bytes_of(arrivals.overdue)],
        contents=memory.contents.tobytes(),
    )


def play_first(memory: PictureMemory, refreshes: Iterable[tuple[int, Sequence[Burst]]]) -> list[Told]:
    """Several refreshes in a row, each (cycles cut off its blanking, bursts)."""
    machine, told, overdue = memory.machine, list[Told](), tuple[Piece, ...]()
    for number, (cut, bursts) in enumerate(refreshes):
        cycles = max(0, machine.blank_cycles - taken_by(machine, overdue) - cut)
        arrivals = land(machine, number, bursts if cycles else (), cycles, overdue)
        told.append(one_refresh(memory, arrivals))
        overdue = arrivals.overdue
    return told
