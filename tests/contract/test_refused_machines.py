"""Machines that are refused for what their parts are together, and those that just pass."""

from dataclasses import replace

import pytest

from planeproof.contract import Colours, Demands, Machine, MachineError, Memory, TileMap, Tiles, Window
from planeproof.contract.regions import HIGHEST_ADDRESS
from tests.contract.machines_by_hand import MACHINE, with_part

INKS = ((0, 0, 0), (1, 0, 0), (2, 0, 0), (3, 0, 0))


def tiles(count: int = 5, pool: tuple[int, ...] = (1, 2, 3), **more: object) -> dict[str, object]:
    """A machine's tiles."""
    return {"tiles": Tiles(count=count, pool=pool, **more)}  # type: ignore[arg-type]


def memory(**bases: object) -> dict[str, object]:
    """The regions of the machine by hand: palette 4, register 1, two maps of 2, patterns 80."""
    plain: dict[str, object] = {"palette": 0, "page_register": 4, "maps": (5, 7), "patterns": 9}
    return {"memory": Memory(**{**plain, **bases})}  # type: ignore[arg-type]


def timed(**fields: object) -> dict[str, object]:
    """Another time."""
    return {"time": replace(MACHINE.time, **fields)}  # type: ignore[arg-type]


def colours(**fields: object) -> dict[str, object]:
    """Other colours."""
    return {"colours": Colours(**fields)}  # type: ignore[arg-type]


WIDE = TileMap(entry_bytes=2)
BANKS = TileMap(banks=2)
REFUSED: dict[str, tuple[dict[str, object], str, str]] = {
    "a name that is no text": ({"name": 5}, "name", "text"),
    "a word for what late bytes do": ({"outside": "wrecks"}, "outside", "Outside"),
    "tiles that don't split into banks": (tiles(5) | {"map": BANKS}, "map.banks", "split the 5 tiles evenly"),
    "one tile a bank": (tiles(2, (1,)) | {"map": BANKS}, "map.banks", "at least 2 a bank"),
    "more tiles than a byte names": (tiles(257), "tiles.count (a bank)", "at most 256"),
    "more tiles a bank than a byte names": (tiles(514, (1,)) | {"map": BANKS}, "tiles.count (a bank)", "at most 256"),
    "a blank tile in the second bank": (tiles(8, (1, 5), blank=4) | {"map": BANKS}, "tiles.blank", "bank of 4"),
    "a pool with the blank tile": (tiles(pool=(0, 1)), "tiles.pool", "blank tile"),
    "a pool with another bank's blank tile": (tiles(8, (1, 5, 4)) | {"map": BANKS}, "tiles.pool", "blank tile"),
    "a bank without a tile of the pool": (tiles(8, (1, 2)) | {"map": BANKS}, "tiles.pool", "every bank"),
    "too few inks": (tiles(depth=2), "colours.inks", "must be 3 for depth 2"),
    "too many inks": (colours(meaning=INKS, inks=(1, 2)), "colours.inks", "must be 1 for depth 1"),
    "fixed colours and a plane to hide": (colours(fixed=True), "tiles.planes", "must equal the depth of 1"),
    "a palette too small": (colours(entries=3), "colours.entries", "at least 4: 4 for the window, from entry 0"),
    "a palette too small from its place on": (colours(first_entry=2, entries=5), "colours.entries", "at least 6"),
    "one map base for two pages": (memory(maps=(5,)), "memory.maps", "must be 2, one a page"),
    "three map bases for two pages": (memory(maps=(5, 7, 100)), "memory.maps", "must be 2"),
    "no place for the palette": (memory(palette=None), "memory.palette", "must be given"),
    "no place for the page register": (memory(page_register=None), "memory.page_register", "must be given"),
    "a bank register without banks": (memory(bank_register=200), "memory.bank_register", "left out"),
    "no place for the bank register": (tiles(8, (1, 5)) | {"map": BANKS} | memory(), "memory.bank_register", "given"),
    "a step that is no map row": (memory(steps=(1, 3)), "memory.steps", "map row, which is 2"),
    "no step of 1": (memory(steps=(2,)), "memory.steps", "must hold 1"),
    "no step at all": (memory(steps=()), "memory.steps", "must hold 1"),
    "a map row of entries of two bytes": (
        memory(maps=(5, 9), patterns=13, steps=(1, 2)) | {"map": WIDE},
        "memory.steps",
        "which is 4",
    ),
    "a register within the palette": (memory(page_register=3), "memory (page register)", "must not lie below 4"),
    "maps over one another": (memory(maps=(5, 6)), "memory (tile map)", "below 7, where the tile map from 5 ends"),
    "patterns over a map": (memory(patterns=8), "memory (patterns)", "below 9"),
    "a region below 0": (memory(palette=-1), "memory (palette)", "between 0 and"),
    "a map out of reach": (memory(maps=(5, HIGHEST_ADDRESS)), "memory (tile map)", f"and {HIGHEST_ADDRESS}"),
    "patterns out of reach": (memory(patterns=HIGHEST_ADDRESS - 78), "memory (patterns)", "its 80 bytes"),
    "a window below the display": ({"window": Window(columns=2, rows=1, first_line=13)}, "time.shown", "at least 21"),
    "a window that is too high": ({"window": Window(columns=2, rows=3)}, "time.shown", "at least 24"),
    "a blanking too short for a burst": (timed(reserve=189), "time (cycles left of a blanking)", "at least 12"),
    "no blanking left at all": (timed(reserve=300), "time (cycles left of a blanking)", "at least 12 cycles"),
    "a blanking too short for a view": (
        timed(view_setup=197),
        "time (cycles left of a blanking)",
        "at least 201 cycles, the dearest change",
    ),
    "more to be shown than there are tiles": (
        {"demands": Demands(must_show=4)},
        "demands.must_show",
        "at most 3",
    ),
    "more to be shown than a bank has": (
        tiles(8, (1, 2, 5)) | {"map": BANKS, "demands": Demands(must_show=2)},
        "demands.must_show",
        "at most 1",
    ),
}


@pytest.mark.parametrize("case", REFUSED)
def test_a_machine_is_refused(case: str) -> None:
    """Field, value and what is allowed are named."""
    changes, field, allowed = REFUSED[case]
    with pytest.raises(MachineError) as caught:
        replace(MACHINE, **changes)  # type: ignore[arg-type]
    assert caught.value.field == field
    assert allowed in caught.value.allowed
    assert str(caught.value) == f"{field} is {caught.value.value!r}: {caught.value.allowed}"


ACCEPTED: dict[str, dict[str, object]] = {
    "tiles that fill what a byte names": tiles(256, (255,)),
    "tiles that fill what a byte names in each bank": tiles(512, (255, 511)) | {"map": BANKS},
    "tiles that fill what two bytes name": tiles(65536, (65535,), planes=1) | {"map": WIDE},
    "two tiles, one of them blank": tiles(2, (1,)),
    "a palette of just the window's entries": colours(entries=4),
    "a palette of just the window's entries from its place on": colours(first_entry=2, entries=6),
    "regions end to end in any order": memory(patterns=0, maps=(80, 82), palette=84, page_register=88),
    "a step of a map row": memory(steps=(1, 2)),
    "steps in either order": memory(steps=(2, 1)),
    "patterns up to the last address": memory(patterns=HIGHEST_ADDRESS - 79),
    "a window up to the last line": {"window": Window(columns=2, rows=1, first_line=12)},
    "a blanking of just one burst": timed(reserve=188),
    "a blanking of just the dearest view": timed(view_setup=196),
    "all that a view can show demanded": {"demands": Demands(must_show=3)},
    "all that a bank can show demanded": tiles(8, (1, 2, 5)) | {"map": BANKS, "demands": Demands(must_show=1)},
    "nothing demanded": {"demands": Demands(must_show=0)},
}


@pytest.mark.parametrize("case", ACCEPTED)
def test_a_machine_at_the_edge_is_accepted(case: str) -> None:
    """One step from each refusal."""
    changes = ACCEPTED[case]
    machine = replace(MACHINE, **changes)  # type: ignore[arg-type]
    assert {name: getattr(machine, name) for name in changes} == changes


def test_the_dearest_view_counts_not_the_usual_one() -> None:
    """With four planes each of a picture, side 0 to 3 differs in more entries than side 0 to 1 in one run."""
    four = with_part("tiles", planes=4)
    dearest = max(sum(map(four.cost, four.view_bursts(a, b))) for a in range(4) for b in range(4))
    assert replace(four, time=replace(four.time, reserve=200 - dearest)).blank_cycles == dearest
    with pytest.raises(MachineError, match="dearest change"):
        replace(four, time=replace(four.time, reserve=201 - dearest))


def test_a_machine_must_have_a_palette_entry_for_each_pixel_value() -> None:
    """Eight planes take 256 entries; without a palette there are none, and none are asked for."""
    eight = Machine(name="eight", window=MACHINE.window, tiles=Tiles(count=4, pool=(1,), planes=8))
    fixed = replace(MACHINE, tiles=Tiles(count=4, pool=(1,), planes=1), colours=Colours(fixed=True))
    assert (len(eight.palette_showing(0)), fixed.layout.palette) == (256, None)
