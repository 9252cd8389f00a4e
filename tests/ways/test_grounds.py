from collections.abc import Iterator
from dataclasses import replace

import pytest
from hypothesis import given

from planeproof.contract import Machine, Storage
from planeproof.machines import read_machine, shipped
from planeproof.spec import OBLIGATIONS, Answer
from planeproof.spec.costs import pattern_costs
from planeproof.ways import Ground, Statement, ways_of
from planeproof.ways.grounds import HIDING, LARGEST, NO_PALETTES, PALETTES_EXIST, REVEALING
from planeproof.ways.sending import own_bytes, whole_span
from tests.strategies.machines import machines

WANTED = {obligation.id: obligation.wanted for obligation in OBLIGATIONS}


def statements(machine: Machine) -> Iterator[Statement]:
    """All that is said about the ways on a machine."""
    return (statement for way in ways_of(machine) for statement in way.statements)


def wrongly_grounded(machine: Machine) -> list[str]:
    """The obligations that a statement names, but that do not exist or are wanted the other way."""
    wanted = {Ground.PROVED: Answer.PROVED, Ground.WITNESS: Answer.REFUTED}
    return [
        name
        for statement in statements(machine)
        for name in statement.obligations
        if WANTED.get(name) is not wanted.get(statement.ground)
    ]


@pytest.mark.parametrize("name", shipped())
def test_on_what_ships_each_proof_and_example_is_one_of_the_spec(name: str) -> None:
    """What is said to be proved is wanted proved there, an example is a refutation, and nothing is only argued."""
    machine = read_machine(name)
    assert wrongly_grounded(machine) == []
    assert all(statement.ground is not Ground.ARGUED for statement in statements(machine))


@given(machines())
def test_on_any_machine_too(machine: Machine) -> None:
    """Whatever the machine, a named obligation exists, and what rests on one names it."""
    assert wrongly_grounded(machine) == []
    for statement in statements(machine):
        assert bool(statement.obligations) == (statement.ground in {Ground.PROVED, Ground.WITNESS}), statement


def test_a_size_beyond_the_spec_is_said_to_be_argued() -> None:
    """Six planes hide as two do, but no obligation has that size."""
    bench = read_machine("bench")
    six = replace(bench, tiles=replace(bench.tiles, planes=6), memory=None)
    assert {s.says for s in statements(six) if s.ground is Ground.ARGUED} >= {
        "under the palette of one side, colour depends on that side's planes alone"
    }


def test_the_sizes_are_all_that_the_spec_has() -> None:
    """The tables of sizes here are those of the obligations there, no more and no fewer."""
    assert {name for name in WANTED if name.startswith("hiding-")} == {
        f"hiding-{p}-planes-depth-{d}" for p, d in HIDING
    }
    assert {name for name in WANTED if name.startswith("reveal-")} == {
        f"reveal-{p}-planes-depth-{d}" for p, d in REVEALING
    }
    for table, wanted in ((PALETTES_EXIST, Answer.REFUTED), (NO_PALETTES, Answer.PROVED)):
        named = {f"colours-{planes}-planes-{colours}-{colours}" for planes, colours in table}
        assert {WANTED.get(name) for name in named} == {wanted}
    assert f"pattern-rule-is-needed-{LARGEST}-planes" in WANTED
    assert f"pattern-rule-is-needed-{LARGEST + 1}-planes" not in WANTED


@pytest.mark.parametrize(("storage", "planes"), [(s, p) for s in Storage for p in (2, 4)])
def test_a_pattern_costs_what_the_spec_counts(storage: Storage, planes: int) -> None:
    """One plane of a tile, counted from addresses here and from layouts there: the same bursts and bytes."""
    bench = read_machine("bench")
    machine = replace(bench, tiles=replace(bench.tiles, planes=planes, storage=storage), memory=None)
    own, span = own_bytes(machine, 0), whole_span(machine, 0)
    there = pattern_costs(storage, planes)
    assert (own.bursts, own.n_bytes) == (there[0].bursts, there[0].n_bytes)
    assert (span.bursts, span.n_bytes) == (there[-1].bursts, there[-1].n_bytes)
    assert own.cycles == own.bursts * machine.time.setup + own.n_bytes * machine.time.per_byte
