"""A burst: what it refuses, and the addresses it writes to."""

import pickle
from typing import Any

import numpy as np
import pytest

from planeproof.contract import Burst
from planeproof.contract.burst import FARTHEST

make: Any = Burst


@pytest.mark.parametrize("data", [[1, 2], "ab", bytearray(2), memoryview(b"ab"), np.zeros(2, np.uint8), None, 5])
def test_data_must_be_bytes(data: object) -> None:
    """Whatever else holds bytes must be turned into them: nobody can change bytes afterwards."""
    with pytest.raises(TypeError, match=rf"Burst\.data is {type(data).__name__}: it must be bytes"):
        make(0, data)


def test_a_burst_writes_at_least_one_byte() -> None:
    """An empty one is left out instead."""
    with pytest.raises(ValueError, match=r"Burst\.data is empty"):
        Burst(0, b"")


@pytest.mark.parametrize("wrong", [1.0, "1", None, True, np.int64(3)])
@pytest.mark.parametrize("field", ["address", "step"])
def test_address_and_step_must_be_whole_numbers(field: str, wrong: object) -> None:
    """Of Python's own, so that they stay exact."""
    with pytest.raises(TypeError, match=rf"Burst\.{field} is .* it must be an int"):
        make(**{"address": 0, "data": b"\0", field: wrong})


@pytest.mark.parametrize("step", [0, -1, -40])
def test_a_step_goes_up(step: int) -> None:
    """By one at least."""
    with pytest.raises(ValueError, match=rf"Burst\.step is {step}"):
        Burst(0, b"\0", step)


@pytest.mark.parametrize("sign", [1, -1])
def test_an_address_beyond_all_machines_is_refused(sign: int) -> None:
    """Up to there it is judged when it is played."""
    assert Burst(sign * FARTHEST, b"\0").address == sign * FARTHEST
    with pytest.raises(ValueError, match=r"Burst\.address is -?\d+: no machine reaches so far"):
        Burst(sign * (FARTHEST + 1), b"\0")


@pytest.mark.parametrize(
    ("burst", "addresses"),
    [
        (Burst(5, b"abc"), [5, 6, 7]),
        (Burst(5, b"abc", 40), [5, 45, 85]),
        (Burst(-1, b"ab"), [-1, 0]),
        (Burst(7, b"a", 3), [7]),
    ],
)
def test_each_next_byte_is_a_step_further(burst: Burst, addresses: list[int]) -> None:
    """One address for each byte."""
    assert list(burst.addresses) == addresses


def test_a_burst_is_a_value() -> None:
    """Equal, hashed alike, the same after pickling, and frozen."""
    burst: Any = Burst(5, b"abc", 40)
    assert len({burst, Burst(5, b"abc", 40), pickle.loads(pickle.dumps(burst)), Burst(5, b"abc")}) == 2
    with pytest.raises(AttributeError):
        burst.address = 6
