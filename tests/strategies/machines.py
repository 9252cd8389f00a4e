"""Machines of every shape, made valid as they are drawn: nothing is filtered, and the plainest comes first."""

import math
from fractions import Fraction

from hypothesis import strategies as st

from planeproof.contract import (
    RGB,
    ByteDirection,
    ByteOrder,
    Colours,
    Machine,
    Memory,
    Outside,
    Storage,
    TileMap,
    Tiles,
    Timing,
    Window,
)

Draw = st.DrawFn
DEEPEST = 4  # bits per pixel of a picture; more would only take longer


@st.composite
def windows(draw: Draw) -> Window:
    """One to six cells, alone or somewhere in a larger map, from any of the first raster lines on."""
    columns, rows = draw(st.integers(1, 3)), draw(st.integers(1, 2))
    column, row = draw(st.integers(0, 2)), draw(st.integers(0, 2))
    return Window(
        columns=columns,
        rows=rows,
        origin_column=column,
        origin_row=row,
        map_columns=draw(st.none() | st.integers(column + columns, column + columns + 2)),
        map_rows=draw(st.none() | st.integers(row + rows, row + rows + 2)),
        first_line=draw(st.integers(0, 6)),
    )


@st.composite
def tile_maps(draw: Draw) -> TileMap:
    """One or two pages, one to four banks, entries of one or two bytes in either order."""
    return TileMap(
        pages=draw(st.integers(1, 2)),
        entry_bytes=draw(st.integers(1, 2)),
        byte_order=draw(st.sampled_from(ByteOrder)),
        banks=draw(st.integers(1, 4)),
    )


@st.composite
def pools(draw: Draw, usable: list[int], per_bank: int) -> list[int]:
    """At least one of the ``usable`` tiles of every bank, and a few more, in any order."""
    banks = sorted({tile // per_bank for tile in usable})
    needed = [draw(st.sampled_from([tile for tile in usable if tile // per_bank == bank])) for bank in banks]
    more = draw(st.lists(st.sampled_from(usable), max_size=6, unique=True))
    return draw(st.permutations(sorted({*needed, *more})))


@st.composite
def tile_sets(draw: Draw, tile_map: TileMap, *, fixed: bool) -> Tiles:
    """Tiles that ``tile_map`` can name; as many planes as a picture has where colours are ``fixed``."""
    most = 256 if tile_map.entry_bytes == 1 else 300
    per_bank = draw(st.integers(2, 9) | st.integers(2, 9) | st.integers(most - 2, most))
    count, blank = per_bank * tile_map.banks, draw(st.integers(0, per_bank - 1))
    usable = [tile for tile in range(count) if tile % per_bank != blank]
    storage = draw(st.sampled_from(Storage))
    most_planes = DEEPEST if fixed else 8
    few = [2, 1, 4] if storage is Storage.PACKED else [2, 1, 3, 4]
    planes = draw(st.sampled_from(few if storage is Storage.PACKED else [*few, *range(5, most_planes + 1)]))
    return Tiles(
        count=count,
        pool=tuple(draw(pools(usable, per_bank))),
        blank=blank,
        planes=planes,
        depth=planes if fixed else draw(st.integers(1, min(planes, DEEPEST))),
        storage=storage,
        byte=draw(st.sampled_from(ByteDirection)),
    )


@st.composite
def colour_sets(draw: Draw, tiles: Tiles, *, fixed: bool) -> Colours:
    """Colours in which the background and every ink differ, though many a byte may show the same as another."""
    shades = 1 << tiles.depth
    length = draw(st.sampled_from([size for size in (2, 4, 8, 16, 64, 256) if size >= shades]))
    different = draw(st.integers(shades, min(length, 2 * shades)))
    twins = draw(st.lists(st.integers(0, different - 1), min_size=length - different, max_size=length - different))
    which = draw(st.permutations([*range(different), *twins])) if length <= 16 else [*twins, *range(different)]
    chosen = draw(st.permutations(range(different)))[:shades]
    around = draw(st.integers(0, 256 // length - 1)) * length  # a byte counts modulo the length
    background, *inks = (which.index(shade) + around for shade in chosen)
    first = 0 if fixed else draw(st.integers(0, 3))
    end = first + (1 << tiles.planes)
    return Colours(
        meaning=tuple(_shade(number) for number in which),
        background=background,
        inks=tuple(inks),
        first_entry=first,
        entries=None if fixed else draw(st.none() | st.integers(end, end + 3)),
        fixed=fixed,
    )


def _shade(number: int) -> RGB:
    return (number, 255 - number, number * 85 % 256)


@st.composite
def memories(draw: Draw, machine_map: TileMap, window: Window, tiles: Tiles, colours: Colours) -> Memory:
    """The regions in any order, with gaps between some of them, and the permitted steps."""
    map_row = window.pitch * machine_map.entry_bytes
    lengths = {"patterns": tiles.count * tiles.planes * 8}
    lengths |= {f"map {page}": map_row * window.map_height for page in range(machine_map.pages)}
    end = colours.first_entry + (1 << tiles.planes)
    lengths |= {} if colours.fixed else {"palette": end if colours.entries is None else colours.entries}
    lengths |= {"page": 1} if machine_map.pages > 1 else {}
    lengths |= {"bank": 1} if machine_map.banks > 1 else {}
    address, base = 0, dict[str, int]()
    for name in draw(st.permutations(sorted(lengths))):
        base[name] = address + draw(st.integers(0, 5))
        address = base[name] + lengths[name]
    return Memory(
        patterns=base["patterns"],
        maps=tuple(base[f"map {page}"] for page in range(machine_map.pages)),
        palette=base.get("palette"),
        page_register=base.get("page"),
        bank_register=base.get("bank"),
        steps=draw(st.sampled_from([(1,), (1, map_row)])),
    )


def rationals(low: int, high: int) -> st.SearchStrategy[int | Fraction]:
    """Exact figures between two whole ones."""
    return st.integers(low, high) | st.builds(Fraction, st.integers(low * 7, high * 7), st.just(7))


@st.composite
def timings(draw: Draw, window: Window, view_bytes: int) -> Timing:
    """Times in which an 8-byte burst and any change of ``view_bytes`` view bytes just fit a blanking, or easily."""
    setup, per_byte = draw(rationals(0, 6)), draw(rationals(1, 3))
    view_setup, view_per_byte = draw(st.none() | rationals(0, 6)), draw(st.none() | rationals(1, 3))
    a_byte = (setup if view_setup is None else view_setup) + (per_byte if view_per_byte is None else view_per_byte)
    need = max(setup + 8 * per_byte, view_bytes * a_byte)  # each view byte in a burst of its own is the dearest
    reserve, per_line = draw(rationals(0, 9)), draw(rationals(1, 12))
    shown = window.first_line + window.rows * 8 + draw(st.integers(0, 6))
    blanked = math.ceil((math.ceil(need) + reserve) / Fraction(per_line))
    return Timing(
        standard="drawn",
        lines=shown + blanked + draw(st.integers(0, 3)),
        shown=shown,
        cycles_per_line=per_line,
        reserve=reserve,
        setup=setup,
        per_byte=per_byte,
        view_setup=view_setup,
        view_per_byte=view_per_byte,
    )


@st.composite
def machines(draw: Draw) -> Machine:
    """Any machine that the contract can express, at the size of a few cells."""
    window, tile_map, fixed = draw(windows()), draw(tile_maps()), draw(st.sampled_from([False, False, False, True]))
    tiles = draw(tile_sets(tile_map, fixed=fixed))
    colours = draw(colour_sets(tiles, fixed=fixed))
    view_bytes = (0 if fixed else 1 << tiles.planes) + 2
    return Machine(
        name="drawn",
        window=window,
        tiles=tiles,
        map=tile_map,
        colours=colours,
        memory=draw(st.none() | memories(tile_map, window, tiles, colours)),
        time=draw(timings(window, view_bytes)),
        outside=draw(st.sampled_from(Outside)),
    )
