"""The bound for no failure in n scenes against published figures, and against the bounds it must not be mixed up with.

The library that `test_verdict` compares it with is itself held to published intervals here.
"""

import pytest
from scipy.stats import binomtest

from planeproof.judge import Basis, Strength

# RUN: one-sided exact, and the upper end of the two-sided interval, 1 - 0.025^(1/n), printed to these places.
ONE_AND_TWO_SIDED = {
    30: (".0950", ".1157"),
    100: (".0295", ".0362"),
    842: (".003552", ".004372"),
    1000: (".002991", ".003682"),
    8192: (".000366", ".000450"),
    10_000: (".000300", ".000369"),
}
# Eypasch et al., BMJ 1995;311:619-20, worked in Bandolier 23 (READ-2): "about 3/1000" and "about 3/10000".
EYPASCH = {842: 3 / 1000, 8192: 3 / 10_000}
# scipy's documentation (READ), 7 of 50; Newcombe 1998, Table I, exact method (data READ-2 or MEM, values MEM).
INTERVALS = [
    (7, 50, "0.05819170033997342", "0.26739600249700846"),
    (81, 263, "0.2527", "0.3676"),
    (15, 148, "0.0578", "0.1617"),
    (0, 20, "0.0000", "0.1684"),
    (1, 29, "0.0009", "0.1776"),
]


def bound(scenes: int) -> float:
    """What so many independent scenes without a failure show."""
    basis = Basis(strength=Strength.SAMPLED, source="recipes", scenes=scenes, independent=True)
    assert basis.bound is not None
    return basis.bound


@pytest.mark.parametrize("scenes", ONE_AND_TWO_SIDED)
def test_it_is_the_one_sided_bound_and_not_the_two_sided_one(scenes: int) -> None:
    """To the places printed; the two-sided one is some 3.69 in n, and would understate what was shown."""
    one_sided, two_sided = ONE_AND_TWO_SIDED[scenes]
    assert f"{bound(scenes):.{len(one_sided) - 1}f}" == f"0{one_sided}"
    upper = binomtest(0, scenes).proportion_ci(confidence_level=0.95, method="exact").high
    assert f"{upper:.{len(two_sided) - 1}f}" == f"0{two_sided}"
    assert bound(scenes) < upper


@pytest.mark.parametrize(("scenes", "about"), EYPASCH.items())
def test_it_rounds_to_the_published_rule_of_three(scenes: int, about: float) -> None:
    """Within a quarter of the round figure that a reader would name."""
    assert bound(scenes) == pytest.approx(about, rel=0.25)


@pytest.mark.parametrize("scenes", range(1, 30))
def test_below_thirty_scenes_it_is_not_three_in_n(scenes: int) -> None:
    """The rule of three is meant for n > 30 (READ, abstract of Eypasch et al.): the exact one is what is given."""
    exact = binomtest(0, scenes, alternative="less").proportion_ci(confidence_level=0.95, method="exact").high
    assert bound(scenes) == pytest.approx(exact, rel=1e-9)
    assert bound(scenes) < min(3 / scenes, 1)
    assert 3 / scenes > 1.05 * bound(scenes)


@pytest.mark.parametrize(("failed", "of", "low", "high"), INTERVALS)
def test_the_library_it_is_compared_with_gives_the_published_intervals(
    failed: int, of: int, low: str, high: str
) -> None:
    """Clopper and Pearson's, two-sided, to all places that are published."""
    interval = binomtest(failed, of).proportion_ci(confidence_level=0.95, method="exact")
    for computed, published in ((interval.low, low), (interval.high, high)):
        places = min(len(published) - 2, 14)
        assert f"{computed:.{places}f}" == f"{float(published):.{places}f}"
