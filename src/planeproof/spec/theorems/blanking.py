"""Theorem 4: a blanking of any length that keeps the local rules leaves the frame old or new; and the cut rule.

By induction over its writes, in three phases: before the first byte of the view change a write is judged under the
old view, up to the last under both, then under the new one. The invariant: judged under the old view, that view shows
the old frame; judged under the new, that one shows the new frame. Each is said for one pixel, and so for all.
"""

from dataclasses import dataclass

import z3

from planeproof.spec.obligation import Answer, Obligation, Question
from planeproof.spec.rules import exact_reveal, keeps_hidden_writes
from planeproof.spec.symbols import Size, Symbols
from planeproof.spec.theorems.isolation import KINDS, a_write
from planeproof.spec.vocabulary import Formula, Frame, PictureMemory, Pixel, View, Write


@dataclass(frozen=True, kw_only=True)
class _Phase:
    """A view, the frame it is to show, and whether writes are judged by it at the moment."""

    view: View
    frame: Frame
    judged: Formula

    def stands(self, memory: PictureMemory, pixel: Pixel) -> Formula:
        return memory.shown(self.view, pixel) == self.frame(pixel)

    def if_judged(self, formula: Formula) -> Formula:
        return z3.Implies(self.judged, formula)

    def keeps(self, memory: PictureMemory, write: Write, pixel: Pixel) -> Formula:
        return self.if_judged(keeps_hidden_writes(memory, self.view, write, pixel))


def _phase(symbols: Symbols, name: str) -> _Phase:
    frame, judged = symbols.frame(f"{name}-frame"), symbols.flag(f"judged-under-{name}")
    return _Phase(view=symbols.view(f"{name}-view"), frame=frame, judged=judged)


def _step(planes: int, kind: str) -> Obligation:
    size = Size(planes=planes)

    def build(context: z3.Context) -> Question:
        symbols = Symbols(context, size)
        old, new = _phase(symbols, "old"), _phase(symbols, "new")
        memory, pixel, write = symbols.memory(), symbols.pixel(), a_write(symbols, kind)
        after = memory.after(write)
        return Question(
            premises={
                "until the view has changed, writes are hidden under the old one": old.keeps(memory, write, pixel),
                "from its first change on, writes are hidden under the new one": new.keeps(memory, write, pixel),
                "the old frame stood": old.if_judged(old.stands(memory, pixel)),
                "the new frame stood": new.if_judged(new.stands(memory, pixel)),
            },
            goal=z3.And(old.if_judged(old.stands(after, pixel)), new.if_judged(new.stands(after, pixel))),
            shown={"judged under the old view": old.judged, "judged under the new view": new.judged},
            mutants={
                "the new frame stands before the view changes": new.stands(after, pixel),
                "the old frame stands after it": old.stands(after, pixel),
            },
        )

    return Obligation(
        id=f"{kind}-step-{planes}-planes",
        theorem=4,
        statement=f"A {kind} write that is hidden under the views it is judged by leaves the old frame standing under "
        "the old view, and the new frame under the new one.",
        size=str(size),
        build=build,
    )


def _end() -> Obligation:
    size = Size(planes=4)

    def build(context: z3.Context) -> Question:
        symbols = Symbols(context, size)
        pixel = symbols.pixel()
        names = ("seen", "wreck", "old-frame", "new-frame", "current", "next")
        seen, wreck, old, new, current, following = (symbols.frame(name)(pixel) for name in names)
        changed, late, is_next = symbols.flag("view-changed"), symbols.flag("a-byte-is-late"), symbols.flag("is-next")
        in_time = z3.If(changed, new, old)
        return Question(
            premises={
                "what is seen is what stands, unless a late byte wrecks it": seen == z3.If(late, wreck, in_time),
                "the current picture was seen": old == current,
                "exact-reveal": z3.Implies(changed, exact_reveal(new, current, following, is_next)),
                "blanking-only": z3.Not(late),
            },
            goal=seen == z3.If(z3.And(changed, is_next), following, current),
            shown={"the view changed": changed, "a byte is late": late, "seen": seen, "current": current},
            mutants={
                "the current picture stays": seen == current,
                "every change of view shows the next": z3.Implies(changed, seen == following),
            },
        )

    return Obligation(
        id="whole-reveal-follows",
        theorem=4,
        statement="If the old frame stands until the view changes and the new one from then on, exact-reveal and "
        "blanking-only leave the frame the current picture or the next, whole.",
        size=f"any frame of {size.cells:,} cells",
        build=build,
    )


def _cut(planes: int, kind: str) -> Obligation:
    size = Size(planes=planes)

    def build(context: z3.Context) -> Question:
        symbols = Symbols(context, size)
        old, new = _phase(symbols, "old"), _phase(symbols, "new")
        memory, pixel, write = symbols.memory(), symbols.pixel(), a_write(symbols, kind)
        after = memory.after(write)
        return Question(
            premises={
                "cut before the write, the old view shows the old frame": old.if_judged(old.stands(memory, pixel)),
                "cut after the write, the old view shows the old frame": old.if_judged(old.stands(after, pixel)),
                "cut before the write, the new view shows the new frame": new.if_judged(new.stands(memory, pixel)),
                "cut after the write, the new view shows the new frame": new.if_judged(new.stands(after, pixel)),
            },
            goal=z3.And(old.keeps(memory, write, pixel), new.keeps(memory, write, pixel)),
            shown={"judged under the old view": old.judged, "judged under the new view": new.judged},
        )

    return Obligation(
        id=f"{kind}-cut-rule-{planes}-planes",
        theorem=4,
        statement=f"If a blanking cut just before or just after a {kind} write shows the old frame under the old view "
        "(until the view has changed) and the new frame under the new one (from its first change on), then the write "
        "keeps hidden-writes. With the step, this is the cut rule both ways.",
        size=str(size),
        build=build,
    )


def _cut_outside_only(kind: str) -> Obligation:
    """Cuts outside the view change are enough where nothing is written within it, and not otherwise."""
    size = Size(planes=2)

    def build(context: z3.Context) -> Question:
        symbols = Symbols(context, size)
        old, new = _phase(symbols, "old"), _phase(symbols, "new")
        memory, pixel, write = symbols.memory(), symbols.pixel(), a_write(symbols, kind)
        after = memory.after(write)
        return Question(
            premises={
                "judged under both views": z3.And(old.judged, new.judged),
                "cut before the view change, the old frame is seen": old.stands(memory, pixel),
                "cut after the view change, the new frame is seen": new.stands(after, pixel),
            },
            goal=z3.And(old.keeps(memory, write, pixel), new.keeps(memory, write, pixel)),
            shown={
                "tile under the old view": memory.named(old.view, pixel.cell),
                "tile under the new view": memory.named(new.view, pixel.cell),
            },
        )

    return Obligation(
        id=f"{kind}-cut-outside-the-change-only",
        theorem=4,
        statement=f"If a blanking whose one {kind} write stands between two bytes of the view change shows the old "
        "frame when cut before that change and the new one when cut after it, the write keeps hidden-writes.",
        size=str(size),
        build=build,
        wanted=Answer.REFUTED,
    )


def _three_writes(first: str, second: str, third: str) -> Obligation:
    """The induction's phases, put together once: a write in each, and the view change around the second."""
    size = Size(planes=2)

    def build(context: z3.Context) -> Question:
        symbols = Symbols(context, size)
        old, new, pixel = symbols.view("old-view"), symbols.view("new-view"), symbols.pixel()
        writes = [
            a_write(symbols, kind, name) for kind, name in ((first, "first"), (second, "second"), (third, "third"))
        ]
        states = [symbols.memory()]
        for write in writes:
            states.append(states[-1].after(write))
        current, following, is_next = symbols.frame("current"), symbols.frame("next"), symbols.flag("is-next")
        kept = {
            f"the {word} write is hidden under the {name} view": keeps_hidden_writes(
                states[number], view, writes[number], pixel
            )
            for word, number, name, view in (
                ("first", 0, "old", old),
                ("second", 1, "old", old),
                ("second", 1, "new", new),
                ("third", 2, "new", new),
            )
        }
        revealed = exact_reveal(states[2].shown(new, pixel), current(pixel), following(pixel), is_next)
        seen_old, seen_new = states[0].shown(old, pixel), states[1].shown(new, pixel)
        return Question(
            premises={**kept, "exact-reveal": revealed, "the current picture was seen": seen_old == current(pixel)},
            goal=z3.And(
                states[1].shown(old, pixel) == current(pixel),
                states[2].shown(old, pixel) == current(pixel),
                seen_new == states[3].shown(new, pixel),
                states[3].shown(new, pixel) == z3.If(is_next, following(pixel), current(pixel)),
            ),
            shown={"colour at the start": seen_old, "colour at the end": states[3].shown(new, pixel)},
        )

    return Obligation(
        id=f"three-writes-{first}-{second}-{third}",
        theorem=4,
        statement=f"A {first} write before, a {second} write within and a {third} write after the view change, each "
        "within the rules, leave the current picture standing until the change and the revealed one from then on.",
        size=str(size),
        build=build,
    )


OBLIGATIONS: tuple[Obligation, ...] = (
    *(_step(planes, kind) for kind in KINDS for planes in range(1, 5)),
    _end(),
    *(_cut(planes, kind) for kind in KINDS for planes in range(1, 5)),
    *(_cut_outside_only(kind) for kind in KINDS),
    _three_writes("pattern", "map", "pattern"),
    _three_writes("map", "pattern", "map"),
)
