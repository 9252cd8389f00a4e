"""Theorem 9: no rule follows from the others. For each rule dropped there is a run in which that matters.

Without a discipline rule the others admit a run in which a seen rule is broken. Without own-memory they admit one that
changes a byte somebody else owns. With own-memory no byte of somebody else's changes, so what tile-cap adds is that the
frame hangs on none of them either. Each witness is a run that a judge can play (`planeproof.spec.witness_run`).

The tiny machine's window is cell 0; cell 1, tile 3 and the blank tile are somebody else's. The set-up is free to leave
anything in what is the window's, as long as background is seen.
"""

from collections.abc import Collection, Sequence
from dataclasses import replace
from itertools import product

import z3

from planeproof.spec.bounded_run import (
    SENDS_ENTRY,
    SENDS_PATTERN,
    SHOWS,
    SIZE,
    Refresh,
    State,
    empty_memory,
    first_state,
    picture_in_words,
    run_from,
)
from planeproof.spec.judged_refresh import POOL, JudgedRefresh
from planeproof.spec.obligation import Answer, Obligation, Question
from planeproof.spec.rules import in_pool, own_memory, tile_cap
from planeproof.spec.symbols import Size, Symbols
from planeproof.spec.theorems.isolation import a_write
from planeproof.spec.vocabulary import Formula, PatternByte, PictureMemory, Pixel, Term, all_of, pixels_of_cell

DROPPED: dict[str, tuple[int, ...]] = {
    "hidden-writes": (SENDS_PATTERN, SENDS_PATTERN),
    "exact-reveal": (SHOWS, SENDS_PATTERN, SHOWS),
    "blanking-only": (SENDS_PATTERN, SHOWS),
    "own-memory": (SENDS_ENTRY, SHOWS),
    "tile-cap": (SENDS_ENTRY, SHOWS),
}
"""The rules that are dropped, one at a time, and what is done in as few refreshes as make that matter."""
ANYTHING = 3
"""Stands for a refresh of which nothing is said."""
_KIND_WORDS = {SENDS_PATTERN: "sends a pattern byte", SENDS_ENTRY: "sends a map entry", SHOWS: "shows a side"}


class _Run:
    """A run after any set-up that keeps to what is the window's."""

    def __init__(self, context: z3.Context, refreshes: int) -> None:
        self.symbols = Symbols(context, SIZE)
        self.pool = z3.BitVecVal(POOL, SIZE.tiles, context)
        self.window = z3.BitVecVal(0, 1, context)
        self.picture = self.symbols.picture("picture")
        self.pixels = tuple(pixels_of_cell(self.window, SIZE.rows))
        self.first = first_state(self._set_up(), self.picture, context)
        run = run_from(self.symbols, self.first, refreshes)
        self.judged = [self._judged(number, refresh) for number, refresh in enumerate(run)]

    def _set_up(self) -> PictureMemory:
        left, empty = self.symbols.memory("set-up"), empty_memory(self.symbols.context)
        return replace(
            empty,
            pattern=lambda *at: z3.If(in_pool(at[0], self.pool), left.pattern(*at), empty.pattern(*at)),
            entry=lambda *at: z3.If(at[1] == self.window, left.entry(*at), empty.entry(*at)),
        )

    def _judged(self, number: int, refresh: Refresh) -> JudgedRefresh:
        return JudgedRefresh(
            refresh=refresh,
            torn=self.symbols.flag(f"refresh-{number}-torn"),
            is_next=self.symbols.flag(f"refresh-{number}-reveals"),
            cycles=z3.BitVec(f"refresh-{number}-cycles", 32, self.symbols.context),
            wreck=self.symbols.frame(f"refresh-{number}-wreck"),
            pixels=self.pixels,
            pool=self.pool,
        )

    @property
    def last(self) -> State:
        return self.judged[-1].refresh.after

    def premises(self, dropped: Collection[str], kinds: Sequence[int]) -> dict[str, Formula]:
        """Every rule but those dropped, in every refresh, and that the run is worth looking at."""
        empty, drawn = (self.picture.shade(z3.BitVecVal(value, 1, self.symbols.context)) for value in range(2))
        rules = {
            f"refresh {number} keeps {rule}": formula
            for number, judged in enumerate(self.judged)
            for rule, formula in judged.rules().items()
            if rule not in dropped
        }
        blank = z3.BitVecVal(0, 2, self.symbols.context)
        capped = tile_cap(self.first.memory, self.first.view, self.window, self.pool, blank)
        return {
            **({} if "tile-cap" in dropped else {"the set-up keeps tile-cap": capped}),
            "background is seen after the set-up": all_of(*(self.first.shown(pixel) == empty for pixel in self.pixels)),
            **{f"refresh {number} in its own words": judged.means for number, judged in enumerate(self.judged)},
            **rules,
            "the picture is not empty": self.picture.value(self._in_window("drawn")) == 1,
            "ink and background differ": empty != drawn,
            **self._planned(kinds),
            "in the end the picture is seen": z3.And(self.last.seen, z3.Not(self.judged[-1].torn)),
        }

    def _planned(self, kinds: Sequence[int]) -> dict[str, Formula]:
        """What is done in each refresh, and a picture of one row, so that solvers need not search for long."""
        context, (one, other) = self.symbols.context, range(2)
        rows = [self.picture.row_byte(self.window, z3.BitVecVal(row, 1, context), 0) for row in (one, other)]
        return {
            "the picture has its pixels in one row": z3.And(rows[one] == 0x20, rows[other] == 0),
            **{
                f"refresh {number} {_KIND_WORDS[kind]}": judged.refresh.kind == kind
                for number, (kind, judged) in enumerate(zip(kinds, self.judged, strict=True))
                if kind != ANYTHING
            },
        }

    def _in_window(self, name: str) -> Pixel:
        return replace(self.symbols.pixel(name), cell=self.window)

    def shown(self) -> dict[str, Term]:
        """The run in words: what the set-up left, the picture, each refresh."""
        context, memory = self.symbols.context, self.first.memory
        two = [z3.BitVecVal(number, 1, context) for number in range(2)]
        patterns = {
            f"set-up: tile {tile}, plane {plane}, row {row}": memory.pattern(
                z3.BitVecVal(tile, 2, context), two[plane], two[row]
            )
            for tile, plane, row in product((1, 2), range(2), range(SIZE.rows))
        }
        entries = {f"set-up: page {page}": memory.entry(two[page], self.window) for page in range(2)}
        words = patterns | entries | picture_in_words(self.symbols, self.picture)
        for number, judged in enumerate(self.judged):
            words |= {**judged.refresh.in_words(number), f"refresh {number}: cycles": judged.cycles}
        return words

    # --- what the rules are to keep from happening ----------------------------------------------------------

    def every_frame_is_whole(self) -> Formula:
        """No frame differs somewhere from the picture and somewhere from background."""
        one, other = self._in_window("not-the-picture"), self._in_window("not-background")
        torn = (
            z3.And(
                judged.torn,
                judged.frame(one) != self.picture.look(one),
                judged.frame(other) != self.picture.shade(z3.BitVecVal(0, 1, self.symbols.context)),
            )
            for judged in self.judged
        )
        return z3.Not(z3.Or(*torn))

    def bytes_of_others_stay(self) -> Formula:
        """No entry of the cell beside the window has changed, and no pattern byte outside the pool."""
        tile, plane, row, page = (
            self.symbols.tile("t"),
            self.symbols.plane("p"),
            self.symbols.row("r"),
            self.symbols.page("g"),
        )
        before, after, beside = self.first.memory, self.last.memory, ~self.window
        patterns = after.pattern(tile, plane, row) == before.pattern(tile, plane, row)
        return z3.And(
            after.entry(page, beside) == before.entry(page, beside), z3.Or(in_pool(tile, self.pool), patterns)
        )

    def others_are_not_seen(self) -> Formula:
        """Whatever the owner of another tile but the blank one writes there, at whatever time, the frame stays."""
        owners = a_write(self.symbols, "pattern", "owner")
        assert isinstance(owners, PatternByte)
        pixel, after = self._in_window("looked-at"), [judged.refresh.after for judged in self.judged]
        written = (replace(state, memory=state.memory.after(owners)) for state in after)
        stays = [state.shown(pixel) == other.shown(pixel) for state, other in zip(after, written, strict=True)]
        return z3.Or(in_pool(owners.tile, self.pool), owners.tile == 0, all_of(*stays))


def without(rule: str, kinds: Sequence[int], *, and_keep: bool = False) -> Obligation:
    """That dropping ``rule`` does not matter in a run of these kinds of refreshes, any of them `ANYTHING`.

    ``and_keep``: that it does not with the rule kept after all.
    """

    def build(context: z3.Context) -> Question:
        run = _Run(context, len(kinds))
        dropped = {"whole-reveal"} if rule in DISCIPLINE else set[str]()
        dropped |= set() if and_keep else {rule}
        return Question(premises=run.premises(dropped, kinds), goal=GOALS[rule](run), shown=run.shown())

    return Obligation(
        id=f"without-{rule}",
        theorem=9,
        statement=f"In every run of {len(kinds)} refreshes that keeps all rules but {rule}{_BUT.get(rule, '')}, "
        f"{_GOAL_WORDS[rule]}.",
        size=f"{SIZE}, {SIZE.rows} rows a tile, a window of 1 cell",
        build=build,
        wanted=Answer.REFUTED,
    )


DISCIPLINE = ("hidden-writes", "exact-reveal", "blanking-only")
_WHOLE = "every frame is whole"
_BUT = dict.fromkeys(DISCIPLINE, " and whole-reveal")
_GOAL_WORDS = dict.fromkeys(DISCIPLINE, _WHOLE) | {
    "own-memory": "no byte that somebody else owns changes",
    "tile-cap": "no frame hangs on a byte that somebody else owns",
}
GOALS = dict.fromkeys(DISCIPLINE, _Run.every_frame_is_whole) | {
    "own-memory": _Run.bytes_of_others_stay,
    "tile-cap": _Run.others_are_not_seen,
}


def _own_memory_is_enough() -> Obligation:
    """Why tile-cap has a wording of its own: with own-memory kept, no byte of somebody else's changes at all."""
    size = Size(planes=4)

    def build(context: z3.Context) -> Question:
        symbols = Symbols(context, size)
        memory, write = symbols.memory(), a_write(symbols, "pattern")
        assert isinstance(write, PatternByte)
        at = symbols.tile("t"), symbols.plane("p"), symbols.row("r")
        pool = z3.BitVec("pool", size.tiles, context)
        return Question(
            premises={
                "own-memory": own_memory(write, pool),
                "the tile is somebody else's": z3.Not(in_pool(at[0], pool)),
            },
            goal=memory.after(write).pattern(*at) == memory.pattern(*at),
            shown={"tile written": write.tile, "tile looked at": at[0]},
        )

    return Obligation(
        id="own-memory-keeps-the-bytes-of-others",
        theorem=9,
        statement="A pattern write that keeps own-memory changes no byte outside the pool, with tile-cap or without.",
        size=str(size),
        build=build,
    )


OBLIGATIONS: tuple[Obligation, ...] = (
    *(without(rule, kinds) for rule, kinds in DROPPED.items()),
    _own_memory_is_enough(),
)
