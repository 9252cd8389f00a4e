"""Pages about candidates that broke the contract, from faults that really happened."""

from collections.abc import Callable, Iterable

import pytest

from planeproof.candidates.reference import Delta
from planeproof.contract import Burst, Picture, Scene
from planeproof.judge import CandidateFault, play
from planeproof.report.fault import fault_lines
from tests.report.stories import EMPTY, NICHE, SQUARE, full_scene

ADVICE = "The last line of the traceback that is in your own file"
SCENE = "The scene in which it happened"


class Needing:
    """Can't be made without an argument."""

    def __init__(self, machine: object) -> None:
        raise NotImplementedError


class Unmakeable(Delta):
    """Fails when it is made, in its own code."""

    def __init__(self) -> None:
        raise OSError("no display")


class Mute(Delta):
    """Raises without a word."""

    def blank(self, cycles: int) -> Iterable[Burst]:
        """No text after the error's name."""
        raise AssertionError


class Narrow(Delta):
    """Takes no cycles."""

    def blank(self) -> Iterable[Burst]:  # type: ignore[override]
        """Never reached."""
        raise NotImplementedError


def told(make: Callable[[], object], scene: Scene, *, full: bool = False) -> list[str]:
    """The page about what goes wrong."""
    with pytest.raises(CandidateFault) as caught:
        play(scene, make)  # type: ignore[arg-type]
    return fault_lines(caught.value, None, scene, full=full)


@pytest.mark.parametrize("make", [Needing, Narrow])
def test_a_call_that_reached_no_line_of_the_candidate_points_at_none(make: Callable[[], object]) -> None:
    """Neither its own lines nor the last of them: how it is called is said instead."""
    text = "\n".join(told(make, full_scene()))
    assert "TypeError: " in text
    assert "No line of its own was reached" in text
    assert "own lines:" not in text
    assert ADVICE not in text
    assert "out of its own code" not in text


def test_an_error_in_its_own_code_when_it_is_made_shows_the_line() -> None:
    """With the advice to look there; and no scene, of which it knew nothing yet."""
    text = "\n".join(told(Unmakeable, full_scene()))
    assert 'raise OSError("no display")' in text
    assert ADVICE in text
    assert SCENE not in text


def test_an_error_without_words_is_told_by_its_name() -> None:
    """No colon is left dangling."""
    assert "  What it did: raised AssertionError." in told(Mute, full_scene())


def test_the_scene_is_shown() -> None:
    """Its machine, its picture and when that is ready."""
    page = told(Mute, full_scene())
    after = page[page.index(SCENE) :]
    assert any('machine "two cells"' in line for line in after)
    assert "  picture 0, ready from refresh 0 on: 2 of 2 cells occupied (cells 0-1)" in after
    assert after.index("  picture 0") < after.index("To see it again")


def test_of_a_long_scene_the_first_pictures_are_shown_and_the_rest_counted() -> None:
    """In full, all of them."""
    scene = Scene.of(NICHE, [Picture.from_rows(0, [SQUARE, EMPTY])] * 9)
    short, full = told(Mute, scene), told(Mute, scene, full=True)
    assert "  3 more pictures, not shown here" in short
    assert [sum("ready from refresh" in line for line in page) for page in (short, full)] == [6, 9]
