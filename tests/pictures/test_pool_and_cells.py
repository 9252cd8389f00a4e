import numpy as np

from planeproof.candidates.reference import Fresh
from planeproof.contract import Burst, Machine, TileMap, Tiles, Window
from planeproof.pictures import Style, figure_of, kind_named
from planeproof.pictures.cells import Cell, Change, changes, contents_of_cells
from planeproof.pictures.contents import bits, role
from planeproof.pictures.pool import GAP, MARGIN, TRACK, Use, strip, uses
from tests.pictures.runs import EMPTY, FULL, NICHE, SLOPE, SQUARE, course, scripted


def pattern(tile: int, plane: int, rows: list[int]) -> Burst:
    """The bytes of one plane of a tile."""
    return Burst(NICHE.pattern_address(tile, plane), bytes(rows))


def entry(page: int, cell: int, tile: int) -> Burst:
    """A map entry."""
    return Burst(NICHE.map_address(page, cell), NICHE.map_entry(tile))


FIRST = [pattern(1, 1, SQUARE), entry(1, 0, 1), *NICHE.view_bursts(1, 0)]
SECOND = [pattern(1, 0, SLOPE), pattern(2, 0, FULL), entry(0, 0, 1)]
REVEALED = [entry(0, 1, 2), *NICHE.view_bursts(0, 1)]
RUN = course(NICHE, scripted(FIRST, SECOND, REVEALED, start=NICHE.view_bursts(0)), [SQUARE, EMPTY], [SLOPE, FULL])


def test_the_pool_by_hand() -> None:
    """Tile 1 is of both pictures, tile 2 of the next one before it is even named, tile 3 is free."""
    assert [uses(moment) for moment in RUN.moments[:3]] == [
        [Use.BOTH, Use.NEXT, Use.FREE],
        [Use.BOTH, Use.NEXT, Use.FREE],
        [Use.BOTH, Use.SEEN, Use.FREE],
    ]


def test_a_tile_with_an_earlier_pictures_lines_is_to_be_used_again() -> None:
    """Three pictures that wander through the pool: the first one's tile is in neither of the others."""
    wander = [
        [pattern(1, 1, SQUARE), entry(1, 0, 1), *NICHE.view_bursts(1, 0)],
        [pattern(2, 0, SLOPE), entry(0, 0, 2), *NICHE.view_bursts(0, 1)],
        [pattern(3, 1, FULL), entry(1, 0, 3), *NICHE.view_bursts(1, 0)],
    ]
    pictures = ([SQUARE, EMPTY], [SLOPE, EMPTY], [FULL, EMPTY])
    run = course(NICHE, scripted(*wander, start=NICHE.view_bursts(0)), *pictures)
    assert uses(run.moments[1]) == [Use.AGAIN, Use.SEEN, Use.NEXT]


def test_on_one_map_page_a_picture_uses_the_tiles_that_show_it() -> None:
    """Where both are seen through one page, being named is not enough: the tile must have ink in the right plane."""
    on = Machine(
        name="one page",
        window=Window(columns=2, rows=1),
        tiles=Tiles(count=4, pool=(1, 2, 3)),
        map=TileMap(pages=1),
    )
    named = [Burst(on.map_address(0, cell), on.map_entry(cell + 1)) for cell in (0, 1)]
    drawn = [Burst(on.pattern_address(1, 0), bytes(SQUARE)), Burst(on.pattern_address(2, 1), bytes(SLOPE))]
    blankings = ([*named, *drawn], on.view_bursts(1, 0))
    run = course(on, scripted(*blankings, start=on.view_bursts(0)), [SQUARE, EMPTY], [EMPTY, SLOPE])
    assert uses(run.moments[0]) == [Use.SEEN, Use.NEXT, Use.FREE]
    assert uses(run.moments[1]) == [Use.NEXT, Use.SEEN, Use.FREE]


def test_the_strip_fills_the_tracks_of_a_tile() -> None:
    """One column: both tracks for both, none for free."""
    found = [Use.SEEN, Use.NEXT, Use.BOTH, Use.AGAIN, Use.FREE]
    picture = strip(found)
    column = (picture.shape[1] - MARGIN) // len(found)
    ground = picture[0, MARGIN + column]  # the seen track of a tile that only the next picture uses
    marked = [
        [bool((picture[t * TRACK : (t + 1) * TRACK - GAP, x : x + column - GAP] != ground).any()) for t in range(3)]
        for x in (MARGIN + n * column for n in range(5))
    ]
    assert marked == [
        [True, False, False],
        [False, True, False],
        [True, True, False],
        [False, False, True],
        [False, False, False],
    ]


def test_the_contents_of_the_planes_by_hand() -> None:
    """After the second blanking plane 0 holds a slope and a full tile, plane 1 the square that is seen."""
    moment = RUN.moments[1]
    rows = [np.packbits(bits(moment, plane), axis=2)[:, :, 0].tolist() for plane in (0, 1)]
    assert rows == [[SLOPE, FULL, EMPTY], [SQUARE, EMPTY, EMPTY]]
    assert [role(moment, plane) for plane in (0, 1)] == ["behind", "seen"]


def test_what_was_done_to_each_cell_by_hand() -> None:
    """Both, for a cell that is named anew and whose tile is drawn; moved, for one that is named a tile drawn before."""
    assert changes(RUN.moments[0]) == [Change.BOTH, Change.NEITHER]
    assert changes(RUN.moments[1]) == [Change.BOTH, Change.NEITHER]
    assert changes(RUN.moments[2]) == [Change.NEITHER, Change.MOVED]
    assert changes(RUN.moments[3]) == [Change.NEITHER, Change.NEITHER]


def test_a_pattern_that_changes_under_the_map_redraws_its_cell() -> None:
    """Named in one refresh, drawn in the next."""
    blankings = ([entry(1, 0, 1)], [pattern(1, 1, SQUARE)], list(NICHE.view_bursts(1, 0)))
    run = course(NICHE, scripted(*blankings, start=NICHE.view_bursts(0)), [SQUARE, EMPTY])
    assert changes(run.moments[0]) == [Change.MOVED, Change.NEITHER]
    assert changes(run.moments[1]) == [Change.REDRAWN, Change.NEITHER]


def test_cells_are_counted() -> None:
    """Two cells with one pattern are two occupied and one different."""
    run = course(NICHE, Fresh, [SQUARE, SQUARE], [SLOPE, EMPTY])
    same, single = (next(m for m in run.moments if m.refresh.current == n) for n in (0, 1))
    assert contents_of_cells(same) == [Cell.FIRST, Cell.REPEATED]
    assert contents_of_cells(single) == [Cell.FIRST, Cell.EMPTY]
    figure = figure_of(run, same.refresh.number, kind_named("counts"), Style())
    assert figure.title.endswith("2 cells, 2 occupied, 1 different, 3 tiles in the pool")
    assert figure.notes == ("What is seen now, cell by cell: picture 0.",)


def test_cells_are_counted_of_what_is_seen_not_of_what_should_be() -> None:
    """Written to while it is on show, it is no picture any more, and is not called one."""
    torn = (list(NICHE.view_bursts(1, 0)), [entry(1, 0, 1), pattern(1, 1, SQUARE)])
    run = course(NICHE, scripted(*torn, start=NICHE.view_bursts(0)), [SLOPE, EMPTY])
    note = figure_of(run, 1, kind_named("counts"), Style()).notes[0]
    assert note.startswith("What is seen now, cell by cell: no whole picture: ")
