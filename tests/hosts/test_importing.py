"""A file that can't be imported is refused as a target, whatever it raises; but Ctrl-C is Ctrl-C."""

from pathlib import Path

import pytest

from planeproof.hosts import TargetError, load

RAISING = {
    "ValueError: no": "raise ValueError('no')",
    "it ends the program (SystemExit(3))": "raise SystemExit(3)",
    "GeneratorExit (line": "raise GeneratorExit",
    "AssertionError (line": "assert False",
    "Own: mine": "class Own(BaseException): ...\nraise Own('mine')",
    "Mute (whose text can't be had": "class Mute(Exception):\n    def __str__(self):\n        raise self\nraise Mute",
}


def written(folder: Path, text: str) -> str:
    """A target in a file of this text."""
    (folder / "candidate.py").write_text(text)
    return f"{folder / 'candidate.py'}:Candidate"


@pytest.mark.parametrize("said", RAISING)
def test_whatever_an_import_raises_is_told(said: str, tmp_path: Path) -> None:
    """With the file, its line and the error's own words."""
    with pytest.raises(TargetError) as caught:
        load(written(tmp_path, RAISING[said]))
    assert f"can't be imported: {said}" in str(caught.value)
    assert f"line {RAISING[said].count(chr(10)) + 1} of {tmp_path / 'candidate.py'}" in str(caught.value)


def test_an_import_can_be_stopped(tmp_path: Path) -> None:
    """KeyboardInterrupt passes through."""
    with pytest.raises(KeyboardInterrupt):
        load(written(tmp_path, "raise KeyboardInterrupt"))
