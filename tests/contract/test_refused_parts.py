"""Every part refuses what can't be in itself, names field, value and what is allowed, and accepts the boundaries."""

from collections.abc import Callable
from fractions import Fraction

import pytest

from planeproof.contract import (
    ByteDirection,
    ByteOrder,
    Colours,
    Demands,
    MachineError,
    Memory,
    Storage,
    TileMap,
    Tiles,
    Timing,
    Window,
)

Built = Window | Tiles | TileMap | Colours | Memory | Timing | Demands
TWO = ((0, 0, 0), (9, 9, 9))
LEAST: dict[type[Built], dict[str, object]] = {
    Window: {"columns": 1, "rows": 1},
    Tiles: {"count": 300, "pool": (1,)},
    TileMap: {},
    Colours: {},
    Memory: {"patterns": 0, "maps": (0,)},
    Timing: {},
    Demands: {},
}


def build(part: type[Built], **fields: object) -> Built:
    """The part with these fields, and else the least it needs."""
    make: Callable[..., Built] = part
    return make(**{**LEAST[part], **fields})


def from_to(low: int, high: int) -> str:
    """What is said to be allowed."""
    return f"whole number from {low} to {high}"


WHOLE: list[tuple[type[Built], str, str, int, int]] = [
    (Window, "columns", "window.columns", 1, 256),
    (Window, "rows", "window.rows", 1, 256),
    (Window, "origin_column", "window.origin_column", 0, 1024),
    (Window, "origin_row", "window.origin_row", 0, 1024),
    (Window, "map_columns", "window.map_columns", 1, 2048),
    (Window, "map_rows", "window.map_rows", 1, 2048),
    (Window, "first_line", "window.first_line", 0, 4096),
    (Tiles, "count", "tiles.count", 2, 65536),
    (Tiles, "planes", "tiles.planes", 1, 8),
    (Tiles, "depth", "tiles.depth", 1, 2),
    (Tiles, "blank", "tiles.blank", 0, 299),
    (TileMap, "pages", "map.pages", 1, 2),
    (TileMap, "entry_bytes", "map.entry_bytes", 1, 2),
    (TileMap, "banks", "map.banks", 1, 16),
    (Colours, "background", "colours.background", 0, 255),
    (Colours, "first_entry", "colours.first_entry", 0, 255),
    (Colours, "entries", "colours.entries", 1, 4096),
    (Memory, "patterns", "memory.patterns", 0, 1 << 20),
    (Timing, "lines", "time.lines", 2, 4096),
    (Timing, "shown", "time.shown", 1, 311),
    (Demands, "must_show", "demands.must_show", 0, 65536),
    (Demands, "patience", "demands.patience", 1, 1_000_000),
]
REASONS = {
    "map_columns": ", as window.origin_column + window.columns must fit",
    "map_rows": ", as window.origin_row + window.rows must fit",
}
"""Why the lower bound is what it is, where another field has a say in it."""
FITTING: dict[tuple[str, int], dict[str, object]] = {
    ("count", 2): {"pool": (1,)},
    ("lines", 2): {"shown": 1},
    ("background", 255): {"inks": (0,)},
}


@pytest.mark.parametrize(("part", "name", "field", "low", "high"), WHOLE, ids=[row[2] for row in WHOLE])
def test_a_whole_number_is_accepted_up_to_its_bounds_and_refused_beyond(
    part: type[Built], name: str, field: str, low: int, high: int
) -> None:
    """The message names the field, the value and the bounds."""
    for value in (low, high):
        more = FITTING.get((name, value), {})
        assert getattr(build(part, **{name: value}, **more), name) == value
    for wrong in (low - 1, high + 1):
        with pytest.raises(MachineError) as caught:
            build(part, **{name: wrong})
        error = caught.value
        allowed = f"must be a {from_to(low, high)}{REASONS.get(name, '')}"
        assert (error.field, error.value, error.allowed) == (field, wrong, allowed)
        assert str(error) == f"{field} is {wrong!r}: {allowed}"


@pytest.mark.parametrize(("part", "name", "field", "low", "high"), WHOLE, ids=[row[2] for row in WHOLE])
@pytest.mark.parametrize("wrong", [True, 1.0, "1", Fraction(1)])
def test_what_only_looks_like_a_whole_number_is_refused(
    part: type[Built], name: str, field: str, low: int, high: int, wrong: object
) -> None:
    """A bool, a float, text, a fraction."""
    assert low < high
    with pytest.raises(MachineError, match=rf"^{field} is ") as caught:
        build(part, **{name: wrong})
    assert caught.value.value == wrong


CYCLES = ["cycles_per_line", "reserve", "setup", "per_byte", "view_setup", "view_per_byte"]
MAY_BE_NOTHING = {"reserve", "setup", "view_setup"}


@pytest.mark.parametrize("name", CYCLES)
def test_cycles_are_exact_and_not_negative(name: str) -> None:
    """Whole or a fraction; what is divided by or takes a byte through must be above 0."""
    for good in (1, Fraction(1, 7), *([0] if name in MAY_BE_NOTHING else [])):
        assert getattr(build(Timing, **{name: good}), name) == good
    for wrong in (-1, Fraction(-1, 7), 1.5, True, "8", *([] if name in MAY_BE_NOTHING else [0])):
        with pytest.raises(MachineError) as caught:
            build(Timing, **{name: wrong})
        assert (caught.value.field, caught.value.value) == (f"time.{name}", wrong)
        assert ("0 or more" if name in MAY_BE_NOTHING else "above 0") in caught.value.allowed


OTHERS: list[tuple[type[Built], dict[str, object], str, str]] = [
    (Window, {"columns": 3, "map_columns": 2}, "window.map_columns", from_to(3, 2048)),
    (Window, {"origin_column": 2, "map_columns": 2}, "window.map_columns", from_to(3, 2048)),
    (Window, {"rows": 3, "map_rows": 2}, "window.map_rows", from_to(3, 2048)),
    (Window, {"origin_row": 2, "map_rows": 2}, "window.map_rows", from_to(3, 2048)),
    (Tiles, {"pool": ()}, "tiles.pool", "at least one tile"),
    (Tiles, {"pool": [1]}, "tiles.pool", "tuple of tile numbers"),
    (Tiles, {"pool": (1, 300)}, "tiles.pool", from_to(0, 299)),
    (Tiles, {"pool": (1, -1)}, "tiles.pool", from_to(0, 299)),
    (Tiles, {"pool": (1, True)}, "tiles.pool", from_to(0, 299)),
    (Tiles, {"pool": (1, 2, 1)}, "tiles.pool", "must not name a tile twice"),
    (Tiles, {"storage": "planar"}, "tiles.storage", "Storage.PLANAR"),
    (Tiles, {"byte": "row"}, "tiles.byte", "ByteDirection.COLUMN"),
    (Tiles, {"planes": 3, "storage": Storage.PACKED}, "tiles.planes", "1, 2 or 4 with packed storage"),
    (Tiles, {"planes": 8, "storage": Storage.PACKED}, "tiles.planes", "1, 2 or 4 with packed storage"),
    (Tiles, {"planes": 1, "depth": 2}, "tiles.depth", from_to(1, 1)),
    (TileMap, {"byte_order": "low-first"}, "map.byte_order", "ByteOrder.LOW_FIRST"),
    (Colours, {"meaning": [(0, 0, 0), (1, 1, 1)]}, "colours.meaning", "tuple of colours"),
    (Colours, {"meaning": ((0, 0, 0),)}, "colours.meaning", "2, 4, 8 ... or 256"),
    (Colours, {"meaning": (*TWO, (1, 1, 1))}, "colours.meaning", "2, 4, 8 ... or 256"),
    (Colours, {"meaning": TWO * 256}, "colours.meaning", "2, 4, 8 ... or 256"),
    (Colours, {"meaning": ((0, 0, 0), (0, 0, 256))}, "colours.meaning", "three numbers from 0 to 255"),
    (Colours, {"meaning": ((0, 0, 0), (0, 0, -1))}, "colours.meaning", "three numbers from 0 to 255"),
    (Colours, {"meaning": ((0, 0, 0), (0, 0))}, "colours.meaning", "three numbers from 0 to 255"),
    (Colours, {"meaning": ((0, 0, 0), [0, 0, 1])}, "colours.meaning", "three numbers from 0 to 255"),
    (Colours, {"meaning": ((0, 0, 0), (0, 0, True))}, "colours.meaning", "three numbers from 0 to 255"),
    (Colours, {"inks": [1]}, "colours.inks", "tuple of palette bytes"),
    (Colours, {"inks": (256,)}, "colours.inks", from_to(0, 255)),
    (Colours, {"inks": (-1,)}, "colours.inks", from_to(0, 255)),
    (Colours, {"inks": (0,)}, "colours.inks", "pairwise different"),
    (Colours, {"inks": (2,)}, "colours.inks", "pairwise different"),  # 2 of two colours is 0
    (Colours, {"inks": (1, 3), "meaning": TWO * 2}, "colours.inks", "pairwise different"),
    (Memory, {"patterns": None}, "memory.patterns", "whole number"),
    (Memory, {"maps": ("0",)}, "memory.maps", "whole number"),
    (Memory, {"maps": [0]}, "memory.maps", "whole number"),
    (Memory, {"maps": 0}, "memory.maps", "tuple"),
    (Memory, {"maps": (None,)}, "memory.maps", "whole number"),
    (Memory, {"palette": 1.0}, "memory.palette", "whole number"),
    (Memory, {"palette": (1, 2)}, "memory.palette", "whole number"),
    (Memory, {"page_register": True}, "memory.page_register", "whole number"),
    (Memory, {"page_register": (1,)}, "memory.page_register", "whole number"),
    (Memory, {"bank_register": "5"}, "memory.bank_register", "whole number"),
    (Memory, {"bank_register": (5,)}, "memory.bank_register", "whole number"),
    (Memory, {"steps": (1, 2.0)}, "memory.steps", "whole number"),
]


@pytest.mark.parametrize(("part", "fields", "field", "allowed"), OTHERS)
def test_what_can_not_be_is_refused(part: type[Built], fields: dict[str, object], field: str, allowed: str) -> None:
    """Field and allowed values are named, and the value is in the message."""
    with pytest.raises(MachineError) as caught:
        build(part, **fields)
    assert caught.value.field == field
    assert allowed in caught.value.allowed
    assert repr(caught.value.value) in str(caught.value)


GOOD: list[tuple[type[Built], dict[str, object]]] = [
    (Window, {"columns": 3, "map_columns": 3}),
    (Window, {"columns": 256, "rows": 256, "origin_column": 1024, "origin_row": 1024}),
    (Tiles, {"pool": (0, 299), "blank": 5}),
    (Tiles, {"planes": 4, "storage": Storage.PACKED, "byte": ByteDirection.COLUMN}),
    (TileMap, {"byte_order": ByteOrder.HIGH_FIRST, "banks": 16}),
    (Colours, {"meaning": tuple((c, 0, 0) for c in range(256)), "background": 255, "inks": (0, 254, 7)}),
    (Colours, {"inks": (3,)}),  # 3 of two colours is 1
    (Memory, {"maps": (), "palette": 0, "page_register": 5, "bank_register": 6, "steps": (1, 40)}),
    (Timing, {"lines": 2, "shown": 1}),
    (Demands, {}),
]


@pytest.mark.parametrize(("part", "fields"), GOOD)
def test_what_may_be_is_kept_as_it_was_given(part: type[Built], fields: dict[str, object]) -> None:
    """At the edge, but right."""
    built = build(part, **fields)
    assert {name: getattr(built, name) for name in fields} == fields


def test_the_size_of_the_map_is_just_the_window_unless_given() -> None:
    """Up to its right and bottom edges."""
    plain = Window(columns=3, rows=2, origin_column=4, origin_row=5)
    given = Window(columns=3, rows=2, map_columns=32, map_rows=30)
    assert (plain.pitch, plain.map_height, given.pitch, given.map_height) == (7, 7, 32, 30)


def test_a_palette_byte_counts_modulo_the_colours() -> None:
    """Byte 5 of four colours is byte 1."""
    colours = Colours(meaning=tuple((c, c, c) for c in range(4)))
    assert [colours.look(byte) for byte in (0, 3, 5, 254)] == [(0, 0, 0), (3, 3, 3), (1, 1, 1), (2, 2, 2)]
