"""Where a step's byte or entry stands on a machine of the contract, and what a picture's bytes are as units."""

from dataclasses import dataclass
from functools import cached_property
from itertools import product

from planeproof.contract import TILE_SIDE, Machine, Picture, Storage
from planeproof.spec.steps.sharing import Sharing

NIBBLE = 0x0F


@dataclass(frozen=True, kw_only=True)
class PatternPlace:
    """A byte of a tile: the store that it is written for (0 where it reaches both) and its row."""

    store: int
    tile: int
    row: int


@dataclass(frozen=True, kw_only=True)
class EntryPlace:
    """Byte number ``byte`` of the entry of a cell on a page."""

    page: int
    cell: int
    byte: int


@dataclass(frozen=True, kw_only=True)
class Addresses:
    """A machine of two sides, read as the steps of one family read it.

    Raises `ValueError`, saying what the machine has instead, unless it has two map pages, one bank, and the planes,
    depth and storage that ``sharing`` speaks of.
    """

    machine: Machine
    sharing: Sharing

    def __post_init__(self) -> None:
        tiles, tile_map = self.machine.tiles, self.machine.map
        has = {
            "map pages": (tile_map.pages, 2),
            "banks": (tile_map.banks, 1),
            "sets of planes": (self.machine.plane_sets, self.sharing.stores),
            "bytes of a tile that hold a side": (self._rows, self.sharing.rows),
            "packed storage": (self._packed, self.sharing.packed),
        }
        for what, (found, needed) in has.items():
            if found != needed:
                raise ValueError(
                    f"machine {self.machine.name!r} has {what}: {found}; steps for {self.sharing.name} need {needed}"
                )
        assert tiles.depth <= 2

    @property
    def _packed(self) -> bool:
        return self.machine.tiles.storage is Storage.PACKED and self.machine.tiles.planes > 1

    @property
    def _rows(self) -> int:
        tiles = self.machine.tiles
        return self.machine.tile_bytes if self._packed else TILE_SIDE * tiles.depth

    def pattern(self, store: int, tile: int, row: int) -> int:
        """The address of the byte."""
        if self.sharing.packed:
            return self.machine.layout.patterns + tile * self.machine.tile_bytes + row
        bit, line = divmod(row, TILE_SIDE)
        return self.machine.pattern_address(tile, self.machine.planes_of(store)[bit], line)

    @cached_property
    def places(self) -> dict[int, PatternPlace | EntryPlace]:
        """What stands at each address of patterns and of the window's map cells."""
        found: dict[int, PatternPlace | EntryPlace] = {}
        stores = 1 if self.sharing.packed else self.sharing.stores
        for store, tile, row in product(range(stores), range(self.machine.tiles.count), range(self.sharing.rows)):
            found[self.pattern(store, tile, row)] = PatternPlace(store=store, tile=tile, row=row)
        for page, cell in product(range(2), range(self.machine.cells)):
            first = self.machine.map_address(page, cell)
            for byte in range(self.machine.map.entry_bytes):
                found[first + byte] = EntryPlace(page=page, cell=cell, byte=byte)
        return found

    def units(self, picture: Picture) -> list[list[int]]:
        """The picture's units by cell and row."""
        lines: list[list[int]] = picture.planes.reshape(len(picture.planes), -1).tolist()
        if not self.sharing.packed:
            return lines
        return [[nibble for byte in line for nibble in (byte >> 4, byte & NIBBLE)] for line in lines]

    def picture(self, number: int, units: tuple[tuple[int, ...], ...]) -> Picture:
        """The picture of these units."""
        if self.sharing.packed:
            lines = [[16 * high + low for high, low in zip(line[::2], line[1::2], strict=True)] for line in units]
            return Picture.from_rows(number, lines)
        depth = self.machine.tiles.depth
        shaped = [[line[TILE_SIDE * bit : TILE_SIDE * (bit + 1)] for bit in range(depth)] for line in units]
        return Picture.from_rows(number, [line[0] for line in shaped] if depth == 1 else shaped)
