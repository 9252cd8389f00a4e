"""The answers of z3 to every obligation, asked once for all tests."""

import pytest

from planeproof.spec import OBLIGATIONS, Report, prove_all


@pytest.fixture(scope="session")
def report() -> Report:
    """Every obligation, asked of z3 within the default limit."""
    return prove_all(OBLIGATIONS)
