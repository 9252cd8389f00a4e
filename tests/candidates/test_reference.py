"""The reference schedulers keep every rule on the machines they are meant for, and do what they are named for."""

from collections.abc import Iterator
from dataclasses import replace

import pytest

from planeproof.candidates.reference import (
    Columns,
    Delta,
    Fresh,
    InPlace,
    LazyClear,
    Library,
    Pairs,
    Queued,
    Reuse,
    Rows,
    SplitPool,
)
from planeproof.contract import (
    RULES,
    Answer,
    Burst,
    ByteDirection,
    Machine,
    RegionKind,
    Rule,
    Scene,
    Scheduler,
    Storage,
    TileMap,
)
from planeproof.contract.rules import BLANKING_ONLY, EXACT_REVEAL, HIDDEN_WRITES
from planeproof.judge import Play, not_applicable, play
from tests.candidates.seeded import seeded_scene, tight
from tests.candidates.small import scene, small

SEEDS = range(16)

ONE_BANK = {
    shape: small(shape, 3, 2, tiles=7, pool=(2, 3, 4, 5), around=1)
    for shape in ("vitrine-50", "vitrine-60", "pigment-chart", "mosaic-floor", "twin-niche", "scroll-case", "bench")
}
FRIEZE = small("long-frieze", 3, 2, tiles=260, pool=(254, 255, 256, 257), around=1)
WINGS = small("two-wings", 3, 2, tiles=12, pool=(2, 3, 4, 8, 9, 10), around=1)
DRAWER = small("drawer-front", 3, 2, tiles=7, pool=(2, 3, 4, 5))
COLUMNS = replace(DRAWER, tiles=replace(DRAWER.tiles, byte=ByteDirection.COLUMN))
FRAMED = replace(small("drawer-front", 3, 2, tiles=7, pool=(2, 3, 4, 5), around=1), name="drawer-front, framed")
LABEL = small("case-label", 3, 2, tiles=7, pool=(2, 3, 4, 5), around=1)
LONG_LABEL = small("case-label", 3, 2, tiles=260, pool=(254, 255, 256, 257), tile_map=TileMap(pages=1, entry_bytes=2))
PLATE = small("name-plate", 3, 2, tiles=7, pool=(2, 3, 4, 5), around=1)


def one_page(machine: Machine) -> Machine:
    """The same machine with one map page."""
    return replace(machine, map=replace(machine.map, pages=1))


PLANES_OF_THEIR_OWN = [
    *(ONE_BANK[shape] for shape in ("vitrine-50", "vitrine-60", "pigment-chart", "mosaic-floor", "bench")),
    FRIEZE,
    WINGS,
    DRAWER,
    COLUMNS,
    FRAMED,
]
NO_PLANES_OF_THEIR_OWN = [ONE_BANK["twin-niche"], ONE_BANK["scroll-case"], WINGS]
ONE_PAGE = [
    LABEL,
    replace(LABEL, tiles=replace(LABEL.tiles, storage=Storage.PACKED)),
    one_page(ONE_BANK["pigment-chart"]),
    one_page(ONE_BANK["mosaic-floor"]),
    LONG_LABEL,
]

MEANT: list[tuple[type[Scheduler], list[Machine]]] = [
    (Fresh, PLANES_OF_THEIR_OWN),
    (Delta, PLANES_OF_THEIR_OWN),
    (Reuse, PLANES_OF_THEIR_OWN),
    (Queued, PLANES_OF_THEIR_OWN),
    (LazyClear, PLANES_OF_THEIR_OWN),
    (Rows, PLANES_OF_THEIR_OWN),
    (Library, [*PLANES_OF_THEIR_OWN, *NO_PLANES_OF_THEIR_OWN]),
    (SplitPool, NO_PLANES_OF_THEIR_OWN),
    (Pairs, ONE_PAGE),
    (Columns, ONE_PAGE),
    (InPlace, [PLATE]),
]


def pairings() -> Iterator[object]:
    """Every strategy on every machine it is meant for, with its own blanking and with the shortest there can be."""
    for make, machines in MEANT:
        for machine in machines:
            name = f"{make.__name__}-{machine.name}-{machine.tiles.storage.value}-{machine.tiles.byte.value}"
            yield pytest.param(make, machine, id=f"{name}-{machine.map.entry_bytes}")


def bursts_of(found: Play, picture: int) -> list[Burst]:
    """All that was sent from the refresh in which a picture was taken until it was seen."""
    taken = next(r.number for r in found.refreshes if r.offered == picture and r.answer is Answer.TAKEN)
    shown = next(r.number for r in found.refreshes if r.current == picture)
    return [burst for refresh in found.refreshes[taken : shown + 1] for burst in refresh.bursts]


def kinds(machine: Machine, bursts: list[Burst]) -> set[RegionKind]:
    """The kinds of region that bursts begin in."""
    return {region.kind for burst in bursts for region in machine.regions if burst.address in region}


@pytest.mark.parametrize(("make", "machine"), list(pairings()))
def test_no_rule_is_broken(make: type[Scheduler], machine: Machine) -> None:
    """On machines it is meant for a strategy breaks no rule, and every rule that applies was exercised."""
    exercised: set[Rule] = set()
    machines = [machine] if make is InPlace else [machine, tight(machine)]
    for size in machines:
        for seed in SEEDS:
            found = play(seeded_scene(size, seed), make)
            assert [(v.refresh, v.said) for v in found.violations] == [], (size.name, seed)
            exercised |= found.exercised
    needless = {BLANKING_ONLY, EXACT_REVEAL} if make is InPlace else set()  # it sends all or nothing, and no view
    assert set(RULES) - exercised - needless - not_applicable(seeded_scene(machine, 0)) == set()


def test_delta_only_reveals_what_the_hidden_side_holds() -> None:
    """For a picture that the hidden side holds already, Delta sends the view alone, at once."""
    machine = ONE_BANK["vitrine-50"]
    found = play(scene(machine, ["AB....", "..C...", "AB...."]), Delta)
    assert bursts_of(found, 2) == list(machine.view_bursts(1, 0))
    assert [r.current for r in found.refreshes[:3]] == [0, 1, 2]


def test_delta_reveals_an_empty_side_at_once() -> None:
    """The side that nothing was ever written to holds the empty picture: it is revealed and nothing sent."""
    machine = ONE_BANK["vitrine-60"]
    found = play(scene(machine, ["AB....", "......"]), Delta)
    assert bursts_of(found, 1) == list(machine.view_bursts(0, 1))


def test_reuse_moves_a_cell_without_its_pattern() -> None:
    """A cell that has moved since the picture before last costs map entries, and no pattern byte."""
    machine = ONE_BANK["vitrine-50"]
    scenario = scene(machine, ["AB....", "C.....", "..B..A"])
    moved = kinds(machine, bursts_of(play(scenario, Reuse), 2))
    assert moved == {RegionKind.MAP, RegionKind.PALETTE}
    assert RegionKind.PATTERNS in kinds(machine, bursts_of(play(scenario, Delta), 2))


def test_reuse_shares_a_tile_between_equal_cells() -> None:
    """What counts against the cap is different patterns, so equal cells may be more than there are tiles."""
    machine = ONE_BANK["vitrine-50"]
    scenario = scene(machine, ["AAAAAA", "ABABAB"])
    assert machine.cells > machine.cap
    assert play(scenario, Reuse).shown == 2
    assert play(scenario, Delta).refreshes[0].answer is Answer.TOO_BIG


def answers(found: Play) -> list[Answer]:
    """The answers that end an offer."""
    return [r.answer for r in found.refreshes if r.answer in (Answer.TAKEN, Answer.TOO_BIG)]


def test_pairs_at_its_capacity() -> None:
    """With one page, pictures of half the cap follow one another in other cells and other patterns; one cell more
    is declined, and what comes after that is still shown.
    """  # noqa: D205 - one claim
    found = play(scene(LABEL, ["AB....", "..CA..", "..BC..", "A..B..", "ABC...", "....CB"]), Pairs)
    assert LABEL.must_show == 2
    assert list(found.violations) == []
    assert answers(found) == [*[Answer.TAKEN] * 4, Answer.TOO_BIG, Answer.TAKEN]
    assert found.shown == 5


def test_pairs_writes_an_entry_of_two_bytes_whole() -> None:
    """Where the one page has entries of two bytes, both of which change, a short blanking does not end between them."""
    machine = small("case-label", tiles=259, pool=(257, 258), tile_map=TileMap(pages=1, entry_bytes=2))
    pattern, half_an_entry = machine.burst_cycles(8), machine.burst_cycles(1)
    found = play(scene(machine, ["A"], cut={0: int(pattern + half_an_entry)}), Pairs)
    assert [violation.said for violation in found.violations] == []


def test_split_pool_at_must_show() -> None:
    """With one plane, pictures of half the pool follow one another in other cells and other patterns."""
    machine = ONE_BANK["twin-niche"]
    found = play(scene(machine, ["AB....", "..CA..", "BC....", "ABC..."]), SplitPool)
    assert machine.must_show == 2
    assert list(found.violations) == []
    assert answers(found) == [*[Answer.TAKEN] * 3, Answer.TOO_BIG]


def test_in_place_breaks_nothing_that_is_seen() -> None:
    """Where there are two sides InPlace breaks hidden-writes, and no other rule: each picture is whole or not there."""
    broken: set[Rule] = set()
    for seed in SEEDS:
        found = play(seeded_scene(ONE_BANK["bench"], seed), InPlace)
        broken |= found.counts.keys()
    assert broken == {HIDDEN_WRITES}


def test_packed_bytes_keep_the_other_plane() -> None:
    """On packed storage a write to the hidden plane leaves the bits of the seen one in the same byte as they were."""
    first, seen_bits, hidden_bits = DRAWER.layout.patterns, 0xAA, 0x55  # picture 0 is in plane 1, the higher bit
    found = play(scene(DRAWER, ["AB....", "BC...."]), Fresh)
    held = dict[int, int]()
    for burst in bursts_of(found, 0):
        held |= zip(burst.addresses, burst.data, strict=True)
    written = [
        (held.get(address, 0), byte)
        for burst in bursts_of(found, 1)
        for address, byte in zip(burst.addresses, burst.data, strict=True)
        if address >= first
    ]
    assert all(old & seen_bits == new & seen_bits for old, new in written)
    assert any(old & seen_bits and old & hidden_bits != new & hidden_bits for old, new in written)


def test_queued_takes_pictures_ahead() -> None:
    """Queued takes a picture while another waits, and shows each of them, in order."""
    scenario: Scene = scene(ONE_BANK["vitrine-50"], ["A.....", ".B....", "..C..."], cut={0: 0, 1: 0})
    found = play(scenario, Queued)
    assert [r.answer for r in found.refreshes[:3]] == [Answer.TAKEN, Answer.TAKEN, Answer.BUSY]
    assert [r.current for r in found.refreshes[:5]] == [-1, -1, 0, 1, 2]
    assert list(found.violations) == []


def kinds_in(found: Play, refresh: int) -> list[str]:
    """What each burst of a refresh is to, in order."""
    bursts = found.refreshes[refresh].bursts
    return [kind.value for burst in bursts for kind in kinds(found.scene.machine, [burst])]


def test_queued_sends_ahead_in_what_a_blanking_has_left() -> None:
    """After a reveal the same blanking goes on with the next picture, whose reveal comes first in the next blanking."""
    found = play(scene(ONE_BANK["vitrine-50"], ["A.....", ".B....", "..C..."], cut={0: 0, 1: 0}), Queued)
    sent = ["tile map", "tile map", "patterns"]
    assert kinds_in(found, 2) == [*sent, "palette", *sent]
    assert kinds_in(found, 3) == ["palette", *sent]
    assert kinds_in(found, 4) == ["palette"]


def test_cells_are_cleared_after_the_reveal_or_with_the_next_picture() -> None:
    """What a blanking has left clears the side that is hidden now; with nothing left, the next picture does it."""
    machine, pictures = ONE_BANK["vitrine-50"], ["ABC...", "B.....", "......"]
    idle = play(scene(machine, pictures), LazyClear)
    assert kinds_in(idle, 1) == ["tile map", "patterns", "palette", "tile map"]
    assert kinds_in(idle, 2) == ["palette", "tile map"]
    needed = sum(machine.cost(burst) for burst in idle.refreshes[1].bursts[:3])
    busy = play(scene(machine, pictures, cut={1: int(needed)}), LazyClear)
    assert kinds_in(busy, 1) == ["tile map", "patterns", "palette"]
    assert kinds_in(busy, 2) == ["tile map", "palette", "tile map"]


def test_rows_are_sent_one_after_the_other_and_kept_whole() -> None:
    """Patterns of a row come before its entries, and both before the next row; a row that is held is not sent."""
    found = play(scene(ONE_BANK["vitrine-50"], ["AB.C..", "......", "AB.B.."]), Rows)
    assert kinds_in(found, 0) == ["patterns", "patterns", "tile map", "patterns", "tile map", "palette"]
    assert kinds_in(found, 1) == ["palette"]
    assert kinds_in(found, 2) == ["patterns", "tile map", "palette"]


def test_columns_go_down_where_that_is_cheaper() -> None:
    """A drawing that stands upright takes one burst of entries down its column, one that lies one along its row."""
    machine = small("case-label", 3, 3, tiles=9, pool=(1, 2, 3, 4, 5, 6), around=1)
    down, along = machine.window.pitch, 1
    for pictures, step in ((["A..A..A.."], down), (["AAA......"], along)):
        found = play(scene(machine, pictures), Columns)
        assert found.shown == 1
        entries = [b for b in bursts_of(found, 0) if kinds(machine, [b]) == {RegionKind.MAP}]
        assert [(len(burst.data), burst.step) for burst in entries] == [(3, step)]


def test_a_library_shows_what_it_has_by_map_entries_alone() -> None:
    """With one plane and two pages a pattern drawn for either page is there for both, wherever it moved."""
    machine = ONE_BANK["twin-niche"]
    found = play(scene(machine, ["AB....", "......", "....BA", "C.....", "A....."]), Library)
    assert "patterns" in kinds_in(found, 0)
    assert set(kinds_in(found, 2)) == {"tile map", "page register"}
    assert "patterns" in kinds_in(found, 3)
    assert set(kinds_in(found, 4)) == {"tile map", "page register"}
    assert found.shown == 5
    assert found.counts == {}


def test_a_library_gives_up_what_is_longest_out_of_use() -> None:
    """Two tiles: the third pattern takes the place of the one that is longer out of use, which must be drawn again."""
    found = play(scene(small("twin-niche", tiles=3, pool=(1, 2)), ["A", "B", "A", "C", "A", "B"]), Library)
    drawn = ["patterns" in kinds_in(found, refresh) for refresh in range(6)]
    assert drawn == [True, True, False, True, False, True]
    assert found.counts == {}
