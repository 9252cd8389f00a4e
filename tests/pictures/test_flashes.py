from collections.abc import Sequence
from fractions import Fraction

import numpy as np
import pytest

from planeproof.contract import RGB
from planeproof.pictures import excesses
from planeproof.pictures.flashes import field_size
from planeproof.pictures.marks import Canvas

BLACK, WHITE, RED = (0, 0, 0), (255, 255, 255), (255, 0, 0)


def flat(colours: Sequence[RGB], size: tuple[int, int] = (6, 6)) -> list[Canvas]:
    """A frame all over of each colour."""
    return [np.full((*size, 3), rgb, dtype=np.uint8) for rgb in colours]


def swapping(every: int, frames: int, one: RGB = BLACK, other: RGB = WHITE) -> list[Canvas]:
    """Two colours that take turns, each for ``every`` frames."""
    return flat([(one, other)[n // every % 2] for n in range(frames)])


def kinds(frames: Sequence[Canvas], rate: int) -> set[str]:
    """The kinds of flashes of which there are too many."""
    return {excess.kind for excess in excesses(frames, Fraction(1, rate))}


def flashing(part: np.ndarray, flashes: int, rate: int) -> list[Canvas]:
    """So many flashes in the first second where ``part`` is set, black all else, then a second of black."""
    frames = []
    for n in range(2 * rate):
        lit = n < rate and n * 2 * flashes // rate % 2 == 1
        frames.append((part & lit)[..., None].repeat(3, axis=2).astype(np.uint8) * np.uint8(255))
    return frames


@pytest.mark.parametrize(("rate", "every", "too_many"), [(50, 9, False), (50, 8, True), (60, 10, False), (60, 9, True)])
def test_how_often_two_pictures_may_take_turns(rate: int, every: int, too_many: bool) -> None:
    """More than three flashes are seven changes in a second: figures worked out beforehand (RUN)."""
    assert bool(kinds(swapping(every, 3 * rate), rate)) == too_many


@pytest.mark.parametrize(("flashes", "too_many"), [(1, False), (2, False), (3, False), (4, True), (10, True)])
def test_flashes_in_one_second(flashes: int, too_many: bool) -> None:
    """Up to three flashes in one second, and nothing more after it, are allowed; four are not."""
    everything = np.ones((6, 6), dtype=np.bool_)
    assert bool(kinds(flashing(everything, flashes, 60), 60)) == too_many


@pytest.mark.parametrize(
    ("dark", "bright", "too_many"), [(0, 89, False), (0, 90, True), (231, 255, True), (232, 255, False)]
)
def test_what_a_general_flash_is(dark: int, bright: int, too_many: bool) -> None:
    """A tenth of the maximum or more, the darker image below 0.80: the greys where that begins and ends (RUN)."""
    frames = swapping(2, 100, (dark,) * 3, (bright,) * 3)
    assert kinds(frames, 50) == ({"general"} if too_many else set())


@pytest.mark.parametrize(("tiles", "too_many"), [(26, False), (27, True)])
@pytest.mark.parametrize("scattered", [False, True])
def test_how_large_an_area_may_flash(tiles: int, scattered: bool, too_many: bool) -> None:
    """A quarter of 10 degrees is 26.6 tiles of a 256 x 240 picture that fills the screen (RUN), joined or scattered."""
    cells = [(row, column) for row in range(10) for column in range(10)]
    chosen = (
        cells[: 4 * tiles : 4] if scattered and 4 * tiles <= len(cells) else cells[:: 3 if scattered else 1][:tiles]
    )
    chosen += [cell for cell in cells if cell not in chosen][: tiles - len(chosen)]
    part = np.zeros((240, 256), dtype=np.bool_)
    for row, column in chosen:
        part[row * 8 : row * 8 + 8, column * 8 : column * 8 + 8] = True
    assert part.sum() == tiles * 64
    assert bool(kinds(flashing(part, 5, 50), 50)) == too_many


def test_areas_too_far_apart_to_be_looked_at_together_are_not_added_up() -> None:
    """Twenty tiles in one corner and twenty in the opposite one lie in no common field."""
    part = np.zeros((240, 256), dtype=np.bool_)
    part[:32, :40] = part[-32:, -40:] = True
    assert field_size(part.shape) == (80, 86)
    assert not kinds(flashing(part, 5, 50), 50)
    part[:32, 40:80] = True
    assert kinds(flashing(part, 5, 50), 50) == {"general"}


def test_flashes_that_move_on_count_as_well() -> None:
    """No pixel flashes more than three times, but the 10 degrees do: the flash goes from one half to the other."""
    frames = []
    for n in range(60):
        picture = np.zeros((6, 6, 3), dtype=np.uint8)
        if n // 5 % 2:
            picture[:, slice(0, 3) if n // 10 % 2 else slice(3, 6)] = 255
        frames.append(picture)
    assert kinds(frames, 60) == {"general"}
    assert not kinds(frames, 25)


def test_flashes_that_sweep_over_the_picture_count_as_well() -> None:
    """Never more than an eighth of the field changes at once, but every pixel of it flashes five times a second."""
    frames = []
    for n in range(120):
        lit = (n + np.arange(24)) % 12 < 6
        frames.append(np.broadcast_to(np.where(lit, 255, 0).astype(np.uint8)[:, None, None], (24, 24, 3)))
    assert kinds(frames, 60) == {"general"}
    assert not kinds(frames, 30)


def test_a_slow_ramp_up_and_down_is_a_change_each_way() -> None:
    """Steps below a tenth add up from valley to peak: the stricter reading.

    Multi-step ramps of the open labelled set pse-test-media (l03n, y03n: 64, 108, 136 and the like) are labelled as
    passing (READ); the note of WCAG on adjacent peaks and valleys, read by the letter, says otherwise.
    """
    ramp = [0, 60, 84, 104, 120, 104, 84, 60]
    frames = flat([(grey,) * 3 for grey in ramp * 8])
    assert kinds(frames, 60) == {"general"}


def test_small_changes_on_the_way_are_no_changes() -> None:
    """Luminance that trembles by less than a tenth never flashes, wherever it slowly goes."""
    frames = flat([(200 - n // 4 + 8 * (n % 2),) * 3 for n in range(200)])
    assert not kinds(frames, 50)


@pytest.mark.parametrize(("flashes", "too_many"), [(2, False), (3, False), (4, True)])
def test_red_flashes(flashes: int, too_many: bool) -> None:
    """Red and a grey of the same luminance are no general flash, but a red one."""
    grey = (127, 127, 127)
    frames = flat([RED if n < 60 and n * 2 * flashes // 60 % 2 else grey for n in range(120)])
    assert kinds(frames, 60) == ({"red"} if too_many else set())


@pytest.mark.parametrize(
    ("one", "other", "found"),
    [
        (RED, (0, 0, 255), {"red"}),
        (RED, (200, 0, 0), set()),
        ((0, 0, 255), (0, 60, 255), set()),
        (RED, (235, 115, 50), set()),
        (RED, (255, 150, 150), set()),
        (RED, (255, 200, 200), {"red"}),
    ],
)
def test_what_a_red_flash_is(one: RGB, other: RGB, found: set[str]) -> None:
    """One colour is a saturated red, the two more than 0.2 apart: not two reds, two blues, or red and a pale red."""
    assert kinds(swapping(3, 60, one, other), 50) - {"general"} == found


def test_red_on_black_is_both() -> None:
    """Black has no colour of its own and is taken for white's."""
    assert kinds(swapping(3, 60, BLACK, RED), 50) == {"general", "red"}


def test_what_is_said_of_an_excess() -> None:
    """Which frames, how many flashes, how much of the field, and where."""
    (excess,) = excesses(swapping(5, 60), Fraction(1, 50))
    assert (excess.kind, excess.first, excess.last, excess.changes, excess.area) == ("general", 5, 35, 7, 1.0)
    assert "3.5 within one second (3 are allowed) in frames 5 to 35, over 100% of the 10-degree field" in str(excess)


def test_still_pictures_never_flash() -> None:
    """No frame, one frame, and the same frame a thousand times."""
    still = flat([WHITE])
    assert (
        not excesses([], Fraction(1, 50)) + excesses(still, Fraction(1, 50)) + excesses(still * 1000, Fraction(1, 50))
    )
