import io
from fractions import Fraction
from pathlib import Path

import numpy as np
import pytest
from PIL import Image, ImageSequence

from planeproof.candidates.reference import Delta
from planeproof.contract import Picture
from planeproof.machines import read_machine
from planeproof.pictures import CAUTION, KINDS, Animation, Course, Style, TooManyFlashes, png_of, write_animation
from planeproof.pictures.animation import frames_of, refresh_seconds
from tests.pictures.runs import EMPTY, FULL, NICHE, SLOPE, SQUARE, course

BARE = Style(labels=False, scale=1)


def flickering() -> Course:
    """All and nothing by turns, refresh after refresh: ten flashes in less than half a second."""
    return course(NICHE, Delta, *[[FULL, FULL], [EMPTY, EMPTY]] * 10)


def calm() -> Course:
    """Two pictures."""
    return course(NICHE, Delta, [SQUARE, EMPTY], [EMPTY, SLOPE])


def test_an_animation_that_keeps_the_limits_is_written(tmp_path: Path) -> None:
    """Every refresh is in it, played once; the caution stands in the file."""
    run, path = calm(), tmp_path / "calm.png"
    assert write_animation(run, path, Animation(style=BARE)) == ()
    with Image.open(path) as image:
        assert CAUTION in image.info["Warning"]
        assert image.info["loop"] == 1
        held = []
        for shown in ImageSequence.Iterator(image):
            held += [np.asarray(shown.convert("RGB"))] * round(shown.info["duration"] / 20)
    frames = frames_of(run, "seen")
    assert len(held) == len(frames)
    assert all(np.array_equal(one, other) for one, other in zip(held, frames, strict=True))


def test_an_animation_that_exceeds_the_limits_is_refused(tmp_path: Path) -> None:
    """Nothing is written, and it is said where and how much."""
    path = tmp_path / "flicker.png"
    with pytest.raises(TooManyFlashes, match=r"general flashes: 3.5 within one second .* in frames 1 to 7, over 100%"):
        write_animation(flickering(), path, Animation(style=BARE))
    assert not path.exists()


def test_it_is_written_if_that_is_wanted_all_the_same(tmp_path: Path) -> None:
    """Then the file says so itself, in its text and, with labels, in its picture."""
    path = tmp_path / "flicker.png"
    (excess,) = write_animation(flickering(), path, Animation(style=BARE, despite_flashes=True))
    with Image.open(path) as image:
        assert image.info["Warning"] == f"{CAUTION} This animation EXCEEDS the limits: {excess}."


def test_slower_may_be_slow_enough(tmp_path: Path) -> None:
    """Each refresh eight times as long is still too fast at 50 Hz, nine times is not (RUN)."""
    run = flickering()
    with pytest.raises(TooManyFlashes):
        write_animation(run, tmp_path / "8.png", Animation(style=BARE, slower=8))
    assert write_animation(run, tmp_path / "9.png", Animation(style=BARE, slower=9)) == ()


def test_the_caution_is_in_the_picture(tmp_path: Path) -> None:
    """With labels there is lettering above every frame, without there is none."""
    sizes = []
    for labels in (True, False):
        path = tmp_path / f"{labels}.png"
        write_animation(calm(), path, Animation(style=Style(labels=labels, scale=1)))
        with Image.open(path) as image:
            sizes.append(image.size)
    assert sizes[1] == (16, 8)
    assert sizes[0][1] > 100


def test_a_refresh_lasts_what_its_line_standard_says() -> None:
    """A fiftieth and a sixtieth of a second; whole milliseconds in the file are never less."""
    assert refresh_seconds(read_machine("vitrine-50")) == Fraction(1, 50)
    assert refresh_seconds(read_machine("vitrine-60")) == Fraction(1, 60)


@pytest.mark.parametrize("kind", ["seen", "behind", "unbuffered"])
def test_each_kind_has_a_frame_a_refresh(kind: str) -> None:
    """And they are not all the same picture."""
    run = calm()
    frames = frames_of(run, kind)
    assert len(frames) == len(run.moments)
    assert len({frame.tobytes() for frame in frames}) > 1


def test_pictures_stand_still_unless_asked() -> None:
    """A picture of any kind is a single frame."""
    run = calm()
    for kind in KINDS:
        with Image.open(io.BytesIO(png_of(run, 0, kind))) as image:
            assert getattr(image, "n_frames", 1) == 1


def test_the_first_picture_is_no_picture(tmp_path: Path) -> None:
    """A run in which nothing is ever shown can be animated too."""
    run = course(NICHE, Delta, Picture.from_rows(0, [EMPTY, EMPTY]).rows.tolist())
    assert write_animation(run, tmp_path / "empty.png", Animation(style=BARE)) == ()
