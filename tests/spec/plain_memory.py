"""Picture memory kept a second time: a plain array of bytes, read by the addresses of the contract.

For machines whose bytes each hold one plane, and on which every entry names a tile.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Self

import numpy as np

from planeproof.contract import TILE_SIDE, Burst, Machine, Picture, RegionKind
from planeproof.spec.evaluation import Given, Values


@dataclass(frozen=True)
class Seen:
    """A view: the look of each pixel value, page, bank."""

    looks: tuple[int, ...]
    page: int
    bank: int

    def values(self, name: str) -> dict[str, Given]:
        """As the terms of the vocabulary."""
        looks = np.array(self.looks)
        return {f"{name}-colour": lambda value: looks[value], f"{name}-page": self.page, f"{name}-bank": self.bank}


@dataclass(frozen=True)
class Write:
    """One write, where and what: a byte, or the bytes of one map entry in one burst."""

    addresses: tuple[int, ...]
    values: tuple[int, ...]


@dataclass(frozen=True, eq=False)
class Places:
    """What stands where on a machine: (tile, plane, row) and (page, cell) by address, and the view's addresses."""

    patterns: Values
    pattern_at: dict[int, tuple[int, ...]]
    cell_at: dict[int, tuple[int, int]]
    view: frozenset[int]


@lru_cache(maxsize=64)
def places_of(machine: Machine) -> Places:
    """The places of ``machine``."""
    patterns = np.zeros((machine.tiles.count, machine.tiles.planes, TILE_SIDE), dtype=np.int64)
    for tile, plane, row in np.ndindex(patterns.shape):
        patterns[tile, plane, row] = machine.pattern_address(tile, plane, row)
    cells = {
        machine.map_address(page, cell) + byte: (page, cell)
        for page, cell, byte in np.ndindex(machine.map.pages, machine.cells, machine.map.entry_bytes)
    }
    view = frozenset(a for region in machine.regions if region.kind.is_view for a in range(region.start, region.end))
    return Places(
        patterns=patterns,
        pattern_at={int(address): place for place, address in np.ndenumerate(patterns)},
        cell_at=cells,
        view=view,
    )


class PlainMemory:
    """The bytes of picture memory, and what they mean."""

    def __init__(self, machine: Machine) -> None:
        self.machine, self.places = machine, places_of(machine)
        self.held = bytearray(max(region.end for region in machine.regions))
        for region in machine.regions:
            if region.kind is RegionKind.PALETTE:
                self.held[region.start : region.end] = bytes([machine.colours.background]) * region.length
            elif region.kind is RegionKind.MAP:
                entry = machine.map_entry(machine.blank_tile)
                self.held[region.start : region.end] = entry * (region.length // len(entry))

    def after(self, write: Write) -> Self:
        """The memory that ``write`` leaves."""
        twin = type(self)(self.machine)
        twin.held[:] = self.held
        twin.store(write)
        return twin

    def store(self, write: Write) -> None:
        """Write; what is beyond memory is nowhere."""
        for address, value in zip(write.addresses, write.values, strict=True):
            if 0 <= address < len(self.held):
                self.held[address] = value

    def entry(self, page: int, cell: int) -> int:
        """The number that a map entry holds, modulo the tiles of a bank."""
        start, size = self.machine.map_address(page, cell), self.machine.map.entry_bytes
        low_first = self.machine.map_entry(1)[0] == 1
        held = int.from_bytes(self.held[start : start + size], "little" if low_first else "big")
        return held % self.machine.tiles_per_bank

    @property
    def view(self) -> Seen:
        """The view as it stands."""
        machine = self.machine
        first = machine.palette_address
        looks = tuple(look_byte(machine, byte) for byte in self.held[first : first + (1 << machine.tiles.planes)])
        page = self.held[machine.page_address] % machine.map.pages if machine.map.pages > 1 else 0
        bank = self.held[machine.bank_address] % machine.map.banks if machine.map.banks > 1 else 0
        return Seen(looks, page, bank)

    def values(self) -> dict[str, Given]:
        """As the terms of the vocabulary."""
        patterns = np.frombuffer(bytes(self.held), dtype=np.uint8)[self.places.patterns].astype(np.int64)
        pages, cells, per_bank = self.machine.map.pages, self.machine.cells, self.machine.tiles_per_bank
        entries = np.array([[self.entry(page, cell) for cell in range(cells)] for page in range(pages)])
        return {
            "memory-pattern": lambda tile, plane, row: patterns[tile, plane, row],
            "memory-entry": lambda page, cell: entries[page, cell],
            "tile-of": lambda bank, entry: bank * per_bank + entry,
            "pool": sum(1 << tile for tile in self.machine.pool),
        }


def look_byte(machine: Machine, byte: int) -> int:
    """The least palette byte that shows the same colour."""
    return next(other for other in range(byte + 1) if machine.colours.look(other) == machine.colours.look(byte))


def picture_values(machine: Machine, picture: Picture) -> dict[str, Given]:
    """A picture of one bit a pixel as the terms of the vocabulary."""
    rows = picture.rows.astype(np.int64)
    shades = np.array([look_byte(machine, byte) for byte in (machine.colours.background, *machine.colours.inks)])
    return {"picture-rows-0": lambda cell, row: rows[cell, row], "shade": lambda value: shades[value]}


@lru_cache(maxsize=8)
def pixels(machine: Machine) -> dict[str, Given]:
    """Every pixel of the window."""
    cell, row, column = np.indices((machine.cells, TILE_SIDE, TILE_SIDE)).reshape(3, -1)
    return {"pixel-cell": cell, "pixel-row": row, "pixel-column": column}


def writes_of(machine: Machine, burst: Burst, end: int) -> Iterator[Write]:
    """The writes of the first ``end`` bytes of a burst."""
    cell_at, addresses, place = places_of(machine).cell_at, burst.addresses, 0
    while place < end:
        size = _together([cell_at.get(address) for address in addresses[place:end]])
        yield Write(tuple(addresses[place : place + size]), tuple(burst.data[place : place + size]))
        place += size


def _together(cells: Sequence[tuple[int, int] | None]) -> int:
    """How many bytes from the first on are of the entry that the first is of."""
    size = 1
    while cells[0] is not None and size < len(cells) and cells[size] == cells[0]:
        size += 1
    return size
