"""The arithmetic of the two line standards, against figures from elsewhere.

Marks: READ-2, read in a copy of the source; MEM, from memory; PRACTICE, common practice of the trade, no
source; RUN, reckoned apart from this package.
"""

import math
from collections.abc import Callable
from fractions import Fraction

import pytest

from planeproof.contract import Machine, Rational, Tiles, Timing, Window
from planeproof.machines import read_machine

# READ-2 (table of both systems): 625 lines at 15625 Hz make 64 us; 525 lines at 4.5 MHz / 286 make 572/9 us.
LINE_625, LINE_525 = Fraction(64), Fraction(572, 9)
CLOCK_50, CLOCK_60 = Fraction("1.66"), Fraction("1.79")  # MHz; PRACTICE


def trade(lines: int, blank: int, cycles_per_line: Fraction, setup: int, per_byte: int) -> Machine:
    """The trade's usual display: 600 cells, 192 tiles; 54 cycles go to entering and leaving the blanking."""
    return Machine(
        name="trade",
        window=Window(columns=25, rows=24),
        tiles=Tiles(count=256, pool=tuple(range(1, 193))),
        time=Timing(
            lines=lines,
            shown=lines - blank,
            cycles_per_line=cycles_per_line,
            reserve=54,  # 7 + 29 + 6 + 12
            setup=setup,
            per_byte=per_byte,
        ),
    )


def at_each_standard(setup: int, per_byte: int) -> list[Machine]:
    """That display at 50 Hz with 70 and with 20 lines of blanking, then at 60 Hz."""
    return [
        trade(312, 70, CLOCK_50 * LINE_625, setup, per_byte),
        trade(312, 20, CLOCK_50 * LINE_625, setup, per_byte),
        trade(262, 70, CLOCK_60 * LINE_525, setup, per_byte),
        trade(262, 20, CLOCK_60 * LINE_525, setup, per_byte),
    ]


def test_a_blanking_has_the_cycles_of_its_lines_less_the_reserve() -> None:
    """RUN: 7382 and 2070 cycles of 7436 and 2124 at 50 Hz, 7909 and 2221 of 7963 and 2275 at 60 Hz."""
    assert [machine.blank_cycles for machine in at_each_standard(12, 8)] == [7382, 2070, 7909, 2221]


@pytest.mark.parametrize(
    ("setup", "per_byte", "most"),
    [(12, 8, [921, 257, 987, 276]), (14, 13, [566, 158, 607, 169]), (26, 13, [565, 157, 606, 168])],
)
def test_the_longest_burst_of_a_blanking(setup: int, per_byte: int, most: list[int]) -> None:
    """RUN: the longest burst that fits has so many bytes, and one byte more does not fit."""
    for machine, length in zip(at_each_standard(setup, per_byte), most, strict=True):
        assert machine.burst_cycles(length) <= machine.blank_cycles < machine.burst_cycles(length + 1)


def one_long_burst(machine: Machine) -> Rational:
    """192 tiles in a burst, 24 rows of the map in a burst each."""
    return machine.burst_cycles(192 * 8) + 24 * machine.burst_cycles(25)


def tile_by_tile(machine: Machine) -> Rational:
    """192 bursts of a tile, 24 of a row of the map."""
    return 192 * machine.burst_cycles(8) + 24 * machine.burst_cycles(25)


@pytest.mark.parametrize(
    ("way", "setup", "per_byte", "cost", "refreshes"),
    [
        (one_long_burst, 12, 8, 17388, [3, 9, 3, 8]),
        (one_long_burst, 14, 13, 28118, [4, 14, 4, 13]),
        (tile_by_tile, 16, 8, 20544, [3, 10, 3, 10]),
        (tile_by_tile, 26, 13, 33384, [5, 17, 5, 16]),
    ],
    ids=["straight", "looped", "pulled from a stack", "from a list"],
)
def test_the_refreshes_that_a_picture_takes(
    way: Callable[[Machine], Rational], setup: int, per_byte: int, cost: int, refreshes: list[int]
) -> None:
    """RUN: a picture of 2136 bytes takes 3 to 4 refreshes at 50 Hz if well sent, 5 from a plain list."""
    machines = at_each_standard(setup, per_byte)
    assert [way(machine) for machine in machines] == [cost] * 4
    assert [math.ceil(way(machine) / machine.blank_cycles) for machine in machines] == refreshes


@pytest.mark.parametrize(
    ("name", "line", "half_lines", "field_rate", "picture_rate"),
    [
        ("vitrine-50", LINE_625, 625, Fraction(50), 50.0801),
        ("vitrine-60", LINE_525, 525, Fraction(60000, 1001), 60.0544),
    ],
)
def test_lines_and_their_period_make_the_rate(
    name: str, line: Fraction, half_lines: int, field_rate: Fraction, picture_rate: float
) -> None:
    """A 1.4 MHz clock makes the line period of the standard, and so its rate (READ-2; 60000/1001 MEM).

    With a whole number of lines, half a line short of the field, the rate is a little higher (RUN).
    """
    time = read_machine(name).time
    period = time.cycles_per_line / Fraction("1.4")  # us
    assert period == line
    assert 1 / (Fraction(half_lines, 2) * period / 1_000_000) == field_rate
    assert 2 * time.lines + 1 == half_lines
    assert round(float(1_000_000 / (time.lines * period)), 4) == picture_rate


@pytest.mark.parametrize(("lines", "shown", "blank"), [(625, 576, 49), (525, 480, 45), (312, 288, 24), (262, 240, 22)])
def test_what_is_not_shown_is_blanking(lines: int, shown: int, blank: int) -> None:
    """Lines, shown lines and blanking lines of the published modes (READ; the two of whole lines READ-2)."""
    machine = Machine(
        name="mode",
        window=Window(columns=1, rows=1),
        tiles=Tiles(count=2, pool=(1,)),
        time=Timing(lines=lines, shown=shown, cycles_per_line=100),
    )
    assert machine.blank_cycles == 100 * blank
