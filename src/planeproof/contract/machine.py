"""The machine: one display as a frozen value, with its addresses, its sides and its costs."""

import math
from dataclasses import dataclass, field
from functools import cached_property

from planeproof.contract.burst import Burst
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
from planeproof.contract.regions import Region, RegionKind, refuse_overlaps


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
        for check in (_refuse_tiles, _refuse_colours, _refuse_memory, _refuse_time, _refuse_demands):
            check(self)

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
        """The cheapest bursts that turn the view of side ``seen`` into that of ``side``.

        ``seen`` None stands for the view before `Scheduler.start`: every colour the background, page 0, bank 0.
        """
        wanted = self._view_bytes(side)
        held = self._first_view_bytes() if seen is None else self._view_bytes(seen)
        spans: list[list[int]] = []
        for address in sorted(address for address in wanted if wanted[address] != held[address]):
            if spans and self._joins(spans[-1][1], address, wanted):
                spans[-1][1] = address
            else:
                spans.append([address, address])
        return tuple(Burst(first, bytes(wanted[a] for a in range(first, last + 1))) for first, last in spans)

    def _joins(self, last: int, address: int, known: dict[int, int]) -> bool:
        gap = range(last + 1, address)
        return all(a in known for a in gap) and len(gap) * self._per_byte(last) <= self._setup(last)

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
        colours = range(self.palette_address, self.palette_address + (1 << self.tiles.planes)) if not self.colours.fixed else ()
        return {a: self.colours.background if a in colours else 0 for a in self._view_bytes(0)}

    # --- addresses ---------------------------------------------------------------------------------------

    @cached_property
    def layout(self) -> Memory:
        """Where the regions begin: ``memory``, or the default one after the other."""
        return _one_after_the_other(self) if self.memory is None else self.memory

    @cached_property
    def regions(self) -> tuple[Region, ...]:
        """Every region of picture memory, the rest of the screen's share included."""
        return tuple(_regions(self))

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
            raise ValueError(f"plane is missing: {self.tiles.storage.value} storage needs one of 0..{self.tiles.planes - 1}")
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
        return _blanking(self)

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
        return any(address in region for region in self.regions if region.kind.is_view)

    def _setup(self, address: int) -> Rational:
        return self.rates(view=self.is_view(address))[0]

    def _per_byte(self, address: int) -> Rational:
        return self.rates(view=self.is_view(address))[1]

    # --- demands -----------------------------------------------------------------------------------------

    @cached_property
    def must_show(self) -> int:
        """Pictures with up to this many occupied cells may not be declined.

        Unless demanded: the cap if there are 2 pages and every picture has planes of its own beside the other
        one's, otherwise half the cap.
        """
        if self.demands.must_show is not None:
            return self.demands.must_show
        roomy = self.map.pages == 2 and self.tiles.planes >= 2 * self.tiles.depth
        return self.cap if roomy else self.cap // 2

    @cached_property
    def patience(self) -> int:
        """Full blankings within which a taken picture must be seen.

        Unless demanded: 4 + 4 x the blankings that every occupied pattern, every cell and the view take when
        sent in the smallest bursts, one at a time.
        """
        if self.demands.patience is not None:
            return self.demands.patience
        patterns = min(self.cap, self.cells)
        if self.tiles.storage is Storage.INTERLEAVED:
            blankings = self._blankings(patterns * self.tiles.depth * TILE_SIDE, 1)
        else:
            packed = self.tiles.storage is Storage.PACKED
            blankings = self._blankings(patterns * (self.tiles.planes if packed else self.tiles.depth), TILE_SIDE)
        return 4 + 4 * (blankings + self._blankings(self.cells, self.map.entry_bytes) + 1)

    def _blankings(self, bursts: int, n_bytes: int) -> int:
        return math.ceil(bursts / (self.blank_cycles // self.burst_cycles(n_bytes)))


def _within(what: str, value: int, end: int) -> None:
    if not 0 <= value < end:
        raise ValueError(f"{what} is {value!r}: this machine has 0..{end - 1}")


def _present(what: str, base: int | None) -> int:
    if base is None:
        raise ValueError(f"this machine has no {what}")
    return base


def _blanking(machine: Machine) -> int:
    time = machine.time
    return math.floor((time.lines - time.shown) * time.cycles_per_line - time.reserve)


def _palette_entries(machine: Machine) -> int:
    own = machine.colours.first_entry + (1 << machine.tiles.planes)
    return own if machine.colours.entries is None else machine.colours.entries


def _map_bytes(machine: Machine) -> int:
    return machine.window.pitch * machine.window.map_height * machine.map.entry_bytes


def _one_after_the_other(machine: Machine) -> Memory:
    address = 0 if machine.colours.fixed else _palette_entries(machine)
    palette = None if machine.colours.fixed else 0
    page_register, address = (address, address + 1) if machine.map.pages > 1 else (None, address)
    bank_register, address = (address, address + 1) if machine.map.banks > 1 else (None, address)
    maps = tuple(address + page * _map_bytes(machine) for page in range(machine.map.pages))
    return Memory(
        patterns=maps[-1] + _map_bytes(machine),
        maps=maps,
        palette=palette,
        page_register=page_register,
        bank_register=bank_register,
    )


def _regions(machine: Machine) -> list[Region]:
    memory = machine.layout
    regions = [
        Region(kind=RegionKind.MAP, start=base, length=_map_bytes(machine), page=page)
        for page, base in enumerate(memory.maps)
    ]
    patterns = machine.tiles.count * machine.tile_bytes
    regions.append(Region(kind=RegionKind.PATTERNS, start=memory.patterns, length=patterns))
    if memory.palette is not None:
        length = _palette_entries(machine)
        regions.append(Region(kind=RegionKind.PALETTE, start=memory.palette, length=length))
    if memory.page_register is not None:
        regions.append(Region(kind=RegionKind.PAGE_REGISTER, start=memory.page_register, length=1))
    if memory.bank_register is not None:
        regions.append(Region(kind=RegionKind.BANK_REGISTER, start=memory.bank_register, length=1))
    return regions


def _refuse_tiles(machine: Machine) -> None:
    banks, count = machine.map.banks, machine.tiles.count
    even = count % banks == 0 and count // banks >= 2
    require(even, MachineError, "map.banks", banks, f"must split the {count} tiles evenly, at least 2 a bank")
    reach = 256**machine.map.entry_bytes
    allowed = f"must be at most {reach}, for an entry of {machine.map.entry_bytes} byte(s) names no more"
    require(machine.tiles_per_bank <= reach, MachineError, "tiles.count (a bank)", machine.tiles_per_bank, allowed)
    inside = machine.tiles.blank < machine.tiles_per_bank
    require(inside, MachineError, "tiles.blank", machine.tiles.blank, f"must lie in a bank of {machine.tiles_per_bank}")
    taken = sorted(set(machine.blank_tiles) & set(machine.pool))
    require(not taken, MachineError, "tiles.pool", taken, "must not hold the blank tile (of any bank)")


def _refuse_colours(machine: Machine) -> None:
    colours, tiles = machine.colours, machine.tiles
    inks = (1 << tiles.depth) - 1
    require(len(colours.inks) == inks, MachineError, "colours.inks", colours.inks, f"must be {inks} for depth {tiles.depth}")
    if colours.fixed:
        allowed = f"must equal the depth of {tiles.depth} where colours are fixed, for no palette can hide a plane"
        require(tiles.planes == tiles.depth, MachineError, "tiles.planes", tiles.planes, allowed)
        return
    need = colours.first_entry + (1 << tiles.planes)
    allowed = f"must be at least {need}: {1 << tiles.planes} for the window, from entry {colours.first_entry} on"
    require(_palette_entries(machine) >= need, MachineError, "colours.entries", colours.entries, allowed)


def _refuse_memory(machine: Machine) -> None:
    memory, pages, banks = machine.layout, machine.map.pages, machine.map.banks
    require(len(memory.maps) == pages, MachineError, "memory.maps", memory.maps, f"must be {pages}, one a page")
    for name, base, needed in [
        ("palette", memory.palette, not machine.colours.fixed),
        ("page_register", memory.page_register, pages > 1),
        ("bank_register", memory.bank_register, banks > 1),
    ]:
        allowed = "must be given on this machine" if needed else "must be left out: this machine has none"
        require((base is not None) == needed, MachineError, f"memory.{name}", base, allowed)
    refuse_overlaps(machine.regions)
    row = machine.window.pitch * machine.map.entry_bytes
    steps = 1 in memory.steps and set(memory.steps) <= {1, row}
    require(steps, MachineError, "memory.steps", memory.steps, f"must hold 1, and may hold a map row, which is {row}")


def _refuse_time(machine: Machine) -> None:
    time, bottom = machine.time, machine.window.first_line + machine.window.rows * TILE_SIDE
    allowed = f"must be at least {bottom}, the line after the window's last"
    require(time.shown >= bottom, MachineError, "time.shown", time.shown, allowed)
    blanking, burst = machine.blank_cycles, machine.burst_cycles(TILE_SIDE)
    allowed = f"must leave at least {burst} cycles, one 8-byte burst, of every blanking"
    require(blanking >= burst, MachineError, "time (cycles left of a blanking)", blanking, allowed)
    sides = range(machine.sides)
    dearest = max(sum(machine.cost(burst) for burst in machine.view_bursts(a, b)) for a in sides for b in sides)
    allowed = f"must leave at least {dearest} cycles, the dearest change between two sides' views"
    require(blanking >= dearest, MachineError, "time (cycles left of a blanking)", blanking, allowed)


def _refuse_demands(machine: Machine) -> None:
    asked = machine.demands.must_show
    if asked is not None:
        allowed = f"must be at most the cap of {machine.cap}"
        require(asked <= machine.cap, MachineError, "demands.must_show", asked, allowed)
