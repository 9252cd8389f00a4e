"""The one written form of a machine, in TOML files and inside saved cases.

Each struct mirrors a part of `planeproof.contract` field by field, under the same names, so that an error of
the contract names the very key to mend. A key that is left out takes the contract's default. Three things are
written otherwise than they are held: the pool as ranges, colours as "#rrggbb", cycles as 8, 89.6 or "448/5".
"""

import re
from dataclasses import fields
from decimal import Decimal
from fractions import Fraction
from typing import Annotated, Any

import msgspec
from msgspec import UNSET, Meta, UnsetType

from planeproof.contract import (
    RGB,
    ByteDirection,
    ByteOrder,
    Colours,
    Demands,
    Machine,
    Memory,
    Outside,
    Rational,
    Storage,
    TileMap,
    Tiles,
    Timing,
    Window,
)

Part = Window | Tiles | TileMap | Colours | Memory | Timing | Demands

Cycles = Annotated[Fraction, Meta(description='an exact number of cycles, such as 8, "448/5" or "89.6"')]
Colour = Annotated[str, Meta(pattern="^#[0-9a-fA-F]{6}$", description='a colour such as "#f2e8d5"')]
Pages = Annotated[tuple[int, ...], Meta(description="a list of byte addresses, one a map page")]

_WRITTEN_CYCLES = re.compile(r"-?[0-9]+(\.[0-9]+|/0*[1-9][0-9]*)?")
_PLAINEST = 1 << 53
"""Whole numbers from here on are written as text: not every JSON reader keeps all their digits."""
_LONGEST = 40
"""Digits before or after the point of a decimal number; 1e999999999 would take gigabytes to hold exactly."""


class _Wire(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """What every table of the written form has in common."""


class WindowWire(_Wire, frozen=True, kw_only=True):
    """`Window`."""

    columns: int
    rows: int
    map_columns: int | UnsetType = UNSET
    map_rows: int | UnsetType = UNSET
    origin_column: int | UnsetType = UNSET
    origin_row: int | UnsetType = UNSET
    first_line: int | UnsetType = UNSET


class RangeWire(_Wire, frozen=True, kw_only=True):
    """``count`` tiles of the pool from tile ``first`` on."""

    first: Annotated[int, Meta(ge=0, le=65535)]
    count: Annotated[int, Meta(ge=1, le=65536)]


class TilesWire(_Wire, frozen=True, kw_only=True):
    """`Tiles`."""

    count: int
    pool: tuple[RangeWire, ...]
    blank: int | UnsetType = UNSET
    planes: int | UnsetType = UNSET
    depth: int | UnsetType = UNSET
    storage: Storage | UnsetType = UNSET
    byte: ByteDirection | UnsetType = UNSET


class MapWire(_Wire, frozen=True, kw_only=True):
    """`TileMap`."""

    pages: int | UnsetType = UNSET
    entry_bytes: int | UnsetType = UNSET
    byte_order: ByteOrder | UnsetType = UNSET
    banks: int | UnsetType = UNSET


class ColoursWire(_Wire, frozen=True, kw_only=True):
    """`Colours`."""

    meaning: tuple[Colour, ...] | UnsetType = UNSET
    background: int | UnsetType = UNSET
    inks: tuple[int, ...] | UnsetType = UNSET
    first_entry: int | UnsetType = UNSET
    entries: int | UnsetType = UNSET
    fixed: bool | UnsetType = UNSET


class MemoryWire(_Wire, frozen=True, kw_only=True):
    """`Memory`."""

    patterns: int
    maps: Pages
    palette: int | UnsetType = UNSET
    page_register: int | UnsetType = UNSET
    bank_register: int | UnsetType = UNSET
    steps: tuple[int, ...] | UnsetType = UNSET


class TimeWire(_Wire, frozen=True, kw_only=True):
    """`Timing`."""

    standard: str | UnsetType = UNSET
    lines: int | UnsetType = UNSET
    shown: int | UnsetType = UNSET
    cycles_per_line: Cycles | UnsetType = UNSET
    reserve: Cycles | UnsetType = UNSET
    setup: Cycles | UnsetType = UNSET
    per_byte: Cycles | UnsetType = UNSET
    view_setup: Cycles | UnsetType = UNSET
    view_per_byte: Cycles | UnsetType = UNSET


class DemandsWire(_Wire, frozen=True, kw_only=True):
    """`Demands`."""

    must_show: int | UnsetType = UNSET
    patience: int | UnsetType = UNSET


class MachineWire(_Wire, frozen=True, kw_only=True):
    """`Machine`. Without ``name`` it is called what its file is called."""

    name: str | UnsetType = UNSET
    outside: Outside | UnsetType = UNSET
    window: WindowWire
    tiles: TilesWire
    map: MapWire | UnsetType = UNSET
    colours: ColoursWire | UnsetType = UNSET
    memory: MemoryWire | UnsetType = UNSET
    time: TimeWire | UnsetType = UNSET
    demands: DemandsWire | UnsetType = UNSET


def to_machine(wire: MachineWire, name: str) -> Machine:
    """The machine that is written so, called ``name`` if it does not name itself.

    Raises `MachineError` for one that can't be.
    """
    tiles = _given(wire.tiles) | {"pool": _numbers(wire.tiles.pool)}
    colours = _given(wire.colours)
    if "meaning" in colours:
        colours["meaning"] = tuple(_rgb(colour) for colour in colours["meaning"])
    return Machine(
        name=name if wire.name is UNSET else wire.name,
        window=Window(**_given(wire.window)),
        tiles=Tiles(**tiles),
        map=TileMap(**_given(wire.map)),
        colours=Colours(**colours),
        memory=None if wire.memory is UNSET else Memory(**_given(wire.memory)),
        time=Timing(**_given(wire.time)),
        demands=Demands(**_given(wire.demands)),
        **({} if wire.outside is UNSET else {"outside": wire.outside}),
    )


def from_machine(machine: Machine) -> MachineWire:
    """The written form of ``machine``, defaults spelt out: it means the same should they ever change."""
    tiles = _held(machine.tiles) | {"pool": _ranges(machine.tiles.pool)}
    colours = _held(machine.colours) | {"meaning": tuple(_hex(rgb) for rgb in machine.colours.meaning)}
    return MachineWire(
        name=machine.name,
        outside=machine.outside,
        window=WindowWire(**_held(machine.window)),
        tiles=TilesWire(**tiles),
        map=MapWire(**_held(machine.map)),
        colours=ColoursWire(**colours),
        memory=UNSET if machine.memory is None else MemoryWire(**_held(machine.memory)),
        time=TimeWire(**_held(machine.time)),
        demands=DemandsWire(**_held(machine.demands)),
    )


def read_cycles(kind: type, written: object) -> Fraction:
    """Msgspec's hook for cycles: an int, a `Decimal` (never a binary float) or text, read exactly."""
    if kind is Fraction:
        if isinstance(written, int) and not isinstance(written, bool):
            return Fraction(written)
        if isinstance(written, Decimal) and written.is_finite() and _holdable(written):
            return Fraction(written)
        if isinstance(written, str) and _WRITTEN_CYCLES.fullmatch(written):
            return Fraction(written)
    raise ValueError("not cycles")  # msgspec adds the place; the words come from the type's description


def write_cycles(value: object) -> int | str:
    """Msgspec's hook for cycles: a plain whole number where there is one, else "448/5"."""
    if not isinstance(value, Fraction):
        raise NotImplementedError(f"no written form for {type(value).__name__}")
    whole = value.denominator == 1 and abs(value.numerator) < _PLAINEST
    return value.numerator if whole else str(value)


def _holdable(number: Decimal) -> bool:
    exponent = number.as_tuple().exponent
    return isinstance(exponent, int) and exponent >= -_LONGEST and number.adjusted() <= _LONGEST


def _given(wire: _Wire | UnsetType) -> dict[str, Any]:
    """The fields that are written, a whole number of cycles as an int (which is faster to reckon with)."""
    if wire is UNSET:
        return {}
    written = {name: getattr(wire, name) for name in wire.__struct_fields__}
    return {name: _plain(value) for name, value in written.items() if value is not UNSET}


def _plain(value: object) -> object:
    return value.numerator if isinstance(value, Fraction) and value.denominator == 1 else value


def _held(part: Part) -> dict[str, Any]:
    """The fields of a part that hold something; cycles as fractions, as the written form has them."""
    held = ((field, getattr(part, field.name)) for field in fields(part))
    return {f.name: Fraction(v) if f.type in _EXACT else v for f, v in held if v is not None}


_EXACT = (Rational, Rational | None)
"""The types of the contract's fields that hold cycles."""


def _numbers(ranges: tuple[RangeWire, ...]) -> tuple[int, ...]:
    return tuple(tile for span in ranges for tile in range(span.first, span.first + span.count))


def _ranges(pool: tuple[int, ...]) -> tuple[RangeWire, ...]:
    starts = [i for i, tile in enumerate(pool) if i == 0 or tile != pool[i - 1] + 1]
    ends = [*starts[1:], len(pool)]
    return tuple(RangeWire(first=pool[a], count=b - a) for a, b in zip(starts, ends, strict=True))


def _rgb(colour: str) -> RGB:
    red, green, blue = bytes.fromhex(colour.removeprefix("#"))
    return red, green, blue


def _hex(rgb: RGB) -> str:
    return f"#{bytes(rgb).hex()}"
