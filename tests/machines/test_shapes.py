"""The machines that ship."""

from importlib import resources

import pytest

from planeproof.contract import ByteDirection, ByteOrder, Machine, Outside, Storage
from planeproof.machines import read_machine, shipped

MACHINES = [read_machine(name) for name in shipped()]


def test_every_shape_in_the_folder_ships() -> None:
    """The list of names and the files in the folder are the same, and no name is there twice."""
    folder = resources.files("planeproof.machines") / "shapes"
    assert sorted(shipped()) == sorted(file.name.removesuffix(".toml") for file in folder.iterdir())


@pytest.mark.parametrize("name", shipped())
def test_a_shape_says_what_it_is_for(name: str) -> None:
    """Every file begins with a comment that names the machine, and the machine is called like its file."""
    text = (resources.files("planeproof.machines") / "shapes" / f"{name}.toml").read_text("utf-8")
    assert text.startswith(f"# {name}: ")
    assert read_machine(name).name == name


def test_the_shapes_cover_what_a_machine_can_be() -> None:
    """Each storage, byte direction, byte order and way of being late has a shape, and so has each number."""
    assert {machine.tiles.storage for machine in MACHINES} == set(Storage)
    assert {machine.tiles.byte for machine in MACHINES} == set(ByteDirection)
    assert {machine.map.byte_order for machine in MACHINES} == set(ByteOrder)
    assert {machine.outside for machine in MACHINES} == set(Outside)
    assert {machine.map.pages for machine in MACHINES} == {1, 2}
    assert {machine.map.banks for machine in MACHINES} == {1, 2}
    assert {machine.map.entry_bytes for machine in MACHINES} == {1, 2}
    assert {machine.tiles.planes for machine in MACHINES} == {1, 2, 4}
    assert {machine.tiles.depth for machine in MACHINES} == {1, 2}
    assert {machine.colours.fixed for machine in MACHINES} == {False, True}
    assert {machine.time.lines for machine in MACHINES} == {312, 262}
    assert any(len(machine.layout.steps) == 2 for machine in MACHINES)
    assert any(machine.time.view_setup is not None for machine in MACHINES)
    assert {machine.sides for machine in MACHINES} == {1, 2}


@pytest.mark.parametrize("machine", MACHINES, ids=shipped())
def test_a_shape_has_fewer_tiles_than_it_would_need(machine: Machine) -> None:
    """The window has more cells than a picture may have tiles: that is what makes the job one."""
    assert machine.must_show < machine.cells


@pytest.mark.parametrize(("name", "lines", "blanking"), [("vitrine-50", 312, 88), ("vitrine-60", 262, 38)])
def test_the_vitrines(name: str, lines: int, blanking: int) -> None:
    """One display: 40 x 17 cells, 240 tiles with a pool of 176, 224 lines shown, on both line standards."""
    machine = read_machine(name)
    assert (machine.window.columns, machine.window.rows, machine.cells) == (40, 17, 680)
    assert (machine.tiles.count, machine.cap, machine.must_show) == (240, 176, 176)
    assert (machine.tiles.planes, machine.map.pages, machine.sides) == (2, 2, 2)
    assert (machine.time.lines, machine.time.shown) == (lines, 224)
    assert machine.time.lines - machine.time.shown == blanking
    assert machine.blank_cycles == int(blanking * machine.time.cycles_per_line - 60)


def test_the_vitrines_are_one_display() -> None:
    """They differ in the name and the line standard alone."""
    one, other = read_machine("vitrine-50"), read_machine("vitrine-60")
    for part in ("window", "tiles", "map", "colours", "memory", "outside", "demands"):
        assert getattr(one, part) == getattr(other, part)
    for cost in ("shown", "reserve", "setup", "per_byte"):
        assert getattr(one.time, cost) == getattr(other.time, cost)


def test_the_vitrine_keeps_its_memory_in_order() -> None:
    """Colours and registers come first in memory, then the maps, then the patterns."""
    machine = read_machine("vitrine-50")
    memory = machine.layout
    colours, register = machine.palette_address, machine.page_address
    assert colours < register < memory.maps[0] < memory.maps[1] < memory.patterns


def test_the_banked_shape_has_512_tiles_with_entries_of_one_byte() -> None:
    """One byte names every tile of the window, for the banks share the names and have equally many of them."""
    machine = read_machine("two-wings")
    assert (machine.tiles.count, machine.map.entry_bytes, machine.tiles_per_bank) == (512, 1, 256)
    shares = [sum(tile // 256 == bank for tile in machine.pool) for bank in (0, 1)]
    assert shares == [96, 96]


def test_the_pool_of_two_byte_entries_crosses_tile_255() -> None:
    """Both bytes of an entry change within the pool, the high one first."""
    machine = read_machine("long-frieze")
    assert {255, 256} <= set(machine.pool)
    assert (machine.map_entry(255), machine.map_entry(256)) == (b"\x00\xff", b"\x01\x00")


def test_a_whole_picture_fits_one_blanking_of_the_bench() -> None:
    """Every pattern of a full picture, every cell and the dearest view change, each in a burst of its own."""
    machine = read_machine("bench")
    patterns = machine.must_show * machine.burst_cycles(8)
    cells = machine.cells * machine.burst_cycles(machine.map.entry_bytes)
    view = max(sum(map(machine.cost, machine.view_bursts(1 - seen, seen))) for seen in (0, 1))
    assert patterns + cells + view <= machine.blank_cycles
    assert (patterns, cells) == (40 * (14 + 64), 48 * (14 + 8))


def test_the_name_plate_has_one_side_and_room_for_all() -> None:
    """Nothing can be hidden on it, and every pattern and cell of a full picture fits one blanking."""
    machine = read_machine("name-plate")
    assert machine.sides == 1
    patterns, cells = machine.cap * machine.burst_cycles(8), machine.cells * machine.burst_cycles(1)
    assert patterns + cells <= machine.blank_cycles


def test_no_other_shape_is_as_roomy_as_those_two() -> None:
    """Elsewhere the patterns and cells of a full picture take more than one blanking."""
    for machine in MACHINES:
        if machine.name not in ("bench", "name-plate"):
            patterns = machine.must_show * machine.tiles.depth * machine.burst_cycles(8)
            assert patterns + machine.cells * machine.burst_cycles(machine.map.entry_bytes) > machine.blank_cycles
