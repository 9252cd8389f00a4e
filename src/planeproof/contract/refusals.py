"""Machines that are refused for what their parts are together."""

from planeproof.contract.errors import MachineError, require
from planeproof.contract.layout import TILE_SIDE
from planeproof.contract.parts import Colours, Demands, Memory, Rational, TileMap, Tiles, Timing, Window
from planeproof.contract.regions import palette_entries


def refuse_tiles(tiles: Tiles, tile_map: TileMap) -> None:
    """Raise `MachineError` unless the tiles split into banks, can be named, and the blank tile is nobody's."""
    banks, count = tile_map.banks, tiles.count
    even = count % banks == 0 and count // banks >= 2
    require(even, MachineError, "map.banks", banks, f"must split the {count} tiles evenly, at least 2 a bank")
    per_bank, reach = count // banks, 256**tile_map.entry_bytes
    allowed = f"must be at most {reach}, for an entry of {tile_map.entry_bytes} byte(s) names no more"
    require(per_bank <= reach, MachineError, "tiles.count (a bank)", per_bank, allowed)
    allowed = f"must lie in a bank of {per_bank}"
    require(tiles.blank < per_bank, MachineError, "tiles.blank", tiles.blank, allowed)
    taken = sorted(tile for tile in tiles.pool if tile % per_bank == tiles.blank)
    require(not taken, MachineError, "tiles.pool", taken, "must not hold the blank tile (of any bank)")


def refuse_colours(colours: Colours, tiles: Tiles) -> None:
    """Raise `MachineError` unless every picture value has an ink, and every pixel value a palette entry."""
    inks = (1 << tiles.depth) - 1
    allowed = f"must be {inks} for depth {tiles.depth}"
    require(len(colours.inks) == inks, MachineError, "colours.inks", colours.inks, allowed)
    if colours.fixed:
        allowed = f"must equal the depth of {tiles.depth} where colours are fixed, for no palette can hide a plane"
        require(tiles.planes == tiles.depth, MachineError, "tiles.planes", tiles.planes, allowed)
        return
    need = colours.first_entry + (1 << tiles.planes)
    allowed = f"must be at least {need}: {1 << tiles.planes} for the window, from entry {colours.first_entry} on"
    require(palette_entries(colours, tiles) >= need, MachineError, "colours.entries", colours.entries, allowed)


def refuse_memory(memory: Memory, window: Window, tile_map: TileMap, colours: Colours) -> None:
    """Raise `MachineError` unless there is a base for each region, and the steps are a byte or a map row."""
    pages = tile_map.pages
    require(len(memory.maps) == pages, MachineError, "memory.maps", memory.maps, f"must be {pages}, one a page")
    for name, base, needed in [
        ("palette", memory.palette, not colours.fixed),
        ("page_register", memory.page_register, pages > 1),
        ("bank_register", memory.bank_register, tile_map.banks > 1),
    ]:
        allowed = "must be given on this machine" if needed else "must be left out: this machine has none"
        require((base is not None) == needed, MachineError, f"memory.{name}", base, allowed)
    row = window.pitch * tile_map.entry_bytes
    steps = memory.steps in ((1,), (1, row), (row, 1))
    require(steps, MachineError, "memory.steps", memory.steps, f"must hold 1, and may hold a map row, which is {row}")


def refuse_time(time: Timing, window: Window, blanking: int, burst: Rational, dearest_view: Rational) -> None:
    """Raise `MachineError` unless the window is displayed, and a burst and the dearest view change fit a blanking."""
    bottom = window.first_line + window.rows * TILE_SIDE
    allowed = f"must be at least {bottom}, the line after the window's last"
    require(time.shown >= bottom, MachineError, "time.shown", time.shown, allowed)
    allowed = f"must leave at least {burst} cycles, one 8-byte burst, of every blanking"
    require(blanking >= burst, MachineError, "time (cycles left of a blanking)", blanking, allowed)
    allowed = f"must leave at least {dearest_view} cycles, the dearest change between two sides' views"
    require(blanking >= dearest_view, MachineError, "time (cycles left of a blanking)", blanking, allowed)


def refuse_demands(demands: Demands, cap_of_view: int) -> None:
    """Raise `MachineError` where more is demanded than one view has tiles for, or a bank has none of the pool."""
    require(cap_of_view > 0, MachineError, "tiles.pool", (), "must hold at least one tile of every bank")
    possible = demands.must_show is None or demands.must_show <= cap_of_view
    allowed = f"must be at most {cap_of_view}, the tiles of the pool that one view can show"
    require(possible, MachineError, "demands.must_show", demands.must_show, allowed)
