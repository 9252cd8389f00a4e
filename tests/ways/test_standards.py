from dataclasses import replace
from fractions import Fraction

import pytest

from planeproof.contract import Machine
from planeproof.machines import read_machine, shipped
from planeproof.ways import Blanking, blanking_here, blanking_there


def other(machine: Machine) -> Blanking:
    """The blanking on the other line standard, which is known."""
    found = blanking_there(machine)
    assert found is not None
    return found


@pytest.mark.parametrize(("one", "another"), [("vitrine-50", "vitrine-60"), ("vitrine-60", "vitrine-50")])
def test_the_other_standard_is_the_twin_that_ships(one: str, another: str) -> None:
    """The two vitrines are one display on both standards: what is reckoned from the one is the other one's own."""
    assert other(read_machine(one)) == blanking_here(read_machine(another))


def test_there_and_back_again_is_the_same_line() -> None:
    """625/50: 64 microseconds a line; 525/60: 572/9 (READ-2; the exact ratio MEM). By hand for a clock of 1 MHz."""
    scroll = read_machine("scroll-case")
    assert scroll.time.cycles_per_line == 64
    assert other(scroll).cycles == int((262 - 192) * Fraction(572, 9)) == 4448


def test_shown_lines_that_leave_nothing_leave_no_blanking() -> None:
    """262 or more shown lines of 312 leave no cycle on the standard of 262 lines, and nothing fits into none."""
    vitrine = read_machine("vitrine-50")
    for shown in (262, 270):
        tall = replace(vitrine, time=replace(vitrine.time, shown=shown))
        assert other(tall) == Blanking(standard="525/60", cycles=0)
        assert other(tall).refreshes(100, 10) is None


def test_a_standard_of_another_name_has_no_other() -> None:
    """Which one the other is, is known of the two only."""
    vitrine = read_machine("vitrine-50")
    assert blanking_there(replace(vitrine, time=replace(vitrine.time, standard="405/50"))) is None
    assert all(blanking_there(read_machine(name)) is not None for name in shipped())


def test_refreshes_round_up_and_need_the_largest_part_to_fit() -> None:
    """What fills two blankings exactly takes two, a cycle more takes three; a part above a blanking never fits."""
    blanking = Blanking(standard="x", cycles=100)
    assert [blanking.refreshes(cost, 50) for cost in (0, 100, 200, 201, Fraction(601, 2))] == [1, 1, 2, 3, 4]
    assert (blanking.refreshes(150, 100), blanking.refreshes(150, 101)) == (2, None)
