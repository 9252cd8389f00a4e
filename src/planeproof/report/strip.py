"""Pictures and frames as text: a character a pixel, or a character a cell, in strips side by side.

Nothing here needs colour: every pixel value has a character of its own, and `legend` says which is which.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import TILE_SIDE, Machine
from planeproof.display import UNDEFINED, Frame, looks

WIDTH = 100
"""Columns that a strip may take."""

GROUND, WRONG, NOT_KNOWN = "·", "X", "?"
INKS = "█▓▒░#*+"
"""One for each ink, in the order of the machine's inks; depth 3 has seven."""

_STRANGE = "abcdefghijklmnop"
"""For colours that are neither the background nor an ink, in the order of their looks; more share the last."""

_GAP = "   "


@dataclass(frozen=True, kw_only=True)
class Cut:
    """A rectangle of cells of the window: columns ``left`` to ``right``, rows ``top`` to ``bottom``, all included."""

    left: int
    top: int
    right: int
    bottom: int

    def __contains__(self, cell: tuple[int, int]) -> bool:
        return self.left <= cell[0] <= self.right and self.top <= cell[1] <= self.bottom

    def within(self, machine: Machine) -> str:
        """Which part of the window this is; nothing for the whole."""
        window = machine.window
        if (self.right - self.left + 1, self.bottom - self.top + 1) == (window.columns, window.rows):
            return ""
        columns, rows = _span("column", self.left, self.right), _span("row", self.top, self.bottom)
        return f"cells of {columns}, {rows} of the {window.columns} x {window.rows} window"


@dataclass(frozen=True, kw_only=True)
class Panel:
    """A picture as text below its title."""

    title: str
    lines: tuple[str, ...]

    @property
    def width(self) -> int:
        """Columns that it takes."""
        return max(map(len, (self.title, *self.lines)))


def side_by_side(panels: Iterable[Panel], *, indent: int) -> list[str]:
    """The panels from left to right, in as many strips as `WIDTH` makes necessary."""
    strips: list[list[Panel]] = []
    for panel in panels:
        taken = sum(p.width + len(_GAP) for p in strips[-1]) if strips else WIDTH
        if indent + taken + panel.width > WIDTH:
            strips.append([])
        strips[-1].append(panel)
    return [line for strip in strips for line in _strip(strip, indent)]


def _strip(panels: Sequence[Panel], indent: int) -> list[str]:
    height = max(len(panel.lines) for panel in panels)
    rows = [[panel.title for panel in panels]]
    rows += [[panel.lines[y] if y < len(panel.lines) else "" for panel in panels] for y in range(height)]
    widths = [panel.width for panel in panels]
    return [
        (" " * indent + _GAP.join(text.ljust(width) for text, width in zip(row, widths, strict=True))).rstrip()
        for row in rows
    ]


# --- a character a pixel -----------------------------------------------------------------------------------


def frame_panel(machine: Machine, title: str, frame: Frame, cut: Cut) -> Panel:
    """The part ``cut`` of ``frame``, a character a pixel."""
    signs = _signs(machine)
    text = np.array([[signs.get(int(value), _STRANGE[-1]) for value in row] for row in frame], dtype="U1")
    return Panel(title=title, lines=_boxed(text, cut))


def mask_panel(title: str, wrong: NDArray[np.bool_], cut: Cut) -> Panel:
    """The part ``cut`` of a mask (height, width): which pixels are meant."""
    return Panel(title=title, lines=_boxed(np.where(wrong, WRONG, GROUND), cut))


def legend(machine: Machine, frames: Iterable[Frame], *, mask: bool) -> str:
    """What the characters mean that these frames, and a mask beside them if there is one, are drawn with."""
    present = {int(value) for frame in frames for value in np.unique(frame)}
    grounds = looks(machine.colours)
    background = int(grounds[machine.colours.background])
    inks = [int(grounds[ink]) for ink in machine.colours.inks]
    said = [f"{GROUND} background"] if background in present or mask else []
    for number, ink in enumerate(inks, 1):
        name = "ink" if len(inks) == 1 else f"ink {number}"
        said += [f"{INKS[number - 1]} {name}"] if ink in present else []
    signs = _signs(machine)
    strange = sorted(present - {background, UNDEFINED, *inks})
    said += [f"{signs.get(look, _STRANGE[-1])} a pixel in colour {look}, which no picture has" for look in strange]
    said += [f"{NOT_KNOWN} undefined: late bytes wrecked the rest of the frame"] if UNDEFINED in present else []
    return ", ".join(said + ([f"{WRONG} differs"] if mask else []))


def _signs(machine: Machine) -> dict[int, str]:
    known = looks(machine.colours)
    signs = {int(known[ink]): INKS[number % len(INKS)] for number, ink in enumerate(machine.colours.inks)}
    signs |= {int(known[machine.colours.background]): GROUND, UNDEFINED: NOT_KNOWN}
    strange = [int(look) for look in np.unique(known) if int(look) not in signs]
    return signs | dict(zip(strange, _STRANGE, strict=False))


def _boxed(text: NDArray[np.str_], cut: Cut) -> tuple[str, ...]:
    """A box round each cell, so that cells can be counted."""
    columns = range(cut.left, cut.right + 1)
    lines = []
    for row in range(cut.top, cut.bottom + 1):
        lines.append(_edge("┌┬┐" if row == cut.top else "├┼┤", len(columns)))
        for y in range(row * TILE_SIDE, (row + 1) * TILE_SIDE):
            cells = ["".join(text[y, column * TILE_SIDE : (column + 1) * TILE_SIDE]) for column in columns]
            lines.append(f"│{'│'.join(cells)}│")
    return (*lines, _edge("└┴┘", len(columns)))


def _edge(corners: str, cells: int) -> str:
    return corners[0] + corners[1].join(["─" * TILE_SIDE] * cells) + corners[2]


# --- which cells -------------------------------------------------------------------------------------------

WIDEST, HIGHEST = 3, 3
"""Cells of a cut; three panels of it stand side by side."""


def cut_round(machine: Machine, cells: Iterable[int]) -> Cut:
    """The whole window if it is small, otherwise the cells concerned, as many as a cut holds from the first on."""
    columns, rows = machine.window.columns, machine.window.rows
    if columns <= WIDEST + 1 and rows <= HIGHEST:
        return Cut(left=0, top=0, right=columns - 1, bottom=rows - 1)
    concerned = sorted(set(cells)) or [0]
    first_row, first_column = divmod(concerned[0], columns)
    near = [cell for cell in concerned if cell // columns < first_row + HIGHEST]
    near = [cell for cell in near if abs(cell % columns - first_column) < WIDEST]
    left = min(cell % columns for cell in near)
    right = min(max(cell % columns for cell in near), left + WIDEST - 1)
    return Cut(left=left, top=first_row, right=right, bottom=max(cell // columns for cell in near))


def cells_of(machine: Machine, wrong: NDArray[np.bool_]) -> list[int]:
    """The cells that have a pixel in the mask ``wrong``, shape (height, width)."""
    rows, columns = machine.window.rows, machine.window.columns
    grid = wrong.reshape(rows, TILE_SIDE, columns, TILE_SIDE).any(axis=(1, 3))
    return np.flatnonzero(grid).tolist()


# --- a character a cell ------------------------------------------------------------------------------------


def cell_panel(machine: Machine, title: str, marked: Iterable[int], sign: str) -> Panel:
    """The whole window, a character a cell: ``sign`` for those ``marked``. Windows wider than a page are cut."""
    columns = machine.window.columns
    grid = np.full(machine.cells, GROUND, dtype="U1")
    grid[list(marked)] = sign
    lines = ["".join(row)[: WIDTH - 8] for row in grid.reshape(-1, columns)]
    return Panel(title=title, lines=tuple(lines))


def _span(what: str, first: int, last: int) -> str:
    return f"{what} {first}" if first == last else f"{what}s {first}-{last}"
