"""The terms mean what the contract means, on values."""

from functools import partial

import numpy as np
import pytest
import z3

from planeproof.contract import Storage
from planeproof.contract.layout import ByteDirection, tile_bits
from planeproof.machines import read_machine, shipped
from planeproof.spec.symbols import Size, Symbols
from planeproof.spec.theorems.addresses import BITS, packed_address, pattern_address
from planeproof.spec.vocabulary import PatternByte, View, shows_side


def number(term: z3.ExprRef) -> int:
    """The value of a term without free symbols."""
    return int(z3.simplify(term).as_long())


@pytest.mark.parametrize("name", shipped())
def test_symbolic_addresses_are_the_machines(name: str) -> None:
    """For every row and plane of a few tiles of each machine that ships, the term has the machine's address."""
    machine = read_machine(name)
    planes, storage = machine.tiles.planes, machine.tiles.storage
    context = z3.Context()
    value = {n: z3.BitVecVal(n, BITS, context) for n in {*machine.pool[:2], machine.pool[-1], *range(8)}}
    base = z3.BitVecVal(machine.layout.patterns, BITS, context)
    for tile in (*machine.pool[:2], machine.pool[-1]):
        for row in range(8):
            if storage is Storage.PACKED:
                term = packed_address(base, value[tile], planes, value[0], value[row])
                assert number(term) == machine.pattern_address(tile, row=row)
                continue
            for plane in range(planes):
                term = pattern_address(storage, base, value[tile], planes, value[plane], value[row])
                assert number(term) == machine.pattern_address(tile, plane, row)


@pytest.mark.parametrize("planes", [1, 2, 3, 4])
def test_symbolic_pixel_values_are_the_layouts(planes: int) -> None:
    """Pattern bytes as numbers give every pixel the value that the contract's planar layout gives it."""
    block = np.random.default_rng(planes).integers(0, 256, 8 * planes, dtype=np.uint8)
    expected = tile_bits(Storage.PLANAR, planes, ByteDirection.ROW).pixels(block[None])[0]
    symbols = Symbols(z3.Context(), Size(planes=planes))
    memory = symbols.memory()
    for plane in range(planes):
        for row in range(8):
            at = (
                symbols.tile("t"),
                z3.BitVecVal(plane, symbols.plane("p").sort()),
                z3.BitVecVal(row, 3, symbols.context),
            )
            memory = memory.after(
                PatternByte(tile=at[0], plane=at[1], row=at[2], byte=_byte(block, plane, row, symbols))
            )
    for row in range(8):
        for column in range(8):
            place = z3.BitVecVal(row, 3, symbols.context), z3.BitVecVal(column, 3, symbols.context)
            assert number(memory.value(symbols.tile("t"), *place)) == expected[row, column]
            assert number(memory.value(symbols.tile("t"), row, column)) == expected[row, column]


def _byte(block: np.ndarray[tuple[int], np.dtype[np.uint8]], plane: int, row: int, symbols: Symbols) -> z3.ExprRef:
    return z3.BitVecVal(int(block[plane * 8 + row]), 8, symbols.context)


@pytest.mark.parametrize("name", [name for name in shipped() if not read_machine(name).colours.fixed])
def test_the_palette_of_a_side_is_the_machines(name: str) -> None:
    """Each machine's own palette for a side satisfies the formula for that side, and for no other set of planes."""
    machine = read_machine(name)
    planes, depth = machine.tiles.planes, machine.tiles.depth
    symbols = Symbols(z3.Context(), Size(planes=planes))
    shades = (machine.colours.background, *machine.colours.inks)
    for shown in range(machine.plane_sets):
        palette = machine.palette_showing(shown)
        view = View(colour=partial(_listed, palette), page=symbols.page("p"), bank=symbols.bank("b"))
        for side in range(machine.plane_sets):
            picture = symbols.picture("picture", depth)
            formula = shows_side(view, picture, z3.BitVecVal(side, symbols.plane("s").sort()), planes)
            solver = z3.Solver(ctx=symbols.context)
            solver.add(
                formula, *(picture.shade(z3.BitVecVal(i, depth, symbols.context)) == s for i, s in enumerate(shades))
            )
            assert (solver.check() == z3.sat) == (side == shown)


def _listed(palette: bytes, value: z3.ExprRef) -> z3.ExprRef:
    chosen = z3.BitVecVal(palette[-1], 8, value.ctx)
    for number_of, colour in enumerate(palette[:-1]):
        chosen = z3.If(value == number_of, z3.BitVecVal(colour, 8, value.ctx), chosen)
    return chosen
