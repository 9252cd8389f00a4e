"""The symbolic reading of each rule, said of terms with names that can be read: the formulas of the rulebook."""

from collections.abc import Callable
from dataclasses import dataclass

import z3

from planeproof.contract import Rule
from planeproof.contract.rules import (
    BLANKING_ONLY,
    EXACT_REVEAL,
    FAIR_REFUSAL,
    HIDDEN_WRITES,
    IN_ORDER,
    OWN_MEMORY,
    PROGRESS,
    TILE_CAP,
    WHOLE_REVEAL,
)
from planeproof.spec import rules, rules_over_time
from planeproof.spec.vocabulary import (
    Formula,
    MapEntry,
    PatternByte,
    PictureMemory,
    Pixel,
    SymbolicPicture,
    Term,
    View,
    Write,
)

BITS = z3.BitVecSort(16)


def term(name: str) -> Term:
    """A free term of that name."""
    return z3.Const(name, BITS)


def flag(name: str) -> Formula:
    """A free truth value of that name."""
    return z3.Bool(name)


def function(name: str, arity: int) -> Callable[..., Term]:
    """A free function of that name."""
    declared: Callable[..., Term] = z3.Function(name, *[BITS] * (arity + 1))
    return declared


@dataclass(frozen=True, kw_only=True)
class SaidMemory(PictureMemory):
    """Picture memory whose questions stay questions: a pixel's value has a name, and is not put together from bits."""

    when: str

    def value(self, tile: Term, row: Term | int, column: Term | int) -> Term:
        """The pixel value by name."""
        return function(f"value_{self.when}", 3)(tile, row, column)

    def named(self, view: View, cell: Term) -> Term:
        """The tile shown in a cell, by name."""
        return function("tile_shown_in", 1)(cell)

    def shown(self, view: View, pixel: Pixel) -> Term:
        """The colour shown, by name."""
        return term("colour seen at the pixel")

    def after(self, write: Write) -> "SaidMemory":
        """The same, after the write."""
        return said_memory("after")


def said_memory(when: str) -> SaidMemory:
    """A memory by name."""
    return SaidMemory(
        planes=1,
        pattern=function("pattern", 3),
        entry=function("entry", 2),
        tile_of=lambda _bank, entry: function("tile_of", 1)(entry),
        when=when,
    )


@dataclass(frozen=True, kw_only=True)
class SaidPicture(SymbolicPicture):
    """A picture whose colour has a name."""

    def look(self, pixel: Pixel) -> Term:
        """The colour by name."""
        return term("colour of the picture there")


MEMORY = said_memory("before")
VIEW = View(colour=function("colour", 1), page=term("shown page"), bank=term("shown bank"))
PIXEL = Pixel(cell=term("cell"), row=term("row"), column=term("column"))
BYTE = PatternByte(
    tile=term("written tile"), plane=term("written plane"), row=term("written row"), byte=term("written byte")
)
ENTRY = MapEntry(page=term("written page"), cell=term("written cell"), entry=term("written entry"))
PICTURE = SaidPicture(depth=16, row_byte=function("rows", 3), shade=lambda _value: term("background"))
POOL, BLANK = z3.Const("pool", z3.BitVecSort(32)), term("the blank tile")
WATCHED = rules_over_time.Watched(
    looks=(term("look"),),
    taken_at=(term("taken at"),),
    line=term("taken pictures"),
    place=term("seen picture"),
    had=term("full blankings"),
    seen_at=term("seen at"),
    busy=flag("busy"),
    busy_since=term("busy since"),
)
ANSWERED = rules_over_time.Answered(
    taken=flag("taken"), busy=flag("busy"), declined=flag("declined"), look=term("look"), occupied=term("occupied")
)
LAST_BYTE = rules.blanking_only(
    spent=term("spent"),
    set_up=term("set-up"),
    per_byte=term("cycles a byte"),
    n_bytes=term("bytes"),  # any number of them
    cycles=term("cycles of the blanking"),
)

FORMULAS: dict[Rule, dict[str, Formula]] = {
    HIDDEN_WRITES: {
        "a pattern byte, for each pixel": rules.keeps_hidden_writes(MEMORY, VIEW, BYTE, PIXEL),
        "a map entry, for each pixel": rules.keeps_hidden_writes(MEMORY, VIEW, ENTRY, PIXEL),
    },
    EXACT_REVEAL: {
        "for each pixel, with one truth value for the whole frame": rules.exact_reveal(
            term("colour shown by the new view"), term("current picture"), term("next picture"), flag("it is the next")
        )
    },
    BLANKING_ONLY: {"for each burst": LAST_BYTE},
    OWN_MEMORY: {"a pattern byte; the pool has a bit for each tile": rules.own_memory(BYTE, POOL)},
    TILE_CAP: {
        "for each cell": rules.tile_cap(MEMORY, VIEW, PIXEL.cell, POOL, BLANK),
        "for each pattern byte": rules_over_time.changes_pool_only(BYTE.tile, term("held byte"), BYTE.byte, POOL),
    },
    WHOLE_REVEAL: {"for each pixel": rules.whole_reveal(MEMORY, VIEW, PIXEL, PICTURE, flag("the picture is seen"))},
    IN_ORDER: {"once a picture has been seen": rules.in_order(flag("seen before"), flag("seen now"))},
    PROGRESS: {"after each blanking": rules_over_time.progress(WATCHED, term("patience"))},
    FAIR_REFUSAL: {"at each answer": rules_over_time.fair_refusal(ANSWERED, term("must_show"))},
}
"""Rule -> what each of its formulas is about -> the formula."""
