"""The first model, played byte by byte and told in the words of the second, so that the two can be compared."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from planeproof.contract import Burst, Colours, Machine
from planeproof.display import UNDEFINED, Frame, PictureMemory, Piece, active_display, land, set_up
from planeproof.display.landing import taken_by
from tests.oracle.plain_display import Rows

Landed = list[tuple[int, int, int | None]]


@dataclass(frozen=True, kw_only=True)
class Told:
    """One refresh of the first model: the frame in colours, where each byte landed, memory afterwards."""

    frame: Rows
    landed: Landed
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


def one_refresh(memory: PictureMemory, pieces: Iterable[Piece]) -> Told:
    """Let pieces land in ``memory``, those inside blanking first, and draw the frame."""
    pieces = list(pieces)
    late = [piece for piece in pieces if piece.line is not None]
    for piece in pieces:
        if piece.line is None:
            write(memory, piece)
    frame = active_display(memory, late, lambda piece: write(memory, piece))
    landed = [
        (int(address), int(value), piece.line)
        for piece in pieces
        for address, value in zip(piece.addresses, piece.values, strict=True)
    ]
    colours = memory.machine.colours
    return Told(frame=in_colours(colours, frame), landed=landed, contents=memory.contents.tobytes())


def play_first(memory: PictureMemory, refreshes: Iterable[tuple[int, Sequence[Burst]]]) -> list[Told]:
    """Several refreshes in a row, each (cycles cut off its blanking, bursts)."""
    machine, told, overdue = memory.machine, list[Told](), tuple[Piece, ...]()
    for number, (cut, bursts) in enumerate(refreshes):
        cycles = max(0, machine.blank_cycles - taken_by(machine, overdue) - cut)
        arrivals = land(machine, number, bursts if cycles else (), cycles, overdue)
        told.append(one_refresh(memory, arrivals.pieces))
        overdue = arrivals.overdue
    return told
