"""A second model of the display, written from the rules alone: one pixel, one byte, one line at a time.

It exists to disagree with `planeproof.display`, so it imports nothing of the package, knows no arrays, and prefers
the plainest way to say a rule over any faster one. Memory is a dictionary from address to byte; a write to an
address that belongs to nobody is kept there and never looked at.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

Memory = dict[int, int]
Colour = tuple[int, int, int]
Rows = list[list[Colour | None]]
Burst = tuple[int, bytes, int]  # address, data, step


@dataclass(frozen=True, kw_only=True)
class Display:
    """One machine in plain figures. Words stand for kinds, None for a thing that the machine has not."""

    columns: int
    rows: int
    map_columns: int
    map_rows: int
    origin_column: int
    origin_row: int
    first_line: int
    tiles: int
    blank: int
    planes: int
    storage: str  # "planar", "interleaved" or "packed"
    byte: str  # "row" or "column"
    pages: int
    entry_bytes: int
    byte_order: str  # "low-first" or "high-first"
    banks: int
    meaning: tuple[Colour, ...]
    background: int
    inks: tuple[int, ...]
    first_entry: int
    entries: int
    pattern_base: int
    map_bases: tuple[int, ...]
    palette_base: int | None
    page_register: int | None
    bank_register: int | None
    lines: int
    shown: int
    cycles_per_line: Fraction
    reserve: Fraction
    setup: Fraction
    per_byte: Fraction
    view_setup: Fraction
    view_per_byte: Fraction
    outside: str  # "wrecks", "lands" or "lost"


# --- memory ----------------------------------------------------------------------------------------------


def entry_address(display: Display, page: int, map_row: int, map_column: int) -> int:
    """Where the map entry at that place of the whole map begins."""
    place = map_row * display.map_columns + map_column
    return display.map_bases[page] + place * display.entry_bytes


def entry_as_bytes(display: Display, number: int) -> list[int]:
    """The bytes of a map entry, in the order in which they stand."""
    if display.entry_bytes == 1:
        return [number]
    low, high = number % 256, number // 256
    return [low, high] if display.byte_order == "low-first" else [high, low]


def memory_before_start(display: Display) -> Memory:
    """Patterns zero, every map entry the blank tile, every palette entry the background, registers zero."""
    memory: Memory = {}
    for offset in range(display.tiles * display.planes * 8):
        memory[display.pattern_base + offset] = 0
    for page in range(display.pages):
        memory |= page_of_blank_tiles(display, page)
    if display.palette_base is not None:
        for entry in range(display.entries):
            memory[display.palette_base + entry] = display.background
    for register in (display.page_register, display.bank_register):
        if register is not None:
            memory[register] = 0
    return memory


def page_of_blank_tiles(display: Display, page: int) -> Memory:
    """A whole map page, the window's cells and the others, in which every entry names the blank tile."""
    memory: Memory = {}
    for map_row in range(display.map_rows):
        for map_column in range(display.map_columns):
            address = entry_address(display, page, map_row, map_column)
            for i, byte in enumerate(entry_as_bytes(display, display.blank)):
                memory[address + i] = byte
    return memory


# --- one pixel -------------------------------------------------------------------------------------------


def shown_page(display: Display, memory: Memory) -> int:
    """The page register counts modulo the pages, and is ignored with one page."""
    return 0 if display.page_register is None else memory[display.page_register] % display.pages


def shown_bank(display: Display, memory: Memory) -> int:
    """The bank register counts modulo the banks, and is ignored with one bank."""
    return 0 if display.bank_register is None else memory[display.bank_register] % display.banks


def tile_at(display: Display, memory: Memory, cell_row: int, cell_column: int) -> int | None:
    """The tile that stands in a cell of the window, counted over all banks; None where the entry names none."""
    address = entry_address(
        display, shown_page(display, memory), display.origin_row + cell_row, display.origin_column + cell_column
    )
    number = memory[address]
    if display.entry_bytes == 2:
        second = memory[address + 1]
        number = number + 256 * second if display.byte_order == "low-first" else 256 * number + second
    in_a_bank = display.tiles // display.banks
    power = 1
    while power < in_a_bank:
        power = power * 2
    number %= power
    return shown_bank(display, memory) * in_a_bank + number if number < in_a_bank else None


def pixel_bit(display: Display, memory: Memory, tile: int, plane: int, pixel: tuple[int, int]) -> int:
    """Bit ``plane`` of the pixel in row y and column x of a tile; ``pixel`` is (y, x)."""
    line, position = pixel if display.byte == "row" else pixel[::-1]
    tile_base = display.pattern_base + tile * 8 * display.planes
    if display.storage == "planar":
        byte, from_the_left = memory[tile_base + 8 * plane + line], position
    elif display.storage == "interleaved":
        byte, from_the_left = memory[tile_base + display.planes * line + plane], position
    else:  # the bits of a line one after the other, each pixel's highest plane first
        along = position * display.planes + (display.planes - 1 - plane)
        byte, from_the_left = memory[tile_base + display.planes * line + along // 8], along % 8
    return int(f"{byte:08b}"[from_the_left])


def colour_of_value(display: Display, memory: Memory, value: int) -> Colour:
    """What a pixel value shows: through the palette, or, where colours are fixed, as its own ink."""
    if display.palette_base is None:
        byte = display.background if value == 0 else display.inks[value - 1]
    else:
        byte = memory[display.palette_base + display.first_entry + value]
    return display.meaning[byte % len(display.meaning)]


def colour_at(display: Display, memory: Memory, y: int, x: int) -> Colour:
    """The colour of one pixel of the window, from what stands in memory now."""
    tile = tile_at(display, memory, y // 8, x // 8)
    if tile is None:
        return display.meaning[display.background % len(display.meaning)]
    bits = [pixel_bit(display, memory, tile, plane, (y % 8, x % 8)) for plane in range(display.planes)]
    return colour_of_value(display, memory, sum(bit * 2**plane for plane, bit in enumerate(bits)))


def line_of_window(display: Display, memory: Memory, y: int) -> list[Colour | None]:
    """One row of pixels of the window."""
    return [colour_at(display, memory, y, x) for x in range(display.columns * 8)]


def still_frame(display: Display, memory: Memory) -> Rows:
    """The window as it is seen when no byte comes late."""
    return [line_of_window(display, memory, y) for y in range(display.rows * 8)]


# --- time ------------------------------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class TimedByte:
    """A byte and when it is written, in cycles since the beginning of the blanking."""

    address: int
    value: int
    time: Fraction


def is_view_address(display: Display, address: int) -> bool:
    """Whether the palette, the window's share or not, or a register stands there."""
    if display.palette_base is not None and 0 <= address - display.palette_base < display.entries:
        return True
    return address in (display.page_register, display.bank_register)


def timed_bytes(display: Display, bursts: Iterable[Burst]) -> list[TimedByte]:
    """When each byte is written, if the first burst begins at once and no gap lies between bursts."""
    timed = []
    spent = Fraction(0)
    for address, data, step in bursts:
        view = is_view_address(display, address)
        setup = display.view_setup if view else display.setup
        per_byte = display.view_per_byte if view else display.per_byte
        for i, value in enumerate(data):
            time = spent + setup + (i + 1) * per_byte
            timed.append(TimedByte(address=address + i * step, value=value, time=time))
        spent = spent + setup + len(data) * per_byte
    return timed


def whole_blanking(display: Display) -> int:
    """Whole cycles of an undisturbed blanking."""
    return math.floor((display.lines - display.shown) * display.cycles_per_line - display.reserve)


def landing_line(display: Display, byte: TimedByte, cycles: int) -> int | None:
    """None inside a blanking of ``cycles``; else the displayed line, past the last one ``shown`` or more."""
    if byte.time <= cycles:
        return None
    return math.floor((byte.time - cycles) / display.cycles_per_line)


def put_off(display: Display, byte: TimedByte, cycles: int) -> TimedByte:
    """The same byte, its time counted from the beginning of the next blanking."""
    time = byte.time - cycles - display.shown * display.cycles_per_line
    return TimedByte(address=byte.address, value=byte.value, time=time)


def cycles_left(display: Display, overdue: Sequence[TimedByte]) -> int:
    """Whole cycles of a blanking that are left after the last byte that came over from before."""
    last = max((byte.time for byte in overdue), default=Fraction(0))
    return max(0, whole_blanking(display) - math.ceil(last))


# --- one refresh, and several ----------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class Seen:
    """One refresh: its frame, where each byte landed (line None: in the blanking), and what is left over.

    ``late`` tells of each byte that landed whether it came too late for the blanking it was meant for.
    """

    frame: Rows
    landed: list[tuple[int, int, int | None]]  # address, value, line
    late: list[bool]
    overdue: list[TimedByte]


def refresh(
    display: Display, memory: Memory, bursts: Iterable[Burst], told: int, overdue: Sequence[TimedByte] = ()
) -> Seen:
    """Play one blanking and the display after it; ``memory`` is changed as it is on the machine.

    The scheduler was ``told`` this many cycles, and its times count from when it was told; bytes left over
    from before count from the beginning of the whole blanking. Both blankings end at the same moment.
    """
    seen = Seen(frame=[], landed=[], late=[], overdue=[])
    both = [(byte, whole_blanking(display), True) for byte in overdue]
    both += [(byte, told, byte.time > told) for byte in timed_bytes(display, bursts)]
    for byte, cycles, late in both:
        line = landing_line(display, byte, cycles)
        if line is not None and line >= display.shown:
            seen.overdue.append(put_off(display, byte, cycles))
            continue
        seen.landed.append((byte.address, byte.value, line))
        seen.late.append(late)
        if line is None:
            memory[byte.address] = byte.value
    on_lines = [(address, value, line) for address, value, line in seen.landed if line is not None]
    seen.frame.extend(displayed(display, memory, on_lines))
    return seen


def displayed(display: Display, memory: Memory, on_lines: Sequence[tuple[int, int, int]]) -> Rows:
    """The beam goes down line by line; bytes (address, value, line) strike as their line begins."""
    frame: Rows = []
    wrecked = False
    for line in range(display.shown):
        for address, value, landing in on_lines:
            if landing == line and display.outside != "lost":
                memory[address] = value
                wrecked = wrecked or display.outside == "wrecks"
        y = line - display.first_line
        if 0 <= y < display.rows * 8:
            frame.append([None] * (display.columns * 8) if wrecked else line_of_window(display, memory, y))
    return frame


def play(display: Display, memory: Memory, refreshes: Iterable[tuple[int, Sequence[Burst]]]) -> list[Seen]:
    """Several refreshes in a row, each (cycles cut off its blanking, bursts).

    Where nothing is left of a blanking it is lost, and its bursts are not written.
    """
    seen: list[Seen] = []
    for cut, bursts in refreshes:
        overdue = seen[-1].overdue if seen else []
        told = max(0, cycles_left(display, overdue) - cut)
        seen.append(refresh(display, memory, bursts if told else [], told, overdue))
    return seen
