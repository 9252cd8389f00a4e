"""The minimiser: keeps what a scene shows, never makes it bigger, and gets to the least scene of known faults."""

from collections.abc import Callable
from itertools import islice

import numpy as np
import pytest

from planeproof.contract import Disturbance, Machine, Picture, Scene, Tiles, Timing, Window
from planeproof.machines import read_machine, shipped
from planeproof.scenes.crystals import crystal_scenes
from planeproof.scenes.recipes import recipe
from planeproof.scenes.relatives import least_blanking, picture_cycles, relative
from planeproof.scenes.source import RandomSource
from planeproof.scenes.tour import tour
from planeproof.search.minimising import minimise
from planeproof.search.minimising.machines import MOST_BLANKINGS, blankings
from planeproof.search.size import size

Shows = Callable[[Scene], bool]


def always() -> bool:
    """Go on."""
    return True


def drawn(shows: Shows, machine: str = "vitrine-50", *, most: int = 5) -> list[Scene]:
    """The first scenes of a fixed seed that show it."""
    base = read_machine(machine)
    scenes = (recipe(base, RandomSource(f"minimise/{number}")) for number in range(400))
    found = list(islice(filter(shows, scenes), most))
    assert len(found) == most, "too few scenes show it for this test to mean anything"
    return found


# --- what scenes show ---------------------------------------------------------------------------------------


def occupied(scene: Scene) -> bool:
    """Some cell of some picture is occupied."""
    return scene.occupied > 0


def third_cell(scene: Scene) -> bool:
    """The third cell of some picture is occupied."""
    return any(2 in picture.occupied for picture in scene.pictures)


def twice(scene: Scene) -> bool:
    """Two pictures in a row are equal."""
    pairs = zip(scene.pictures, scene.pictures[1:], strict=False)
    return any(np.array_equal(a.rows, b.rows) for a, b in pairs)


def twice_not_empty(scene: Scene) -> bool:
    """Two pictures in a row are equal and not empty."""
    pairs = zip(scene.pictures, scene.pictures[1:], strict=False)
    return any(bool(a.occupied) and np.array_equal(a.rows, b.rows) for a, b in pairs)


def brought_back(scene: Scene) -> bool:
    """A picture is followed by a different one, and that by the first again, and both have something in them."""
    rows = [picture.rows for picture in scene.pictures]
    triples = zip(rows, rows[1:], rows[2:], strict=False)
    return any(a.any() and b.any() and (a == c).all() and (a != b).any() for a, b, c in triples)


def over_cap(scene: Scene) -> bool:
    """A picture has more cells than there are tiles."""
    return any(len(picture.occupied) > scene.machine.cap for picture in scene.pictures)


def lost(scene: Scene) -> bool:
    """A blanking is lost."""
    return any(disturbance.cycles == 0 for disturbance in scene.disturbances)


def waits(scene: Scene) -> bool:
    """A picture is not ready at once."""
    return any(scene.ready)


def wide(scene: Scene) -> bool:
    """Two columns."""
    return scene.machine.window.columns >= 2


LEAST: tuple[tuple[Shows, tuple[int, ...]], ...] = (
    (occupied, (1, 1, 1, 0, 1, 1, 0)),
    (twice, (2, 0, 1, 0, 1, 0, 0)),
    (lost, (0, 0, 1, 1, 1, 0, 0)),
    (waits, (1, 0, 1, 0, 1, 0, 1)),
    (wide, (0, 0, 2, 0, 1, 0, 0)),
)
"""What is shown, and the least there is: pictures, occupied cells, window, disturbances, tiles, ink, waiting."""


@pytest.mark.parametrize(("shows", "least"), LEAST, ids=lambda value: getattr(value, "__name__", ""))
def test_the_least_scene_is_reached(shows: Shows, least: tuple[int, ...]) -> None:
    """From every scene drawn; by reasoning, not by measurement, nothing smaller shows it."""
    assert {size(minimise(scene, shows, go_on=always))[:7] for scene in drawn(shows)} == {least}


@pytest.mark.parametrize(
    ("shows", "least", "most"),
    [
        (third_cell, (1, 1, 3), (1, 1, 4)),
        (over_cap, (1, 2, 2), (1, 2, 4)),
        (brought_back, (3, 3, 1), (3, 5, 2)),
        (twice_not_empty, (2, 2, 1), (2, 2, 1)),
    ],
)
def test_what_can_only_change_together_gets_near_the_least(
    shows: Shows, least: tuple[int, ...], most: tuple[int, ...]
) -> None:
    """Pictures, cells and rows of cells of which one alone can't go: the least, or just above it.

    The bounds above the least are measured; most scenes reach the least itself. (2 x 2 cells can't become 3 x 1.)
    """
    sizes = [size(minimise(scene, shows, go_on=always))[:3] for scene in drawn(shows, most=6)]
    assert min(sizes) == least
    assert max(sizes) <= most
    assert sizes.count(least) * 2 >= len(sizes)


@pytest.mark.parametrize("needed", [1, 32, 100])
def test_a_blanking_is_cut_as_far_as_it_shows(needed: int) -> None:
    """Down to the cycle from which on it shows: so many does the scheduler reckon with."""

    def enough(scene: Scene) -> bool:
        return any(disturbance.cycles >= needed for disturbance in scene.disturbances)

    least = [minimise(scene, enough, go_on=always).disturbances for scene in drawn(enough)]
    assert {tuple(cut.cycles for cut in cuts) for cuts in least} == {(needed,)}


def test_ink_that_two_pictures_share_is_taken_away() -> None:
    """Two equal pictures of a full square come down to one pixel each."""
    plain = Machine(name="plain", window=Window(columns=1, rows=1), tiles=Tiles(count=2, pool=(1,)))
    square = Picture.from_rows(0, [[0xFF] * 8])
    scene = minimise(Scene.of(plain, [square, square]), twice_not_empty, go_on=always)
    assert size(scene)[:6] == (2, 2, 1, 0, 1, 2)


@pytest.mark.parametrize("machine", ["case-label", "pigment-chart", "two-wings"])
def test_it_keeps_what_is_shown_and_never_grows(machine: str) -> None:
    """Of whatever kind the machine is: each scene that is kept is smaller than the one before, and shows it."""
    for scene in drawn(lambda scene: scene.occupied > 2, machine, most=3):
        kept = [scene]

        def shows(tried: Scene) -> bool:
            assert size(tried) < size(kept[-1])  # noqa: B023 - called within this round of the loop only
            if tried.occupied <= 2:
                return False
            kept.append(tried)  # noqa: B023
            return True

        smallest = minimise(scene, shows, go_on=always)
        assert smallest is kept[-1]
        assert smallest.occupied == 3


def test_few_blankings_are_tried_however_many_cycles_there_are() -> None:
    """One cell and nearly all of 312 lines for blanking, 27,000 cycles: what need not be found is given up soon."""
    vast = Machine(
        name="vast",
        window=Window(columns=1, rows=1),
        tiles=Tiles(count=2, pool=(1,)),
        time=Timing(lines=312, shown=8),
    )
    square = Picture.from_rows(0, [[0xFF] * 8])
    tried: list[Scene] = []

    def shows(scene: Scene) -> bool:
        tried.append(scene)
        return scene.machine.blank_cycles == vast.blank_cycles and len(scene.pictures) == 2

    smallest = minimise(Scene.of(vast, [square, square]), shows, go_on=always)
    assert len(smallest.pictures) == 2
    assert 20 < len({scene.machine.blank_cycles for scene in tried}) <= MOST_BLANKINGS + 1
    assert len(tried) < 1000


@pytest.mark.parametrize("name", shipped())
def test_the_blankings_that_are_tried(name: str) -> None:
    """From the least that the machine can have; no more than so many; and up to where any picture fits, or its own."""
    base = read_machine(name)
    for machine in (base, *(relative(base, RandomSource(str(number))) for number in range(20))):
        cycles = blankings(machine)
        assert cycles[0] == least_blanking(machine)
        assert 1 <= len(cycles) <= MOST_BLANKINGS
        assert cycles[-1] + cycles.step >= min(machine.blank_cycles, cycles[0] + picture_cycles(machine))
        whole = all(machine.burst_cycles(size) % cycles.step == 0 for size in range(1, 9))
        assert cycles.step == 1 or whole or len(cycles) > MOST_BLANKINGS // 2


def test_the_same_scene_is_reached_every_time() -> None:
    """There is no chance in it."""
    for scene in drawn(occupied):
        one, other = (minimise(scene, occupied, go_on=always) for _ in range(2))
        assert one.machine == other.machine
        assert [a.rows.tobytes() for a in one.pictures] == [b.rows.tobytes() for b in other.pictures]


def test_a_scene_that_shows_nothing_else_stays_as_it_is() -> None:
    """If no smaller scene shows it, it is given back itself."""
    scene = drawn(occupied)[0]
    assert minimise(scene, lambda _tried: False, go_on=always) is scene


@pytest.mark.parametrize("tries", [0, 1, 5, 40])
def test_it_stops_when_told_with_the_smallest_so_far(tries: int) -> None:
    """After just so many tries; what it gives then is what was kept last."""
    scene = max(drawn(occupied), key=size)
    kept, left = [scene], [tries]

    def go_on() -> bool:
        left[0] -= 1
        return left[0] >= 0

    def shows(tried: Scene) -> bool:
        if occupied(tried):
            kept.append(tried)
        return occupied(tried)

    smallest = minimise(scene, shows, go_on=go_on)
    assert smallest is kept[-1]
    assert len(kept) - 1 <= tries
    assert (size(smallest) < size(scene)) == (len(kept) > 1)


def test_the_machine_can_be_kept() -> None:
    """Then only pictures, times and disturbances get smaller."""
    for scene in drawn(occupied, most=20):
        smallest = minimise(scene, occupied, go_on=always, keep_machine=True)
        assert smallest.machine is scene.machine
        assert (len(smallest.pictures), smallest.occupied) == (1, 1)


def test_a_turning_crystal_gets_small_too() -> None:
    """Six pictures of 680 cells come down to one of one pixel; and one that needs twelve cells to just those."""
    scene = crystal_scenes(read_machine("vitrine-50"))[0]
    tried = [0]

    def go_on() -> bool:
        tried[0] += 1
        return True

    assert size(minimise(scene, occupied, go_on=go_on, keep_machine=True))[:6] == (1, 1, 680, 0, 176, 1)
    assert tried[0] < 500

    def twelve(scene: Scene) -> bool:
        return any(len(picture.occupied) >= 12 for picture in scene.pictures)

    tried[0] = 0
    assert size(minimise(scene, twelve, go_on=go_on, keep_machine=True))[:6] == (1, 12, 680, 0, 176, 12)
    assert tried[0] < 4000


def test_what_is_not_needed_goes_by_halves() -> None:
    """Forty pictures and 300 cut blankings of which two and one are needed: far fewer tries than there are."""
    base = crystal_scenes(read_machine("name-plate"))[-1]
    cut = [Disturbance(refresh, 40) for refresh in range(300)]
    long = Scene.of(base.machine, base.pictures, base.ready, cut)
    assert len(long.pictures) == 40
    tried = [0]

    def shows(scene: Scene) -> bool:
        tried[0] += 1
        return len(scene.pictures) >= 2 and bool(scene.disturbances)

    smallest = minimise(long, shows, go_on=always, keep_machine=True)
    assert size(smallest)[:4] == (2, 0, base.machine.cells, 1)
    assert tried[0] < 200


def test_what_happens_at_a_distance_moves_to_the_beginning() -> None:
    """A blanking lost two refreshes after the second picture is ready, in any refresh: both move, neither alone can."""

    def two_later(scene: Scene) -> bool:
        return len(scene.ready) == 2 and [d.refresh for d in scene.disturbances] == [scene.ready[1] + 2]

    base = relative(read_machine("vitrine-50"), RandomSource("minimise/at a distance"))
    empty = Picture.from_rows(0, np.zeros((base.cells, 8), dtype=np.uint8))
    found = minimise(Scene.of(base, [empty, empty], [18, 27], [Disturbance(29, 0)]), two_later, go_on=always)
    assert (found.ready, found.disturbances) == ((0, 0), (Disturbance(2, 0),))


def test_of_a_large_scene_the_window_goes_before_single_cells() -> None:
    """Three pictures at the limit on a machine as it ships, of which no cell can go alone: one of 680 is left."""
    machine = read_machine("vitrine-50")
    full = [picture for picture in tour(machine).pictures if len(picture.occupied) == machine.must_show]
    tries = iter(range(300))

    def at_the_limit(scene: Scene) -> bool:
        most = min(scene.machine.must_show, scene.machine.cells)
        return len(scene.pictures) >= 3 and all(len(picture.occupied) == most > 0 for picture in scene.pictures)

    found = minimise(Scene.of(machine, full), at_the_limit, go_on=lambda: next(tries, None) is not None)
    assert (len(found.pictures), found.machine.cells) == (3, 1)
