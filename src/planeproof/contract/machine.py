"""The machine: one display as a frozen value, with its addresses, its sides and its costs."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from planeproof.contract.burst import Burst
from planeproof.contract.demands import must_show_unless_demanded, patience_unless_demanded
from planeproof.contract.errors import MachineError, require
from planeproof.contract.layout import TILE_SIDE, Storage, TileBits, tile_bits
from planeproof.contract.parts import (
    ByteOrder,
    Colours,
    Demands,
    Memory,
    Outside,
    Rational,
    TileMap,
    Tiles,
    Timing,
    Window,
)
from planeproof.contract.refusals import refuse_colours, refuse_demands, refuse_memory, refuse_tiles, refuse_time
from planeproof.contract.regions import Region, one_after_the_other, refuse_overlaps, regions_of


@dataclass(frozen=True, kw_only=True)
class Machine:
    """One display. Built from parts, or read from TOML by `planeproof.machines`.

    Without ``memory`` the regions are laid out one after the other: palette, registers, maps, patterns.
    Raises `MachineError` (field, value, what is allowed) for a machine that can't be, on which background and
    inks look alike, or on which one 8-byte burst or the dearest change between two sides' views does not fit
    a blanking.
    """

    name: str
    window: Window
    tiles: Tiles
    map: TileMap = field(default_factory=TileMap)
    colours: Colours = field(default_factory=Colours)
    memory: Memory | None = None
    time: Timing = field(default_factory=Timing)
    outside: Outside = Outside.WRECKS
    demands: Demands = field(default_factory=Demands)

    def __post_init__(self) -> None:
        require(isinstance(self.name, str), MachineError, "name", self.name, "must be text")
        require(isinstance(self.outside, Outside), MachineError, "outside", self.outside, "must be an Outside")
        refuse_tiles(self.tiles, self.map)
        refuse_colours(self.colours, self.tiles)
        refuse_memory(self.layout, self.window, self.map, self.colours)
        refuse_overlaps(self.regions)
        sides = range(self.sides)
        changes = [sum(self.cost(burst) for burst in self.view_bursts(a, b)) for a in sides for b in sides]
        refuse_time(self.time, self.window, self.blank_cycles, self.burst_cycles(TILE_SIDE), max(changes))
        refuse_demands(self.demands, self.cap_of_view)

    # --- sizes -------------------------------------------------------------------------------------------

    @property
    def cells(self) -> int:
        """Cells of the window; cell c stands in column c % columns of row c // columns."""
        return self.window.columns * self.window.rows

    @property
    def pool(self) -> tuple[int, ...]:
        """The tile numbers the window may use."""
        return self.tiles.pool

    @property
    def cap(self) -> int:
        """How many tiles the window may use."""
        return len(self.tiles.pool)

    @property
    def cap_of_view(self) -> int:
        """How many tiles one view can show: the cap, or the pool's share of the bank that has the least of it."""
        banks = [tile // self.tiles_per_bank for tile in self.pool]
        return min(banks.count(bank) for bank in range(self.map.banks))

    @property
    def tiles_per_bank(self) -> int:
        """Tiles in one bank (all of them where there is one bank)."""
        return self.tiles.count // self.map.banks

    @property
    def blank_tile(self) -> int:
        """The tile that is always empty, in bank 0; its map entry is the same in every bank."""
        return self.tiles.blank

    @property
    def blank_tiles(self) -> tuple[int, ...]:
        """The blank tile of each bank."""
        return tuple(bank * self.tiles_per_bank + self.tiles.blank for bank in range(self.map.banks))

    @property
    def tile_bytes(self) -> int:
        """Bytes of one tile."""
        return TILE_SIDE * self.tiles.planes

    @cached_property
    def tile_bits(self) -> TileBits:
        """Where every bit of every pixel of a tile stands."""
        return tile_bits(self.tiles.storage, self.tiles.planes, self.tiles.byte)

    # --- sides -------------------------------------------------------------------------------------------

    @property
    def plane_sets(self) -> int:
        """How many pictures the planes of one tile hold; planes left over belong to no side."""
        return self.tiles.planes // self.tiles.depth

    @property
    def sides(self) -> int:
        """How many sides there are: as many as plane sets, map pages or banks, whichever is most."""
        return max(self.plane_sets, self.map.pages, self.map.banks)

    def planes_of(self, side: int) -> range:
        """The planes that hold the picture of ``side``, lowest bit of the picture first."""
        first = side % self.plane_sets * self.tiles.depth
        return range(first, first + self.tiles.depth)

    def page_of(self, side: int) -> int:
        """The map page of ``side``."""
        return side % self.map.pages

    def bank_of(self, side: int) -> int:
        """The bank of tiles of ``side``."""
        return side % self.map.banks

    def palette_showing(self, side: int) -> bytes:
        """The window's 2^planes palette bytes under which only the planes of ``side`` can be seen."""
        shades = (self.colours.background, *self.colours.inks)
        first, mask = self.planes_of(side)[0], (1 << self.tiles.depth) - 1
        return bytes(shades[value >> first & mask] for value in range(1 << self.tiles.planes))

    def view_bursts(self, side: int, seen: int | None = None) -> tuple[Burst, ...]:
        """The cheapest bursts of step 1 that turn the view of side ``seen`` into that of ``side``.

        ``seen`` None stands for the view before `Scheduler.start`: every colour the background, page 0, bank 0.
        """
        held = self._first_view_bytes() if seen is None else self._view_bytes(seen)
        return self.bursts(self._view_bytes(side), held)

    def bursts(self, wanted: Mapping[int, int], held: Mapping[int, int]) -> tuple[Burst, ...]:
        """The cheapest bursts of step 1 that make memory hold ``wanted`` (address to byte), lowest address first.

        ``held`` is what memory is known to hold: bytes that are as wanted are left out, unless writing them in
        passing is cheaper than another set-up.
        """
        spans: list[list[int]] = []
        for address in sorted(address for address, byte in wanted.items() if held.get(address) != byte):
            if spans and self._joins(spans[-1][1], address, wanted, held):
                spans[-1][1] = address
            else:
                spans.append([address, address])
        full = {**held, **wanted} if spans else wanted
        return tuple(Burst(first, bytes(full[a] for a in range(first, last + 1))) for first, last in spans)

    def _joins(self, last: int, address: int, wanted: Mapping[int, int], held: Mapping[int, int]) -> bool:
        gap = range(last + 1, address)
        if len(gap) * self._per_byte(last) > self._setup(last):
            return False
        return all(a in wanted or a in held for a in gap) and self.is_view(last) == self.is_view(address)

    def _view_bytes(self, side: int) -> dict[int, int]:
        bytes_at: dict[int, int] = {}
        if not self.colours.fixed:
            bytes_at |= {self.palette_address + i: b for i, b in enumerate(self.palette_showing(side))}
        if self.map.pages > 1:
            bytes_at[self.page_address] = self.page_of(side)
        if self.map.banks > 1:
            bytes_at[self.bank_address] = self.bank_of(side)
        return bytes_at

    def _first_view_bytes(self) -> dict[int, int]:
        registers = {self.layout.page_register, self.layout.bank_register}
        return {a: 0 if a in registers else self.colours.background for a in self._view_bytes(0)}

    # --- addresses ---------------------------------------------------------------------------------------

    @cached_property
    def layout(self) -> Memory:
        """Where the regions begin: ``memory``, or the default one after the other."""
        if self.memory is not None:
            return self.memory
        return one_after_the_other(self.window, self.tiles, self.map, self.colours)

    @cached_property
    def regions(self) -> tuple[Region, ...]:
        """Every region of picture memory, the rest of the screen's share included."""
        return regions_of(self.layout, self.window, self.tiles, self.map, self.colours)

    def pattern_address(self, tile: int, plane: int | None = None, row: int = 0) -> int:
        """Address of byte ``row`` (0 to 7) of one plane of ``tile``.

        On packed storage a row of pixels takes ``planes`` bytes that hold all planes, so there is no plane to
        name, and this is the address of the first of them. Raises `ValueError` for a tile, plane or row that
        the machine has not.
        """
        packed = self.tiles.storage is Storage.PACKED
        if packed and plane is not None:
            raise ValueError(f"plane is {plane!r}: packed storage has no plane of its own to address, leave it out")
        if not packed and plane is None:
            raise ValueError(
                f"plane is missing: {self.tiles.storage.value} storage needs one of 0..{self.tiles.planes - 1}"
            )
        _within("tile", tile, self.tiles.count)
        _within("plane", plane or 0, self.tiles.planes)
        _within("row", row, TILE_SIDE)
        offset = self.tiles.storage.line_offset(self.tiles.planes, 0 if packed else plane or 0, row)
        return self.layout.patterns + tile * self.tile_bytes + offset

    def map_address(self, page: int, cell: int) -> int:
        """Address of the first byte of the map entry of ``cell`` of the window on ``page``."""
        _within("page", page, self.map.pages)
        _within("cell", cell, self.cells)
        row, column = divmod(cell, self.window.columns)
        place = (self.window.origin_row + row) * self.window.pitch + self.window.origin_column + column
        return self.layout.maps[page] + place * self.map.entry_bytes

    def map_entry(self, tile: int) -> bytes:
        """The bytes of a map entry that names ``tile`` (within the bank that is shown with it)."""
        _within("tile", tile, self.tiles.count)
        order = "little" if self.map.byte_order is ByteOrder.LOW_FIRST else "big"
        return (tile % self.tiles_per_bank).to_bytes(self.map.entry_bytes, order)  # type: ignore[arg-type]

    @property
    def palette_address(self) -> int:
        """Address of the window's first palette entry. Raises `ValueError` on a machine without one."""
        return _present("palette", self.layout.palette) + self.colours.first_entry

    @property
    def page_address(self) -> int:
        """Address of the register that says which map page is shown. Raises `ValueError` without one."""
        return _present("page register", self.layout.page_register)

    @property
    def bank_address(self) -> int:
        """Address of the register that says which bank of tiles is shown. Raises `ValueError` without one."""
        return _present("bank register", self.layout.bank_register)

    # --- costs -------------------------------------------------------------------------------------------

    @cached_property
    def blank_cycles(self) -> int:
        """Whole cycles of one undisturbed blanking that a scheduler may use."""
        return math.floor((self.time.lines - self.time.shown) * self.time.cycles_per_line - self.time.reserve)

    def burst_cycles(self, n_bytes: int, *, view: bool = False) -> Rational:
        """Cycles of one burst of ``n_bytes``; ``view`` for a burst to palette or view registers."""
        setup, per_byte = self.rates(view=view)
        return setup + per_byte * n_bytes

    def cost(self, burst: Burst) -> Rational:
        """Cycles of ``burst``, by its first address a burst to the view or to picture memory."""
        return self.burst_cycles(len(burst.data), view=self.is_view(burst.address))

    def rates(self, *, view: bool) -> tuple[Rational, Rational]:
        """Set-up of a burst and cycles per byte."""
        setup, per_byte = self.time.setup, self.time.per_byte
        if view and self.time.view_setup is not None:
            setup = self.time.view_setup
        if view and self.time.view_per_byte is not None:
            per_byte = self.time.view_per_byte
        return setup, per_byte

    def is_view(self, address: int) -> bool:
        """Whether palette or view registers stand at ``address``."""
        return any(start <= address < end for start, end in self._view_spans)

    @cached_property
    def _view_spans(self) -> tuple[tuple[int, int], ...]:
        return tuple((region.start, region.end) for region in self.regions if region.kind.is_view)

    def _setup(self, address: int) -> Rational:
        return self.rates(view=self.is_view(address))[0]

    def _per_byte(self, address: int) -> Rational:
        return self.rates(view=self.is_view(address))[1]

    # --- demands -----------------------------------------------------------------------------------------

    @cached_property
    def must_show(self) -> int:
        """Pictures with up to this many occupied cells may not be declined; see `must_show_unless_demanded`."""
        asked = self.demands.must_show
        return must_show_unless_demanded(self.tiles, self.map, self.cap_of_view) if asked is None else asked

    @cached_property
    def patience(self) -> int:
        """Full blankings within which a taken picture must be seen; see `patience_unless_demanded`."""
        if self.demands.patience is not None:
            return self.demands.patience
        return patience_unless_demanded(self.tiles, self.map, self.cells, self.blank_cycles, self.burst_cycles)


def _within(what: str, value: int, end: int) -> None:
    if not 0 <= value < end:
        raise ValueError(f"{what} is {value!r}: this machine has 0..{end - 1}")


def _present(what: str, base: int | None) -> int:
    if base is None:
        raise ValueError(f"this machine has no {what}")
    return base
