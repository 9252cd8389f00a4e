"""The parts of a machine: frozen values, each of which refuses what can't be in itself.

What depends on several parts at once is refused by `planeproof.contract.machine.Machine`.
"""

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction
from typing import TypeGuard

from planeproof.contract.errors import MachineError, require
from planeproof.contract.layout import ByteDirection, Storage

Rational = int | Fraction
"""An exact number of cycles."""


def _whole(field: str, value: object, low: int, high: int, why: str = "") -> None:
    inside = _is_whole(value) and low <= value <= high
    require(inside, MachineError, field, value, f"must be a whole number from {low} to {high}{why}")


def _one_of(field: str, value: object, kind: type[Enum]) -> None:
    allowed = f"must be one of {', '.join(str(member) for member in kind)}"
    require(isinstance(value, kind), MachineError, field, value, allowed)


def _is_whole(value: object) -> TypeGuard[int]:
    return isinstance(value, int) and not isinstance(value, bool)


def _several(field: str, value: object) -> None:
    good = isinstance(value, tuple) and all(map(_is_whole, value))
    require(good, MachineError, field, value, "must be a tuple of whole numbers")


def _may_be_missing(field: str, value: object) -> None:
    require(value is None or _is_whole(value), MachineError, field, value, "must be a whole number, or None")


def _cycles(field: str, value: object, *, positive: bool) -> None:
    exact = isinstance(value, int | Fraction) and not isinstance(value, bool)
    low = "above 0" if positive else "0 or more"
    inside = exact and (value > 0 if positive else value >= 0)  # type: ignore[operator]
    require(inside, MachineError, field, value, f"must be an exact number of cycles (int or Fraction), {low}")


@dataclass(frozen=True, kw_only=True)
class Window:
    """The window: ``columns`` x ``rows`` cells, and its place in a larger map.

    ``map_columns`` and ``map_rows`` are the size of a map page in cells (default: just the window);
    ``origin_column`` and ``origin_row`` are the window's place in it. ``first_line`` is the displayed raster
    line (counted from 0 at the top of the display) of the window's first row of pixels.
    """

    columns: int
    rows: int
    map_columns: int | None = None
    map_rows: int | None = None
    origin_column: int = 0
    origin_row: int = 0
    first_line: int = 0

    def __post_init__(self) -> None:
        _whole("window.columns", self.columns, 1, 256)
        _whole("window.rows", self.rows, 1, 256)
        _whole("window.origin_column", self.origin_column, 0, 1024)
        _whole("window.origin_row", self.origin_row, 0, 1024)
        across, down = self.origin_column + self.columns, self.origin_row + self.rows
        _whole("window.map_columns", self.pitch, across, 2048, ", as window.origin_column + window.columns must fit")
        _whole("window.map_rows", self.map_height, down, 2048, ", as window.origin_row + window.rows must fit")
        _whole("window.first_line", self.first_line, 0, 4096)

    @property
    def pitch(self) -> int:
        """Cells in a row of the map."""
        return self.origin_column + self.columns if self.map_columns is None else self.map_columns

    @property
    def map_height(self) -> int:
        """Rows of cells in the map."""
        return self.origin_row + self.rows if self.map_rows is None else self.map_rows


@dataclass(frozen=True, kw_only=True)
class Tiles:
    """The tiles: how many, which of them the window may use (``pool``), and how their bits are stored.

    ``blank`` is outside the pool, always empty, may be mapped and is never written. With several banks it is
    the number within a bank, and every bank has such a tile. ``depth`` is the bits per pixel of a picture.
    """

    count: int
    pool: tuple[int, ...]
    blank: int = 0
    planes: int = 2
    depth: int = 1
    storage: Storage = Storage.PLANAR
    byte: ByteDirection = ByteDirection.ROW

    def __post_init__(self) -> None:
        _one_of("tiles.storage", self.storage, Storage)
        _one_of("tiles.byte", self.byte, ByteDirection)
        require(isinstance(self.pool, tuple), MachineError, "tiles.pool", self.pool, "must be a tuple of tile numbers")
        _whole("tiles.count", self.count, 2, 65536)
        _whole("tiles.planes", self.planes, 1, 8)
        _whole("tiles.depth", self.depth, 1, self.planes)
        _whole("tiles.blank", self.blank, 0, self.count - 1)
        require(len(self.pool) > 0, MachineError, "tiles.pool", self.pool, "must name at least one tile")
        for tile in self.pool:
            _whole("tiles.pool", tile, 0, self.count - 1)
        twice = sorted({tile for tile in self.pool if self.pool.count(tile) > 1}) if self._repeats else []
        require(not twice, MachineError, "tiles.pool", twice, "must not name a tile twice")
        packs = self.storage is not Storage.PACKED or self.planes in (1, 2, 4)
        require(packs, MachineError, "tiles.planes", self.planes, "must be 1, 2 or 4 with packed storage")

    @property
    def _repeats(self) -> bool:
        return len(set(self.pool)) < len(self.pool)


class ByteOrder(Enum):
    """Which byte of a two-byte map entry stands first."""

    LOW_FIRST = "low-first"
    HIGH_FIRST = "high-first"


@dataclass(frozen=True, kw_only=True)
class TileMap:
    """The tile map: ``pages`` whole maps, ``entry_bytes`` a cell, ``banks`` of tiles.

    With several banks the tiles are split evenly, an entry counts within a bank, and a register says which
    bank the shown page draws from.
    """

    pages: int = 2
    entry_bytes: int = 1
    byte_order: ByteOrder = ByteOrder.LOW_FIRST
    banks: int = 1

    def __post_init__(self) -> None:
        _whole("map.pages", self.pages, 1, 2)
        _whole("map.entry_bytes", self.entry_bytes, 1, 2)
        _whole("map.banks", self.banks, 1, 16)
        _one_of("map.byte_order", self.byte_order, ByteOrder)


RGB = tuple[int, int, int]


@dataclass(frozen=True, kw_only=True)
class Colours:
    """What the palette means, and which colours the window's pictures are drawn in.

    ``meaning[b]`` is the 8-bit sRGB colour that palette byte ``b`` shows; a byte counts modulo the length.
    ``background`` and ``inks`` are palette bytes: ``inks[v - 1]`` is the colour of picture value v, and there
    are 2^depth - 1 of them. The palette has ``entries`` entries, of which the window owns the 2^planes that
    start at ``first_entry``. A machine with ``fixed`` colours has no palette that can be written: pixel value
    v always shows ``inks[v - 1]``.
    """

    meaning: tuple[RGB, ...] = ((0, 0, 0), (255, 255, 255))
    background: int = 0
    inks: tuple[int, ...] = (1,)
    first_entry: int = 0
    entries: int | None = None
    fixed: bool = False

    def __post_init__(self) -> None:
        require(
            isinstance(self.meaning, tuple), MachineError, "colours.meaning", self.meaning, "must be a tuple of colours"
        )
        require(
            isinstance(self.inks, tuple), MachineError, "colours.inks", self.inks, "must be a tuple of palette bytes"
        )
        length = len(self.meaning)
        power = 2 <= length <= 256 and length & (length - 1) == 0
        require(power, MachineError, "colours.meaning", length, "must have 2, 4, 8 ... or 256 colours")
        for colour in self.meaning:
            good = (
                isinstance(colour, tuple) and len(colour) == 3 and all(type(c) is int and 0 <= c <= 255 for c in colour)
            )
            require(good, MachineError, "colours.meaning", colour, "must be three numbers from 0 to 255")
        for field, byte in [("background", self.background), *(("inks", ink) for ink in self.inks)]:
            _whole(f"colours.{field}", byte, 0, 255)
        shown = [self.look(byte) for byte in (self.background, *self.inks)]
        allowed = "background and inks must show pairwise different colours"
        require(len(set(shown)) == len(shown), MachineError, "colours.inks", self.inks, allowed)
        _whole("colours.first_entry", self.first_entry, 0, 255)
        if self.entries is not None:
            _whole("colours.entries", self.entries, 1, 4096)

    def look(self, byte: int) -> RGB:
        """The colour that palette byte ``byte`` shows."""
        return self.meaning[byte % len(self.meaning)]


@dataclass(frozen=True, kw_only=True)
class Memory:
    """Where each region of picture memory begins, as byte addresses, and the permitted steps of a burst.

    ``maps`` has one base a page. ``palette``, ``page_register`` and ``bank_register`` are None where the
    machine has no such thing. A step is 1, or the bytes of a map row.
    """

    patterns: int
    maps: tuple[int, ...]
    palette: int | None = None
    page_register: int | None = None
    bank_register: int | None = None
    steps: tuple[int, ...] = (1,)

    def __post_init__(self) -> None:
        _several("memory.maps", self.maps)
        _several("memory.steps", self.steps)
        _may_be_missing("memory.palette", self.palette)
        _may_be_missing("memory.page_register", self.page_register)
        _may_be_missing("memory.bank_register", self.bank_register)
        _whole("memory.patterns", self.patterns, 0, 1 << 20)


class Outside(Enum):
    """What a byte that comes too late, during the active display, does.

    ``WRECKS``: the rest of that frame is undefined. ``LANDS``: it takes effect from its raster line on.
    ``LOST``: it has no effect. A byte so late that it falls into the next blanking lands there in any case.
    """

    WRECKS = "wrecks"
    LANDS = "lands"
    LOST = "lost"


@dataclass(frozen=True, kw_only=True)
class Timing:
    """The line standard and what writing costs, in exact cycles.

    ``lines`` a refresh, of which ``shown`` are displayed, ``cycles_per_line`` each. Other work takes
    ``reserve`` cycles from every blanking. A burst costs ``setup`` and then ``per_byte`` for every byte; where
    palette and view registers cost otherwise, ``view_setup`` and ``view_per_byte`` say so. ``standard`` is
    the name of the line standard, for people.
    """

    standard: str = "625/50"
    lines: int = 312
    shown: int = 224
    cycles_per_line: Rational = Fraction(448, 5)
    reserve: Rational = 0
    setup: Rational = 12
    per_byte: Rational = 8
    view_setup: Rational | None = None
    view_per_byte: Rational | None = None

    def __post_init__(self) -> None:
        _whole("time.lines", self.lines, 2, 4096)
        _whole("time.shown", self.shown, 1, self.lines - 1)
        _cycles("time.cycles_per_line", self.cycles_per_line, positive=True)
        _cycles("time.reserve", self.reserve, positive=False)
        _cycles("time.setup", self.setup, positive=False)
        _cycles("time.per_byte", self.per_byte, positive=True)
        if self.view_setup is not None:
            _cycles("time.view_setup", self.view_setup, positive=False)
        if self.view_per_byte is not None:
            _cycles("time.view_per_byte", self.view_per_byte, positive=True)


@dataclass(frozen=True, kw_only=True)
class Demands:
    """What the machine's owner asks of a scheduler.

    ``must_show``: pictures with up to this many occupied cells may not be declined. ``patience``: how many
    full blankings a picture may take to be seen; it is demanded on the machine itself, and a check's small relatives of
    it keep to their defaults. None means the machine's own default (`Machine.must_show`, `Machine.patience`).
    """

    must_show: int | None = None
    patience: int | None = None

    def __post_init__(self) -> None:
        if self.must_show is not None:
            _whole("demands.must_show", self.must_show, 0, 65536)
        if self.patience is not None:
            _whole("demands.patience", self.patience, 1, 1_000_000)
