"""The seen rules alone: what the judge's viewer reports, and what the formulas say, answer by answer, frame by frame.

A viewer is told what was answered and what was seen; no memory, no writes. After an empty picture A and B take turns;
a frame is background, A, B or nothing of the kind.
"""

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import product

import numpy as np
import pytest
import z3
from hypothesis import given, settings
from hypothesis import strategies as st

from planeproof.contract import Answer, Demands, Machine, Picture, Tiles, Window
from planeproof.display import Frame, blank_frame, look_of
from planeproof.judge.seen import Viewer
from planeproof.judge.violation import Violation
from planeproof.spec import rules_over_time
from planeproof.spec.evaluation import Evaluator, Given, Values
from planeproof.spec.rules import in_order
from tests.judge.scripted import EMPTY, FULL, LEFT
from tests.spec.compiled_rules import BEYOND, PLACES, count, first_seen, of_a_frame, of_an_answer, watched

MACHINE = Machine(
    name="a viewer's",
    window=Window(columns=2, rows=1),
    tiles=Tiles(count=4, pool=(1, 2)),
    demands=Demands(patience=1, must_show=1),
)
PICTURES = [[EMPTY, EMPTY], [FULL, EMPTY], [LEFT, FULL], [FULL, EMPTY], [LEFT, FULL]]
"""An empty one, A, B, A again, B again; B has one occupied cell too many to have to be shown."""
LOOKS = (0, 1, 2, 1, 2)
OCCUPIED = (0, 1, 2, 1, 2)
NO_PICTURE = BEYOND
FRAMES = (0, 1, 2, NO_PICTURE)
SEEN_RULES = ("fair-refusal", "progress", "whole-reveal", "in-order")


@dataclass(frozen=True)
class Step:
    """One refresh: the answer to the next picture, the look of the frame, whether the blanking was had in full."""

    answer: Answer | None
    frame: int
    full: bool


STEPS = tuple(Step(*step) for step in product((None, *Answer), FRAMES, (True, False)))
Broken = set[tuple[str, int]]


def frames() -> dict[int, Frame]:
    """A frame of each look."""
    shown = {look: look_of(MACHINE, Picture.from_rows(0, rows)) for look, rows in zip(LOOKS, PICTURES, strict=True)}
    torn = blank_frame(MACHINE).copy()
    torn[0, 0] = shown[1][0, 0]
    return shown | {NO_PICTURE: torn}


FRAME_OF = frames()


def by_judge(steps: Sequence[Step]) -> Broken:
    """The seen rules that the judge finds broken, with the number of the step; progress is told once."""
    found: list[Violation] = []
    viewer, offered = Viewer(MACHINE, found.append), 0
    for number, step in enumerate(steps):
        picture = Picture.from_rows(offered, PICTURES[offered])
        if step.answer is Answer.TAKEN:
            viewer.take(picture)
        elif step.answer is Answer.BUSY:
            viewer.put_off()
        elif step.answer is Answer.TOO_BIG:
            viewer.decline(picture, number)
        offered += step.answer in (Answer.TAKEN, Answer.TOO_BIG)
        viewer.see(FRAME_OF[step.frame], number, full=step.full)
    return {(violation.rule.id, violation.refresh) for violation in found}


def compiled() -> tuple[Evaluator, Evaluator]:
    """The formulas as they stand now."""
    return of_an_answer(), of_a_frame()


def by_formulas(traces: Sequence[Sequence[Step]], formulas: tuple[Evaluator, Evaluator]) -> list[Broken]:
    """The same by the formulas, for traces of one length, all at once."""
    answer, frame = formulas
    viewer, offered = first_seen(len(traces)), np.zeros(len(traces), dtype=np.int64)
    broken: list[Broken] = [set() for _ in traces]
    for number, steps in enumerate(zip(*traces, strict=True)):
        event = answered([step.answer for step in steps], offered)
        after = answer({**viewer, **event})
        seen: dict[str, Given] = {"frame": np.array([step.frame for step in steps]), "patience": MACHINE.patience}
        seen["full"] = np.array([step.full for step in steps])
        after |= frame({**{name: after[name] for name in viewer}, **seen})
        viewer = {name: after[name] for name in viewer}
        offered = offered + np.asarray(event["is-taken"]) + np.asarray(event["is-declined"])
        for rule in SEEN_RULES:
            for place in np.flatnonzero(np.atleast_1d(after[rule]) == 0):
                broken[place].add((rule, number))
    return [once(found) for found in broken]


def answered(answers: Sequence[Answer | None], offered: Values) -> dict[str, Given]:
    """The answers as values; the pictures are those that are next."""
    names = {"is-taken": Answer.TAKEN, "is-busy": Answer.BUSY, "is-declined": Answer.TOO_BIG}
    told: dict[str, Given] = {
        name: np.array([given is answer for given in answers], dtype=np.int64) for name, answer in names.items()
    }
    looks, occupied = np.array(LOOKS)[offered], np.array(OCCUPIED)[offered]
    return {**told, "offered-look": looks, "occupied": occupied, "must-show": MACHINE.must_show}


def once(found: Broken) -> Broken:
    """Of progress the first breach only, as the judge tells it."""
    late = sorted(number for rule, number in found if rule == "progress")
    return {(rule, number) for rule, number in found if rule != "progress"} | {("progress", n) for n in late[:1]}


def unlike(length: int) -> Iterator[tuple[Broken, Broken]]:
    """What judge and formulas say on every trace of that length on which they disagree."""
    traces = list(product(STEPS, repeat=length))
    return (
        (said, read)
        for trace, read in zip(traces, by_formulas(traces, compiled()), strict=True)
        if (said := by_judge(trace)) != read
    )


def test_both_readings_agree_on_every_short_trace() -> None:
    """All 32^3 = 32,768 traces of three refreshes, each of four rules broken in some."""
    assert len(STEPS) ** 3 == 32_768
    assert list(unlike(3)) == []
    broken = Counter(rule for trace in by_formulas(list(product(STEPS, repeat=3)), compiled()) for rule, _ in trace)
    assert broken == {"fair-refusal": 22_528, "progress": 3_072, "whole-reveal": 70_144, "in-order": 448}


def test_both_readings_agree_on_longer_traces() -> None:
    """Eight refreshes and up to five pictures, drawn the same each time."""
    assert len(PICTURES) < PLACES
    formulas, in_all = compiled(), Counter[str]()

    @settings(max_examples=300, derandomize=True, deadline=None)
    @given(st.lists(st.sampled_from(STEPS), min_size=8, max_size=8))
    def claim(steps: list[Step]) -> None:
        shortened = up_to_the_last_picture(steps)
        (read,) = by_formulas([shortened], formulas)
        assert by_judge(shortened) == read
        in_all.update(rule for rule, _ in read)

    claim()
    assert min(in_all[rule] for rule in SEEN_RULES) >= 20


def up_to_the_last_picture(steps: list[Step]) -> list[Step]:
    """The steps for which there are pictures left to offer; beyond them nothing is answered."""
    offers, kept = 0, []
    for step in steps:
        kept.append(step if offers < len(PICTURES) - 1 else Step(None, step.frame, step.full))
        offers += kept[-1].answer in (Answer.TAKEN, Answer.TOO_BIG)
    return kept


def test_with_one_picture_the_rule_is_that_of_the_bounded_runs() -> None:
    """For background and one picture, in-order is the rule that theorems 9 and 10 use: z3 finds no difference."""
    viewer, frame = watched(), count("frame")
    background, picture = viewer.looks[:2]
    one_picture = [viewer.line == 2, z3.ULE(viewer.place, 1), background != picture]
    whole = z3.Or(frame == background, frame == picture)
    general, special = rules_over_time.in_order_of_line(viewer, frame), in_order(viewer.place == 1, frame == picture)
    solver = z3.Solver()
    solver.add(*one_picture, whole, general != special)
    assert solver.check() == z3.unsat


ALTERED: dict[str, Callable[..., z3.BoolRef]] = {
    "fair_refusal": lambda answer, must_show: z3.Implies(answer.declined, z3.UGE(answer.occupied, must_show)),
    "progress": lambda viewer, patience: z3.Implies(viewer.waiting, z3.ULE(viewer.had - viewer.seen_at, patience)),
    "whole_reveal_of_line": rules_over_time.exact_reveal_of_line,
    "in_order_of_line": lambda viewer, frame: z3.Or(*(frame == look for look in viewer.looks), frame == NO_PICTURE),
}


@pytest.mark.parametrize("name", ALTERED)
def test_an_altered_formula_is_noticed(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Some trace of three refreshes tells a wrong copy of any of the four rules."""
    monkeypatch.setattr(rules_over_time, name, ALTERED[name])
    said, read = next(unlike(3))
    assert name.removesuffix("_of_line").replace("_", "-") in {rule for rule, _ in said ^ read}


@pytest.mark.parametrize("name", ["decline", "_judge_waiting", "_judge_other", "_see_look_alikes"])
def test_an_altered_judge_is_noticed(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """A viewer that does nothing where it should do one of these things is told apart by two or three refreshes."""
    monkeypatch.setattr(Viewer, name, lambda *_: None)
    assert next(unlike(2), None) or next(unlike(3), None)
