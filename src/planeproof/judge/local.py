"""The local rules, judged write by write as bytes land in picture memory."""

import copy
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Self

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import Outside, Rational, Rule
from planeproof.contract.rules import BLANKING_ONLY, EXACT_REVEAL, HIDDEN_WRITES, OWN_MEMORY, TILE_CAP
from planeproof.display import Frame, PictureMemory, Piece, View
from planeproof.display.looks import arranged
from planeproof.display.plan import NOBODY
from planeproof.judge.unseen import Unseen
from planeproof.judge.view_change import ViewChange, view_change
from planeproof.judge.violation import Violation, in_pixels

Report = Callable[[Violation], None]
ShownRight = Callable[[Frame], str | None]
"""Asked with what a new view shows: None if it may be shown now, otherwise what is wrong with it."""


class WriteJudge:
    """Stores pieces in ``memory`` and reports every local rule that they break.

    Call `begin` with all pieces of a refresh, then `write` with each that takes effect, in order.
    """

    def __init__(self, memory: PictureMemory, report: Report, shown_right: ShownRight) -> None:
        self.memory = memory
        self._plan = memory.plan
        self._report = report
        self._shown_right = shown_right
        self._hides = memory.machine.sides > 1
        self._change: ViewChange | None = None
        self._setting_up = True
        self._clock = 0
        self.changed_patterns = self.changed_map = False
        self.revealed: Frame | None = None
        self._judged_tiles: NDArray[np.intp] = np.zeros(0, dtype=np.intp)
        self._unseen = Unseen(memory)

    def twin(self, memory: PictureMemory, report: Report, shown_right: ShownRight) -> Self:
        """Another that has judged the same so far, for a twin of the memory."""
        twin = copy.copy(self)
        twin.memory, twin._report, twin._shown_right = memory, report, shown_right
        twin._unseen = self._unseen.twin(memory)
        return twin

    def begin(self, pieces: Sequence[Piece], *, setting_up: bool = False) -> None:
        """Get ready for the pieces of one refresh, of which the view change is found in advance."""
        self._setting_up = setting_up
        self._clock = 0
        self._change = view_change(self.memory, pieces)
        self.changed_patterns = self.changed_map = False
        self.revealed = None

    def write_all(self, pieces: Sequence[Piece]) -> None:
        """Judge and store pieces in order; what comes before and after a view change together, if none can be seen."""
        for piece in pieces:
            before, during, after = self._parted(piece)
            for part in (before, during, after):
                if not self._store_unseen(part):
                    self.write(part)

    def write(self, piece: Piece) -> None:
        """Judge and store one piece, burst by burst."""
        for start, end in pairwise(piece.cuts):
            self._write_burst(piece[start:end])

    def _write_burst(self, piece: Piece) -> None:
        inside = (piece.addresses >= 0) & (piece.addresses < self._plan.extent)
        self._judge_owner(piece, inside)
        for start, end in self._runs(piece, inside):
            self._write_run(piece, slice(start, end))
            change = self._change
            if change is not None and not self._setting_up and self._clock + start <= change.last < self._clock + end:
                self._judge_reveal(piece, change.last - self._clock)
        self._clock += len(piece)

    # --- what can't be seen, all at once --------------------------------------------------------------------

    def _parted(self, piece: Piece) -> tuple[Piece, Piece, Piece]:
        """The bursts before the view change, those that hold any of it or lie within it, and those after it."""
        if self._change is None:
            return piece, piece[:0], piece[:0]
        cuts = piece.cuts
        first = max((cut for cut in cuts if self._clock + cut <= self._change.first), default=0)
        last = min((cut for cut in cuts if self._clock + cut > self._change.last), default=len(piece))
        last = max(first, last)
        return piece[:first], piece[first:last], piece[last:]

    def _store_unseen(self, piece: Piece) -> bool:
        """Store ``piece`` if it is plain that no byte of it can be seen or is anybody else's; tell whether it is."""
        if not len(piece):
            return True
        change = self._change
        changing = change is not None and self._clock <= change.last and self._clock + len(piece) > change.first
        if not self._hides or self._setting_up or changing:
            return False
        if not self._unseen.plainly(piece.addresses, piece.values):
            return False
        changed = self.memory.contents[piece.addresses] != piece.values
        in_map = self._plan.page[piece.addresses] != NOBODY
        self.changed_map |= bool((changed & in_map).any())
        self.changed_patterns |= bool((changed & ~in_map).any())
        self.memory.store(piece.addresses, piece.values, unseen=True)
        self._clock += len(piece)
        return True

    def judge_shown_tiles(self, refresh: int) -> None:
        """Rule tile-cap, for the map entries that are being shown; the same entries are reported once."""
        view = self.memory.view
        tiles = self.memory.tiles_named(view.page, view.bank)
        if np.array_equal(tiles, self._judged_tiles):
            return
        self._judged_tiles = tiles
        for cell in np.flatnonzero(~self._plan.mappable[tiles]):
            name = "no tile at all" if tiles[cell] == NOBODY else f"tile {tiles[cell]}"
            said = f"the shown page names {name} in cell {cell}, which is not of the pool"
            self._report(Violation(rule=TILE_CAP, refresh=refresh, cell=int(cell), said=said))

    # --- one run: bytes of one kind of region, judged under the same views --------------------------------

    def _runs(self, piece: Piece, inside: NDArray[np.bool_]) -> Iterator[tuple[int, int]]:
        kinds = self._kinds(piece.addresses, inside)
        cuts = {0, len(kinds), *(np.flatnonzero(np.diff(kinds)) + 1).tolist()}
        if self._change is not None:
            cuts |= {self._change.first - self._clock, self._change.last + 1 - self._clock}
        ordered = sorted(cut for cut in cuts if 0 <= cut <= len(kinds))
        for start, end in pairwise(ordered):
            if inside[start]:
                yield start, end

    def _kinds(self, addresses: NDArray[np.intp], inside: NDArray[np.bool_]) -> NDArray[np.intp]:
        known = np.where(inside, addresses, 0)
        kinds = (self._plan.tile[known] != NOBODY) + 2 * (self._plan.page[known] - NOBODY)  # each page its own kind
        return np.where(inside, kinds + 3 * (self._plan.view[known] != NOBODY), -1)

    def _write_run(self, piece: Piece, run: slice) -> None:
        addresses, values = piece.addresses[run], piece.values[run]
        changed = self.memory.contents[addresses] != values
        if not changed.any():
            return
        bytes_at = np.flatnonzero(changed) + run.start
        addresses, values = piece.addresses[bytes_at], piece.values[bytes_at]
        if self._plan.tile[addresses[0]] != NOBODY:
            self.changed_patterns = True
            self._judge_pool(piece, bytes_at)
            self._write_patterns(piece, bytes_at)
        elif self._plan.page[addresses[0]] != NOBODY:
            self.changed_map = True
            self._write_map(piece, bytes_at)
        else:
            self.memory.store(addresses, values)

    def _views(self, byte: int) -> tuple[View, ...]:
        if self._setting_up or not self._hides:
            return ()
        return (self.memory.view,) if self._change is None else self._change.views_at(self._clock + byte)

    def _write_patterns(self, piece: Piece, bytes_at: NDArray[np.intp]) -> None:
        addresses = piece.addresses[bytes_at]
        named = [(view, self.memory.tiles_named(view.page, view.bank)) for view in self._views(int(bytes_at[0]))]
        tiles = np.unique(self._plan.tile[addresses])
        if not any(np.isin(tiles, cells).any() for _, cells in named):
            self.memory.store(addresses, piece.values[bytes_at])
            return
        numbers = self._plan.pass_of[self._plan.offset[addresses]]
        for number in np.unique(numbers):
            self._write_pass(piece, bytes_at[numbers == number], named)

    def _write_pass(self, piece: Piece, bytes_at: NDArray[np.intp], named: list[tuple[View, NDArray[np.intp]]]) -> None:
        addresses = piece.addresses[bytes_at]
        tiles = np.unique(self._plan.tile[addresses])
        before = [self.memory.shown_cells(tiles, view) for view, _ in named]
        self.memory.store(addresses, piece.values[bytes_at])
        for (view, cells), old in zip(named, before, strict=True):
            differs = old != self.memory.shown_cells(tiles, view)
            differs &= np.isin(tiles, cells)[:, None, None]
            if differs.any():
                self._report_patterns(piece, bytes_at, tiles, differs, cells)

    def _report_patterns(
        self,
        piece: Piece,
        bytes_at: NDArray[np.intp],
        tiles: NDArray[np.intp],
        differs: NDArray[np.bool_],
        cells: NDArray[np.intp],
    ) -> None:
        for byte in bytes_at.tolist():
            address = int(piece.addresses[byte])
            tile, offset = int(self._plan.tile[address]), int(self._plan.offset[address])
            pixels = differs[int(np.searchsorted(tiles, tile))] & self._plan.pixels_of[offset]
            if pixels.any():
                seen_in = np.flatnonzero(cells == tile)
                changed = in_pixels(int(pixels.sum()))
                said = f"it changes {changed} of tile {tile}, which is being seen in cell {seen_in[0]}"
                mask = np.where((cells == tile)[:, None, None], pixels[None], False)
                self._report(self._at(HIDDEN_WRITES, piece, byte, said, cell=int(seen_in[0]), mask=mask))

    def _write_map(self, piece: Piece, bytes_at: NDArray[np.intp]) -> None:
        addresses = piece.addresses[bytes_at]
        cells, page = self._plan.cell[addresses], int(self._plan.page[addresses[0]])
        views = [view for view in self._views(int(bytes_at[0])) if view.page == page]
        in_window = np.unique(cells[cells != NOBODY])
        if not views or not len(in_window):
            self.memory.store(addresses, piece.values[bytes_at])
            return
        before = self.memory.entries(page)[in_window]
        self.memory.store(addresses, piece.values[bytes_at])
        after = self.memory.entries(page)[in_window]
        for view in views:
            old, new = self.memory.tiles_of(before, view.bank), self.memory.tiles_of(after, view.bank)
            differs = self.memory.shown_cells(old, view) != self.memory.shown_cells(new, view)
            for place in np.flatnonzero(differs.any(axis=(1, 2))):
                cell = int(in_window[place])
                byte = int(bytes_at[cells == cell][0])
                mask = np.zeros((self.memory.machine.cells, 8, 8), dtype=np.bool_)
                mask[cell] = differs[place]
                said = f"it changes {in_pixels(int(mask.sum()))} of cell {cell}, whose map page is being seen"
                self._report(self._at(HIDDEN_WRITES, piece, byte, said, cell=cell, mask=mask))

    # --- the other local rules ----------------------------------------------------------------------------

    def _judge_owner(self, piece: Piece, inside: NDArray[np.bool_]) -> None:
        owned = inside.copy()
        owned[inside] = self._plan.owned[piece.addresses[inside]]
        for byte in np.flatnonzero(~owned).tolist():
            said = f"it writes to {self._place(int(piece.addresses[byte]))}"
            self._report(self._at(OWN_MEMORY, piece, byte, said))

    def _place(self, address: int) -> str:
        if not 0 <= address < self._plan.extent:
            return f"address {address}, where there is no picture memory (it ends at {self._plan.extent - 1})"
        tile = int(self._plan.tile[address])
        if tile in self.memory.machine.blank_tiles:
            return f"tile {tile}, which is the blank tile"
        if tile != NOBODY:
            return f"tile {tile}, which is not of the pool"
        page = int(self._plan.page[address])
        return f"map page {page} outside the window" if page != NOBODY else "what is not the window's"

    def _judge_pool(self, piece: Piece, bytes_at: NDArray[np.intp]) -> None:
        tiles = self._plan.tile[piece.addresses[bytes_at]]
        for byte, tile in zip(bytes_at.tolist(), tiles.tolist(), strict=True):
            if not self._plan.pooled[tile]:
                said = f"it changes a pattern byte of tile {tile}, which is not of the pool"
                self._report(self._at(TILE_CAP, piece, byte, said))

    def _judge_reveal(self, piece: Piece, byte: int) -> None:
        frame = self.memory.frame()
        self.revealed = frame
        wrong = self._shown_right(frame)
        if wrong is not None:
            self._report(self._at(EXACT_REVEAL, piece, byte, f"after this byte the view has changed, and {wrong}"))

    def _at(
        self,
        rule: Rule,
        piece: Piece,
        byte: int,
        said: str,
        *,
        cell: int | None = None,
        mask: NDArray[np.bool_] | None = None,
    ) -> Violation:
        return Violation(
            rule=rule,
            refresh=piece.refresh,
            burst=int(piece.bursts[byte]),
            byte=int(piece.bytes[byte]),
            address=int(piece.addresses[byte]),
            cell=cell,
            pixels=None if mask is None else arranged(self.memory.machine, mask),
            said=said,
        )


def judge_lateness(piece: Piece, outside: Outside, report: Report) -> None:
    """Rule blanking-only, for a piece that came too late."""
    landed = "in the next blanking" if piece.line is None else f"on displayed line {piece.line}"
    fate = " and is lost" if outside is Outside.LOST and piece.line is not None else ""
    violation = Violation(
        rule=BLANKING_ONLY,
        refresh=piece.refresh,
        burst=int(piece.bursts[0]),
        byte=int(piece.bytes[0]),
        address=int(piece.addresses[0]),
        said=f"it comes too late: it lands {landed}{fate}",
    )
    report(violation)


def with_margin(violation: Violation, margin: Rational) -> Violation:
    """The same violation, with the cycles that spared the viewer."""
    return replace(violation, margin=margin)
