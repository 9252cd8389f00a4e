from dataclasses import replace

from planeproof.contract import Machine, Storage, TileMap, Tiles
from planeproof.machines import read_machine
from planeproof.ways import Ground, Name, Way, needed_above, ways_of


def way(machine: Machine, name: Name) -> Way:
    """One way of a machine."""
    return next(way for way in ways_of(machine) if way.name is name)


VITRINE = read_machine("vitrine-50")


def test_the_vitrine_by_hand() -> None:
    """176 patterns of 8 bytes, 680 cells in 17 rows, a view of 4 bytes: 14 a burst, 8 a byte, in 7,824 cycles."""
    found = way(VITRINE, Name.HIDDEN_PLANE)
    assert found.sending is not None
    assert (found.sending.patterns, found.sending.entries, found.sending.view) == (176 * 8, 680, 4)
    assert found.sending.bursts == 176 + 17 + 1
    assert found.sending.cycles == 14 * 194 + 8 * 2092 == 19_452
    assert found.here is not None
    assert (found.colours, found.tiles, found.here.refreshes) == (2, 176, 3)  # 19,452 / 7,824 = 2.49


def test_more_colours_cost_the_pool() -> None:
    """Of two planes a hidden one leaves 2 colours and every tile, a flip 4 colours and half of the tiles."""
    hidden, flip = way(VITRINE, Name.HIDDEN_PLANE), way(VITRINE, Name.PAGE_FLIP)
    assert (hidden.colours, hidden.tiles) == (2, 176)
    assert (flip.colours, flip.tiles) == (4, 88)


def test_what_a_machine_has_not_rules_a_way_out() -> None:
    """One plane, fixed colours, one page, one bank: each takes away its way, and the statement says which it was."""
    one_plane = replace(VITRINE, tiles=replace(VITRINE.tiles, planes=1), memory=None)
    one_page = replace(VITRINE, map=TileMap(pages=1), memory=None)
    cases = [
        (one_plane, Name.HIDDEN_PLANE, Ground.PROVED, "2 x 2 > 2^1"),
        (read_machine("scroll-case"), Name.HIDDEN_PLANE, Ground.DESCRIBED, "the colours are fixed"),
        (one_page, Name.PAGE_FLIP, Ground.DESCRIBED, "one map page"),
        (VITRINE, Name.BANK_FLIP, Ground.DESCRIBED, "one bank"),
    ]
    for machine, name, ground, words in cases:
        found = way(machine, name)
        assert not found.possible
        assert (found.tiles, found.sending) == (0, None)
        assert found.statements[0].ground is ground
        assert words in found.statements[0].says


def test_one_page_leaves_half_of_the_pool() -> None:
    """With one map page a picture may count on half of the tiles, and with one tile on none."""
    one_page = replace(VITRINE, map=TileMap(pages=1), memory=None)
    assert way(one_page, Name.HIDDEN_PLANE).tiles == 88
    lone = replace(one_page, tiles=Tiles(count=2, pool=(1,)))
    assert not way(lone, Name.HIDDEN_PLANE).possible
    assert way(lone, Name.HIDDEN_PLANE).statements[0].obligations == ("one-page-pairs", "one-page-cap-of-one")


def test_banks_with_one_map_page_share_the_numbers() -> None:
    """The pools of the two banks have 3 numbers in common: one map page that serves both leaves one for a picture."""
    tiles = Tiles(count=16, pool=(1, 2, 3, 4, 10, 11, 12, 13, 14), planes=1)
    machine = replace(VITRINE, tiles=tiles, map=TileMap(pages=1, banks=2), memory=None)
    assert way(machine, Name.BANK_FLIP).tiles == 1
    assert way(replace(machine, map=TileMap(pages=2, banks=2)), Name.BANK_FLIP).tiles == 4


def test_one_blanking_holds_as_much_as_fits_and_no_more() -> None:
    """By hand: 17 rows of 40 entries take 5,678 of 7,824 cycles, and each pattern 78 of what is left."""
    found = way(VITRINE, Name.ONE_BLANKING)
    assert found.tiles == (7824 - 5678) // 78 == 27
    assert found.sending is not None
    assert found.sending.cycles <= 7824 < found.sending.cycles + 78


def test_written_while_seen_is_the_way_of_one_blanking_or_none() -> None:
    """The bench's blanking holds a whole picture; the vitrine's does not, so that parts of two would be seen."""
    bench = read_machine("bench")
    assert way(bench, Name.WHILE_SEEN).tiles == way(bench, Name.ONE_BLANKING).tiles == 40
    assert not way(VITRINE, Name.WHILE_SEEN).possible
    assert "at least 3 refreshes" in way(VITRINE, Name.WHILE_SEEN).statements[0].says


def test_in_place_breaks_a_rule_unless_there_is_one_side() -> None:
    """The bench has two sides, so writing over the seen one breaks hidden-writes; the name-plate has only one."""
    bench, plate = (way(read_machine(name), Name.ONE_BLANKING).statements[-1] for name in ("bench", "name-plate"))
    assert bench.obligations == ("pattern-rule-is-enough-2-planes", "map-rule-is-enough-2-planes")
    assert (plate.ground, plate.obligations) == (Ground.DESCRIBED, ())


def test_where_the_method_is_needed() -> None:
    """Above what a flip leaves; from nothing on where there is no flip; nowhere if it can't be had or shows no more."""
    assert needed_above(ways_of(VITRINE)) == 88
    assert needed_above(ways_of(read_machine("case-label"))) == 0
    assert needed_above(ways_of(read_machine("two-wings"))) is None


def test_what_lies_between_is_written_where_that_is_cheaper() -> None:
    """Interleaved, two planes: a byte between costs 8, a set-up 14, so 15 bytes in one burst instead of 8 bursts.

    The byte between two tiles that lie side by side is one as well, so all 40 of them are one burst of 639 bytes. With
    a set-up of 7 it is the other way round: a burst a byte, and one each for two colours and for the page.
    """
    bench = read_machine("bench")
    woven = replace(bench, tiles=replace(bench.tiles, storage=Storage.INTERLEAVED))
    sent = way(woven, Name.HIDDEN_PLANE).sending
    assert sent is not None
    assert (sent.patterns, sent.bursts) == (320, 3)
    assert sent.cycles == (14 + 8 * 639) + (14 + 8 * 48) + (14 + 8 * 4)
    quick = replace(woven, time=replace(woven.time, setup=7))
    sent = way(quick, Name.HIDDEN_PLANE).sending
    assert sent is not None
    assert (sent.patterns, sent.bursts) == (320, 320 + 1 + 2)
