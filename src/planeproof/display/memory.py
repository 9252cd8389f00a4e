"""Picture memory in numpy: its bytes, the view they are seen through, and the frame that results."""

import copy
from dataclasses import dataclass
from typing import Self

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import Machine
from planeproof.display.looks import Frame, arranged, looks
from planeproof.display.plan import NOBODY, Plan, plan_of


@dataclass(frozen=True, slots=True)
class View:
    """What the display shows through: the window's palette bytes, the shown map page, the shown bank."""

    palette: bytes
    page: int
    bank: int


class PictureMemory:
    """The picture memory of a machine, in the state before `Scheduler.start` when new.

    ``contents`` is a uint8 array (extent,), indexed by address. Change it with `store` only, so that what is
    derived from it stays true.
    """

    def __init__(self, machine: Machine) -> None:
        self.machine = machine
        self.plan: Plan = plan_of(machine)
        self.contents: NDArray[np.uint8] = self.plan.beginning.copy()
        self._looks = looks(machine.colours)
        tiles = machine.tiles.count
        self._pixels: NDArray[np.uint8] = np.zeros((tiles, 8, 8), dtype=np.uint8)
        # One more than there are tiles: the last stands for addresses that belong to none (`NOBODY`).
        self._stale: NDArray[np.bool_] = np.zeros(tiles + 1, dtype=np.bool_)
        self._view: View | None = None
        self._frame: Frame | None = None

    def copy(self) -> Self:
        """A second picture memory with the same contents, all else worked out anew."""
        twin = type(self)(self.machine)
        twin.contents[:] = self.contents
        twin._stale[:] = True
        return twin

    def twin(self) -> Self:
        """A second picture memory that is just as this one, down to the frame that it has at hand."""
        twin = copy.copy(self)
        twin.contents, twin._pixels, twin._stale = self.contents.copy(), self._pixels.copy(), self._stale.copy()
        return twin

    def store(self, addresses: NDArray[np.intp], values: NDArray[np.uint8], *, unseen: bool = False) -> None:
        """Write ``values`` to ``addresses``, both of shape (n,), all of them within memory.

        ``unseen`` is for callers who know that no pixel of the frame changes, and no byte of the view.
        """
        self.contents[addresses] = values
        self._stale[self.plan.tile[addresses]] = True
        if not unseen:
            self._view = self._frame = None

    @property
    def view(self) -> View:
        """The view as the palette and the view registers stand now."""
        if self._view is None:
            self._view = self.view_of(self.contents[self.plan.view_addresses])
        return self._view

    def view_of(self, view_bytes: NDArray[np.uint8]) -> View:
        """The view that results from these values of the view bytes, in the order of ``plan.view_addresses``."""
        machine, held = self.machine, view_bytes.tobytes()
        colours = 0 if machine.colours.fixed else 1 << machine.tiles.planes
        palette = held[:colours] if colours else machine.palette_showing(0)
        registers = list(held[colours:])
        page = registers.pop(0) % machine.map.pages if machine.map.pages > 1 else 0
        bank = registers.pop(0) % machine.map.banks if machine.map.banks > 1 else 0
        return View(palette, page, bank)

    def tiles_named(self, page: int, bank: int) -> NDArray[np.intp]:
        """The tile that each cell of the window names on ``page`` under ``bank``; `NOBODY` for no tile."""
        return self.tiles_of(self.entries(page), bank)

    def entries(self, page: int) -> NDArray[np.intp]:
        """The map entries of the window's cells on ``page``, as numbers; shape (cells,)."""
        addresses = self.plan.entry_addresses[page]
        entries: NDArray[np.intp] = self.contents[addresses[:, 0]].astype(np.intp)
        if addresses.shape[1] == 2:
            entries += self.contents[addresses[:, 1]].astype(np.intp) << 8
        return entries

    def tiles_of(self, entries: NDArray[np.intp], bank: int) -> NDArray[np.intp]:
        """The tiles that map entries name under ``bank``: modulo the least power of two, `NOBODY` beyond the last."""
        per_bank = self.machine.tiles_per_bank
        local = entries & ((1 << (per_bank - 1).bit_length()) - 1)
        return np.where(local < per_bank, local + bank * per_bank, NOBODY)

    def pixels(self, tiles: NDArray[np.intp]) -> NDArray[np.uint8]:
        """Pixel values (n, 8, 8) of ``tiles``, none of them `NOBODY`."""
        stale = np.flatnonzero(self._stale[:-1])
        if len(stale):
            start, size = self.machine.layout.patterns, self.machine.tile_bytes
            blocks = self.contents[start : start + len(self._pixels) * size].reshape(-1, size)[stale]
            self._pixels[stale] = self.machine.tile_bits.pixels(blocks)
            self._stale[stale] = False
        return self._pixels[tiles]

    def frame(self, view: View | None = None) -> Frame:
        """What would be seen now, whole, under ``view`` (default: the view as it stands); read-only.

        As long as nothing that is seen changes, it is the same array again.
        """
        if view is not None and view != self.view:
            return self._drawn(view)
        if self._frame is None:
            self._frame = self._drawn(self.view)
        return self._frame

    def _drawn(self, view: View) -> Frame:
        tiles = self.tiles_named(view.page, view.bank)
        nothing = tiles == NOBODY
        frame = self.shades(view).take(arranged(self.machine, self.pixels(np.where(nothing, 0, tiles))))
        if nothing.any():
            unlit = arranged(self.machine, np.broadcast_to(nothing[:, None, None], (len(tiles), 8, 8)))
            frame[unlit] = self._looks[self.machine.colours.background]
        frame.flags.writeable = False
        return frame

    def shown_cells(self, tiles: NDArray[np.intp], view: View) -> NDArray[np.int16]:
        """How cells that name ``tiles`` look under ``view``: int16 (n, 8, 8); no tile looks like background."""
        shades = self.shades(view)
        cells = shades[self.pixels(np.where(tiles == NOBODY, 0, tiles))]
        cells[tiles == NOBODY] = self._looks[self.machine.colours.background]
        return cells

    def shades(self, view: View) -> NDArray[np.int16]:
        """The look of each pixel value under ``view``; shape (2^planes,)."""
        return self._looks[np.frombuffer(view.palette, dtype=np.uint8)]
