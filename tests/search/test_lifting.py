"""Lifting: what shows on a few cells is shown on the machine as given, and made smaller there."""

from collections.abc import Callable
from dataclasses import replace
from itertools import islice

import pytest

from planeproof.candidates.faults.zoo import ZOO, Fault
from planeproof.contract import RULES, Picture, Scene, Window
from planeproof.judge import CandidateFault, play
from planeproof.machines import read_machine
from planeproof.scenes.recipes import recipe
from planeproof.scenes.source import RandomSource
from planeproof.search.lifting import lift, likely
from planeproof.search.minimising import minimise

Shows = Callable[[Scene], bool]

SAMPLE: dict[str, tuple[int, int]] = {
    "stale-entry": (3, 1),  # history
    "tile-in-use-reused": (3, 3),  # history and tiles
    "declines-the-largest": (1, 80),  # a limit of the machine
    "taken-and-dropped": (2, 1),  # timing: sending must take more than one blanking
    "full-blanking-assumed": (1, 1),  # a cut blanking
    "split-in-place": (2, 2),  # one side
    "packed-written-whole": (2, 2),  # packed storage
    "pool-not-split": (2, 2),  # a pool that is split
    "empty-plane-left": (3, 2),  # two bits a pixel
}
"""Faults that need something of their own to show, and the pictures and occupied cells on the machine as given."""

FAULTS = {fault.id: fault for fault in ZOO}


def breaks(fault: Fault) -> Shows:
    """Whether a scene shows the fault by its own rule."""

    def shows(scene: Scene) -> bool:
        try:
            broken = play(scene, fault.make).first(frozenset(RULES))
        except CandidateFault:
            return False
        return broken is not None and broken.rule is fault.rule

    return shows


def up_to(tries: int) -> Callable[[], bool]:
    """Go on for so many tries: a slow computer finds the same."""
    left = iter(range(tries))
    return lambda: next(left, None) is not None


def small_scene(fault: Fault) -> Scene:
    """A small scene that shows the fault."""
    base, shows = read_machine(fault.machine), breaks(fault)
    drawn = (recipe(base, RandomSource(f"lift/{number}")) for number in range(3000))
    return minimise(next(filter(shows, drawn)), shows, go_on=up_to(600))


@pytest.mark.parametrize("name", SAMPLE)
def test_a_fault_is_lifted_to_the_machine_as_given(name: str) -> None:
    """To a scene on that very machine that shows it by the same rule, no bigger than stated."""
    fault = FAULTS[name]
    given, shows = read_machine(fault.machine), breaks(fault)
    lifted = lift(small_scene(fault), given, shows, up_to(400))
    assert lifted is not None
    assert lifted.machine is given
    assert shows(lifted)
    assert (len(lifted.pictures), lifted.occupied) <= SAMPLE[name]


def test_a_tile_number_of_two_bytes_is_come_to() -> None:
    """On one cell it is the first tile, on the frieze the 77th: 76 others are taken first, and none can be spared."""
    fault, given = FAULTS["low-byte-only"], read_machine("long-frieze")
    cell, tiles = Window(columns=1, rows=1), replace(given.tiles, count=257, pool=(256,), blank=0)
    small = replace(given, window=cell, tiles=tiles, memory=None, time=replace(given.time, shown=8))
    scene = Scene.of(small, [Picture.from_rows(0, [[0] * 7 + [1]])])
    shows = breaks(fault)
    assert shows(scene)
    lifted = lift(scene, given, shows, up_to(200))
    assert lifted is not None
    assert (lifted.machine, len(lifted.pictures)) == (given, 2)
    assert sum(tile < 256 for tile in given.pool) == 76
    assert len(lifted.pictures[1].occupied) == 77


def test_it_ends_when_told() -> None:
    """With nothing where nothing was found, and after no more tries than it was given."""
    small = small_scene(FAULTS["stale-entry"])
    tried: list[Scene] = []

    def shows(scene: Scene) -> bool:
        tried.append(scene)
        return False

    assert lift(small, read_machine("vitrine-60"), shows, up_to(30)) is None
    assert len(tried) == 30


def test_every_scene_is_on_the_given_machine_and_they_do_not_end() -> None:
    """Whatever the small machine was like: wider than the given one, of another line standard, of more cells."""
    for name, other in (("vitrine-50", "name-plate"), ("name-plate", "vitrine-60"), ("case-label", "bench")):
        given = read_machine(other)
        small = recipe(read_machine(name), RandomSource("any"))
        assert all(scene.machine is given for scene in islice(likely(small, given), 80))
        as_given = recipe(read_machine(name), RandomSource("full"), as_given=True)
        assert all(scene.machine is given for scene in islice(likely(as_given, given), 80))
