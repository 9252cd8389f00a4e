"""Theorem 7: how many colours independent pictures have that are held in the same tiles, palettes exhausted.

A palette gives a colour to each of the 2^planes pixel values. Pictures are independent if every combination of their
colours has a pixel value that shows it: each picture under its own palette.
"""

from itertools import product

import z3

from planeproof.spec.obligation import Answer, Obligation, Question

COLOUR_BITS = 4
POSSIBLE = ((2, (2, 2)), (3, (2, 2)), (3, (2, 4)), (3, (2, 2, 2)), (4, (4, 4)), (4, (2, 2, 2, 2)))
"""(planes, colours of each picture) for which palettes exist; background counts as a colour."""
IMPOSSIBLE = ((1, (2, 2)), (2, (2, 3)), (2, (3, 3)), (2, (2, 2, 2)), (3, (3, 3)), (3, (2, 2, 2, 2)))


def _held(planes: int, counts: tuple[int, ...]) -> Obligation:
    possible = (planes, counts) in POSSIBLE

    def build(context: z3.Context) -> Question:
        value_sort, colour_sort = z3.BitVecSort(planes, context), z3.BitVecSort(COLOUR_BITS, context)
        palettes = [z3.Function(f"palette-{number}", value_sort, colour_sort) for number in range(len(counts))]
        shows, shown = [], {}
        for colours in product(*(range(count) for count in counts)):
            name = "-".join(map(str, colours))
            value = z3.Const(f"value-{name}", value_sort)
            shows += [palette(value) == colour for palette, colour in zip(palettes, colours, strict=True)]
            shown[f"pixel value that shows {name}"] = value
        every = {"every combination of colours has a pixel value that shows it": z3.And(*shows)}
        return Question(premises=every, goal=z3.BoolVal(False, context), shown=shown)

    many = " and ".join(map(str, counts))
    return Obligation(
        id=f"colours-{planes}-planes-{'-'.join(map(str, counts))}",
        theorem=7,
        statement=f"No palettes show independent pictures of {many} colours that are held in the same tiles.",
        size=f"tiles of {planes} plane{'s' if planes > 1 else ''}, every palette",
        build=build,
        wanted=Answer.REFUTED if possible else Answer.PROVED,
    )


def _value_tells_all(context: z3.Context) -> Question:
    """Why the limit holds at every size: combinations go to pixel values one to one. Then the pigeonhole counts."""
    value_sort, colour_sort = z3.BitVecSort(8, context), z3.BitVecSort(8, context)
    first, second = (z3.Function(f"palette-{name}", value_sort, colour_sort) for name in ("first", "second"))
    value = z3.Function("value", colour_sort, colour_sort, value_sort)
    a, b, c, d = (z3.Const(name, colour_sort) for name in "abcd")
    shown = [z3.And(first(value(*pair)) == pair[0], second(value(*pair)) == pair[1]) for pair in ((a, b), (c, d))]
    return Question(
        premises={
            "the value of (a, b) shows a and b": shown[0],
            "the value of (c, d) shows c and d": shown[1],
            "the combinations differ": z3.Or(a != c, b != d),
        },
        goal=value(a, b) != value(c, d),
        shown={"a": a, "b": b, "c": c, "d": d, "value of (a, b)": value(a, b), "value of (c, d)": value(c, d)},
        mutants={"the first colours differ": a != c},
    )


def _in_any_tiles(context: z3.Context) -> Question:
    """The wording without "held in the same tiles": one plane, and the page turns between two tiles."""
    bit = z3.BitVecSort(1, context)
    palette = z3.Function("palette", bit, z3.BitVecSort(COLOUR_BITS, context))
    seen = [[z3.Const(f"value-{page}-{name}", bit) for page in ("seen", "next")] for name in ("00", "01", "10", "11")]
    premises = {
        f"a pixel shows {first}, then {second}": z3.And(palette(before) == first, palette(after) == second)
        for (before, after), (first, second) in zip(seen, product(range(2), repeat=2), strict=True)
    }
    shown = {f"values for {name}": z3.Concat(*pair) for pair, name in zip(seen, ("00", "01", "10", "11"), strict=True)}
    return Question(premises=premises, goal=z3.BoolVal(False, context), shown=shown)


OBLIGATIONS: tuple[Obligation, ...] = (
    *(_held(*case) for case in IMPOSSIBLE),
    *(_held(*case) for case in POSSIBLE),
    Obligation(
        id="colours-a-value-for-each-combination",
        theorem=7,
        statement="Different combinations of colours have different pixel values. With the pigeonhole: pictures of a "
        "and b colours held in the same tiles need a * b pixel values, so a * b is at most 2^planes.",
        size="up to 8 planes, every palette",
        build=_value_tells_all,
    ),
    Obligation(
        id="colours-in-any-tiles",
        theorem=7,
        statement="No palette of one plane shows two independent pictures of 2 colours, whatever tiles hold them.",
        size="tiles of 1 plane, 2 pages with tiles of their own, every palette",
        build=_in_any_tiles,
        wanted=Answer.REFUTED,
    ),
)
