"""Theorem 3: if the hidden side holds the picture, the frame after the view change is the picture."""

import z3

from planeproof.spec.obligation import Obligation, Question
from planeproof.spec.symbols import Size, Symbols
from planeproof.spec.vocabulary import Formula, PictureMemory, Pixel, SymbolicPicture, Term, all_of, shows_side

SHAPES = ((1, 1), (2, 1), (2, 2), (3, 1), (4, 1), (4, 2))
"""(planes, depth). Where the planes hold one picture only, the sides differ by page or bank: a split pool."""


def holds(memory: PictureMemory, picture: SymbolicPicture, side: Term, tile: Term, pixel: Pixel) -> Formula:
    """The side's planes of ``tile`` hold the picture's row of the pixel, bit by bit."""
    first = side * picture.depth
    rows = range(picture.depth)
    return all_of(
        *(memory.pattern(tile, first + bit, pixel.row) == picture.row_byte(pixel.cell, pixel.row, bit) for bit in rows)
    )


def _reveal(planes: int, depth: int) -> Obligation:
    size = Size(planes=planes)

    def build(context: z3.Context) -> Question:
        symbols = Symbols(context, size)
        memory, view, pixel = symbols.memory(), symbols.view("new-view"), symbols.pixel()
        side, page, bank = symbols.plane("side"), symbols.page("side-page"), symbols.bank("side-bank")
        picture, place = symbols.picture("picture", depth), symbols.places("place")(pixel.cell)
        return Question(
            premises={
                "the side's page names the place of the cell": memory.tile_of(bank, memory.entry(page, pixel.cell))
                == place,
                "the side's planes hold the picture at that place": holds(memory, picture, side, place, pixel),
                "the new palette shows the side": shows_side(view, picture, side, planes),
                "the new view shows the side's page": view.page == page,
                "the new view shows the side's bank": view.bank == bank,
                **symbols.exists(side, planes // depth),
            },
            goal=memory.shown(view, pixel) == picture.look(pixel),
            shown={
                "side": side,
                "place": place,
                "shown tile": memory.named(view, pixel.cell),
                "shown colour": memory.shown(view, pixel),
                "colour of the picture": picture.look(pixel),
            },
            mutants={
                "all planes hold the picture": memory.value(place, pixel.row, pixel.column)
                == z3.ZeroExt(planes - depth, picture.value(pixel))
            }
            if planes > depth
            else {},
        )

    return Obligation(
        id=f"reveal-{planes}-planes-depth-{depth}",
        theorem=3,
        statement="A side whose page names a place for each cell, and whose planes hold the picture there, is seen "
        "as exactly that picture once palette, page and bank show the side.",
        size=str(size),
        build=build,
    )


OBLIGATIONS: tuple[Obligation, ...] = tuple(_reveal(*shape) for shape in SHAPES)
