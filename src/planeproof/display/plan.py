"""What stands at each address of a machine, as arrays, so that whole bursts are looked up at once."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import TILE_SIDE, Machine, Region, RegionKind

NOBODY = -1
"""Stands in every array of a `Plan` for an address that is of another kind."""


@dataclass(frozen=True, kw_only=True)
class Plan:
    """Arrays of shape (extent,), indexed by address; `NOBODY` where they do not apply.

    ``beginning``: what memory holds before `Scheduler.start`.

    ``tile`` and ``offset``: the tile a pattern byte belongs to, and its place in the tile's bytes. ``page`` and
    ``cell``: the map page of a map byte, and its cell where that is in the window.
    ``view``: place of a view byte among the view bytes (``view_addresses``).
    ``owned``: whether the window's scheduler may write there. ``pooled``, of shape (tiles,): in the pool or not.
    ``mappable``, of shape (tiles + 1,): in the pool, or a blank tile; the last stands for `NOBODY`.
    ``entry_addresses`` has shape (pages, cells, entry bytes), the low byte of an entry first.
    ``pass_of``, of shape (tile bytes,): bytes of a tile with the same number share no pixel; of two that do,
    the one a burst writes first has the lower number. ``bits_of``, of shape (planes, tile bytes + 1): the bits of a
    byte of a tile that belong to a plane; none for the last, which stands for `NOBODY`. ``pixels_of``, of shape
    (tile bytes, 8, 8): the pixels [y, x] that a byte of a tile has bits of.
    """

    extent: int
    beginning: NDArray[np.uint8]
    tile: NDArray[np.intp]
    offset: NDArray[np.intp]
    page: NDArray[np.int8]
    cell: NDArray[np.intp]
    view: NDArray[np.intp]
    view_addresses: NDArray[np.intp]
    owned: NDArray[np.bool_]
    pooled: NDArray[np.bool_]
    mappable: NDArray[np.bool_]
    entry_addresses: NDArray[np.intp]
    pass_of: NDArray[np.intp]
    bits_of: NDArray[np.uint8]
    pixels_of: NDArray[np.bool_]


@lru_cache(maxsize=64)
def plan_of(machine: Machine) -> Plan:
    """The plan of a machine; kept, for it is asked for with every scene."""
    extent = max(region.end for region in machine.regions)
    number = {name: np.full(extent, NOBODY, dtype=np.intp) for name in ("tile", "offset", "cell", "view")}
    page = np.full(extent, NOBODY, dtype=np.int8)
    pooled = np.zeros(machine.tiles.count, dtype=np.bool_)
    pooled[list(machine.pool)] = True
    mappable = np.append(pooled, False)
    mappable[list(machine.blank_tiles)] = True
    for region in machine.regions:
        span = np.arange(region.length)
        if region.kind is RegionKind.PATTERNS:
            number["tile"][region.start : region.end], number["offset"][region.start : region.end] = np.divmod(
                span, machine.tile_bytes
            )
        elif region.kind is RegionKind.MAP:
            page[region.start : region.end] = region.page
            number["cell"][region.start : region.end] = _cells(machine, region)
    view_addresses = _view_addresses(machine)
    number["view"][view_addresses] = np.arange(len(view_addresses))
    tile = number["tile"]
    owned = (number["cell"] != NOBODY) | (number["view"] != NOBODY) | ((tile != NOBODY) & pooled[tile])
    return Plan(
        extent=extent,
        beginning=_beginning(machine, extent),
        page=page,
        view_addresses=view_addresses,
        owned=owned,
        pooled=pooled,
        mappable=mappable,
        entry_addresses=_entry_addresses(machine),
        pass_of=_pass_of(machine),
        pixels_of=_pixels_of(machine),
        bits_of=_bits_of(machine),
        **number,
    )


def _beginning(machine: Machine, extent: int) -> NDArray[np.uint8]:
    contents = np.zeros(extent, dtype=np.uint8)
    blank = np.frombuffer(machine.map_entry(machine.blank_tile), dtype=np.uint8)
    for region in machine.regions:
        if region.kind is RegionKind.PALETTE:
            contents[region.start : region.end] = machine.colours.background
        elif region.kind is RegionKind.MAP:
            contents[region.start : region.end] = np.resize(blank, region.length)
    return contents


def _cells(machine: Machine, region: Region) -> NDArray[np.intp]:
    place = np.arange(region.length) // machine.map.entry_bytes
    row, column = np.divmod(place, machine.window.pitch)
    row, column = row - machine.window.origin_row, column - machine.window.origin_column
    inside = (row >= 0) & (row < machine.window.rows) & (column >= 0) & (column < machine.window.columns)
    return np.where(inside, row * machine.window.columns + column, NOBODY)


def _view_addresses(machine: Machine) -> NDArray[np.intp]:
    addresses: list[int] = []
    if not machine.colours.fixed:
        addresses += range(machine.palette_address, machine.palette_address + (1 << machine.tiles.planes))
    addresses += [machine.page_address] if machine.map.pages > 1 else []
    addresses += [machine.bank_address] if machine.map.banks > 1 else []
    return np.array(addresses, dtype=np.intp)


def _entry_addresses(machine: Machine) -> NDArray[np.intp]:
    low_at = machine.map_entry(1).index(1)
    order = [low_at] if machine.map.entry_bytes == 1 else [low_at, 1 - low_at]
    first = [[machine.map_address(page, cell) for cell in range(machine.cells)] for page in range(machine.map.pages)]
    return np.array(first, dtype=np.intp)[:, :, None] + np.array(order, dtype=np.intp)


def _pass_of(machine: Machine) -> NDArray[np.intp]:
    numbers = np.zeros(machine.tile_bytes, dtype=np.intp)
    if machine.tile_bits.isolated:
        for plane, line in np.ndindex(machine.tiles.planes, TILE_SIDE):
            numbers[machine.tiles.storage.line_offset(machine.tiles.planes, plane, line)] = plane
    return numbers


def _pixels_of(machine: Machine) -> NDArray[np.bool_]:
    offsets = np.arange(machine.tile_bytes)
    touched: NDArray[np.bool_] = machine.tile_bits.offset[None] == offsets[:, None, None, None]
    return np.asarray(touched.any(axis=1))


def _bits_of(machine: Machine) -> NDArray[np.uint8]:
    bits = np.zeros((machine.tiles.planes, machine.tile_bytes + 1), dtype=np.uint8)
    for plane in range(machine.tiles.planes):
        np.bitwise_or.at(bits[plane], machine.tile_bits.offset[plane], np.uint8(1) << machine.tile_bits.bit[plane])
    return bits
