from pathlib import Path

import pytest

from tests.command.running import set_up


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder of one's own to run in, with a machine (tiny.toml) and candidates (mine.py)."""
    set_up(tmp_path)
    monkeypatch.chdir(tmp_path)
    return tmp_path
