"""Theorem 5: reference schedulers, given as guarded steps, keep their invariant; and it ends in the seen rule.

By induction over steps: for every sequence of pictures, every split of the work over blankings, without bound in
time. Where only taking a picture depends on the strategy, the other steps are proved once for the family. The form of
the steps, and how to have a scheduler of your own proved, is in `planeproof.spec.steps`.
"""

import z3

from planeproof.spec.obligation import Obligation, Question
from planeproof.spec.rules import whole_reveal
from planeproof.spec.steps import one_page
from planeproof.spec.steps.form import SEND_BYTE, SEND_ENTRY, SHOW, TAKE, Steps
from planeproof.spec.steps.induction import START, obligation
from planeproof.spec.steps.invariant import FRAME
from planeproof.spec.steps.reference import DeepDelta, Delta, Full, PackedDelta, SplitPool, SplitPoolDelta
from planeproof.spec.symbols import Size, Symbols
from planeproof.spec.vocabulary import shows_side

FAMILIES: dict[str, Steps] = {
    "hidden-plane": Delta(),
    "hidden-planes-depth-2": DeepDelta(),
    "packed": PackedDelta(),
    "page-flip": SplitPool(),
}
"""A scheduler of each family, to prove the steps that all schedulers of the family share."""

STRATEGIES: dict[str, Steps] = {
    "delta": Delta(),
    "full": Full(),
    "delta-depth-2": DeepDelta(),
    "packed-delta": PackedDelta(),
    "split-pool": SplitPool(),
    "split-pool-delta": SplitPoolDelta(),
}

_MEMORY_ENTRIES = "entries name the side's tiles or the blank one"
_WANTED_ENTRIES = "wanted entries name the side's tiles or the blank one"
_MAKES = "what is wanted makes the picture that is due"
_HIDDEN_ENTRY = "an entry of the hidden side is pending or as wanted"

SPARED: dict[str, frozenset[str]] = {
    "differing": frozenset({_MEMORY_ENTRIES, _MAKES}),
    "everything": frozenset({_WANTED_ENTRIES, _MAKES, _HIDDEN_ENTRY}),
    SHOW: frozenset({_MEMORY_ENTRIES, FRAME, "idle, nothing is pending", "the seen side is remembered"}),
}
"""Conjuncts that a step can do without; the table of premises shows that it needs every other one."""


SPARED_ON_ONE_PAGE: dict[str, frozenset[str]] = {
    TAKE: frozenset(
        {
            "wanted entries name the pool or the blank tile",
            "wanted tiles look as what is seen",
            _MAKES,
        }
    ),
    SHOW: frozenset(
        {
            "entries name the pool or the blank tile",
            "idle, nothing is pending",
            "the seen side is remembered",
            FRAME,
            "wanted tiles look as what is seen",
            "what is seen is remembered",
        }
    ),
}
"""The same for the strategy of pairs, which has an invariant of its own."""


def _of_family(name: str, steps: Steps) -> tuple[Obligation, ...]:
    shared = (START, SEND_BYTE, SEND_ENTRY, SHOW)
    return tuple(obligation(steps, step, name=name, spared=SPARED.get(step, frozenset())) for step in shared)


def _taking(name: str, steps: Steps) -> Obligation:
    spared = SPARED["everything" if isinstance(steps, Full | SplitPool) else "differing"]
    return obligation(steps, TAKE, name=name, spared=spared)


def _frame(planes: int) -> Obligation:
    """From the invariant's bytes to the viewer's pixels, by way of palette and page (theorems 1 and 3)."""
    size = Size(planes=planes)

    def build(context: z3.Context) -> Question:
        symbols = Symbols(context, size)
        memory, view, pixel = symbols.memory(), symbols.view("view"), symbols.pixel()
        side, current = symbols.page("side"), symbols.picture("current")
        plane = side if planes > 1 else side & 0
        tile = memory.named(view, pixel.cell)
        return Question(
            premises={
                FRAME: memory.pattern(tile, plane, pixel.row) == current.row_byte(pixel.cell, pixel.row, 0),
                "the palette shows the side": shows_side(view, current, plane, planes),
            },
            goal=whole_reveal(memory, view, pixel, current, z3.BoolVal(True, context)),
            shown={"side": side, "colour seen": memory.shown(view, pixel), "colour due": current.look(pixel)},
        )

    return Obligation(
        id=f"frame-of-the-invariant-{planes}-planes",
        theorem=5,
        statement="Where the bytes that the view shows are those of the current picture, and the palette shows their "
        "plane, every pixel of the frame is the picture's: the invariant ends in whole-reveal.",
        size=str(size),
        build=build,
    )


OBLIGATIONS: tuple[Obligation, ...] = (
    *(made for name, steps in FAMILIES.items() for made in _of_family(name, steps)),
    *(_taking(name, steps) for name, steps in STRATEGIES.items()),
    *(one_page.obligation(step, SPARED_ON_ONE_PAGE.get(step, frozenset())) for step in (START, *one_page.MOVES)),
    _frame(1),
    _frame(2),
)
