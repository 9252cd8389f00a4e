"""Small relatives are machines of the same kind: every seed gives one, and none needs to be thrown away."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planeproof.contract import Demands, Machine
from planeproof.machines import read_machine, shipped
from planeproof.scenes.relatives import (
    MOST_COLUMNS,
    MOST_ROWS,
    dearest_view_change,
    picture_cycles,
    relative,
    with_blanking,
)
from planeproof.scenes.source import RandomSource
from tests.scenes.fixed_source import FixedSource
from tests.strategies.machines import machines

SEEDS = 40
every_shape = pytest.mark.parametrize("name", shipped())


def relatives(base: Machine, count: int = SEEDS) -> list[Machine]:
    """That many relatives of ``base``, each of its own seed."""
    return [relative(base, RandomSource(f"relatives/{number}")) for number in range(count)]


def kind(machine: Machine) -> dict[str, object]:
    """What makes a scheduler's work on a machine what it is, whatever the machine's size."""
    tiles, time = machine.tiles, machine.time
    return {
        "tiles": (tiles.planes, tiles.depth, tiles.storage, tiles.byte),
        "map": (machine.map.pages, machine.map.entry_bytes, machine.map.byte_order, machine.map.banks),
        "sides": [(machine.planes_of(s), machine.page_of(s), machine.bank_of(s)) for s in range(machine.sides)],
        "colours": machine.colours,
        "costs": (time.setup, time.per_byte, time.view_setup, time.view_per_byte, time.cycles_per_line),
        "outside": machine.outside,
        "steps": len(machine.layout.steps),
    }


@every_shape
def test_a_relative_is_of_the_same_kind(name: str) -> None:
    """Planes, depth, storage, bytes, pages, banks, entries, order, colours, costs, outside and steps are the base's."""
    base = read_machine(name)
    for small in relatives(base):
        # Where a map row is one byte, a step of a row and a step of 1 are the same, so there is one step.
        row = small.window.pitch * small.map.entry_bytes
        steps = 1 if row == 1 else len(base.layout.steps)
        assert kind(small) == kind(base) | {"steps": steps}


def sizes(base: Machine) -> tuple[int, int]:
    """The most columns and rows: where bursts may step over map rows, there are more rows than columns."""
    return (MOST_COLUMNS, MOST_ROWS) if base.layout.steps == (1,) else (2, MOST_COLUMNS)


@every_shape
def test_a_relative_is_small_and_says_so(name: str) -> None:
    """At most 4 x 3 cells and a tile more than cells; its name is not the base's, so no report mixes them up."""
    base = read_machine(name)
    for small in relatives(base):
        assert small.window.columns <= sizes(base)[0]
        assert small.window.rows <= sizes(base)[1]
        assert small.cap <= small.map.banks * max(small.cells + 1, 2)
        assert small.name == f"small relative of {name}"


@every_shape
def test_relatives_are_of_every_size(name: str) -> None:
    """Every number of columns and rows is reached, the single cell too, and more cells than tiles as well as fewer."""
    base = read_machine(name)
    small, (columns, rows) = relatives(base, 3 * SEEDS), sizes(base)
    assert {machine.window.columns for machine in small} == set(range(1, columns + 1))
    assert {machine.window.rows for machine in small} == set(range(1, rows + 1))
    assert {machine.cells for machine in small} >= {1, columns * rows}
    assert {machine.cells > machine.cap_of_view for machine in small} == {True, False}


@pytest.mark.parametrize("name", ["twin-niche", "long-frieze", "pigment-chart", "case-label"])
def test_a_window_in_a_larger_map_stays_in_one(name: str) -> None:
    """Where the base's window lies in a larger map, the pitch is not always the window's width, in small too."""
    small = relatives(read_machine(name))
    assert any(machine.window.pitch > machine.window.columns for machine in small)
    assert any(machine.window.origin_column > 0 for machine in small)


def test_entries_of_two_bytes_are_used_as_such() -> None:
    """Where entries have two bytes, some pools cross from tile 255 to tile 256, and some do not."""
    pools = [machine.pool for machine in relatives(read_machine("long-frieze"))]
    assert any(min(pool) <= 255 < max(pool) for pool in pools)
    assert any(max(pool) < 255 for pool in pools)


def test_every_bank_has_its_share_of_the_pool() -> None:
    """Of two banks each has equally many tiles of the pool, so that a picture fits either."""
    for machine in relatives(read_machine("two-wings")):
        shares = [sum(tile // machine.tiles_per_bank == bank for tile in machine.pool) for bank in range(2)]
        assert shares == [machine.cap_of_view] * 2


@pytest.mark.parametrize("name", ["vitrine-50", "two-wings", "case-label"])
@pytest.mark.parametrize("demanded", [0, 1, 30])
def test_a_demand_shrinks_with_the_pool(name: str, demanded: int) -> None:
    """A must_show that the base's owner demands is asked for in proportion, and can always be met."""
    base = replace(read_machine(name), demands=Demands(must_show=demanded))
    for machine in relatives(base):
        assert machine.must_show == machine.cap * demanded // base.cap
        assert machine.must_show <= machine.cap_of_view


def test_the_blanking_is_short_except_where_a_picture_fits_one() -> None:
    """A relative of a vitrine sends a picture in several blankings; on the bench a whole one fits, in small too."""
    short = relatives(read_machine("vitrine-50"))
    assert sum(picture_cycles(machine) > machine.blank_cycles for machine in short) > SEEDS // 2
    assert all(picture_cycles(machine) <= machine.blank_cycles for machine in relatives(read_machine("bench")))


@pytest.mark.parametrize("name", ["vitrine-50", "two-wings", "mosaic-floor"])
def test_the_shortest_blanking_is_the_least_that_can_be(name: str) -> None:
    """Blanking cycles take each of the eight values from the least possible on: nothing below can be, by a cycle."""
    base = read_machine(name)
    least = {}
    for machine in relatives(base, 40 * SEEDS):
        floor = max(machine.burst_cycles(8), dearest_view_change(machine))
        if picture_cycles(base) <= base.blank_cycles:
            floor += -(-picture_cycles(machine) // 1)
        least[machine.blank_cycles - -(-floor // 1)] = machine
    assert set(range(8)) <= set(least)
    assert min(least) == 0


def test_a_blanking_of_just_so_many_cycles() -> None:
    """`with_blanking` leaves exactly the cycles asked for, whatever the cycles of a line, and keeps the costs."""
    for name in ("vitrine-60", "mosaic-floor"):
        base = read_machine(name)
        for cycles in range(1000, 1200):
            machine = with_blanking(base, cycles, time=base.time, below=3)
            assert machine.blank_cycles == cycles
            assert machine.time.shown == machine.window.first_line + machine.window.rows * 8 + 3
            assert machine.time.per_byte == base.time.per_byte


def test_a_demanded_patience_stays_with_the_machine() -> None:
    """A relative has the patience it would have had anyway; the demanded one counts blankings of another length."""
    base = read_machine("vitrine-50")
    hasty = replace(base, demands=Demands(patience=3))
    for number in range(SEEDS):
        small, plain = (relative(machine, RandomSource(str(number))) for machine in (hasty, base))
        assert small.demands.patience is None
        assert small.patience == plain.patience > 3


def test_the_simplest_relative() -> None:
    """With all choices at their lowest: one cell at the top of its own map, one tile, the shortest blanking."""
    machine = relative(read_machine("vitrine-50"), FixedSource())
    assert (machine.cells, machine.cap, machine.window.first_line) == (1, 1, 0)
    assert machine.window.origin_column == machine.window.origin_row == 0
    assert machine.blank_cycles == max(machine.burst_cycles(8), dearest_view_change(machine))


@settings(max_examples=60)
@given(machines(), st.integers(0, 1 << 30))
def test_a_users_own_machine_has_relatives_too(base: Machine, number: int) -> None:
    """Not only of the shapes that ship: of any machine, and of the same kind."""
    small = relative(base, RandomSource(str(number)))
    row = small.window.pitch * small.map.entry_bytes
    steps = 1 if row == 1 else len(base.layout.steps)
    assert kind(small) == kind(base) | {"steps": steps}
