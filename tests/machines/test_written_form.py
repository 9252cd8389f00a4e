"""The written form of a machine, there and back."""

import dataclasses
import tomllib
from fractions import Fraction

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planeproof.contract import Colours, Demands, Machine, Memory, TileMap, Tiles, Timing, Window
from planeproof.machines import machine_toml, parse_machine, read_machine, shipped, wire
from tests.strategies.machines import machines

PARTS: dict[type, type[msgspec.Struct]] = {
    Window: wire.WindowWire,
    Tiles: wire.TilesWire,
    TileMap: wire.MapWire,
    Colours: wire.ColoursWire,
    Memory: wire.MemoryWire,
    Timing: wire.TimeWire,
    Demands: wire.DemandsWire,
    Machine: wire.MachineWire,
}

names = st.text(st.characters(codec="utf-8"))


@st.composite
def written_machines(draw: st.DrawFn) -> Machine:
    """A machine of any shape, with everything that a file must hold besides: names, demands, a pool in disorder."""
    machine = draw(machines())
    pool = tuple(draw(st.permutations(machine.pool[:40])))
    tiles = dataclasses.replace(machine.tiles, pool=pool)
    most = dataclasses.replace(machine, tiles=tiles).cap_of_view
    demands = Demands(must_show=draw(st.none() | st.integers(0, most)), patience=draw(st.none() | st.just(7)))
    time = dataclasses.replace(machine.time, standard=draw(names))
    return dataclasses.replace(machine, name=draw(names), tiles=tiles, time=time, demands=demands)


@given(written_machines())
def test_a_machine_survives_toml(machine: Machine) -> None:
    """What is written as TOML is TOML, and reads as the same machine, name and pool order included."""
    assert parse_machine(machine_toml(machine), "another name") == machine


@given(written_machines())
def test_a_machine_survives_its_wire_form(machine: Machine) -> None:
    """The wire form holds all of a machine and no more, so it also comes back the same from JSON."""
    form = wire.from_machine(machine)
    assert wire.to_machine(form, "another name") == machine
    text = msgspec.json.encode(form, enc_hook=wire.write_cycles)
    assert msgspec.json.decode(text, type=wire.MachineWire, dec_hook=wire.read_cycles) == form


@pytest.mark.parametrize("code", [*range(32), ord('"'), ord("\\"), 127, 0xE9, 0x1F48E])
def test_a_name_with_any_character_survives_toml(code: int) -> None:
    """Each character that TOML escapes, and some that it does not, comes back as it was."""
    machine = dataclasses.replace(read_machine("bench"), name=f"a {chr(code)} b")
    assert parse_machine(machine_toml(machine), "another name") == machine


@pytest.mark.parametrize("name", shipped())
def test_a_shipped_machine_survives_toml(name: str) -> None:
    """A user can save a shipped machine under its own or another name and read it back."""
    machine = read_machine(name)
    assert parse_machine(machine_toml(machine), "another name") == machine


@pytest.mark.parametrize("part", PARTS)
def test_the_form_has_the_keys_of_the_contract(part: type) -> None:
    """Each table has the fields of its part under the same names, and demands those the contract demands."""
    fields = {field.name: field for field in dataclasses.fields(part)}
    missing = dataclasses.MISSING
    needed = {n for n, f in fields.items() if f.default is missing and f.default_factory is missing}
    keys = {field.name: field for field in msgspec.structs.fields(PARTS[part])}
    assert keys.keys() == fields.keys()
    assert {name for name, key in keys.items() if key.required} == needed - ({"name"} if part is Machine else set())


SMALLEST = "[window]\ncolumns = 2\nrows = 1\n[tiles]\ncount = 4\npool = [{ first = 1, count = 3 }]\n"


def test_what_is_left_out_is_the_contract_s_default() -> None:
    """The smallest file makes the machine that the smallest call makes."""
    built = Machine(name="small", window=Window(columns=2, rows=1), tiles=Tiles(count=4, pool=(1, 2, 3)))
    assert parse_machine(SMALLEST, "small") == built


@pytest.mark.parametrize(
    ("written", "cycles"),
    [
        ("96", 96),
        ("89.6", Fraction(448, 5)),
        ('"448/5"', Fraction(448, 5)),
        ('"89.6"', Fraction(448, 5)),
        ("8_9.60", Fraction(448, 5)),
        ("896e-1", Fraction(448, 5)),
        ("9e1", 90),
        ('"180/2"', 90),
    ],
)
def test_cycles_are_read_exactly(written: str, cycles: int | Fraction) -> None:
    """However a number of cycles is written, it is read as that number, a whole one as an int."""
    read = parse_machine(f"{SMALLEST}[time]\ncycles_per_line = {written}\n", "small").time.cycles_per_line
    assert (read, type(read)) == (cycles, type(cycles))


def test_a_pool_is_written_as_the_runs_it_has() -> None:
    """Neighbouring numbers make one range, in the order in which the pool has them."""
    tiles = Tiles(count=20, pool=(5, 6, 7, 3, 4, 12))
    machine = Machine(name="runs", window=Window(columns=1, rows=1), tiles=tiles)
    pool = tomllib.loads(machine_toml(machine))["tiles"]["pool"]
    assert pool == [{"first": 5, "count": 3}, {"first": 3, "count": 2}, {"first": 12, "count": 1}]
