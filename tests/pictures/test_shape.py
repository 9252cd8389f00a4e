from fractions import Fraction

import numpy as np
import pytest

from planeproof.machines import read_machine
from planeproof.pictures.frames import enlarged
from planeproof.pictures.shape import Enlargement, enlarged_by, fitting, pixel_shape


def test_the_shape_goes_by_the_line_standard() -> None:
    """12:11 with 625 lines, 10:11 with 525 (sample aspect ratios of ITU-T H.264, table E-1: MEM)."""
    assert pixel_shape(read_machine("vitrine-50")) == Fraction(12, 11)
    assert pixel_shape(read_machine("vitrine-60")) == Fraction(10, 11)


@pytest.mark.parametrize("shape", [Fraction(12, 11), Fraction(10, 11), Fraction(1), Fraction(2), Fraction(1, 3)])
@pytest.mark.parametrize("scale", [1, 2, 5, 11, 64])
def test_an_enlargement_is_the_nearest_in_whole_pixels(shape: Fraction, scale: int) -> None:
    """No other whole number across is nearer, and what is left over makes up for the rest exactly."""
    by = enlarged_by(scale, shape)
    assert by.down == scale
    assert by.across == 1 or abs(by.across - scale * shape) <= Fraction(1, 2)
    assert Fraction(by.across, by.down) * by.left_over == shape


@pytest.mark.parametrize("columns", [8, 16, 320, 640, 960, 5000])
def test_pictures_fit(columns: int) -> None:
    """At most 3840 wide, whole pixels, and exact wherever exact fits."""
    for shape in (Fraction(12, 11), Fraction(10, 11), Fraction(1)):
        by = fitting(columns, shape)
        assert by.across * columns <= 3840 or (by.across, by.down) == (1, 1)
        exact = shape.numerator * columns <= 3840
        assert (by.left_over == 1) == (exact or shape == 1 or by.across == shape.numerator)


def test_a_showcase_at_its_exact_shape_is_as_wide_as_a_film() -> None:
    """320 pixels of 12 are 3840."""
    by = fitting(320, Fraction(12, 11))
    assert (by.across, by.down, 320 * by.across) == (12, 11, 3840)


def test_enlarging_repeats_every_pixel() -> None:
    """Nothing is smoothed: each pixel becomes a block of itself."""
    picture = np.arange(2 * 3 * 3, dtype=np.uint8).reshape(2, 3, 3)
    large = enlarged(picture, Enlargement(across=3, down=2, shape=Fraction(1)))
    assert large.shape == (4, 9, 3)
    assert all((large[y, x] == picture[y // 2, x // 3]).all() for y in range(4) for x in range(9))
