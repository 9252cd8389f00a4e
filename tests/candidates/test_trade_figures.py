"""A real scheduler takes as many refreshes for a full picture as the trade reckons with.

All figures of the trade here are common practice, no source (PRACTICE): 600 cells, 192 tiles, one-byte map entries,
clocks of 1.66 and 1.79 MHz, 70 and 20 lines of blanking, 54 cycles for entering and leaving it, 8 cycles a byte written
straight and 13 in a loop, set-ups of 12 and 14. They are fixed here, not fitted. The refreshes that follow from them
were reckoned apart from this package (RUN). `tests/machines/test_line_standards.py` has that arithmetic; here a
scheduler is played.
"""

from fractions import Fraction

import numpy as np
import pytest

from planeproof.candidates.reference import Fresh
from planeproof.contract import Answer, Machine, Picture, RegionKind, Scene, TileMap, Tiles, Timing, Window
from planeproof.judge import Play, play

CYCLES_50 = Fraction("1.66") * 64
CYCLES_60 = Fraction("1.79") * Fraction(572, 9)
OCCUPIED = 192
WINDOW = Window(columns=25, rows=24, map_columns=32, map_rows=30, origin_column=3, origin_row=2)
POOL = tuple(range(1, OCCUPIED + 1))
BANKED = (Tiles(count=512, pool=(*POOL, *(256 + tile for tile in POOL)), planes=1), TileMap(pages=2, banks=2))
"""Tiles of one plane, a bank for each side: the 192 patterns of a side are neighbours, so one burst sends them."""
TWO_PLANES = (Tiles(count=256, pool=POOL), TileMap(pages=2))
"""A plane for each side: its patterns are 8 bytes apart, so each takes a burst of its own."""


def trade(kind: tuple[Tiles, TileMap], per_byte: int, setup: int, *, at_60: bool) -> Machine:
    """The trade's display: 70 lines of blanking at 50 Hz, 20 at 60 Hz."""
    lines, blank, cycles = (262, 20, CYCLES_60) if at_60 else (312, 70, CYCLES_50)
    time = Timing(lines=lines, shown=lines - blank, cycles_per_line=cycles, reserve=54, setup=setup, per_byte=per_byte)
    return Machine(name="trade", window=WINDOW, tiles=kind[0], map=kind[1], time=time)


def full_picture() -> Picture:
    """192 cells of 600 occupied, spread over the window, all different."""
    rows = np.zeros((600, 8), dtype=np.uint8)
    rows[np.linspace(0, 599, OCCUPIED).astype(int)] = np.arange(1, OCCUPIED + 1)[:, np.newaxis]
    return Picture.from_rows(0, rows)


def played(machine: Machine) -> Play:
    """The reference scheduler that sends everything anew, on that picture; nothing is broken."""
    result = play(Scene.of(machine, [full_picture()]), Fresh)
    assert result.counts == {}
    return result


def refreshes(result: Play) -> int:
    """Blankings from the one right after TAKEN to the one whose frame shows the picture."""
    taken = next(refresh.number for refresh in result.refreshes if refresh.answer is Answer.TAKEN)
    seen = next(refresh.number for refresh in result.refreshes if refresh.current == 0)
    return seen - taken + 1


WAYS = [(8, 12, False, 3), (13, 14, False, 4), (8, 12, True, 8), (13, 14, True, 13)]


@pytest.mark.parametrize(("per_byte", "setup", "at_60", "expected"), WAYS)
def test_a_full_picture_takes_what_the_trade_says(per_byte: int, setup: int, expected: int, *, at_60: bool) -> None:
    """3 refreshes written straight and 4 looped at 50 Hz; 8 and 13 at 60 Hz with 20 lines of blanking (RUN)."""
    assert refreshes(played(trade(BANKED, per_byte, setup, at_60=at_60))) == expected


@pytest.mark.parametrize(("per_byte", "setup", "at_60", "expected"), WAYS)
def test_it_was_sent_in_the_bursts_that_the_figures_are_for(
    per_byte: int, setup: int, expected: int, *, at_60: bool
) -> None:
    """2,136 bytes: 192 patterns in one burst, 24 rows of the map in one each; but for those that a blanking cuts."""
    machine = trade(BANKED, per_byte, setup, at_60=at_60)
    bursts = [burst for refresh in played(machine).refreshes for burst in refresh.bursts]
    content = [burst for burst in bursts if not machine.is_view(burst.address)]
    assert sum(len(burst.data) for burst in content) == 192 * 8 + 600 == 2136
    assert 1 + 24 <= len(content) <= 1 + 24 + expected - 1
    assert len(bursts) - len(content) == 1


@pytest.mark.parametrize(
    ("per_byte", "setup", "at_60", "expected"),
    [(8, 12, False, 3), (13, 14, False, 5), (8, 12, True, 9), (13, 14, True, 14)],
)
def test_with_a_burst_for_each_tile_it_takes_longer(per_byte: int, setup: int, expected: int, *, at_60: bool) -> None:
    """RUN: 191 set-ups more are 2,292 or 2,674 cycles, a refresh more but in the first case."""
    machine = trade(TWO_PLANES, per_byte, setup, at_60=at_60)
    assert refreshes(played(machine)) == expected
    spent = 2136 * per_byte + (192 + 24) * setup
    assert -(-spent // machine.blank_cycles) == expected


def test_512_tiles_of_two_planes_fill_8_kib() -> None:
    """PRACTICE: what a display of the trade has for patterns."""
    machine = Machine(
        name="full", window=WINDOW, tiles=Tiles(count=512, pool=POOL), map=TileMap(banks=1, entry_bytes=2)
    )
    (patterns,) = [region for region in machine.regions if region.kind is RegionKind.PATTERNS]
    assert patterns.length == 8 * 1024
