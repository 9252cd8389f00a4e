"""Where the free terms of an obligation come from: constants and functions of the sorts of one size of machine."""

from dataclasses import dataclass

import z3

from planeproof.contract import TILE_SIDE
from planeproof.spec.vocabulary import Formula, Frame, PictureMemory, Pixel, SymbolicPicture, Term, View

SHADE_BITS = 8


@dataclass(frozen=True, kw_only=True)
class Size:
    """How large the machine of an obligation is. Every count but ``planes`` is a power of two from 2 on.

    So every value of a sort is a tile, a cell, a page that exists, and no premise has to say so.
    """

    planes: int
    tiles: int = 512
    cells: int = 1024
    pages: int = 2
    banks: int = 2
    rows: int = TILE_SIDE

    def __post_init__(self) -> None:
        for name in ("tiles", "cells", "pages", "banks", "rows"):
            count = getattr(self, name)
            if count < 2 or count & (count - 1):
                raise ValueError(f"size: {name} is {count!r}: give a power of two from 2 on")
        if not 1 <= self.planes <= 4:
            raise ValueError(f"size: planes is {self.planes!r}: give 1 to 4")

    def __str__(self) -> str:
        planes = f"{self.planes} plane{'s' if self.planes > 1 else ''}"
        return f"{self.tiles} tiles of {planes}, {self.cells:,} cells, {self.pages} pages, {self.banks} banks"


class Symbols:
    """Makes terms of one context. The same name and sort give the same term."""

    def __init__(self, context: z3.Context, size: Size) -> None:
        self.context = context
        self.size = size
        self.planes = size.planes
        self._tile = self.bits_for(size.tiles)
        self._plane = self.bits_for(max(2, size.planes))
        self._row = self.bits_for(size.rows)
        self._cell = self.bits_for(size.cells)
        self._page = self.bits_for(size.pages)
        self._bank = self.bits_for(size.banks)
        self._byte = self.bits(8)
        self._shade = self.bits(SHADE_BITS)

    def bits(self, width: int) -> z3.SortRef:
        """The sort of bit-vectors ``width`` wide."""
        return z3.BitVecSort(width, self.context)

    def bits_for(self, count: int) -> z3.SortRef:
        """The sort of bit-vectors just wide enough for 0..count-1."""
        return self.bits((count - 1).bit_length())

    def flag(self, name: str) -> Formula:
        """A free truth value."""
        return z3.Bool(name, self.context)

    def tile(self, name: str) -> Term:
        """A free tile number."""
        return z3.Const(name, self._tile)

    def plane(self, name: str) -> Term:
        """A free plane; with 1 or 3 planes, `plane_exists` says that there is one of that number."""
        return z3.Const(name, self._plane)

    def row(self, name: str) -> Term:
        """A free row of a tile."""
        return z3.Const(name, self._row)

    def cell(self, name: str) -> Term:
        """A free cell."""
        return z3.Const(name, self._cell)

    def page(self, name: str) -> Term:
        """A free map page."""
        return z3.Const(name, self._page)

    def bank(self, name: str) -> Term:
        """A free bank of tiles."""
        return z3.Const(name, self._bank)

    def byte(self, name: str) -> Term:
        """A free byte."""
        return z3.Const(name, self._byte)

    def shade(self, name: str) -> Term:
        """A free colour."""
        return z3.Const(name, self._shade)

    def pixel(self, name: str = "pixel") -> Pixel:
        """A free pixel of the window."""
        cell, row = self.cell(f"{name}-cell"), self.row(f"{name}-row")
        return Pixel(cell=cell, row=row, column=z3.Const(f"{name}-column", self.bits_for(TILE_SIDE)))

    def frame(self, name: str) -> Frame:
        """A free frame."""
        colour = z3.Function(name, self._cell, self._row, self.bits_for(TILE_SIDE), self._shade)
        return lambda pixel: colour(pixel.cell, pixel.row, pixel.column)

    def places(self, name: str) -> z3.FuncDeclRef:
        """A free choice of a tile for each cell."""
        return z3.Function(name, self._cell, self._tile)

    def lookup(self, name: str = "tile-of") -> z3.FuncDeclRef:
        """A free way of banking: the tile that each entry names in each bank."""
        return z3.Function(name, self._bank, self._tile, self._tile)

    def memory(self, name: str = "memory") -> PictureMemory:
        """A memory of any content."""
        return PictureMemory(
            planes=self.planes,
            pattern=z3.Function(f"{name}-pattern", self._tile, self._plane, self._row, self._byte),
            entry=z3.Function(f"{name}-entry", self._page, self._cell, self._tile),
            tile_of=self.lookup(),
        )

    def view(self, name: str) -> View:
        """A view of any palette, page and bank."""
        colour = z3.Function(f"{name}-colour", self.bits(self.planes), self._shade)
        return View(colour=colour, page=self.page(f"{name}-page"), bank=self.bank(f"{name}-bank"))

    def picture(self, name: str, depth: int = 1) -> SymbolicPicture:
        """Any picture of ``depth`` bits a pixel. All pictures of one depth share background and inks."""
        rows = [z3.Function(f"{name}-rows-{bit}", self._cell, self._row, self._byte) for bit in range(depth)]
        shade = z3.Function("shade", self.bits(depth), self._shade)
        return SymbolicPicture(depth=depth, row_byte=lambda cell, row, bit: rows[bit](cell, row), shade=shade)

    def exists(self, number: Term, count: int) -> dict[str, Formula]:
        """The premise that there are ``count`` sides or planes; none where the sort says so by itself."""
        if count == 1 << number.size():
            return {}
        return {"the plane or side is one of the machine's": z3.ULT(number, count)}
