"""What is reckoned, against schedulers that run: none is faster than its bound; where nothing is wasted it meets it."""

import numpy as np
import pytest

from planeproof.candidates.reference import Fresh, InPlace, Pairs, SplitPool
from planeproof.contract import Machine, Picture, Scene, Scheduler
from planeproof.judge import Play, play
from planeproof.machines import read_machine
from planeproof.ways import Name, Reach, ways_of

PLAYED = (
    ("vitrine-50", Name.HIDDEN_PLANE, Fresh),
    ("vitrine-60", Name.HIDDEN_PLANE, Fresh),
    ("long-frieze", Name.HIDDEN_PLANE, Fresh),
    ("mosaic-floor", Name.HIDDEN_PLANE, Fresh),
    ("pigment-chart", Name.HIDDEN_PLANE, Fresh),
    ("drawer-front", Name.HIDDEN_PLANE, Fresh),
    ("bench", Name.HIDDEN_PLANE, Fresh),
    ("case-label", Name.HIDDEN_PLANE, Pairs),
    ("twin-niche", Name.PAGE_FLIP, SplitPool),
    ("scroll-case", Name.PAGE_FLIP, SplitPool),
    ("two-wings", Name.BANK_FLIP, SplitPool),
    ("bench", Name.ONE_BLANKING, InPlace),
    ("name-plate", Name.ONE_BLANKING, InPlace),
    ("vitrine-50", Name.ONE_BLANKING, InPlace),
    ("drawer-front", Name.ONE_BLANKING, InPlace),
)
SLOWER = {("twin-niche", SplitPool), ("scroll-case", SplitPool), ("two-wings", SplitPool), ("case-label", Pairs)}
"""Those that send more than the bound counts: every second tile, a burst each; what is seen, copied to new tiles."""


def full_pictures(machine: Machine, cells: int) -> list[Picture]:
    """Two pictures of so many occupied cells, no two patterns alike, the second in other cells as far as it can."""
    random = np.random.default_rng(seed=20)
    pictures = []
    for last in (False, True):
        rows = np.zeros((machine.cells, machine.tiles.depth, 8), dtype=np.uint8)
        occupied = slice(machine.cells - cells, None) if last else slice(0, cells)
        rows[occupied] = random.integers(1, 256, rows[occupied].shape, dtype=np.uint8)
        pictures.append(Picture.from_rows(0, rows[:, 0] if machine.tiles.depth == 1 else rows))
    return pictures


def reach_of(machine: Machine, name: Name) -> Reach:
    """How far a way gets on the machine as it is."""
    found = next(way.here for way in ways_of(machine) if way.name is name)
    assert found is not None
    return found


def waited(found: Play) -> list[int]:
    """Refreshes from the one in which each picture was taken to the one in which it is seen, both counted."""
    taken = {r.offered: r.number for r in found.refreshes if r.answer is not None and r.answer.value == "taken"}
    seen = {number: next(r.number for r in found.refreshes if r.current == number) for number in taken}
    return [seen[number] - taken[number] + 1 for number in taken if number is not None]


@pytest.mark.parametrize(("shape", "name", "make"), PLAYED, ids=lambda part: str(getattr(part, "__name__", part)))
def test_no_scheduler_beats_its_bound(shape: str, name: Name, make: type[Scheduler]) -> None:
    """Full pictures, all patterns different: both are taken, and each takes the refreshes that are stated, or more."""
    machine = read_machine(shape)
    reach = reach_of(machine, name)
    found = play(Scene.of(machine, full_pictures(machine, reach.cells)), make)
    measured = waited(found)
    assert len(measured) == 2
    assert reach.refreshes is not None
    assert all(refreshes >= reach.refreshes for refreshes in measured), (measured, reach)
    if (shape, make) not in SLOWER:
        assert measured == [reach.refreshes] * 2
