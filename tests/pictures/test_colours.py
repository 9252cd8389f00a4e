import warnings

import numpy as np
import pytest

from planeproof.contract import RGB
from planeproof.pictures import blanking, both, cells, colours, compared, contents, pool
from planeproof.pictures.luminance import linear
from planeproof.pictures.marks import Mark
from tests.pictures.other_library import colour

DEFICIENCIES = ("Protanomaly", "Deuteranomaly", "Tritanomaly")
APART = 15
"""CIE 1976 colour difference: several times what is just noticeable."""

PALETTE = {
    colours.BLACK,
    colours.ORANGE,
    colours.SKY_BLUE,
    colours.BLUISH_GREEN,
    colours.YELLOW,
    colours.BLUE,
    colours.VERMILLION,
    colours.REDDISH_PURPLE,
}
LEGENDS: dict[str, list[Mark]] = {
    "blanking": list(blanking.MARKS.values()),
    "both": list(both.MARKS.values()),
    "cells": list(cells.CELLS.values()),
    "changes": list(cells.CHANGES.values()),
    "compared": list(compared.MARKS.values()),
    "pool": list(pool.MARKS.values()),
}


def seen_with(deficiency: str, rgb: RGB) -> np.ndarray:
    """CIE Lab of a colour as somebody with that deficiency, in full, sees it (Machado et al. 2009)."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # its reminder that the matrices for tritanomaly are an approximation
        matrix = colour.matrix_cvd_Machado2009(deficiency, 1.0)
    light = np.clip(matrix @ linear(np.array(rgb, dtype=np.uint8)), 0, 1)
    return np.asarray(colour.XYZ_to_Lab(colour.RGB_to_XYZ(light, "sRGB", apply_cctf_decoding=False)))


@pytest.mark.parametrize("deficiency", DEFICIENCIES)
def test_the_two_colours_of_the_sides_stay_apart(deficiency: str) -> None:
    """Seen, behind and both, and the ground below them, differ clearly from one another for everybody."""
    used = [*(mark.colour for mark in both.MARKS.values()), colours.GROUND]
    labs = [seen_with(deficiency, rgb) for rgb in used]
    pairs = [float(np.linalg.norm(a - b)) for i, a in enumerate(labs) for b in labs[i + 1 :]]
    assert min(pairs) > APART


def test_colours_that_do_not_stay_apart_are_noticed() -> None:
    """Red and green of one lightness, which the check exists for, are closer than it allows."""
    red, green = (seen_with("Deuteranomaly", rgb) for rgb in ((163, 84, 60), (109, 112, 47)))
    assert float(np.linalg.norm(red - green)) < APART


@pytest.mark.parametrize("name", LEGENDS)
def test_no_two_marks_of_a_legend_differ_by_colour_alone(name: str) -> None:
    """Two marks of one picture have another shape, or one is so much darker that a black and white print tells."""
    marks = LEGENDS[name]
    for i, one in enumerate(marks):
        for other in marks[i + 1 :]:
            darker, lighter = sorted(
                float(colour.XYZ_to_Lab(colour.sRGB_to_XYZ(np.array(mark.colour) / 255))[0]) for mark in (one, other)
            )
            assert one.shape is not other.shape or lighter - darker > APART, (name, one, other)


def test_marks_are_of_the_named_palette() -> None:
    """No colour tells anything that is not one of the eight; rules and lettering are apart from that."""
    marks = [mark for legend in LEGENDS.values() for mark in legend] + list(contents.MARKS.values())
    told = {mark.colour for mark in marks} - {colours.LINE, colours.TEXT}
    assert told <= PALETTE
