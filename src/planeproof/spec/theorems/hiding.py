"""Theorem 1: under the palette that shows a side, the colour of a pixel depends on that side's bits alone."""

import z3

from planeproof.spec.obligation import Obligation, Question
from planeproof.spec.symbols import Size, Symbols
from planeproof.spec.vocabulary import shades_differ, shows_side, side_bits

SHAPES = ((2, 1), (3, 1), (4, 1), (4, 2))
"""(planes, depth) where there is a side to hide."""


def _hidden(planes: int, depth: int) -> Obligation:
    size = Size(planes=planes)

    def build(context: z3.Context) -> Question:
        symbols = Symbols(context, size)
        first, second, view, pixel = (
            symbols.memory("one"),
            symbols.memory("other"),
            symbols.view("view"),
            symbols.pixel(),
        )
        side, picture = symbols.plane("side"), symbols.picture("picture", depth)
        values = [memory.value(memory.named(view, pixel.cell), pixel.row, pixel.column) for memory in (first, second)]
        seen = [side_bits(value, side, depth) for value in values]
        return Question(
            premises={
                "the palette shows the side": shows_side(view, picture, side, planes),
                "both memories hold the same bits of the side at the pixel": seen[0] == seen[1],
            },
            goal=first.shown(view, pixel) == second.shown(view, pixel),
            shown={"side": side, "value in one": values[0], "value in the other": values[1]},
            mutants={"the colour tells the whole value": values[0] == values[1]},
        )

    return Obligation(
        id=f"hiding-{planes}-planes-depth-{depth}",
        theorem=1,
        statement="Two memories that agree, at a pixel, in the bits of the side that the palette shows look alike "
        "there, whatever the other planes hold.",
        size=str(size),
        build=build,
    )


def _seen(planes: int, depth: int) -> Obligation:
    size = Size(planes=planes)

    def build(context: z3.Context) -> Question:
        symbols = Symbols(context, size)
        memory, view, pixel = symbols.memory(), symbols.view("view"), symbols.pixel()
        side, picture = symbols.plane("side"), symbols.picture("picture", depth)
        value = memory.value(memory.named(view, pixel.cell), pixel.row, pixel.column)
        return Question(
            premises={
                "the palette shows the side": shows_side(view, picture, side, planes),
                "background and inks differ": shades_differ(picture, context),
                "the side's bits differ from the picture's": side_bits(value, side, depth) != picture.value(pixel),
            },
            goal=memory.shown(view, pixel) != picture.look(pixel),
            shown={"side": side, "value": value, "bits of the picture": picture.value(pixel)},
        )

    return Obligation(
        id=f"seen-{planes}-planes-depth-{depth}",
        theorem=1,
        statement="A pixel whose bits on the shown side are not the picture's does not look like the picture's: on "
        "the shown side, every bit matters.",
        size=str(size),
        build=build,
    )


OBLIGATIONS: tuple[Obligation, ...] = (
    *(_hidden(*shape) for shape in SHAPES),
    *(_seen(*shape) for shape in SHAPES),
)
