import numpy as np

from planeproof.pictures.luminance import chromaticity, relative_luminance, saturated_red
from tests.pictures.other_library import colour


def some_colours() -> np.ndarray:
    """Two thousand colours, and the corners of the cube."""
    drawn = np.random.default_rng(5).integers(0, 256, size=(2000, 3), dtype=np.uint8)
    corners = np.array(np.meshgrid([0, 255], [0, 255], [0, 255])).reshape(3, -1).T.astype(np.uint8)
    return np.concatenate([drawn, corners])


def test_relative_luminance_is_that_of_another_library() -> None:
    """The Y of colour-science, to the last digits; the matrices of the standard are rounded to four."""
    rgb = some_colours()
    other = colour.sRGB_to_XYZ(rgb / 255)[:, 1]
    assert np.abs(relative_luminance(rgb) - other).max() < 1e-12


def test_chromaticity_is_that_of_another_library() -> None:
    """u', v' of colour-science, except for black, which has none."""
    rgb = some_colours()
    rgb = rgb[rgb.any(axis=1)]
    other = colour.Luv_to_uv(colour.XYZ_to_Luv(colour.sRGB_to_XYZ(rgb / 255)))
    assert np.abs(chromaticity(rgb) - other).max() < 1e-3


def test_figures_worked_out_before() -> None:
    """u', v' of red and white, their distance, and the greys at the limits (RUN with colour-science)."""
    red, white = (chromaticity(np.array(rgb, dtype=np.uint8)) for rgb in ((255, 0, 0), (255, 255, 255)))
    assert np.allclose(red, (0.4508, 0.5229), atol=1e-3)
    assert np.allclose(white, (0.1978, 0.4683), atol=1e-3)
    assert abs(float(np.linalg.norm(red - white)) - 0.2588) < 1e-3
    greys = relative_luminance(np.repeat(np.arange(256, dtype=np.uint8)[:, None], 3, axis=1))
    assert greys[89] < 0.1 <= greys[90]
    assert greys[231] < 0.8 <= greys[232]


def test_a_saturated_red_is_four_fifths_red_in_linear_light() -> None:
    """Pure red is, however dark; black, white, orange and magenta are not."""
    rgb = np.array([[255, 0, 0], [20, 0, 0], [0, 0, 0], [255, 255, 255], [255, 165, 0], [255, 0, 255]], dtype=np.uint8)
    assert saturated_red(rgb).tolist() == [True, True, False, False, False, False]
