"""Each rule counts as exercised when, and only when, the situation in which it could be broken has occurred."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from planeproof.contract import Answer, Burst, Disturbance, Machine, Picture, TileMap, Tiles
from planeproof.contract.rules import RULES
from planeproof.judge import Play
from tests.judge.scripted import (
    EMPTY,
    FULL,
    LEFT,
    MACHINE,
    RIGHT,
    Blanking,
    entry,
    pattern,
    picture,
    played,
    revealed,
    sent,
)

NOTHING, A, B = picture(EMPTY, EMPTY), picture(LEFT, EMPTY), picture(EMPTY, RIGHT)
TO_1 = MACHINE.view_bursts(1, 0)
TWO_DIFFERENT, TWO_ALIKE = picture(LEFT, RIGHT), picture(FULL, FULL)
BUSY, TAKEN, TOO_BIG = Answer.BUSY, Answer.TAKEN, Answer.TOO_BIG


def must_show(cells: int) -> Machine:
    """The machine with another demand."""
    return replace(MACHINE, demands=replace(MACHINE.demands, must_show=cells))


ONE_SIDE = replace(MACHINE, tiles=Tiles(count=5, pool=(1, 2, 3), planes=1), map=TileMap(pages=1))
FULL_BLANKING = [Burst(MACHINE.pattern_address(3, 0), bytes(16))] * 9  # 180 of 200 cycles


def waiting(*blankings: Blanking, offers: tuple[Picture, ...] = (A,), **how: object) -> Callable[[], Play]:
    """A play of these blankings, to be had when it is needed."""
    return lambda: played(offers, blankings, **how)  # type: ignore[arg-type]


CASES: list[tuple[str, Callable[[], Play], bool]] = [
    # a pattern or map byte changed its value while a picture that is not empty was being seen
    ("hidden-writes", waiting(revealed(A, 1), [pattern(1, 0, FULL)]), True),
    ("hidden-writes", waiting(revealed(A, 1), [entry(0, 0, 1)]), True),
    ("hidden-writes", waiting(revealed(A, 1), [pattern(2, 0, EMPTY), entry(0, 0, 0)]), False),
    ("hidden-writes", waiting(revealed(A, 1), MACHINE.view_bursts(0, 1)), False),
    ("hidden-writes", waiting(revealed(A, 1)), False),
    ("hidden-writes", waiting([pattern(1, 0, FULL)], [pattern(1, 1, FULL)]), False),
    ("hidden-writes", waiting([entry(0, 0, 1), pattern(1, 0, LEFT)], [pattern(2, 0, LEFT)], machine=ONE_SIDE), False),
    # a change of view showed another picture than before
    ("exact-reveal", waiting(revealed(A, 1)), True),
    ("exact-reveal", waiting(sent(A, 1), TO_1), True),
    ("exact-reveal", waiting(TO_1), False),
    ("exact-reveal", waiting([pattern(1, 0, LEFT), entry(0, 0, 1)]), False),
    ("exact-reveal", waiting([*revealed(A, 1), *MACHINE.view_bursts(0, 1)]), False),
    # a blanking ended with work left that did not fit into it any more
    ("blanking-only", waiting(FULL_BLANKING, [pattern(1, 1, LEFT), pattern(2, 1, LEFT)]), True),
    ("blanking-only", waiting(FULL_BLANKING, [pattern(1, 1, LEFT)]), False),
    ("blanking-only", waiting(FULL_BLANKING, [Burst(MACHINE.pattern_address(1, 0), bytes(16))]), False),  # just fits
    ("blanking-only", waiting(FULL_BLANKING, [Burst(MACHINE.pattern_address(1, 0), bytes(17))]), True),
    ("blanking-only", waiting(FULL_BLANKING, ()), False),
    ("blanking-only", waiting(sent(A, 1), TO_1), False),
    ("blanking-only", waiting(FULL_BLANKING, FULL_BLANKING, offers=()), False),
    (
        "blanking-only",
        waiting(FULL_BLANKING, FULL_BLANKING, disturbances=[Disturbance(1, 0)]),
        True,
    ),
    # patterns and map cells were written after the set-up
    ("own-memory", waiting([pattern(1, 1, LEFT)], [entry(1, 0, 1)]), True),
    ("own-memory", waiting([pattern(1, 1, LEFT)], TO_1), False),
    ("own-memory", waiting([entry(1, 0, 1)], TO_1), False),
    ("own-memory", waiting([entry(1, 0, 1)], set_up=[pattern(1, 1, LEFT)]), False),
    # a picture that needs as many different patterns as must_show allows was taken
    ("tile-cap", waiting(machine=must_show(2), offers=(TWO_DIFFERENT,)), True),
    ("tile-cap", waiting(machine=must_show(3), offers=(TWO_DIFFERENT,)), True),  # the window has no more cells
    ("tile-cap", waiting(machine=must_show(2), offers=(TWO_ALIKE,)), False),
    ("tile-cap", waiting(machine=must_show(2), offers=(A,)), False),
    ("tile-cap", waiting(machine=must_show(1), offers=(TWO_DIFFERENT,)), False),
    ("tile-cap", waiting(machine=must_show(2), offers=(TWO_DIFFERENT,), answers=[TOO_BIG]), False),
    ("tile-cap", waiting(machine=must_show(2), offers=(TWO_DIFFERENT,), answers=[BUSY] * 9), False),
    ("tile-cap", waiting(machine=must_show(0), offers=(NOTHING,)), False),
    # a picture that is not empty was seen
    ("whole-reveal", waiting(revealed(A, 1)), True),
    ("whole-reveal", waiting(sent(A, 1)), False),
    ("whole-reveal", waiting(offers=(NOTHING,)), False),
    ("whole-reveal", waiting(offers=()), False),
    # two taken pictures that look different followed one another on the display
    ("in-order", waiting(revealed(A, 1), revealed(B, 0), offers=(A, B)), True),
    ("in-order", waiting(revealed(A, 1), revealed(A, 0), offers=(A, A)), False),
    ("in-order", waiting(revealed(A, 1), offers=(A, B)), False),
    ("in-order", waiting(revealed(A, 1), offers=(NOTHING, A)), False),
    # a taken picture had to be waited for, through at least one full blanking
    ("progress", waiting(sent(A, 1), TO_1), True),
    ("progress", waiting(), True),
    ("progress", waiting(offers=(NOTHING,)), False),
    ("progress", waiting(offers=()), False),
    ("progress", waiting(revealed(A, 1), disturbances=[Disturbance(0, 199)]), False),
    # a picture of exactly must_show occupied cells, all different, was offered
    ("fair-refusal", waiting(machine=must_show(2), offers=(TWO_DIFFERENT,)), True),
    ("fair-refusal", waiting(machine=must_show(2), offers=(TWO_DIFFERENT,), answers=[TOO_BIG]), True),
    ("fair-refusal", waiting(machine=must_show(1), offers=(A,)), True),
    ("fair-refusal", waiting(machine=must_show(2), offers=(TWO_ALIKE,)), False),
    ("fair-refusal", waiting(machine=must_show(1), offers=(TWO_DIFFERENT,)), False),
    ("fair-refusal", waiting(machine=must_show(2), offers=(A, B)), False),
    ("fair-refusal", waiting(machine=must_show(2), offers=()), False),
]


@pytest.mark.parametrize(("rule_id", "one", "found"), CASES, ids=[f"{c[0]}-{n}" for n, c in enumerate(CASES)])
def test_a_rule_is_exercised_when_and_only_when_its_witness_occurs(
    rule_id: str, one: Callable[[], Play], found: bool
) -> None:
    """One scene after the other, each the nearest to the next."""
    assert (rule_id in {rule.id for rule in one().exercised}) == found


def test_every_rule_has_scenes_with_and_without_its_witness() -> None:
    """None is forgotten above."""
    assert {(rule_id, found) for rule_id, _, found in CASES} == {(rule.id, f) for rule in RULES for f in (True, False)}


def test_nothing_is_exercised_by_a_scheduler_that_does_nothing() -> None:
    """Nor by a scene without pictures."""
    assert played([], []).exercised == frozenset()


def test_one_play_can_exercise_every_rule() -> None:
    """Two pictures of two different cells, sent over several blankings that end with work left."""
    last = picture(RIGHT, LEFT)
    scripts = [FULL_BLANKING, [*FULL_BLANKING[:8], *sent(TWO_DIFFERENT, 1)[:1]], revealed(TWO_DIFFERENT, 1)]
    one = played([TWO_DIFFERENT, last], [*scripts, revealed(last, 0)], machine=must_show(2))
    assert one.exercised == frozenset(RULES)
    assert dict(one.counts) == {}
