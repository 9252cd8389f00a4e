"""What of the bytes that were sent was for nothing, and which tiles a candidate used: one play, gone through again.

Every byte that was sent after the set-up is of one of four kinds:

* *held*: it was what memory held already at its address, when it landed;
* *seen*: it changed memory, and before its address changed again some frame would have been another with the old byte
  there, all else as it was;
* *unseen*: it changed memory, but there was no such frame. Bytes that others replaced before they could be seen are
  among them, and colours of pixel values that no pixel on the screen had;
* *lost*: it never reached picture memory: it came too late where that loses it, or went where no memory is.

What is not seen is waste. A byte that came too late counts as landed at the end of its frame. In a torn frame it is
memory as it stands at the end of that frame that counts as shown.

>>> from planeproof.candidates.reference import Fresh
>>> from planeproof.contract import Machine, Picture, Scene, Tiles, Window
>>> from planeproof.judge import play
>>> machine = Machine(name="tiny", window=Window(columns=2, rows=1), tiles=Tiles(count=3, pool=(1, 2)))
>>> scene = Scene.of(machine, [Picture.from_rows(0, [[0, 0, 0, 255, 0, 0, 0, 0], [0] * 8])])
>>> waste_of(play(scene, Fresh))
Waste(sent=14, held=9, unseen=1, lost=0, tiles=1)

(Eight pattern bytes, of which only one is not 0 as before; two entries, of which one names the blank tile as before;
and in one burst three colours and the page. Colour 3 is as it was: 9 held. Colours 1 and 2 change, but no pixel has
value 1, so nobody would have missed the former.)
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import Machine, Outside
from planeproof.display import PictureMemory, Piece, View, land, set_up
from planeproof.display.plan import NOBODY
from planeproof.judge import Play


@dataclass(frozen=True, kw_only=True)
class Waste:
    """Bytes ``sent`` in one play after the set-up, and how many of them were ``held``, ``unseen`` and ``lost``.

    ``tiles``: different tiles of the pool of which a pattern byte was sent, or that a frame showed in the window.
    """

    sent: int
    held: int
    unseen: int
    lost: int
    tiles: int


def waste_of(play: Play) -> Waste:
    """Go through ``play`` again, and tell every byte by what became of it."""
    ledger = _Ledger(play.scene.machine)
    for piece in set_up(play.set_up):
        ledger.set_up(piece)
    overdue: tuple[Piece, ...] = ()
    for refresh in play.refreshes:
        arrivals = land(play.scene.machine, refresh.number, refresh.bursts, refresh.cycles, overdue)
        overdue = arrivals.overdue
        for piece in arrivals.pieces:
            ledger.write(piece)
        if arrivals.pieces or not refresh.number:
            ledger.show()
    return ledger.closed(still_to_land=sum(map(len, overdue)))


class _Ledger:
    """Picture memory, and beside it every changed byte that no frame has shown yet, with what stood there before."""

    def __init__(self, machine: Machine) -> None:
        self._memory = PictureMemory(machine)
        self._plan = self._memory.plan
        self._loses_late = machine.outside is Outside.LOST
        self._open: dict[int, int] = {}
        self._tiles: set[int] = set()
        self._sent = self._held = self._unseen = self._lost = 0

    def set_up(self, piece: Piece) -> None:
        """The bytes of `Scheduler.start` land, which are free."""
        inside = self._inside(piece)
        self._memory.store(piece.addresses[inside], piece.values[inside])

    def write(self, piece: Piece) -> None:
        """The bytes of a piece land."""
        self._sent += len(piece)
        inside = self._inside(piece)
        if piece.line is not None and self._loses_late:
            inside[:] = False
        self._lost += int((~inside).sum())
        addresses, values = piece.addresses[inside], piece.values[inside]
        self._tiles.update(self._plan.tile[addresses].tolist())
        held = dict(zip(addresses.tolist(), self._memory.contents[addresses].tolist(), strict=True))
        for address, value in zip(addresses.tolist(), values.tolist(), strict=True):
            self._enter(address, held[address], value)
            held[address] = value
        self._memory.store(addresses, values)

    def show(self) -> None:
        """A frame is seen: what it would be another without is seen."""
        view = self._memory.view
        self._tiles.update(self._memory.tiles_named(view.page, view.bank).tolist())
        addresses = np.fromiter(self._open, dtype=np.intp, count=len(self._open))
        before = np.fromiter(self._open.values(), dtype=np.uint8, count=len(self._open))
        for seen in (self._seen_patterns, self._seen_entries, self._seen_view):
            for address in addresses[seen(addresses, before, view)].tolist():
                del self._open[address]

    def closed(self, *, still_to_land: int) -> Waste:
        """The account when the play is over."""
        pooled = self._plan.pooled
        return Waste(
            sent=self._sent + still_to_land,
            held=self._held,
            unseen=self._unseen + len(self._open),
            lost=self._lost + still_to_land,
            tiles=sum(1 for tile in self._tiles if tile != NOBODY and pooled[tile]),
        )

    def _inside(self, piece: Piece) -> NDArray[np.bool_]:
        return (piece.addresses >= 0) & (piece.addresses < self._plan.extent)

    def _enter(self, address: int, before: int, value: int) -> None:
        if value == before:
            self._held += 1
            return
        self._unseen += address in self._open
        self._open[address] = before

    # --- whether the frame would be another if one byte were as before; bool (n,), one for each address ---------

    def _seen_patterns(self, addresses: NDArray[np.intp], before: NDArray[np.uint8], view: View) -> NDArray[np.bool_]:
        memory, bits = self._memory, self._memory.machine.tile_bits
        seen: NDArray[np.bool_] = np.isin(self._plan.tile[addresses], memory.tiles_named(view.page, view.bank))
        seen &= self._plan.tile[addresses] != NOBODY
        chosen = addresses[seen]
        flips = memory.contents[chosen] ^ before[seen]
        ours = bits.offset[None] == self._plan.offset[chosen][:, None, None, None]
        flipped = np.where(ours, flips[:, None, None, None] >> bits.bit & 1, 0).astype(np.uint8)
        planes = np.arange(bits.planes, dtype=np.uint8)[:, None, None]
        changed = np.bitwise_or.reduce(flipped << planes, axis=1)
        pixels, shades = memory.pixels(self._plan.tile[chosen]), memory.shades(view)
        seen[seen] = (shades[pixels] != shades[pixels ^ changed]).any(axis=(1, 2))
        return seen

    def _seen_entries(self, addresses: NDArray[np.intp], before: NDArray[np.uint8], view: View) -> NDArray[np.bool_]:
        memory = self._memory
        of_window: NDArray[np.bool_] = self._plan.cell[addresses] != NOBODY
        seen: NDArray[np.bool_] = (self._plan.page[addresses] == view.page) & of_window
        chosen, cells = addresses[seen], self._plan.cell[addresses[seen]]
        flips = (memory.contents[chosen] ^ before[seen]).astype(np.intp)
        high = self._plan.entry_addresses[view.page][cells, 0] != chosen
        now = memory.entries(view.page)[cells]
        then = now ^ np.where(high, flips << 8, flips)
        looks = [memory.shown_cells(memory.tiles_of(entries, view.bank), view) for entries in (now, then)]
        seen[seen] = (looks[0] != looks[1]).any(axis=(1, 2))
        return seen

    def _seen_view(self, addresses: NDArray[np.intp], before: NDArray[np.uint8], _view: View) -> NDArray[np.bool_]:
        memory = self._memory
        seen: NDArray[np.bool_] = self._plan.view[addresses] != NOBODY
        for place in np.flatnonzero(seen).tolist():
            as_it_is = memory.contents[self._plan.view_addresses]
            as_it_is[self._plan.view[addresses[place]]] = before[place]
            seen[place] = bool((memory.frame(memory.view_of(as_it_is)) != memory.frame()).any())
        return seen
