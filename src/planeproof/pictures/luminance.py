"""What WCAG 2.2 measures flashes by: relative luminance, saturated red, and how far apart two colours are.

From the definitions of "relative luminance" and "general flash and red flash thresholds" of WCAG 2.2 (W3C; READ in the
w3c/wcag repository). The tests compare them with the library colour-science.
"""

import numpy as np
from numpy.typing import NDArray

Levels = NDArray[np.float64]

WEIGHTS = np.array([0.2126, 0.7152, 0.0722])
"""Of linear red, green and blue in the relative luminance."""

TO_XYZ = np.array([[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]])
"""From linear red, green and blue to CIE XYZ (IEC 61966-2-1, from memory; the tests compare it)."""

SATURATED = 0.8
"""R / (R + G + B), in linear light, from which on a red is saturated."""

_CODES = np.arange(256) / 255
_LINEAR = np.where(_CODES <= 0.04045, _CODES / 12.92, ((_CODES + 0.055) / 1.055) ** 2.4)


def linear(picture: NDArray[np.uint8]) -> Levels:
    """8-bit sRGB as linear light, 0 to 1; the shape stays."""
    return np.asarray(_LINEAR[picture])


def relative_luminance(picture: NDArray[np.uint8]) -> Levels:
    """Relative luminance of 8-bit sRGB of shape (..., 3): 0 for black, 1 for white."""
    return np.asarray(linear(picture) @ WEIGHTS)


def saturated_red(picture: NDArray[np.uint8]) -> NDArray[np.bool_]:
    """Which colours of shape (..., 3) are saturated reds; black is none."""
    light = linear(picture)
    return np.asarray((light[..., 0] >= SATURATED * light.sum(axis=-1) - 1e-12) & (picture[..., 0] > 0))


def chromaticity(picture: NDArray[np.uint8]) -> Levels:
    """CIE 1976 u', v' of 8-bit sRGB of shape (..., 3).

    Black has none and is given that of white (1, 1, 1), so that red with black between counts as a change of colour.
    """
    light = linear(picture)
    light[(picture == 0).all(axis=-1)] = 1.0
    x, y, z = np.moveaxis(light @ TO_XYZ.T, -1, 0)
    divisor = x + 15 * y + 3 * z
    return np.stack([4 * x / divisor, 9 * y / divisor], axis=-1)
