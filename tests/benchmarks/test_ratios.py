"""What work costs beside other work of the same run. No time is asserted, only ratios; limits leave a factor of two.

Run by name: ``pytest tests/benchmarks``. Each limit states the ratio that was measured when it was set.
"""

from collections.abc import Callable, Iterable
from dataclasses import replace
from pathlib import Path
from timeit import repeat

import numpy as np
from pytest_benchmark.fixture import BenchmarkFixture

from planeproof.candidates.reference import Delta, Fresh
from planeproof.contract import Answer, Burst, Machine, Picture, Scene
from planeproof.judge import Play, play
from planeproof.machines import read_machine
from planeproof.scenes.crystals import crystal_scenes
from planeproof.scenes.recipes import recipe
from planeproof.scenes.source import RandomSource
from planeproof.search import check

VITRINE = read_machine("vitrine-50")
CRYSTAL = crystal_scenes(VITRINE)[3]
ROUNDS = 15


class Repeats:
    """Says again what was said in a play of the same scene: a scheduler that takes no time of its own."""

    def __init__(self, said: Play) -> None:
        self._set_up = said.set_up
        self._answers = iter([refresh.answer for refresh in said.refreshes if refresh.answer is not None])
        self._bursts = iter([refresh.bursts for refresh in said.refreshes if refresh.cycles])

    def start(self, machine: Machine) -> Iterable[Burst]:
        """As then."""
        return self._set_up

    def offer(self, picture: Picture) -> Answer:
        """As then."""
        return next(self._answers)

    def blank(self, cycles: int) -> Iterable[Burst]:
        """As then."""
        return next(self._bursts)


def least(work: Callable[[], object]) -> float:
    """Seconds of the quickest of `ROUNDS` runs: what others do on this computer only ever adds to it."""
    return min(repeat(work, number=1, repeat=ROUNDS))


def ratio(benchmark: BenchmarkFixture, work: Callable[[], object], beside: Callable[[], object]) -> float:
    """How many times as long ``work`` takes as what stands ``beside`` it; kept with the benchmark's results."""
    benchmark.pedantic(work, rounds=ROUNDS, warmup_rounds=1)  # type: ignore[no-untyped-call]
    assert benchmark.stats is not None, "run without --benchmark-disable: there is nothing to compare otherwise"
    found = benchmark.stats.stats.min / least(beside)
    benchmark.extra_info["ratio"] = round(found, 3)
    return float(found)


def floor(said: Play) -> Callable[[], None]:
    """The least that a judge must do: copy the same bytes, and look every pixel of every frame up once."""
    memory = np.zeros(1 << 16, dtype=np.uint8)
    shape = said.refreshes[0].frame.shape
    table, pixels = np.zeros(256, dtype=np.int16), np.arange(np.prod(shape)).reshape(shape) % 4
    refreshes = [
        [(burst.address, np.frombuffer(burst.data, dtype=np.uint8)) for burst in refresh.bursts]
        for refresh in said.refreshes
    ]

    def work() -> None:
        for bursts in refreshes:
            for address, data in bursts:
                memory[address : address + len(data)] = data
            table.take(pixels)

    return work


def test_judging_beside_the_floor(benchmark: BenchmarkFixture) -> None:
    """Judging a full-window scene of a turning crystal, every picture sent whole: at most 5 times the floor.

    Measured: 4.3.
    """
    said = play(CRYSTAL, Fresh)
    assert ratio(benchmark, lambda: play(CRYSTAL, lambda: Repeats(said)), floor(said)) <= 5


def test_a_refresh_in_which_nothing_changes(benchmark: BenchmarkFixture) -> None:
    """An idle refresh beside one of those in which a crystal is sent. Measured: 0.08."""
    waiting = Scene.of(VITRINE, CRYSTAL.pictures, [time + 2000 for time in CRYSTAL.ready])
    busy, idle = play(CRYSTAL, Fresh), play(waiting, Fresh)
    both = ratio(benchmark, lambda: play(waiting, lambda: Repeats(idle)), lambda: play(CRYSTAL, lambda: Repeats(busy)))
    assert (both - 1) * len(busy.refreshes) / (len(idle.refreshes) - len(busy.refreshes)) < 0.2


def test_a_play_on_a_small_relative(benchmark: BenchmarkFixture) -> None:
    """Forty scenes on small relatives beside one of crystals at full size: small scenes make search quick.

    Measured: 0.8.
    """
    small = [recipe(VITRINE, RandomSource(f"bench/{number}")) for number in range(40)]
    assert ratio(benchmark, lambda: [play(scene, Delta) for scene in small], lambda: play(CRYSTAL, Delta)) < 2


def test_drawing_a_scene(benchmark: BenchmarkFixture) -> None:
    """Drawing recipes beside playing what is drawn. Measured: 0.09."""

    def draw() -> list[Scene]:
        return [recipe(VITRINE, RandomSource(f"bench/{number}")) for number in range(100)]

    scenes = draw()
    assert ratio(benchmark, draw, lambda: [play(scene, Fresh) for scene in scenes]) < 0.25


def test_saving_cases(benchmark: BenchmarkFixture, tmp_path: Path) -> None:
    """A check that saves every scene before it is played, beside one that saves none. Measured: 1.4."""
    small = replace(VITRINE, name="small")

    def checked(cases: Path | None) -> None:
        check(Fresh, machines=[small], scenes=60, cases=cases)

    assert ratio(benchmark, lambda: checked(tmp_path), lambda: checked(None)) < 2.2


def test_more_pictures(benchmark: BenchmarkFixture) -> None:
    """A scene of four times the pictures beside the short one: a refresh must not get dearer in a long scene.

    Measured: 2.7, for after the last picture both go on just as long.
    """
    long = crystal_scenes(VITRINE, pictures=24)[3]
    assert ratio(benchmark, lambda: play(long, Fresh), lambda: play(CRYSTAL, Fresh)) < 6
