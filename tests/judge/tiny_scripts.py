"""Anything that can be written to a tiny display, drawn so that it is now and then the right thing.

The displays have one or two cells, a few tiles and every way to have a second side. What is written is drawn from
what a scheduler would write (a picture's bytes, an entry, a whole view, a single view byte) and from plain noise,
by whoever does not know what it is doing.
"""

from dataclasses import dataclass

from hypothesis import strategies as st

from planeproof.contract import (
    Burst,
    Colours,
    Demands,
    Machine,
    Outside,
    Picture,
    Scene,
    Storage,
    TileMap,
    Tiles,
    Timing,
    Window,
)
from planeproof.judge import Play, play
from tests.judge.scripted import Blanking, scripted

Draw = st.DrawFn
SHADES = ((0, 0, 0), (255, 255, 255), (255, 255, 255), (90, 90, 90))
"""What a palette byte shows: two bytes show the same ink, one shows none of the picture's colours."""
CELLS = [bytes(8), b"\xff" * 8, b"\xf0" * 8]
TIME = Timing(standard="tiny", lines=300, shown=40, cycles_per_line=10, setup=1, per_byte=1)


@dataclass(frozen=True, kw_only=True)
class Script:
    """A scene and what is written in each of its blankings."""

    scene: Scene
    blankings: tuple[Blanking, ...]

    def play(self) -> Play:
        """What comes of it."""
        return play(self.scene, scripted(self.blankings))


@st.composite
def tiny_machines(draw: Draw) -> Machine:
    """One or two cells, planes, pages and banks, at least two sides in all."""
    pages, banks = draw(st.integers(1, 2)), draw(st.sampled_from([1, 1, 2]))
    storage = draw(st.sampled_from([Storage.PLANAR, *Storage]))
    planes = draw(st.sampled_from([2, 2, 1] if pages * banks > 1 else [2]))
    entry_bytes, per_bank = draw(st.integers(1, 2)), draw(st.integers(3, 4))
    pool = [tile for tile in range(per_bank * banks) if tile % per_bank]
    return Machine(
        name="tiny",
        window=Window(columns=draw(st.integers(1, 2)), rows=1),
        tiles=Tiles(count=per_bank * banks, pool=tuple(pool), planes=planes, storage=storage),
        map=TileMap(pages=pages, banks=banks, entry_bytes=entry_bytes),
        colours=Colours(meaning=SHADES),
        time=TIME,
        outside=draw(st.sampled_from(Outside)),
        demands=Demands(patience=4),
    )


@st.composite
def pattern_bursts(draw: Draw, machine: Machine) -> Burst:
    """Some of the bytes of a tile, as they would be in a picture or not."""
    tile, length = draw(st.sampled_from(machine.pool)), draw(st.sampled_from([8, 8, 1, 3, machine.tile_bytes]))
    offset = draw(st.sampled_from([0, 8, 0, 1, 5])) % machine.tile_bytes
    data = draw(st.sampled_from(CELLS)) * 4
    return Burst(
        machine.layout.patterns + tile * machine.tile_bytes + offset, data[: min(length, machine.tile_bytes - offset)]
    )


@st.composite
def entry_bursts(draw: Draw, machine: Machine) -> Burst:
    """The entry of a cell, whole or only its first byte, and sometimes more entries after it."""
    page, cell = draw(st.integers(0, machine.map.pages - 1)), draw(st.integers(0, machine.cells - 1))
    data = machine.map_entry(draw(st.sampled_from([*machine.pool, machine.blank_tile])))
    end = machine.layout.patterns - machine.map_address(page, cell)
    data = draw(st.sampled_from([data, data, data, data[:1], data * 2, data * 3]))
    return Burst(machine.map_address(page, cell), data[:end])


@st.composite
def view_bursts(draw: Draw, machine: Machine) -> tuple[Burst, ...]:
    """The whole view of a side, or one byte of it."""
    whole = [machine.view_bursts(side, seen) for side in range(machine.sides) for seen in range(machine.sides)]
    end = machine.layout.maps[0]
    single = st.builds(
        lambda address, byte: (Burst(address, bytes([byte])),), st.integers(0, end - 1), st.integers(0, 3)
    )
    return draw(st.sampled_from(whole) | st.sampled_from(whole) | single)


@st.composite
def right_bursts(draw: Draw, machine: Machine, pictures: list[Picture]) -> tuple[Burst, ...]:
    """A whole picture for one side and then, mostly, its view: right where each byte holds one plane in its order."""
    shown, side = draw(st.sampled_from(pictures)), draw(st.integers(0, machine.sides - 1))
    bank, plane, page = machine.bank_of(side), machine.planes_of(side)[0], machine.page_of(side)
    pool = [tile for tile in machine.pool if tile // machine.tiles_per_bank == bank]
    tiles = dict(zip(shown.occupied, pool, strict=False))
    start, size = machine.layout.patterns + 8 * plane, machine.tile_bytes
    patterns = [Burst(start + tile * size, shown.rows[cell].tobytes()) for cell, tile in tiles.items()]
    named = [machine.map_entry(tiles.get(cell, machine.blank_tile)) for cell in range(machine.cells)]
    entries = [Burst(machine.map_address(page, cell), data) for cell, data in enumerate(named)]
    view = machine.view_bursts(side, (side + 1) % machine.sides)
    return (*patterns, *entries, *(view if draw(st.sampled_from([True, True, False])) else ()))


@st.composite
def blankings(draw: Draw, machine: Machine, pictures: list[Picture]) -> Blanking:
    """Up to four things written, one after the other."""
    one = pattern_bursts(machine).map(lambda burst: (burst,)) | entry_bursts(machine).map(lambda burst: (burst,))
    noise = st.lists(one | view_bursts(machine), max_size=4)
    right = right_bursts(machine, pictures).map(lambda bursts: [bursts])
    several = draw(right | noise | st.tuples(right, noise).map(lambda both: [*both[0], *both[1]]))
    return tuple(burst for bursts in several for burst in bursts)


@st.composite
def scripts(draw: Draw, *, most: int = 4) -> Script:
    """A few pictures, all ready at once, and a few blankings of whatever comes."""
    machine = draw(tiny_machines())
    cells = st.lists(st.sampled_from(CELLS).map(list), min_size=machine.cells, max_size=machine.cells)
    pictures = [Picture.from_rows(0, rows) for rows in draw(st.lists(cells, min_size=1, max_size=2))]
    written = draw(st.lists(blankings(machine, pictures), min_size=1, max_size=most))
    return Script(scene=Scene.of(machine, pictures), blankings=tuple(written))
