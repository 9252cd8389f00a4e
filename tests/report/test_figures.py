from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planeproof.judge import Basis, Strength
from planeproof.report.figures import counted, cycles, listed, share_at_most, spans, wrapped


@given(st.integers(1, 100_000))
def test_a_bound_is_never_said_smaller_than_it_is(scenes: int) -> None:
    """The share in words is at least the exact bound, and at most a twentieth above the two digits it has."""
    bound = Basis(strength=Strength.SAMPLED, source="", scenes=scenes, independent=True).bound
    assert bound is not None
    said = float(share_at_most(bound).removesuffix(" %")) / 100
    assert bound <= said * (1 + 1e-12)
    assert said <= bound * 1.11


@pytest.mark.parametrize(
    ("scenes", "said"), [(1, "95 %"), (10, "26 %"), (58, "5.1 %"), (59, "5.0 %"), (300, "1.0 %"), (2995, "0.10 %")]
)
def test_bounds_of_some_samples(scenes: int, said: str) -> None:
    """1 - 0.05^(1/n) by hand, rounded up: one scene bounds at 95 %, 59 scenes at 5 %, about 300 at 1 %."""
    assert share_at_most(1 - 0.05 ** (1 / scenes)) == said


@given(st.sets(st.integers(0, 60)))
def test_spans_name_every_number_once(numbers: set[int]) -> None:
    """Reading the runs back gives the same numbers, and no run touches the next."""
    runs = [tuple(map(int, part.split("-"))) for part in spans(numbers).split(", ")] if numbers else []
    assert [n for run in runs for n in range(run[0], run[-1] + 1)] == sorted(numbers)
    assert all(later[0] > earlier[-1] + 1 for earlier, later in pairwise(runs))


@given(st.text("ab ", max_size=80), st.integers(0, 8), st.integers(10, 30))
def test_wrapping_keeps_every_word_in_order(text: str, indent: int, width: int) -> None:
    """Lines are indented, no wider than asked unless a word alone is, and lose no word."""
    lines = wrapped(text, indent, width)
    assert " ".join(lines).split() == text.split()
    assert all(line.startswith(" " * indent) for line in lines)
    assert all(len(line) <= width or len(line.split()) == 1 for line in lines)


def test_small_words() -> None:
    """Counts agree in number, lists end in "and", cycles have at most two decimals."""
    assert (counted(1, "cell"), counted(0, "cell"), counted(2, "is", "are")) == ("1 cell", "0 cells", "2 are")
    assert (listed(["a"]), listed(["a", "b"]), listed(["a", "b", "c"])) == ("a", "a and b", "a, b and c")
    assert (cycles(76), cycles(Fraction(381, 5)), cycles(Fraction(1, 3)), cycles(0)) == ("76", "76.2", "0.33", "0")
