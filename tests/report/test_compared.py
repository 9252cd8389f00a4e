"""Which of the pictures that would have been right a wrong frame is told from."""

import re

import pytest

from planeproof.contract import Machine, Picture, Scene, Tiles, Window
from planeproof.contract.rules import EXACT_REVEAL
from planeproof.judge import play
from planeproof.report.compared import compared_lines
from tests.report.schedulers import Early
from tests.report.stories import EMPTY, SQUARE, STORIES

ONE = Machine(name="one cell", window=Window(columns=1, rows=1), tiles=Tiles(count=3, pool=(1, 2)))


def dots(count: int) -> list[int]:
    """A cell with that many pixels in its first rows, one in each."""
    return [1] * count + [0] * (8 - count)


@pytest.mark.parametrize(
    ("first", "second", "said"),
    [
        # Revealed too early, the hidden side is empty: as far from the one picture as from the other; nearer to one.
        (dots(1), [128, *EMPTY[1:]], "1 pixel unlike picture 1"),
        (dots(1), SQUARE, "1 pixel unlike picture 0"),
        (SQUARE, dots(2), "2 pixels unlike picture 1"),
    ],
)
def test_the_difference_names_the_picture_most_like_and_on_a_tie_the_next(
    first: list[int], second: list[int], said: str
) -> None:
    """Over the pixels that differ stands what they differ from, in a small window too."""
    scene = Scene.of(ONE, [Picture.from_rows(0, [rows]) for rows in (first, second)], (0, 2))
    result = play(scene, Early)
    violation = next(v for v in result.violations if v.rule is EXACT_REVEAL and v.refresh == 2)
    title, *drawn = compared_lines(result, violation, 0)[:10]
    assert title.endswith(said)
    assert sum(line.count("X") for line in drawn) == int(said.split(maxsplit=1)[0])


@pytest.mark.parametrize("name", [name for name in STORIES if name.startswith("fail")])
def test_no_difference_is_without_a_name(name: str) -> None:
    """Wherever pixels are marked as different, it is said from what."""
    _, _, shown = "\n".join(STORIES[name]()).partition("Expected and seen")
    assert ("X differs" in shown) == bool(re.search(r"\d pixels? unlike (before|picture \d|the background)", shown))
