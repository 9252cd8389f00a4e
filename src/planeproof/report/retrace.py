"""Going through a play again, byte by byte, to see picture memory just before and just after one of them."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from planeproof.contract import Outside, RegionKind
from planeproof.display import Frame, PictureMemory, Piece, land, set_up
from planeproof.judge import Play, Violation


@dataclass(frozen=True, kw_only=True, eq=False)
class Moment:
    """What would be seen, whole, just before one byte and just after it."""

    before: Frame
    after: Frame


def moment_of(play: Play, violation: Violation) -> Moment | None:
    """The moment of the byte that ``violation`` names; None where it names none, or one that has no effect."""
    if violation.burst is None or violation.byte is None:
        return None
    memory = PictureMemory(play.scene.machine)
    for piece in _pieces(play):
        named = (piece.bursts == violation.burst) & (piece.bytes == violation.byte)
        if piece.refresh == violation.refresh and named.any():
            place = int(np.flatnonzero(named)[0])
            _store(memory, piece, 0, place)
            before = memory.frame()
            _store(memory, piece, place, place + _together(play, violation))
            return Moment(before=before, after=memory.frame())
        _store(memory, piece, 0, len(piece))
    return None


def _together(play: Play, violation: Violation) -> int:
    """The bytes of one map entry are one write."""
    machine, address = play.scene.machine, violation.address
    regions = [region for region in machine.regions if address is not None and address in region]
    in_map = any(region.kind is RegionKind.MAP for region in regions)
    return machine.map.entry_bytes if in_map else 1


def _pieces(play: Play) -> Iterator[Piece]:
    """Everything that takes effect, in order."""
    machine = play.scene.machine
    yield from set_up(play.set_up)
    overdue: tuple[Piece, ...] = ()
    for refresh in play.refreshes:
        arrivals = land(machine, refresh.number, refresh.bursts, refresh.cycles, overdue)
        overdue = arrivals.overdue
        yield from (p for p in arrivals.pieces if p.line is None or machine.outside is not Outside.LOST)


def _store(memory: PictureMemory, piece: Piece, start: int, end: int) -> None:
    addresses, values = piece.addresses[start:end], piece.values[start:end]
    there = (addresses >= 0) & (addresses < memory.plan.extent)
    memory.store(addresses[there], values[there])
