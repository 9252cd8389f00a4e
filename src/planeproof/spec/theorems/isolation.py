"""Theorem 2: a write keeps the local rule if and only if no pixel of the frame changes, under any palette.

Said for one pixel: the rule's part about a pixel holds exactly if that pixel keeps its colour. The rule is the
conjunction of its parts and the frame is all its pixels, so the theorem for the whole frame is this one for each.
"""

from collections.abc import Iterable

import z3

from planeproof.spec.obligation import Answer, Obligation, Question
from planeproof.spec.rules import keeps_hidden_writes
from planeproof.spec.symbols import Size, Symbols
from planeproof.spec.vocabulary import (
    Formula,
    MapEntry,
    PatternByte,
    PictureMemory,
    Pixel,
    View,
    Write,
    all_of,
    pixels_of_row,
    shades_differ,
    shows_side,
)

KINDS = ("pattern", "map")
RULE = "the write keeps hidden-writes at this pixel"


def a_pattern_byte(symbols: Symbols, name: str = "written") -> PatternByte:
    """Any write of a pattern byte."""
    tile, plane, row = symbols.tile(f"{name}-tile"), symbols.plane(f"{name}-plane"), symbols.row(f"{name}-row")
    return PatternByte(tile=tile, plane=plane, row=row, byte=symbols.byte(f"{name}-byte"))


def a_map_entry(symbols: Symbols, name: str = "written") -> MapEntry:
    """Any write of a map entry."""
    page, cell, entry = symbols.page(f"{name}-page"), symbols.cell(f"{name}-cell"), symbols.tile(f"{name}-entry")
    return MapEntry(page=page, cell=cell, entry=entry)


def a_write(symbols: Symbols, kind: str, name: str = "written") -> Write:
    """Any write of one of the `KINDS`."""
    return a_pattern_byte(symbols, name) if kind == "pattern" else a_map_entry(symbols, name)


def cell_keeps(before: PictureMemory, after: PictureMemory, view: View, pixels: Iterable[Pixel]) -> Formula:
    """Each of ``pixels`` has the same colour in both memories."""
    return all_of(*(before.shown(view, pixel) == after.shown(view, pixel) for pixel in pixels))


def _sound(planes: int, kind: str) -> Obligation:
    size = Size(planes=planes)

    def build(context: z3.Context) -> Question:
        symbols = Symbols(context, size)
        memory, view, pixel, write = symbols.memory(), symbols.view("view"), symbols.pixel(), a_write(symbols, kind)
        after = memory.after(write)
        return Question(
            premises={RULE: keeps_hidden_writes(memory, view, write, pixel)},
            goal=memory.shown(view, pixel) == after.shown(view, pixel),
            shown={
                "tile seen before": memory.named(view, pixel.cell),
                "tile seen after": after.named(view, pixel.cell),
                "colour before": memory.shown(view, pixel),
                "colour after": after.shown(view, pixel),
            },
            mutants={
                "the shown page names the same tile, of another content": _value(memory, view, pixel)
                != _value(after, view, pixel)
            },
        )

    return Obligation(
        id=f"{kind}-rule-is-enough-{planes}-planes",
        theorem=2,
        statement=f"A {kind} write that keeps hidden-writes at a pixel leaves it its colour, under any palette.",
        size=str(size),
        build=build,
    )


def _value(memory: PictureMemory, view: View, pixel: Pixel) -> z3.ExprRef:
    return memory.value(memory.named(view, pixel.cell), pixel.row, pixel.column)


def _complete(planes: int, kind: str) -> Obligation:
    size = Size(planes=planes)

    def build(context: z3.Context) -> Question:
        symbols = Symbols(context, size)
        memory, view, pixel, write = symbols.memory(), symbols.view("view"), symbols.pixel(), a_write(symbols, kind)
        before, after = memory.shown(view, pixel), memory.after(write).shown(view, pixel)
        return Question(
            premises={"the pixel keeps its colour": before == after},
            goal=keeps_hidden_writes(memory, view, write, pixel),
            shown={"tile seen before": memory.named(view, pixel.cell), "colour before": before, "colour after": after},
            mutants={"what is seen is not touched at all": _untouched(memory, view, write, pixel)},
        )

    return Obligation(
        id=f"{kind}-rule-is-needed-{planes}-planes",
        theorem=2,
        statement=f"A {kind} write that leaves a pixel its colour keeps hidden-writes there, under any palette.",
        size=str(size),
        build=build,
    )


def _untouched(memory: PictureMemory, view: View, write: Write, pixel: Pixel) -> Formula:
    if isinstance(write, PatternByte):
        return memory.named(view, pixel.cell) != write.tile
    return z3.Or(view.page != write.page, pixel.cell != write.cell)


def _plane_wise(planes: int, *, enough: bool) -> Obligation:
    """The wording "the plane is hidden or the tile is not named", which is enough, but not needed."""
    size = Size(planes=planes)

    def build(context: z3.Context) -> Question:
        symbols = Symbols(context, size)
        memory, view, pixel = symbols.memory(), symbols.view("view"), symbols.pixel()
        write = a_pattern_byte(symbols)
        after = memory.after(write)
        rule = z3.Or(memory.named(view, pixel.cell) != write.tile, _no_colour_needs(view, write.plane, planes))
        exists = symbols.exists(write.plane, planes)
        shown = {
            f"colour of value {value}": view.colour(z3.BitVecVal(value, planes, context))
            for value in range(1 << planes)
        }
        shown |= {"plane written": write.plane, "byte written": write.byte}
        if enough:
            kept = memory.shown(view, pixel) == after.shown(view, pixel)
            return Question(premises={"the plane is hidden, or the tile not named": rule}, goal=kept, shown=shown)
        changes = memory.pattern(write.tile, write.plane, write.row) != write.byte
        kept = cell_keeps(memory, after, view, pixels_of_row(pixel.cell, write.row))
        premises = {"no pixel of the cell changes": kept, "the byte changes its value": changes, **exists}
        return Question(premises=premises, goal=rule, shown=shown)

    says = (
        "A pattern byte in a plane that no colour depends on, or in a tile that the cell does not name, changes no "
        "pixel of the cell."
        if enough
        else "A pattern byte that changes its value, but no pixel of the cell, is in a plane that no colour depends "
        "on, or in a tile that the cell does not name."
    )
    return Obligation(
        id=f"plane-wise-rule-is-{'enough' if enough else 'needed'}-{planes}-planes",
        theorem=2,
        statement=says,
        size=str(size),
        build=build,
        wanted=Answer.PROVED if enough else Answer.REFUTED,
    )


def _no_colour_needs(view: View, plane: z3.ExprRef, planes: int) -> Formula:
    """No two pixel values that differ in the bit of ``plane`` alone have different colours."""
    values = [z3.BitVecVal(value, planes, plane.ctx) for value in range(1 << planes)]
    shift = z3.ZeroExt(planes - plane.size(), plane) if planes > plane.size() else plane
    bit = z3.BitVecVal(1, planes, plane.ctx) << shift
    return all_of(*(view.colour(value) == view.colour(value ^ bit) for value in values))


def _pixel_wise(planes: int) -> Obligation:
    """What the plane-wise wording was after, said of a pixel and of a palette that shows one plane."""
    size = Size(planes=planes)

    def build(context: z3.Context) -> Question:
        symbols = Symbols(context, size)
        memory, view, pixel = symbols.memory(), symbols.view("view"), symbols.pixel()
        write = a_pattern_byte(symbols)
        after, side, picture = memory.after(write), symbols.plane("side"), symbols.picture("picture")
        before, later = (state.value(write.tile, write.row, pixel.column) for state in (memory, after))
        harmless = z3.Or(write.plane != side, before == later)
        return Question(
            premises={
                "the palette shows the side": shows_side(view, picture, side, planes),
                "background and ink differ": shades_differ(picture, context),
            },
            goal=(view.colour(before) == view.colour(later)) == harmless,
            shown={"side": side, "plane written": write.plane, "value before": before, "value after": later},
            mutants={"the plane alone decides": (view.colour(before) == view.colour(later)) == (write.plane != side)},
        )

    return Obligation(
        id=f"one-plane-shown-{planes}-planes",
        theorem=2,
        statement="Under a palette that shows one plane, in an ink that is not the background, a pixel keeps its "
        "colour if and only if the plane written is another one or its bit stays.",
        size=str(size),
        build=build,
    )


OBLIGATIONS: tuple[Obligation, ...] = (
    *(_sound(planes, kind) for kind in KINDS for planes in range(1, 5)),
    *(_complete(planes, kind) for kind in KINDS for planes in range(1, 5)),
    *(_plane_wise(planes, enough=True) for planes in range(2, 5)),
    *(_plane_wise(planes, enough=False) for planes in range(2, 5)),
    *(_pixel_wise(planes) for planes in range(2, 5)),
)
