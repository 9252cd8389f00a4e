"""A machine of the contract, described to the second model by its fields alone, never by what it computes."""

from fractions import Fraction

from planeproof.contract import Machine
from tests.oracle.plain_display import Display


def described(machine: Machine) -> Display:
    """The plain figures of ``machine``; defaults are worked out here anew, bases are those of its layout."""
    window, tiles, tile_map = machine.window, machine.tiles, machine.map
    colours, time, memory = machine.colours, machine.time, machine.layout
    origin_column, origin_row = window.origin_column, window.origin_row
    to_the_right = origin_column + window.columns
    to_the_bottom = origin_row + window.rows
    just_enough = colours.first_entry + 2**tiles.planes
    return Display(
        columns=window.columns,
        rows=window.rows,
        map_columns=to_the_right if window.map_columns is None else window.map_columns,
        map_rows=to_the_bottom if window.map_rows is None else window.map_rows,
        origin_column=origin_column,
        origin_row=origin_row,
        first_line=window.first_line,
        tiles=tiles.count,
        blank=tiles.blank,
        planes=tiles.planes,
        storage=tiles.storage.value,
        byte=tiles.byte.value,
        pages=tile_map.pages,
        entry_bytes=tile_map.entry_bytes,
        byte_order=tile_map.byte_order.value,
        banks=tile_map.banks,
        meaning=colours.meaning,
        background=colours.background,
        inks=colours.inks,
        first_entry=colours.first_entry,
        entries=just_enough if colours.entries is None else colours.entries,
        pattern_base=memory.patterns,
        map_bases=memory.maps,
        palette_base=memory.palette,
        page_register=memory.page_register,
        bank_register=memory.bank_register,
        lines=time.lines,
        shown=time.shown,
        cycles_per_line=Fraction(time.cycles_per_line),
        reserve=Fraction(time.reserve),
        setup=Fraction(time.setup),
        per_byte=Fraction(time.per_byte),
        view_setup=Fraction(time.setup if time.view_setup is None else time.view_setup),
        view_per_byte=Fraction(time.per_byte if time.view_per_byte is None else time.view_per_byte),
        outside=machine.outside.value,
    )
