import signal
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.command.running import set_up


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder of one's own to run in, with a machine (tiny.toml) and candidates (mine.py)."""
    set_up(tmp_path)
    monkeypatch.chdir(tmp_path)
    return tmp_path


@pytest.fixture
def heard() -> Iterator[None]:
    """Ctrl-C is heard, also where the tests run in the background of a script, which has it ignored."""
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    yield
    signal.signal(signal.SIGINT, before)
