"""The active display: the frame that is seen when bytes arrive while the beam draws it."""

from collections.abc import Callable, Sequence
from itertools import groupby

from planeproof.contract import Outside
from planeproof.display.landing import Piece
from planeproof.display.looks import UNDEFINED, Frame
from planeproof.display.memory import PictureMemory

Writing = Callable[[Piece], None]


def active_display(memory: PictureMemory, late: Sequence[Piece], write: Writing) -> Frame:
    """The frame of one refresh; ``late`` are the pieces that land on displayed lines, in order of writing.

    Displayed line y is drawn from memory after just the pieces with line <= y. ``write`` must store a piece
    in ``memory``; it is called once for each piece, in order, unless the machine loses late bytes.
    """
    frame = memory.frame()
    outside, first_line = memory.machine.outside, memory.machine.window.first_line
    if outside is Outside.LOST or not late:
        return frame
    frame = frame.copy()
    for line, pieces in groupby(late, key=lambda piece: piece.line or 0):
        for piece in pieces:
            write(piece)
        row = max(line - first_line, 0)
        if row < len(frame):
            frame[row:] = UNDEFINED if outside is Outside.WRECKS else memory.frame()[row:]
    return frame
