"""What writing costs, in exact cycles, and what the machine's owner asks by default."""

from dataclasses import replace
from fractions import Fraction

import pytest

from planeproof.contract import Burst, Demands, Machine, Storage, TileMap, Tiles, Timing, Window
from tests.contract.machines_by_hand import MACHINE, with_part


@pytest.mark.parametrize(
    ("fields", "cycles"),
    [
        ({}, 200),
        ({"reserve": 1}, 199),
        ({"reserve": Fraction(1, 3)}, 199),  # whole cycles only
        ({"cycles_per_line": Fraction(101, 10)}, 202),
        ({"cycles_per_line": Fraction(101, 10), "reserve": Fraction(3, 2)}, 200),
        ({"cycles_per_line": Fraction(1, 3), "lines": 80}, 20),  # 60 thirds, not 59.99
        ({"lines": 312, "shown": 224, "cycles_per_line": Fraction(448, 5)}, 7884),  # 88 lines of 89.6: 7884.8
        ({"lines": 262, "shown": 224, "cycles_per_line": Fraction(448, 5)}, 3404),  # 38 lines of 89.6: 3404.8
    ],
)
def test_a_blanking_has_the_whole_cycles_of_its_lines_less_the_reserve(fields: dict[str, object], cycles: int) -> None:
    """Exact rationals, rounded down once."""
    assert with_part("time", **fields).blank_cycles == cycles


def test_a_burst_costs_a_set_up_and_then_so_much_a_byte() -> None:
    """In exact fractions where they are given so."""
    machine = with_part("time", setup=Fraction(1, 2), per_byte=Fraction(4, 3))
    assert [machine.burst_cycles(n) for n in (1, 3, 8)] == [Fraction(11, 6), Fraction(9, 2), Fraction(67, 6)]


RATES = [
    ({}, (4, 1)),
    ({"view_setup": 0}, (0, 1)),
    ({"view_per_byte": 9}, (4, 9)),
    ({"view_setup": 2, "view_per_byte": 3}, (2, 3)),
]


@pytest.mark.parametrize(("fields", "view"), RATES)
def test_palette_and_registers_may_cost_otherwise(fields: dict[str, object], view: tuple[int, int]) -> None:
    """By its first address a burst is to the view or not: palette at 0 to 3, register at 4, map from 5 on."""
    machine = with_part("time", **fields)
    assert (machine.rates(view=False), machine.rates(view=True)) == ((4, 1), view)
    for address in range(-1, 12):
        expected = view if 0 <= address <= 4 else (4, 1)
        assert machine.cost(Burst(address, bytes(3))) == expected[0] + 3 * expected[1]
    assert machine.burst_cycles(3, view=True) == view[0] + 3 * view[1]


# --- must_show ------------------------------------------------------------------------------------------------


def machine(pages: int = 2, planes: int = 2, banks: int = 1, pool: tuple[int, ...] = (1, 2, 3)) -> Machine:
    """A machine of which the shape matters."""
    return Machine(
        name="shape",
        window=Window(columns=2, rows=1),
        tiles=Tiles(count=16, pool=pool, planes=planes),
        map=TileMap(pages=pages, banks=banks),
    )


@pytest.mark.parametrize(
    ("made", "expected"),
    [
        (machine(), 3),  # two pages, a plane each: all of the pool
        (machine(planes=3), 3),
        (machine(pages=1), 1),  # one page: half the pool, rounded down
        (machine(planes=1), 1),  # one plane: half
        (machine(pages=1, planes=1), 1),
        (machine(pool=(1, 2, 3, 4), planes=1), 2),
        (machine(pool=(1,), planes=1), 0),
        (machine(banks=2, pool=(1, 2, 3, 9, 10)), 2),  # the poorer bank has two
        (machine(banks=2, pool=(1, 2, 3, 9, 10), planes=1), 2),  # two pages, and a bank each: all of it
        (machine(banks=2, pool=(1, 2, 3, 9, 10), pages=1), 1),
    ],
)
def test_must_show_is_the_cap_where_both_pictures_have_room_and_half_of_it_elsewhere(
    made: Machine, expected: int
) -> None:
    """With two pages and planes for two pictures, one can be prepared whole beside the other."""
    assert made.must_show == expected


def test_what_is_demanded_is_demanded() -> None:
    """Both figures may be given."""
    asked = replace(MACHINE, demands=Demands(must_show=2, patience=7))
    assert (asked.must_show, asked.patience) == (2, 7)


# --- patience: 4 + 4 x (blankings for patterns + for entries + 1 for the view), worked by hand ------------------

SMALL_BURSTS = Timing(lines=40, shown=20, cycles_per_line=2, setup=4, per_byte=1)  # a blanking of 40 cycles
# An 8-byte burst is 12 cycles: 3 a blanking. A byte is 5: 8 a blanking. Two bytes are 6: 6 a blanking.


def waiting(columns: int, pool: int, *, entry_bytes: int = 1, **tiles: object) -> int:
    """The patience of a window of one row."""
    return Machine(
        name="patience",
        window=Window(columns=columns, rows=1),
        tiles=Tiles(count=40, pool=tuple(range(1, pool + 1)), **tiles),  # type: ignore[arg-type]
        map=TileMap(entry_bytes=entry_bytes),
        time=SMALL_BURSTS,
    ).patience


@pytest.mark.parametrize(
    ("found", "blankings"),
    [
        (waiting(1, 1), 1 + 1),  # one pattern, one entry
        (waiting(3, 9), 1 + 1),  # three patterns just fit
        (waiting(4, 9), 2 + 1),  # a fourth does not
        (waiting(9, 4), 2 + 2),  # no more patterns than the pool; nine entries, eight a blanking
        (waiting(8, 30), 3 + 1),
        (waiting(7, 2, entry_bytes=2), 1 + 2),  # seven entries of two bytes, six a blanking
        (waiting(2, 2, storage=Storage.INTERLEAVED), 2 + 1),  # sixteen single bytes, eight a blanking
        (waiting(2, 2, storage=Storage.PACKED), 2 + 1),  # two tiles of sixteen bytes: four bursts
    ],
)
def test_patience_is_four_times_the_slowest_plain_way_and_four_more(found: int, blankings: int) -> None:
    """Blankings for patterns and for entries, and one for the view."""
    assert found == 4 + 4 * (blankings + 1)


def test_patience_counts_the_planes_of_a_picture() -> None:
    """Depth 2: two bursts for each pattern."""
    deep = replace(
        MACHINE,
        tiles=Tiles(count=5, pool=(1, 2), planes=4, depth=2),
        colours=replace(MACHINE.colours, meaning=tuple((c, 0, 0) for c in range(4)), inks=(1, 2, 3)),
        time=replace(SMALL_BURSTS, view_setup=0),
    )
    assert deep.patience == 4 + 4 * (2 + 1 + 1)
