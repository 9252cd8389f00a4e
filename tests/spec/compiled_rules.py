"""The symbolic rules, compiled, so that they can be asked about what really happened."""

import numpy as np
import z3
from numpy.typing import NDArray

from planeproof.contract import Machine
from planeproof.spec import rules, rules_over_time
from planeproof.spec.evaluation import Evaluator, Values
from planeproof.spec.rules_over_time import COUNT_BITS, Answered, ViewChange, Watched
from planeproof.spec.symbols import Size, Symbols
from planeproof.spec.vocabulary import MapEntry, PatternByte

PLACES = 6
"""The background and as many pictures as a viewer is followed through."""
BEYOND = (1 << COUNT_BITS) - 1
"""A write after every other, and the look of what is no picture."""


def count(name: str) -> z3.ExprRef:
    """A free number."""
    return z3.BitVec(name, COUNT_BITS)


def watched() -> Watched:
    """A viewer of whom nothing is known."""
    return Watched(
        looks=tuple(count(f"look-{place}") for place in range(PLACES)),
        taken_at=tuple(count(f"taken-at-{place}") for place in range(PLACES)),
        line=count("line"),
        place=count("place"),
        had=count("had"),
        seen_at=count("seen-at"),
        busy=z3.Bool("busy"),
        busy_since=count("busy-since"),
    )


def as_terms(viewer: Watched) -> dict[str, z3.ExprRef]:
    """The viewer by the names of `watched`."""
    numbered = {f"look-{place}": look for place, look in enumerate(viewer.looks)}
    numbered |= {f"taken-at-{place}": at for place, at in enumerate(viewer.taken_at)}
    return numbered | {
        "line": viewer.line,
        "place": viewer.place,
        "had": viewer.had,
        "seen-at": viewer.seen_at,
        "busy": viewer.busy,
        "busy-since": viewer.busy_since,
    }


def first_seen(cases: int) -> dict[str, Values]:
    """The values of a viewer who has seen the background only, of look 0, in so many cases."""
    return {name: np.full(cases, name == "line", dtype=np.int64) for name in as_terms(watched())}


def of_an_answer() -> Evaluator:
    """fair-refusal, and the viewer after the answer."""
    answer = Answered(
        taken=z3.Bool("is-taken"),
        busy=z3.Bool("is-busy"),
        declined=z3.Bool("is-declined"),
        look=count("offered-look"),
        occupied=count("occupied"),
    )
    fair = rules_over_time.fair_refusal(answer, count("must-show"))
    return Evaluator({"fair-refusal": fair, **as_terms(watched().answered(answer))})


def of_a_frame() -> Evaluator:
    """The other seen rules, and the viewer after the frame."""
    viewer, frame = watched().blanked(z3.Bool("full")), count("frame")
    return Evaluator(
        {
            "progress": rules_over_time.progress(viewer, count("patience")),
            "whole-reveal": rules_over_time.whole_reveal_of_line(viewer, frame),
            "in-order": rules_over_time.in_order_of_line(viewer, frame),
            **as_terms(viewer.saw(frame)),
        }
    )


def owned_addresses(machine: Machine) -> NDArray[np.bool_]:
    """own-memory for every address that there is, and as many beyond."""
    formula = rules_over_time.owns(machine, z3.BitVec("address", 24))
    extent = 2 * max(region.end for region in machine.regions)
    owned: NDArray[np.bool_] = Evaluator({"kept": formula})({"address": np.arange(extent)})["kept"] == 1
    return owned


class CompiledRules:
    """Every rule, for machines of so many planes and one bit a pixel. Each `Evaluator` answers to "kept"."""

    def __init__(self, planes: int) -> None:
        symbols = Symbols(z3.main_ctx(), Size(planes=planes))
        self.answer, self.frame = of_an_answer(), of_a_frame()
        self._in_time: dict[int, Evaluator] = {}
        self._on_writes(symbols)
        self._on_frames(symbols)

    def in_time(self, n_bytes: int) -> Evaluator:
        """blanking-only for a burst of so many bytes."""
        if n_bytes not in self._in_time:
            spent, set_up, each, cycles = (z3.BitVec(name, 32) for name in ("spent", "set-up", "per-byte", "cycles"))
            self._in_time[n_bytes] = Evaluator({"kept": rules.blanking_only(spent, set_up, each, n_bytes, cycles)})
        return self._in_time[n_bytes]

    def _on_writes(self, symbols: Symbols) -> None:
        memory, pixel, number = symbols.memory(), symbols.pixel(), count("number")
        old, new = symbols.view("old"), symbols.view("new")
        change = ViewChange(old=old, new=new, first=count("first"), last=count("last"))
        tile, byte = symbols.tile("tile"), symbols.byte("byte")
        pattern = PatternByte(tile=tile, plane=symbols.plane("plane"), row=symbols.row("row"), byte=byte)
        entry = MapEntry(page=symbols.page("page"), cell=symbols.cell("cell"), entry=symbols.tile("entry"))
        in_pool = rules_over_time.changes_pool_only(tile, symbols.byte("held"), byte, z3.BitVec("pool", 60))
        self.pattern = Evaluator({"kept": change.keeps_hidden_writes(memory, pattern, number, pixel)})
        self.entry = Evaluator({"kept": change.keeps_hidden_writes(memory, entry, number, pixel)})
        self.changed = Evaluator({"kept": in_pool})

    def _on_frames(self, symbols: Symbols) -> None:
        memory, pixel, view, picture = (
            symbols.memory(),
            symbols.pixel(),
            symbols.view("view"),
            symbols.picture("picture"),
        )
        shown, current, following = (symbols.shade(name) for name in ("shown", "current", "following"))
        cap = rules.tile_cap(memory, view, symbols.cell("cell"), z3.BitVec("pool", 60), symbols.tile("blank"))
        self.look = Evaluator({"colour": picture.look(pixel)})
        self.shown = Evaluator({"colour": memory.shown(view, pixel)})
        self.whole = Evaluator({"kept": rules.whole_reveal(memory, view, pixel, picture, z3.Bool("seen"))})
        self.exact = Evaluator({"kept": rules.exact_reveal(shown, current, following, z3.Bool("is-next"))})
        self.named = Evaluator({"kept": cap})
