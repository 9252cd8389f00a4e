import pytest


@pytest.fixture(autouse=True)
def _no_worker(monkeypatch: pytest.MonkeyPatch) -> None:
    """The pytest that a test runs would take itself for a worker of the run that the test is part of."""
    monkeypatch.delenv("PYTEST_XDIST_WORKER", raising=False)
