"""What sending takes: counted in one step as it comes out burst by burst, and what has to be sent."""

from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planeproof.contract import Rational
from planeproof.machines import read_machine, shipped
from planeproof.scenes.uploads import Ending, Tariff, changed
from tests.candidates.small import picture, small

CYCLES = st.one_of(st.integers(1, 40), st.fractions(min_value=Fraction(1, 3), max_value=40, max_denominator=6))


@st.composite
def tariffs(draw: st.DrawFn) -> Tariff:
    """Any tariff on which each burst fits a blanking; the reveal may be free, as where there is one side."""
    burst, entry, reveal = draw(CYCLES), draw(CYCLES), draw(st.one_of(st.just(0), CYCLES))
    return Tariff(
        blanking=draw(st.integers(40, 120)),
        burst=burst,
        bursts_a_pattern=draw(st.integers(1, 3)),
        entry=entry,
        reveal=reveal,
        per_byte=draw(CYCLES),
        per_view_byte=draw(CYCLES),
    )


def one_by_one(tariff: Tariff, patterns: int, entries: int) -> Ending:
    """The ending, by a clock that is moved on burst by burst."""
    bursts: list[Rational] = [tariff.burst] * (patterns * tariff.bursts_a_pattern) + [tariff.entry] * entries
    bursts += [tariff.reveal] if tariff.reveal else []
    blankings, left, missing = 1, Fraction(tariff.blanking), None
    for burst in bursts:
        missing = None
        if burst > left:
            missing = burst - left
            blankings, left = blankings + 1, Fraction(tariff.blanking)
        left -= burst
    return Ending(blankings, left, missing)


@given(tariffs(), st.integers(0, 30), st.integers(0, 30))
def test_an_ending_is_what_a_clock_says(tariff: Tariff, patterns: int, entries: int) -> None:
    """Many bursts at once end as the same bursts one after the other, none of them split."""
    assert tariff.ending(patterns=patterns, entries=entries) == one_by_one(tariff, patterns, entries)


def test_ends_by_hand() -> None:
    """Three bursts of 10 and a reveal of 5 fill 35 cycles; with 34, and with 33, the last bytes of it are too late."""
    tariff = Tariff(blanking=35, burst=10, bursts_a_pattern=1, entry=4, reveal=5, per_byte=1, per_view_byte=2)
    assert tariff.ends_full(patterns=3, entries=0)
    assert not tariff.ends_full(patterns=3, entries=1)
    late = {left: Tariff(**{**vars(tariff), "blanking": left}) for left in (32, 33, 34, 35)}
    assert {left: t.ends_a_byte_late(patterns=3, entries=0) for left, t in late.items()} == {
        32: False,
        33: True,
        34: True,
        35: False,
    }


def test_nothing_to_send_is_no_edge() -> None:
    """A reveal that just fills a blanking by itself, or is a byte too long for one, is nothing that was sent."""
    tariff = Tariff(blanking=5, burst=5, bursts_a_pattern=1, entry=5, reveal=5, per_byte=1, per_view_byte=1)
    assert not tariff.ends_full(patterns=0, entries=0)
    assert not tariff.ends_a_byte_late(patterns=0, entries=0)


@pytest.mark.parametrize("name", shipped())
def test_the_dearest_reveal_is_either(name: str) -> None:
    """On machines that ship, both changes between two sides cost the same, so the dearest is the one that comes."""
    machine = read_machine(name)
    there, back = machine.view_bursts(1 % machine.sides, 0), machine.view_bursts(0, 1 % machine.sides)
    assert sum(map(machine.cost, there)) == sum(map(machine.cost, back)) == Tariff.of(machine).reveal


def test_what_has_to_be_sent() -> None:
    """Newly filled: both; changed: the pattern; emptied: the entry; the same, or empty as before: nothing."""
    machine = small("vitrine-50", 5)
    now, held = picture(machine, "AB.A."), picture(machine, ".AAA.")
    assert changed(now.planes, held.planes) == (2, 2)
    assert changed(now.planes, now.planes) == (0, 0)
    assert changed(np.zeros_like(now.planes), now.planes) == (0, 3)
