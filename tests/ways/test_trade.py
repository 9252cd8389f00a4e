"""The trade's usual picture, 192 tiles and 600 cells, at the figures that were reckoned for it elsewhere."""

from dataclasses import dataclass
from fractions import Fraction

import pytest

from planeproof.contract import Machine, TileMap, Tiles, Timing, Window
from planeproof.ways import Name, Way, ways_of

# All figures RUN, from a table of budgets made before this code: cycles a line at 1.66 MHz x 64 us and
# 1.79 MHz x 63.5556 us; 54 cycles of entry, register saves and exit. 192 tiles, 600 cells of 24 rows, 242 shown lines
# and the costs of a byte and of a set-up are common practice of the trade, no source (PRACTICE).
HZ_50 = ("625/50", 312, Fraction("106.24"), 7382)
HZ_60 = ("525/60", 262, Fraction("113.76"), 2221)
Standard = tuple[str, int, Fraction, int]


@dataclass(frozen=True, kw_only=True)
class Budget:
    """One row of the table: costs, whether the 192 patterns lie together, cycles of the picture, refreshes."""

    setup: int
    per_byte: int
    together: bool
    cycles: int
    at_50: int
    at_60: int


TABLE = [
    Budget(setup=12, per_byte=8, together=True, cycles=17_388, at_50=3, at_60=8),
    Budget(setup=14, per_byte=13, together=True, cycles=28_118, at_50=4, at_60=13),
    Budget(setup=16, per_byte=8, together=False, cycles=20_544, at_50=3, at_60=10),
    Budget(setup=26, per_byte=13, together=False, cycles=33_384, at_50=5, at_60=16),
]


def trade(budget: Budget, standard: Standard) -> Machine:
    """A display for that picture: patterns that lie together have a bank of one plane, the others two planes."""
    name, lines, cycles_per_line, _ = standard
    one = tuple(range(1, 193))
    bank = (*one, *(tile + 256 for tile in one))
    return Machine(
        name="trade",
        window=Window(columns=25, rows=24, map_columns=32),
        tiles=Tiles(count=512, pool=bank, planes=1) if budget.together else Tiles(count=193, pool=one, planes=2),
        map=TileMap(pages=2, banks=2 if budget.together else 1),
        time=Timing(
            standard=name,
            lines=lines,
            shown=242,
            cycles_per_line=cycles_per_line,
            reserve=54,
            setup=budget.setup,
            per_byte=budget.per_byte,
        ),
    )


def way_of(machine: Machine, budget: Budget) -> Way:
    """The way that sends it as the row of the table does."""
    name = Name.BANK_FLIP if budget.together else Name.HIDDEN_PLANE
    return next(way for way in ways_of(machine) if way.name is name)


@pytest.mark.parametrize("budget", TABLE, ids=lambda budget: f"{budget.setup}-{budget.per_byte}")
@pytest.mark.parametrize("standard", [HZ_50, HZ_60], ids=lambda standard: str(standard[0]))
def test_the_trades_picture_takes_the_refreshes_it_is_known_for(budget: Budget, standard: Standard) -> None:
    """2,136 bytes beside the view, 3 to 5 refreshes at 50 Hz with 70 lines of blanking, 8 to 16 at 60 Hz with 20."""
    machine = trade(budget, standard)
    way = way_of(machine, budget)
    assert machine.blank_cycles == standard[3]
    assert way.sending is not None
    assert way.here is not None
    turn = machine.view_bursts(1, 0)
    assert way.sending.n_bytes - way.sending.view == 2136
    assert way.sending.bursts - len(turn) == (25 if budget.together else 216)
    assert way.sending.cycles - sum(map(machine.cost, turn)) == budget.cycles
    assert (way.tiles, way.here.refreshes) == (192, budget.at_50 if standard is HZ_50 else budget.at_60)
