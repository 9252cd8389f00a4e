"""The residual: how it is counted, against a published estimator; and what counts as one behaviour."""

import random
import subprocess
import sys
import warnings
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planeproof.candidates.reference import Delta
from planeproof.contract import Disturbance
from planeproof.judge import play
from planeproof.machines import read_machine
from planeproof.scenes.recipes import recipe
from planeproof.scenes.source import RandomSource
from planeproof.search.residual import Behaviours, behaviour, good_turing
from tests.judge.scripted import EMPTY, FULL, LEFT, MACHINE, picture, played, revealed, sent

with warnings.catch_warnings():
    warnings.simplefilter("ignore")  # what scikit-bio says of its own dependencies while it is loaded
    from skbio.diversity.alpha import goods_coverage, robbins

# RUN: `robbins` (documented as F1/N, READ) and `goods_coverage` of scikit-bio on these counts, n = 105.
COUNTS = [1] * 5 + [2] * 3 + [10, 20, 64]


def test_the_residual_of_some_counts() -> None:
    """Five seen once among 105: 0.047619, and a coverage of 0.952381."""
    assert sum(COUNTS) == 105
    assert good_turing(COUNTS) == pytest.approx(0.047619, abs=5e-7)
    assert 1 - good_turing(COUNTS) == pytest.approx(0.952381, abs=5e-7)


@given(st.lists(st.integers(0, 40), min_size=1).filter(any))
def test_the_residual_is_the_estimator_of_ecology(counts: list[int]) -> None:
    """scikit-bio's `robbins`, and one less its `goods_coverage`."""
    assert good_turing(counts) == pytest.approx(float(robbins(counts)), abs=1e-12)
    assert 1 - good_turing(counts) == pytest.approx(float(goods_coverage(counts)), abs=1e-12)


def test_it_estimates_the_mass_that_was_not_seen() -> None:
    """Zipf's law over 2,000 kinds, 1,000 draws, 200 runs: 0.2775 for a true 0.2781 (RUN); here within 0.005."""
    share = 1 / np.arange(1, 2001)
    share /= share.sum()
    generator = np.random.default_rng(6)
    drawn = generator.multinomial(1000, share, size=200)
    estimated = np.mean([good_turing(counts.tolist()) for counts in drawn])
    missed = np.mean([share[counts == 0].sum() for counts in drawn])
    assert missed == pytest.approx(0.2781, abs=0.005)
    assert estimated == pytest.approx(missed, abs=0.005)


def test_where_nothing_was_seen_all_is_new() -> None:
    """And a count that can't be one is refused, by name and value."""
    assert good_turing([]) == good_turing([0]) == 1.0
    with pytest.raises(ValueError, match=r"counts has -2: .* 0 or more"):
        good_turing([3, -2])


# --- behaviours -------------------------------------------------------------------------------------------

A, B = picture(LEFT, EMPTY), picture(EMPTY, FULL)


def test_bytes_lengths_and_order_make_no_other_behaviour() -> None:
    """Another picture in the same way, or the same way twice over."""
    once = played([A], [sent(A, 1), MACHINE.view_bursts(1, 0)])
    other = played([B], [sent(B, 1), MACHINE.view_bursts(1, 0)])
    twice = played([A, B], [sent(A, 1), MACHINE.view_bursts(1, 0), sent(B, 0), MACHINE.view_bursts(0, 1)])
    assert behaviour(once) == behaviour(other) == behaviour(twice)


def test_another_kind_of_blanking_is_another_behaviour() -> None:
    """Revealed at once; in the next blanking; after one that was lost; after one that was cut."""
    parts = [sent(A, 1), MACHINE.view_bursts(1, 0)]
    plays = [
        played([A], [revealed(A, 1)]),
        played([A], parts),
        played([A], parts, disturbances=[Disturbance(0, 0)]),
        played([A], parts, disturbances=[Disturbance(1, 150)]),
        played([A], []),
    ]
    assert len({behaviour(one) for one in plays}) == 5


def test_a_name_is_the_same_in_every_process() -> None:
    """It hangs on no hash that is made anew with each interpreter."""
    program = (
        "from tests.search.test_residual import A\n"
        "from planeproof.search.residual import behaviour\n"
        "from tests.judge.scripted import played, revealed\n"
        "print(behaviour(played([A], [revealed(A, 1)])))"
    )
    command = [sys.executable, "-c", program]
    root = Path(__file__).parents[2]
    runs = [subprocess.run(command, capture_output=True, text=True, check=True, cwd=root) for _ in range(2)]
    assert {run.stdout.strip() for run in runs} == {behaviour(played([A], [revealed(A, 1)]))}


def test_neither_all_alike_nor_all_different() -> None:
    """Of 300 recipes no behaviour has half, and more than half are of one that others show too."""
    base = read_machine("vitrine-50")
    found = Behaviours()
    for number in range(300):
        found.add(play(recipe(base, RandomSource(f"kinds/{number}")), Delta))
    assert found.plays == 300
    assert found.counts.most_common(1)[0][1] < 150
    assert found.singletons < 150
    assert found.residual == found.singletons / 300


def test_parts_add_up_in_any_order() -> None:
    """As if all had been counted in one place."""
    names = random.Random(3).choices("abcdefghij", k=60)
    parts = [Behaviours(), Behaviours(), Behaviours()]
    for place, name in enumerate(names):
        parts[place % 3].counts[name] += 1
    whole = Behaviours()
    for part in reversed(parts):
        whole.merge(part)
    assert whole.counts == {name: names.count(name) for name in names}
