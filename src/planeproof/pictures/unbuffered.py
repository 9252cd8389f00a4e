"""The picture without any buffering: what the same bursts would look like, aimed at what is being seen.

Every byte that the scheduler sends to a side that can't be seen lands at the same cycle, but on the side that is seen:
the same row of the same tile in the seen plane, the same cell on the seen page. Nothing is slowed, and nothing is
exaggerated: each upload begins from the picture that the viewer really has then, whole, and at the reveal the picture
that the scheduler really reveals stands there. (A scheduler that sends differences sends those from its hidden side;
laid over the seen one again and again they would leave rubbish that no unbuffered renderer would.) View changes take
their cycles and do nothing more. Before the first reveal side 0 is looked at.
"""

from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import Machine, RegionKind, Storage
from planeproof.display import Arrivals, Frame, PictureMemory, Piece, active_display
from planeproof.display.plan import NOBODY
from planeproof.pictures.sides import side_shown, view_of_side

Addresses = NDArray[np.intp]
Bytes = NDArray[np.uint8]


class Unbuffered:
    """Follows a run from ``memory``, as it stands after the set-up, refresh by refresh."""

    def __init__(self, memory: PictureMemory) -> None:
        self.machine = memory.machine
        self._real = memory.twin()
        self._aimed = memory.twin()
        shown = side_shown(self.machine, memory.view)
        self.side = 0 if shown is None else shown
        self._look_at_side()

    def frame(self, arrivals: Arrivals) -> Frame:
        """What would be seen in the refresh in which these bytes arrive; call it once a refresh, in order."""
        drawn = [piece for piece in arrivals.pieces if piece.line is not None]
        for piece in arrivals.pieces:
            if piece.line is None:
                self._write(piece)
        return active_display(self._aimed, drawn, self._write)

    def _write(self, piece: Piece) -> None:
        plan = self._real.plan
        there = (piece.addresses >= 0) & (piece.addresses < plan.extent)
        addresses, values, bursts = piece.addresses[there], piece.values[there], piece.bursts[there]
        views = plan.view[addresses] != NOBODY
        # A byte of the view may be the reveal: what follows it is aimed at another side, so it stands alone.
        ends = np.flatnonzero((np.diff(bursts) != 0) | views[1:] | views[:-1]) + 1
        for run in np.split(np.arange(len(addresses)), ends):
            if len(run):
                self._send(addresses[run], values[run], view=bool(views[run[0]]))

    def _send(self, addresses: Addresses, values: Bytes, *, view: bool) -> None:
        held = self._real.contents[addresses]
        self._real.store(addresses, values)
        if view:
            self._reveal()
        else:
            self._aim(addresses, values, held)

    def _reveal(self) -> None:
        shown = side_shown(self.machine, self._real.view)
        if shown is not None and shown != self.side:
            self.side = shown
            self._aimed.store(np.arange(self._real.plan.extent), self._real.contents.copy())

    def _look_at_side(self) -> None:
        """Show the side, whatever the scheduler has shown so far."""
        view = view_of_side(self.machine, self.side)
        registers = [view.page] * (self.machine.map.pages > 1) + [view.bank] * (self.machine.map.banks > 1)
        colours = b"" if self.machine.colours.fixed else view.palette
        held = np.frombuffer(colours + bytes(registers), dtype=np.uint8)
        self._aimed.store(self._aimed.plan.view_addresses, held)

    def _aim(self, addresses: Addresses, values: Bytes, held: Bytes) -> None:
        targets = target_addresses(self.machine, self.side)[addresses]
        if self.machine.tiles.storage is Storage.PACKED:
            values = self._packed(addresses, targets, values, held)
            unseen = np.ones(len(values), dtype=np.bool_)
        else:
            unseen = targets != addresses
        # What stands on the seen side already and is only written again must not undo what was aimed at it.
        kept = unseen | (values != held)
        self._aimed.store(targets[kept], values[kept])

    def _packed(self, addresses: Addresses, targets: Addresses, values: Bytes, held: Bytes) -> Bytes:
        """The values with the bits of the planes behind moved to the seen planes, all others as they stand."""
        plan, machine = self._real.plan, self.machine
        offsets = plan.offset[addresses]
        patterns = plan.tile[addresses] != NOBODY
        result = self._aimed.contents[targets].copy()
        changed = values ^ held
        for plane in range(machine.plane_sets * machine.tiles.depth):
            seen = machine.planes_of(self.side)[plane % machine.tiles.depth]
            bits = plan.bits_of[plane, offsets]
            if plane == seen:
                result = _merged(result, values, bits & changed)
            elif machine.plane_sets == 2 or (bits & changed).any():
                shift = seen - plane
                result = _merged(result, _shifted(values, shift), _shifted(bits, shift))
        return np.where(patterns, result, values)


@lru_cache(maxsize=64)
def target_addresses(machine: Machine, side: int) -> Addresses:
    """For each address the one that stands in the same place of ``side``; shape (extent,)."""
    extent = max(region.end for region in machine.regions)
    targets = np.arange(extent)
    for region in machine.regions:
        if region.kind is RegionKind.MAP:
            there = machine.layout.maps[machine.page_of(side)]
            targets[region.start : region.end] = np.arange(there, there + region.length)
        elif region.kind is RegionKind.PATTERNS:
            tiles = np.arange(machine.tiles.count) % machine.tiles_per_bank
            tiles += machine.bank_of(side) * machine.tiles_per_bank
            places = tiles[:, None] * machine.tile_bytes + _offsets(machine, side)
            targets[region.start : region.end] = region.start + places.ravel()
    targets.flags.writeable = False
    return targets


def _offsets(machine: Machine, side: int) -> Addresses:
    """Where each byte of a tile stands if its plane becomes the plane of ``side``; shape (tile bytes,)."""
    offsets = np.arange(machine.tile_bytes)
    if machine.tiles.storage is Storage.PACKED:
        return offsets
    for plane in range(machine.plane_sets * machine.tiles.depth):
        seen = machine.planes_of(side)[plane % machine.tiles.depth]
        for row in range(8):
            here = machine.tiles.storage.line_offset(machine.tiles.planes, plane, row)
            offsets[here] = machine.tiles.storage.line_offset(machine.tiles.planes, seen, row)
    return offsets


def _shifted(values: Bytes, places: int) -> Bytes:
    return np.left_shift(values, places) if places >= 0 else np.right_shift(values, -places)


def _merged(below: Bytes, above: Bytes, bits: Bytes) -> Bytes:
    return (below & ~bits) | (above & bits)
