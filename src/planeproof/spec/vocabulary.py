"""What the symbolic readings speak of: picture memory, view, picture and writes as z3 terms.

A state is a bundle of functions on terms. Free ones are uninterpreted functions, so a statement about them holds
for *any* content; a state after a write is the same functions with one place changed, so no axiom is needed to say
what a write does, and nothing here has a quantifier.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import TypeAlias

import z3

from planeproof.contract import TILE_SIDE

Term: TypeAlias = z3.ExprRef
"""A bit-vector: a tile number, a row, a byte, a colour."""

Formula: TypeAlias = z3.BoolRef


def all_of(*formulas: Formula) -> Formula:
    """Their conjunction; one formula stays itself, since not every solver reads an `and` of one."""
    return formulas[0] if len(formulas) == 1 else z3.And(*formulas)


def bit_at(byte: Term, column: Term | int) -> Term:
    """The bit of ``byte`` at ``column``, one bit wide; bit 7 is column 0, the leftmost pixel."""
    if isinstance(column, int):
        return z3.Extract(7 - column, 7 - column, byte)
    return z3.Extract(0, 0, z3.LShR(byte, z3.ZeroExt(8 - column.size(), ~column)))


def joined(bits: list[Term]) -> Term:
    """One bit-vector of several, highest first."""
    return bits[0] if len(bits) == 1 else z3.Concat(*bits)


@dataclass(frozen=True, kw_only=True)
class Pixel:
    """A pixel of the window: which cell, and where in it."""

    cell: Term
    row: Term | int
    column: Term | int


Frame: TypeAlias = Callable[[Pixel], Term]
"""What a viewer sees: the colour of each pixel."""


@dataclass(frozen=True, kw_only=True)
class View:
    """What the display shows through: ``colour`` of a pixel value, shown map ``page``, shown ``bank``."""

    colour: Callable[[Term], Term]
    page: Term
    bank: Term


@dataclass(frozen=True, kw_only=True)
class PatternByte:
    """A write of one byte: 8 pixels of one plane of one row of a tile."""

    tile: Term
    plane: Term
    row: Term
    byte: Term


@dataclass(frozen=True, kw_only=True)
class MapEntry:
    """A write of one whole map entry, of however many bytes."""

    page: Term
    cell: Term
    entry: Term


Write: TypeAlias = PatternByte | MapEntry


@dataclass(frozen=True, kw_only=True)
class PictureMemory:
    """Pattern bytes by (tile, plane, row) and map entries by (page, cell).

    ``tile_of`` tells which tile an entry names in a bank; left uninterpreted it stands for every way of banking.
    """

    planes: int
    pattern: Callable[[Term, Term | int, Term | int], Term]
    entry: Callable[[Term, Term], Term]
    tile_of: Callable[[Term, Term], Term]

    def value(self, tile: Term, row: Term | int, column: Term | int) -> Term:
        """The pixel value, ``planes`` bits wide; plane 0 is its lowest bit."""
        return joined([bit_at(self.pattern(tile, plane, row), column) for plane in reversed(range(self.planes))])

    def named(self, view: View, cell: Term) -> Term:
        """The tile that stands in ``cell`` under ``view``."""
        return self.tile_of(view.bank, self.entry(view.page, cell))

    def shown(self, view: View, pixel: Pixel) -> Term:
        """The colour that the viewer sees at ``pixel``."""
        return view.colour(self.value(self.named(view, pixel.cell), pixel.row, pixel.column))

    def after(self, write: Write) -> "PictureMemory":
        """The memory that ``write`` leaves."""
        if isinstance(write, PatternByte):
            return replace(self, pattern=self._pattern_after(write))
        return replace(self, entry=self._entry_after(write))

    def _pattern_after(self, write: PatternByte) -> Callable[[Term, Term | int, Term | int], Term]:
        def pattern(tile: Term, plane: Term | int, row: Term | int) -> Term:
            here = z3.And(write.tile == tile, write.plane == plane, write.row == row)
            return z3.If(here, write.byte, self.pattern(tile, plane, row))

        return pattern

    def _entry_after(self, write: MapEntry) -> Callable[[Term, Term], Term]:
        def entry(page: Term, cell: Term) -> Term:
            here = z3.And(write.page == page, write.cell == cell)
            return z3.If(here, write.entry, self.entry(page, cell))

        return entry


@dataclass(frozen=True, kw_only=True)
class SymbolicPicture:
    """A picture: ``row_byte(cell, row, bit)`` for each of its ``depth`` bits a pixel; ``shade`` of each value."""

    depth: int
    row_byte: Callable[[Term, Term | int, int], Term]
    shade: Callable[[Term], Term]

    def value(self, pixel: Pixel) -> Term:
        """The picture's value at ``pixel``, ``depth`` bits wide."""
        planes = reversed(range(self.depth))
        return joined([bit_at(self.row_byte(pixel.cell, pixel.row, bit), pixel.column) for bit in planes])

    def look(self, pixel: Pixel) -> Term:
        """The colour that the viewer is to see at ``pixel``."""
        return self.shade(self.value(pixel))


def side_bits(value: Term, side: Term, depth: int) -> Term:
    """The ``depth`` bits of a pixel value that belong to ``side``."""
    wide = z3.ZeroExt(8 - value.size(), value)
    return z3.Extract(depth - 1, 0, z3.LShR(wide, z3.ZeroExt(8 - side.size(), side) * depth))


def shows_side(view: View, picture: SymbolicPicture, side: Term, planes: int) -> Formula:
    """Every entry of the palette is the shade of the side's bits of its number: the other planes are hidden."""
    values = [z3.BitVecVal(value, planes, side.ctx) for value in range(1 << planes)]
    return all_of(*(view.colour(value) == picture.shade(side_bits(value, side, picture.depth)) for value in values))


def shades_differ(picture: SymbolicPicture, context: z3.Context) -> Formula:
    """Background and inks are pairwise different, as a machine demands."""
    values = range(1 << picture.depth)
    return z3.Distinct(*(picture.shade(z3.BitVecVal(value, picture.depth, context)) for value in values))


def pixels_of_row(cell: Term, row: Term | int) -> Iterator[Pixel]:
    """The 8 pixels of one row of a cell."""
    return (Pixel(cell=cell, row=row, column=column) for column in range(TILE_SIDE))


def pixels_of_cell(cell: Term, rows: int = TILE_SIDE) -> Iterator[Pixel]:
    """All pixels of a cell, of its first ``rows`` rows."""
    return (pixel for row in range(rows) for pixel in pixels_of_row(cell, row))
