"""Edge scenes of a user's own machine: kept whole, for that very machine alone, and never used where they are wrong."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from planeproof.contract import Demands, Machine
from planeproof.scenes.edges import LEFT_OUT, EdgesError, files_of, folder_of, keep_edges, kept_edges
from tests.scenes.own import OWN, some_edges

CASE = "as-given/at-the-limit.json"


def test_what_is_kept_comes_back(tmp_path: Path) -> None:
    """Scenes, and what is left out; and nothing else stands in the folder."""
    folder = keep_edges(some_edges(), OWN, tmp_path)
    assert list(tmp_path.iterdir()) == [folder] == [folder_of(OWN, tmp_path)]
    assert folder.name.startswith("my-plate-")
    found = kept_edges(OWN, tmp_path)
    assert found is not None
    assert files_of(found) == files_of(some_edges())


ALTERED: list[Callable[[Machine], Machine]] = [
    lambda machine: replace(machine, name="my other plate"),
    lambda machine: replace(machine, tiles=replace(machine.tiles, pool=(1, 2, 3, 4, 5))),
    lambda machine: replace(machine, time=replace(machine.time, reserve=61)),
    lambda machine: replace(machine, demands=Demands(must_show=5)),
]


@pytest.mark.parametrize("altered", ALTERED)
def test_an_altered_machine_has_none(altered: Callable[[Machine], Machine], tmp_path: Path) -> None:
    """Whatever was altered, be it the name alone, it is another machine."""
    keep_edges(some_edges(), OWN, tmp_path)
    assert kept_edges(altered(OWN), tmp_path) is None
    assert kept_edges(OWN, tmp_path / "elsewhere") is None


def test_newer_scenes_take_the_place_of_older_ones(tmp_path: Path) -> None:
    """No file of the older ones is left."""
    keep_edges(some_edges(), OWN, tmp_path)
    fewer = replace(some_edges(), scenes=some_edges().scenes[:1])
    keep_edges(fewer, OWN, tmp_path)
    found = kept_edges(OWN, tmp_path)
    assert found is not None
    assert files_of(found) == files_of(fewer)
    assert len(list(tmp_path.iterdir())) == 1


@pytest.mark.parametrize(
    ("file", "text", "said"),
    [
        (CASE, b'{"planeproof_case": 1', f"{CASE}: is not whole JSON"),
        (LEFT_OUT, b"{}", "missing required field"),
        (LEFT_OUT, b"[]", "Expected `object`, got `array`"),
        (LEFT_OUT, None, "No such file"),
    ],
)
def test_what_can_not_be_read_is_refused(file: str, text: bytes | None, said: str, tmp_path: Path) -> None:
    """With the folder, the reason, and the command that makes it anew."""
    folder = keep_edges(some_edges(), OWN, tmp_path)
    (folder / file).unlink() if text is None else (folder / file).write_bytes(text)
    with pytest.raises(EdgesError) as refused:
        kept_edges(OWN, tmp_path)
    assert str(refused.value).startswith(f"{folder}: ")
    assert said in str(refused.value)
    assert "solved anew by planeproof edges" in str(refused.value)


def test_the_scenes_of_another_machine_are_refused(tmp_path: Path) -> None:
    """Also where somebody has renamed the folder."""
    other = replace(OWN, tiles=replace(OWN.tiles, pool=(1, 2, 3, 4, 5)))
    keep_edges(some_edges(other), other, tmp_path).rename(folder_of(OWN, tmp_path))
    with pytest.raises(EdgesError, match="is neither on my plate nor on a relative of it"):
        kept_edges(OWN, tmp_path)
