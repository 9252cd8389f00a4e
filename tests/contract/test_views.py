"""Sides: what belongs to each, the palette that hides all others, and the cheapest change from one view to another."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise, product

import pytest
from hypothesis import given

from planeproof.contract import Burst, Colours, Machine, Memory, TileMap, Tiles, Window
from planeproof.display import PictureMemory
from tests.contract.machines_by_hand import MACHINE, with_part
from tests.strategies.machines import machines

DEPTHS = [(planes, depth) for planes in range(1, 5) for depth in range(1, planes + 1)]


def deep(planes: int, depth: int, pages: int = 2) -> Machine:
    """A machine of so many planes, of which a picture takes ``depth``."""
    shades = 1 << depth
    return replace(
        MACHINE,
        tiles=Tiles(count=5, pool=(1, 2, 3), planes=planes, depth=depth),
        map=TileMap(pages=pages),
        colours=Colours(meaning=tuple((c, 0, 0) for c in range(16)), background=3, inks=_inks(shades)),
    )


def _inks(shades: int) -> tuple[int, ...]:
    return tuple(byte for byte in range(16) if byte != 3)[: shades - 1]


@pytest.mark.parametrize(("planes", "depth"), DEPTHS)
def test_the_palette_of_a_side_shows_its_planes_and_hides_all_others(planes: int, depth: int) -> None:
    """Exhausted: of every pixel value, only the side's own bits decide its colour, and they do as in a picture."""
    machine = deep(planes, depth)
    shades = (machine.colours.background, *machine.colours.inks)
    for side, value in product(range(machine.sides), range(1 << planes)):
        own = sum((value >> plane & 1) << bit for bit, plane in enumerate(machine.planes_of(side)))
        assert machine.palette_showing(side)[value] == shades[own]


@pytest.mark.parametrize(
    ("planes", "depth", "pages", "banks", "sides"),
    [
        (2, 1, 2, 1, 2),
        (1, 1, 2, 1, 2),
        (2, 1, 1, 1, 2),
        (1, 1, 1, 1, 1),
        (4, 1, 2, 1, 4),
        (3, 2, 2, 1, 2),
        (3, 2, 1, 1, 1),  # a plane is left over, and belongs to no side
        (4, 2, 1, 1, 2),
        (1, 1, 1, 4, 4),
        (2, 1, 2, 4, 4),
    ],
)
def test_there_are_as_many_sides_as_plane_sets_pages_or_banks(
    planes: int, depth: int, pages: int, banks: int, sides: int
) -> None:
    """Whichever is most; each goes round through what there is fewer of."""
    machine = replace(
        deep(planes, depth),
        tiles=Tiles(count=8 * banks, pool=tuple(range(1, 8 * banks, 8)), planes=planes, depth=depth),
        map=TileMap(pages=pages, banks=banks),
    )
    assert machine.sides == sides
    assert [machine.page_of(side) for side in range(sides)] == [side % pages for side in range(sides)]
    assert [machine.bank_of(side) for side in range(sides)] == [side % banks for side in range(sides)]
    first = [side % (planes // depth) * depth for side in range(sides)]
    assert [list(machine.planes_of(side)) for side in range(sides)] == [list(range(f, f + depth)) for f in first]


# --- the cheapest change of view ------------------------------------------------------------------------------


def view_bytes(machine: Machine, side: int) -> dict[int, int]:
    """What palette and registers hold while a side is seen."""
    held: dict[int, int] = {}
    if not machine.colours.fixed:
        held = {machine.palette_address + value: byte for value, byte in enumerate(machine.palette_showing(side))}
    held |= {machine.page_address: machine.page_of(side)} if machine.map.pages > 1 else {}
    return held | ({machine.bank_address: machine.bank_of(side)} if machine.map.banks > 1 else {})


def ways(machine: Machine, before: dict[int, int], after: dict[int, int]) -> Iterator[list[Burst]]:
    """Every way to send view bytes in bursts of step 1: each subset that holds all that differ, cut everywhere."""
    addresses = sorted(after)
    must = {address for address in addresses if before[address] != after[address]}
    for chosen in product((False, True), repeat=len(addresses)):
        sent = [address for address, taken in zip(addresses, chosen, strict=True) if taken]
        if must <= set(sent):
            yield from _cut(after, sent)


def _cut(after: dict[int, int], sent: Sequence[int]) -> Iterator[list[Burst]]:
    gaps = [upper - lower == 1 for lower, upper in pairwise(sent)]
    for joins in product((False, True), repeat=len(gaps)):
        if any(join and not may for join, may in zip(joins, gaps, strict=True)):
            continue
        groups = [[address] for address in sent[:1]]
        for address, join in zip(sent[1:], joins, strict=True):
            if join:
                groups[-1].append(address)
            else:
                groups.append([address])
        yield [Burst(group[0], bytes(after[a] for a in group)) for group in groups]


def cost(machine: Machine, bursts: Sequence[Burst]) -> int | Fraction:
    """Cycles of all of them."""
    return sum(machine.cost(burst) for burst in bursts)


SCATTERED = replace(
    MACHINE,
    map=TileMap(banks=2),
    tiles=Tiles(count=8, pool=(1, 5)),
    memory=Memory(palette=0, page_register=6, bank_register=4, maps=(7, 9), patterns=11),
)
SMALL = {
    "set-up cheap": with_part("time", setup=0, per_byte=5),
    "set-up as dear as one byte": with_part("time", setup=3, per_byte=3),
    "set-up as dear as two bytes": with_part("time", setup=6, per_byte=3),
    "set-up dear": with_part("time", setup=40, per_byte=1),
    "a view of its own cost": with_part("time", setup=40, per_byte=1, view_setup=1, view_per_byte=2),
    "registers apart": SCATTERED,
    "one page": replace(MACHINE, map=TileMap(pages=1)),
    "fixed colours": replace(MACHINE, tiles=replace(MACHINE.tiles, planes=1), colours=Colours(fixed=True)),
    "exact fractions": with_part("time", setup=Fraction(7, 3), per_byte=Fraction(7, 6)),
}


@pytest.mark.parametrize("name", SMALL)
def test_no_way_to_change_the_view_is_cheaper(name: str) -> None:
    """Against every way that there is, between any two sides."""
    machine = SMALL[name]
    for side, seen in product(range(machine.sides), repeat=2):
        before, after = view_bytes(machine, seen), view_bytes(machine, side)
        least = min(cost(machine, way) for way in ways(machine, before, after))
        assert cost(machine, machine.view_bursts(side, seen)) == least


def test_a_longer_step_may_be_cheaper_and_is_left_to_the_scheduler() -> None:
    """From plane 0 to plane 2 of three, palette entries 1, 3, 4 and 6 change: two bursts, where a map row is 2."""
    machine = replace(
        MACHINE,
        tiles=replace(MACHINE.tiles, planes=3),
        map=TileMap(pages=1),
        memory=Memory(palette=0, maps=(8,), patterns=10, steps=(1, 2)),
        time=replace(MACHINE.time, setup=3, per_byte=2),
    )
    stepping = [Burst(1, b"\0\0", 2), Burst(4, b"\1\1", 2)]
    assert view_bytes(machine, 2) == view_bytes(machine, 0) | {a: d for b in stepping for a, d in _written(b)}
    assert (cost(machine, stepping), cost(machine, machine.view_bursts(2, 0))) == (14, 15)


def _written(burst: Burst) -> Iterator[tuple[int, int]]:
    yield from zip(burst.addresses, burst.data, strict=True)


@given(machines())
def test_the_bursts_turn_one_view_into_another_and_nothing_else(machine: Machine) -> None:
    """From before the set-up to each side, and from each side to the next."""
    memory = PictureMemory(machine)
    seen: int | None = None
    for side in [*range(machine.sides), 0]:
        before = memory.contents.copy()
        for burst in machine.view_bursts(side, seen):
            before[burst.address : burst.address + len(burst.data)] = list(burst.data)
            assert all(machine.is_view(address) for address in burst.addresses)
        memory.contents[:] = before
        twin = memory.copy()
        held = {address: int(twin.contents[address]) for address in view_bytes(machine, side)}
        assert held == view_bytes(machine, side)
        assert (twin.view.page, twin.view.bank) == (machine.page_of(side), machine.bank_of(side))
        seen = side


def test_to_the_view_that_is_seen_nothing_leads() -> None:
    """No burst at all."""
    assert [MACHINE.view_bursts(side, side) for side in (0, 1)] == [(), ()]


def test_bytes_that_are_as_wanted_are_passed_over_only_if_that_is_cheaper() -> None:
    """Between two bytes that differ lie one, two or three that do not; a set-up is worth two bytes."""
    machine = SMALL["set-up as dear as two bytes"]
    for gap, bursts in [(1, 1), (2, 1), (3, 2)]:
        held = dict.fromkeys(range(20, 20 + gap + 2), 0)
        wanted = held | {20: 1, 21 + gap: 1}
        assert len(machine.bursts(wanted, held)) == bursts


def test_bytes_of_which_nothing_is_known_are_never_passed_over() -> None:
    """Writing them would need to know what stands there."""
    dear = SMALL["set-up dear"]
    assert dear.bursts({20: 1, 22: 1}, {}) == (Burst(20, b"\1"), Burst(22, b"\1"))
    assert dear.bursts({20: 1, 22: 1}, {21: 9}) == (Burst(20, b"\1\x09\1"),)
    assert dear.bursts({}, {20: 1}) == ()


def test_a_burst_does_not_run_from_the_view_into_the_map() -> None:
    """They may cost differently, and are judged differently."""
    dear = SMALL["set-up dear"]
    assert [burst.address for burst in dear.bursts({4: 1, 5: 1}, {})] == [4, 5]


def test_the_window_owns_its_part_of_the_palette_only() -> None:
    """With the first two entries the rest of the screen's, the view begins with the third."""
    machine = replace(MACHINE, window=Window(columns=1, rows=1), colours=Colours(first_entry=2, entries=9))
    assert {a for burst in machine.view_bursts(1) for a in burst.addresses} <= {2, 3, 4, 5, machine.page_address}
