"""A burst in words: what each of its bytes is, as a scheduler's author thinks of it.

>>> from planeproof.contract import Burst, Machine, Tiles, Window
>>> machine = Machine(name="two cells", window=Window(columns=2, rows=1), tiles=Tiles(count=4, pool=(1, 2, 3)))
>>> said(machine, Burst(machine.pattern_address(3, 1), bytes(8)))
'pattern of tile 3, plane 1, rows 0-7'
>>> said(machine, Burst(machine.map_address(1, 1), machine.map_entry(3)))
'map page 1, cell 1 names tile 3'
>>> said(machine, machine.view_bursts(1, 0)[0])
'colours 1-3 become 0 1 1; page register: page 1 is shown'
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import groupby

import numpy as np

from planeproof.contract import Burst, ByteDirection, ByteOrder, Machine, Region, RegionKind
from planeproof.report.figures import counted, listed, spans

BYTES_SHOWN = 12
"""Bytes of a burst that are written out in hex."""


def said(machine: Machine, burst: Burst) -> str:
    """What ``burst`` writes."""
    return "; ".join(_parts(machine, burst))


def place_of(machine: Machine, address: int) -> str:
    """What the one byte at ``address`` is."""
    region = _region_at(machine, address)
    if region is None:
        return "no picture memory"
    if region.kind is RegionKind.PATTERNS:
        return _pattern_run(machine, [address])
    if region.kind is RegionKind.MAP:
        return f"map page {region.page}, {_map_place(machine, region, address)}"
    if region.kind is RegionKind.PALETTE:
        entry = address - machine.palette_address
        return f"colour {entry}" if 0 <= entry < 1 << machine.tiles.planes else "a colour of the rest of the screen"
    return f"the {region.kind.value}"


def in_hex(burst: Burst, marked: int | None) -> str:
    """The bytes in hex, the ``marked`` one in brackets, cut to those around it where there are many."""
    first = 0 if marked is None else max(0, min(marked - BYTES_SHOWN // 2, len(burst.data) - BYTES_SHOWN))
    last = min(first + BYTES_SHOWN, len(burst.data))
    texts = [f"[{burst.data[i]:02x}]" if i == marked else f"{burst.data[i]:02x}" for i in range(first, last)]
    before, after = "... " if first else "", " ..." if last < len(burst.data) else ""
    return f"{before}{' '.join(texts)}{after}"


_IN_BANK = {False: "", True: " of its bank"}


@dataclass(frozen=True)
class _Byte:
    address: int
    value: int


def _parts(machine: Machine, burst: Burst) -> Iterator[str]:
    """A phrase for each run of bytes in one region."""
    written = [_Byte(address, value) for address, value in zip(burst.addresses, burst.data, strict=True)]
    for region, run in groupby(written, key=lambda byte: _region_at(machine, byte.address)):
        if region is None:
            addresses = spans(byte.address for byte in run)
            yield f"addresses {addresses}, where there is no picture memory"
        else:
            yield from _WORDS[region.kind](machine, region, list(run))


def _region_at(machine: Machine, address: int) -> Region | None:
    return next((region for region in machine.regions if address in region), None)


# --- patterns ----------------------------------------------------------------------------------------------


def _patterns(machine: Machine, region: Region, run: list[_Byte]) -> Iterator[str]:
    yield _pattern_run(machine, [byte.address for byte in run])


def _pattern_run(machine: Machine, addresses: list[int]) -> str:
    """Whole tiles are drawn together; a part of a tile is named by plane and row."""
    by_tile: dict[int, list[int]] = {}
    for address in addresses:
        tile, offset = divmod(address - machine.layout.patterns, machine.tile_bytes)
        by_tile.setdefault(tile, []).append(offset)
    phrases: dict[str, list[int]] = {}
    for tile, offsets in by_tile.items():
        phrases.setdefault(_within_tile(machine, offsets), []).append(tile)
    return ", ".join(f"{_of_tiles(machine, tiles)}, {phrase}" for phrase, tiles in phrases.items())


def _of_tiles(machine: Machine, tiles: list[int]) -> str:
    """The tiles by number; a blank one is said to be that, for nobody may write its pattern."""
    blank = [tile for tile in machine.blank_tiles if tile in tiles]
    if len(tiles) == 1:
        return f"pattern of tile {tiles[0]}{', the blank tile' if blank else ''}"
    which = f" ({spans(blank)} blank)" if blank else ""
    return f"patterns of tiles {spans(tiles)}{which}"


def _within_tile(machine: Machine, offsets: list[int]) -> str:
    bits = machine.tile_bits
    places = {_plane_and_lines(machine, offset) for offset in offsets}
    planes = sorted({plane for held, _ in places for plane in held})
    lines = sorted({line for _, line in places})
    row = "row" if machine.tiles.byte is ByteDirection.ROW else "column"
    whole = len(offsets) == len(lines) * len(planes) or not bits.isolated
    if whole:
        return f"{_plural('plane', planes)}, {_plural(row, lines)}"
    ends = [_plane_and_lines(machine, offset) for offset in (offsets[0], offsets[-1])]
    return " to ".join(f"plane {held[0]} {row} {line}" for held, line in ends)


def _plane_and_lines(machine: Machine, offset: int) -> tuple[tuple[int, ...], int]:
    """The planes that a byte of a tile holds bits of, and its line."""
    planes, ys, xs = np.nonzero(machine.tile_bits.offset == offset)
    line = ys[0] if machine.tiles.byte is ByteDirection.ROW else xs[0]
    return tuple(sorted(set(planes.tolist()))), int(line)


def _plural(what: str, numbers: list[int]) -> str:
    return f"{what}{'s' if len(numbers) > 1 else ''} {spans(numbers)}"


# --- the map -----------------------------------------------------------------------------------------------


def _map(machine: Machine, region: Region, run: list[_Byte]) -> Iterator[str]:
    size = machine.map.entry_bytes
    entries: list[list[_Byte]] = []
    for byte in run:
        first = (byte.address - region.start) // size
        if entries and (entries[-1][0].address - region.start) // size == first:
            entries[-1].append(byte)
        else:
            entries.append([byte])
    phrases = [_entry(machine, region, entry) for entry in entries]
    if len(phrases) > 1 and all(isinstance(phrase, tuple) for phrase in phrases):
        cells, names = zip(*phrases, strict=True)
        yield f"map page {region.page}, cells {spans(cells)} name {_names(list(names))}"
        return
    for phrase in phrases:
        text = phrase if isinstance(phrase, str) else f"cell {phrase[0]} names {phrase[1]}"
        yield f"map page {region.page}, {text}"


def _entry(machine: Machine, region: Region, entry: list[_Byte]) -> tuple[int, str] | str:
    """The cell and what it names, where the whole entry of a cell of the window is written; otherwise words."""
    where = _map_place(machine, region, entry[0].address)
    cell = _cell_at(machine, region, entry[0].address)
    if cell is None:
        return where
    if len(entry) < machine.map.entry_bytes:
        return f"{where} becomes {entry[0].value:02x}"
    order = "little" if machine.map.byte_order is ByteOrder.LOW_FIRST else "big"
    number = int.from_bytes(bytes(byte.value for byte in entry), order)  # type: ignore[arg-type]
    per_bank = machine.tiles_per_bank
    number &= (1 << (per_bank - 1).bit_length()) - 1
    if number >= per_bank:
        return cell, f"no tile ({number})"
    return cell, "the blank tile" if number == machine.blank_tile else f"tile {number}{_IN_BANK[machine.map.banks > 1]}"


def _names(names: list[str]) -> str:
    if set(names) == {"the blank tile"}:
        return names[0]
    short = [name.removeprefix("tile ").replace("the blank tile", "blank") for name in names]
    kept = short if len(short) <= BYTES_SHOWN else [*short[:BYTES_SHOWN], f"... ({len(short)} in all)"]
    return f"tiles {', '.join(kept)}"


def _map_place(machine: Machine, region: Region, address: int) -> str:
    """Which cell, and which byte of an entry of two."""
    cell = _cell_at(machine, region, address)
    place, byte = divmod(address - region.start, machine.map.entry_bytes)
    row, column = divmod(place, machine.window.pitch)
    name = f"outside the window (column {column}, row {row} of the map)" if cell is None else f"cell {cell}"
    if machine.map.entry_bytes == 1 or cell is None:
        return name
    low = (byte == 0) == (machine.map.byte_order is ByteOrder.LOW_FIRST)
    return f"{'low' if low else 'high'} byte of {name}"


def _cell_at(machine: Machine, region: Region, address: int) -> int | None:
    window = machine.window
    row, column = divmod((address - region.start) // machine.map.entry_bytes, window.pitch)
    row, column = row - window.origin_row, column - window.origin_column
    inside = 0 <= row < window.rows and 0 <= column < window.columns
    return row * window.columns + column if inside else None


# --- the view ----------------------------------------------------------------------------------------------


def _palette(machine: Machine, region: Region, run: list[_Byte]) -> Iterator[str]:
    first, own = machine.palette_address, 1 << machine.tiles.planes
    window = [byte for byte in run if 0 <= byte.address - first < own]
    if window:
        values = " ".join(str(byte.value) for byte in window)
        entries = [byte.address - first for byte in window]
        verb = "becomes" if len(window) == 1 else "become"
        yield f"{_plural('colour', entries)} {verb} {values}"
    if len(window) < len(run):
        yield counted(len(run) - len(window), "colour") + " of the rest of the screen"


def _register(machine: Machine, region: Region, run: list[_Byte]) -> Iterator[str]:
    page = region.kind is RegionKind.PAGE_REGISTER
    what, count = ("page", machine.map.pages) if page else ("bank", machine.map.banks)
    yield f"{region.kind.value}: {listed([f'{what} {byte.value % count}' for byte in run])} is shown"


_WORDS: dict[RegionKind, Callable[[Machine, Region, list[_Byte]], Iterator[str]]] = {
    RegionKind.PATTERNS: _patterns,
    RegionKind.MAP: _map,
    RegionKind.PALETTE: _palette,
    RegionKind.PAGE_REGISTER: _register,
    RegionKind.BANK_REGISTER: _register,
}
