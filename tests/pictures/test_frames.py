import numpy as np

from planeproof.candidates.reference import Delta
from planeproof.contract import Burst, Machine, Tiles, Window
from planeproof.display import UNDEFINED
from planeproof.pictures import Style, composed, figure_of, kind_named
from planeproof.pictures.both import IN_BOTH, NOBODY_KNOWS, ONLY_BEHIND, ONLY_SEEN, both_sides
from planeproof.pictures.cells import Cell, contents_of_cells
from planeproof.pictures.compared import MISSING, TOO_MUCH, differences, expected
from planeproof.pictures.frames import NOT_KNOWN, behind_frame, in_colours
from tests.pictures.golden_pictures import REFRESH
from tests.pictures.golden_pictures import run as golden_run
from tests.pictures.runs import EMPTY, FULL, NARROW, NICHE, SLOPE, SQUARE, course, machine, scripted

BARE = Style(labels=False, scale=1)
TO_THE_SQUARE = ([SQUARE, EMPTY], [EMPTY, SLOPE])


def lettered(values: np.ndarray) -> list[str]:
    """A digit a pixel."""
    return ["".join(str(value) for value in row) for row in values]


def test_what_is_seen_is_in_the_machines_colours() -> None:
    """One pixel for one at scale 1: white ink on black, a square in cell 0."""
    run = course(NICHE, Delta, [SQUARE, EMPTY])
    body = figure_of(run, 0, kind_named("seen"), BARE).body
    ink = np.unpackbits(np.array(SQUARE, dtype=np.uint8)[:, None], axis=1)
    assert body.shape == (8, 16, 3)
    assert (body[:, :8] == ink[..., None] * 255).all()
    assert not body[:, 8:].any()


def test_what_is_behind_is_seen_through_its_own_view() -> None:
    """When the second picture is revealed, the first stands behind it."""
    run = course(NICHE, Delta, *TO_THE_SQUARE)
    first, second = (next(m for m in run.moments if m.refresh.current == n) for n in (0, 1))
    assert np.array_equal(behind_frame(second), first.refresh.frame)
    assert (first.seen, first.behind, second.seen, second.behind) == (1, 0, 0, 1)


def test_both_sides_by_hand() -> None:
    """The diagonal of the picture behind, the square that is seen, and the two pixels where they meet."""
    run = course(NICHE, Delta, [SLOPE, EMPTY], [SQUARE, EMPTY])
    values = both_sides(next(m for m in run.moments if m.refresh.current == 1))
    seen, behind, in_both = str(ONLY_SEEN), str(ONLY_BEHIND), str(IN_BOTH)
    rows = [list("11111111"), *(list("10000001") for _ in range(6)), list("11111111")]
    for y in range(8):
        rows[y][7 - y] = in_both if rows[y][7 - y] == seen else behind
    assert lettered(values[:, :8]) == ["".join(row) for row in rows]
    assert not values[:, 8:].any()


def test_what_differs_is_told_from_the_picture_that_was_meant() -> None:
    """A scheduler that shows its square with a row left out and one too many."""
    wrong = bytes([0, *SQUARE[1:3], 255, *SQUARE[4:]])
    view = NICHE.view_bursts(0)
    bursts = [Burst(NICHE.pattern_address(1, 0), wrong), Burst(NICHE.map_address(0, 0), NICHE.map_entry(1))]
    run = course(NICHE, scripted(bursts, start=view), [SQUARE, EMPTY])
    moment = run.moments[0]
    right = expected(moment)
    values = differences(moment, right.frame)
    assert right.number == 0
    assert lettered(values[:, :8]) == [str(MISSING) * 8, *["0" * 8] * 2, f"0{str(TOO_MUCH) * 6}0", *["0" * 8] * 4]
    assert not values[:, 8:].any()


def test_nothing_differs_where_all_is_right() -> None:
    """In every refresh of a scheduler that is right, expected and seen are one."""
    run = course(NICHE, Delta, *TO_THE_SQUARE)
    assert not any(differences(moment, expected(moment).frame).any() for moment in run.moments)


def test_undefined_pixels_have_a_colour_of_their_own() -> None:
    """A byte too late wrecks the frame: it is drawn in the mark's colour, at scale 1 without its stripes."""
    on = machine(timing=NARROW)
    late = [Burst(on.pattern_address(3, 1), bytes(8))] * 3
    run = course(on, scripted(late, start=on.view_bursts(0)), [SQUARE, EMPTY])
    frame = run.moments[0].refresh.frame
    assert (in_colours(on, frame) == NOT_KNOWN.colour).all()
    striped = figure_of(run, 0, kind_named("seen"), Style(labels=False, scale=8)).body
    assert {tuple(rgb) for rgb in striped.reshape(-1, 3)} == {NOT_KNOWN.colour, (250, 246, 238)}


def test_undefined_pixels_are_no_ink() -> None:
    """In the picture of both sides they are told apart, and so are undefined cells where cells are counted."""
    moment = golden_run().moments[REFRESH]
    undefined = moment.refresh.frame == UNDEFINED
    assert undefined.any()
    assert not undefined.all()
    assert np.array_equal(both_sides(moment) == NOBODY_KNOWS, undefined)
    assert set(contents_of_cells(moment)) == {Cell.UNDEFINED}


def test_some_of_what_differs_in_a_large_window_is_enlarged() -> None:
    """A row left out in the last cell of 8 x 4: below the whole window stands that cell once more, larger."""
    on = Machine(name="wide", window=Window(columns=8, rows=4), tiles=Tiles(count=4, pool=(1, 2, 3)))
    rows = [EMPTY] * 31 + [FULL]
    wrong = [Burst(on.pattern_address(1, 0), bytes([0, *FULL[1:]])), Burst(on.map_address(0, 31), on.map_entry(1))]
    style = Style(scale=8)
    figure = figure_of(course(on, scripted(wrong, start=on.view_bursts(0)), rows), 0, kind_named("compared"), style)
    right = figure_of(course(on, Delta, rows), 0, kind_named("compared"), style)
    titles = [
        "expected: picture 0",
        "seen",
        "8 pixels unlike",
        "enlarged: cells of column 7, row 3 of the 8 x 4 window",
    ]
    assert [word.text for word in figure.words if word.text] == titles
    assert figure.body.shape[0] > right.body.shape[0]
    assert figure.body.shape[1] == right.body.shape[1]


def test_without_labels_a_picture_is_nothing_but_itself() -> None:
    """Not one pixel of words or margins; with labels the same pixels stand in a larger picture."""
    run = course(NICHE, Delta, [FULL, SLOPE])
    figure = figure_of(run, 0, kind_named("seen"), Style(scale=4))
    assert np.array_equal(np.asarray(composed(figure, labels=False)), figure.body)
    sheet = np.asarray(composed(figure))
    height, width = figure.body.shape[:2]
    places = np.lib.stride_tricks.sliding_window_view(sheet, (height, width, 3))[::1, ::1, 0]
    rows = [y for y in range(places.shape[0]) if (places[y, (sheet.shape[1] - width) // 2] == figure.body).all()]
    assert len(rows) == 1
