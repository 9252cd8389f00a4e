"""Two processes beside one: scenes in the same time. Both are measured in the same run, one after the other.

Run by name: ``pytest tests/benchmarks``. On a computer with two processors and nothing else to do: what others do
meanwhile takes more from two processes than from one. So the quickest of three rounds of each counts.
"""

from timeit import repeat

from pytest_benchmark.fixture import BenchmarkFixture

from planeproof.judge import Verdict
from planeproof.search import check

SCENES = 8000
"""So many that the beginning and the end, where one process waits for the other, do not matter: some 25 s for one."""

ROUNDS = 3


def played(jobs: int) -> Verdict:
    """A check of a right scheduler, in which everything is played."""
    return check("planeproof.candidates.reference:Delta", scenes=SCENES, jobs=jobs)


def test_two_processes_beside_one(benchmark: BenchmarkFixture) -> None:
    """Two play at least 1.7 times as many scenes as one in the same time, for they play the same scenes in less."""
    two = benchmark.pedantic(lambda: played(2), rounds=ROUNDS)  # type: ignore[no-untyped-call]
    assert benchmark.stats is not None, "run without --benchmark-disable: there is nothing to compare otherwise"
    one: list[Verdict] = []
    times = repeat(lambda: one.append(played(1)), number=1, repeat=ROUNDS)
    assert [basis.scenes for basis in one[0].basis] == [basis.scenes for basis in two.basis]
    ratio = min(times) / benchmark.stats.stats.min
    benchmark.extra_info["ratio"] = round(ratio, 3)
    assert ratio >= 1.7
