"""What pages look like, in both themes.

Whole pages are not compared with photographs: lettering, and so where things end up, differs from one machine's fonts
to the next's. What has no lettering is; for the rest it is said how the parts stand to one another, and axe-core
judges contrast in both themes.
"""

from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest
from PIL import Image
from playwright.sync_api import Browser, FloatRect, Page

from planeproof.pictures.frames import in_colours
from tests.page.browser import THEMES, Theme, opened
from tests.page.golden_page import DRAWN, photograph
from tests.page.shown import photographed
from tests.page.verdicts import GOLDEN, verdict_of

UNLIKE = 48
"""Steps of 255 by which a pixel is another one; a part may begin at a fraction of a pixel, which blurs its edges."""
SHARE = 0.02


def box(page: Page, selector: str) -> FloatRect:
    """Where the first element of that kind is."""
    found = page.locator(selector).first.bounding_box()
    assert found is not None, selector
    return found


@pytest.mark.parametrize("theme", THEMES)
@pytest.mark.parametrize("name", DRAWN)
def test_what_is_drawn(browser: Browser, tmp_path: Path, name: str, theme: Theme) -> None:
    """Bars, pictures and marks look as they did when somebody last looked at them."""
    found = np.asarray(photograph(browser, tmp_path, name, theme), dtype=np.int16)
    with Image.open(GOLDEN / f"{name}-{theme}.png") as image:
        kept = np.asarray(image.convert("RGB"), dtype=np.int16)
    assert all(abs(a - b) <= 1 for a, b in zip(found.shape, kept.shape, strict=True))
    height, width = (min(pair) for pair in zip(found.shape[:2], kept.shape[:2], strict=True))
    unlike = abs(found[:height, :width] - kept[:height, :width]).max(axis=2) > UNLIKE
    assert unlike.mean() <= SHARE


@pytest.mark.parametrize("name", DRAWN)
def test_photographs_of_the_two_themes_differ_where_they_should(name: str) -> None:
    """Only the display's own pictures are the same in both; a mark or a bar has the colours of its theme."""
    with Image.open(GOLDEN / f"{name}-light.png") as light, Image.open(GOLDEN / f"{name}-dark.png") as dark:
        same = np.abs(np.asarray(light, dtype=np.int16) - np.asarray(dark, dtype=np.int16)).mean() < UNLIKE / 4
    assert same == (name in {"seen", "difference"})


@pytest.mark.parametrize("theme", THEMES)
def test_the_picture_on_the_screen_is_the_frame(browser: Browser, tmp_path: Path, theme: Theme) -> None:
    """In the middle of each pixel of the display the screen has its very colour, in either theme."""
    finding = verdict_of("fail-half").findings[0]
    refresh = finding.play.refreshes[finding.violation.refresh]
    wanted = in_colours(finding.play.scene.machine, refresh.frame).astype(np.int16)
    with opened(browser, tmp_path, "fail-half", theme=theme) as page:
        screen = photographed(page, ".lead .shot:nth-child(2) svg").astype(np.int16)
    rows, columns = wanted.shape[:2]
    y = ((np.arange(rows) + 0.5) * screen.shape[0] / rows).astype(int)
    x = ((np.arange(columns) + 0.5) * screen.shape[1] / columns).astype(int)
    assert abs(screen[np.ix_(y, x)] - wanted).max() <= 2


@pytest.mark.parametrize("theme", THEMES)
def test_the_themes(browser: Browser, tmp_path: Path, theme: Theme) -> None:
    """Light is dark on light, dark is light on dark."""
    colour = "e => getComputedStyle(e).{}.match(/\\d+/g).map(Number).reduce((a, b) => a + b) / 3"
    with opened(browser, tmp_path, "fail", theme=theme) as page:
        paper, text = (page.locator("body").evaluate(colour.format(each)) for each in ("backgroundColor", "color"))
    assert (paper > 200 and text < 60) if theme == "light" else (paper < 60 and text > 200)


@pytest.mark.parametrize("kind", ["fail", "fail-late", "fail-silent", "fail-half", "fail-large"])
def test_the_first_screen_says_it_all(browser: Browser, tmp_path: Path, kind: str) -> None:
    """Without scrolling: the verdict, the sentence, expected, seen and difference, the byte, and the rule."""
    with opened(browser, tmp_path, kind) as page:
        parts = [".stamp", "h1", ".lead .shot:nth-child(1)", ".lead .shot:nth-child(2)", ".lead .shot:nth-child(3)"]
        parts += [".facts .bytes mark"] if verdict_of(kind).findings[0].violation.byte is not None else []
        for part in [*parts, ".facts .id"]:
            found = box(page, part)
            assert found["y"] + found["height"] <= 800, part
        tops = [box(page, part)["y"] for part in parts[:3]]
        assert tops == sorted(tops)


@pytest.mark.parametrize("width", [420, 1280])
def test_pictures_stand_beside_one_another(browser: Browser, tmp_path: Path, width: int) -> None:
    """Expected, seen and difference are on one line, none over another, on a telephone too."""
    with opened(browser, tmp_path, "fail-large", width=width) as page:
        boxes = [box(page, f".lead .shot:nth-child({n}) svg") for n in (1, 2, 3)]
    assert len({round(each["y"] + each["height"]) for each in boxes}) == 1
    assert all(a["x"] + a["width"] <= b["x"] for a, b in pairwise(boxes))


def test_the_broken_row_is_told_by_shape(browser: Browser, tmp_path: Path) -> None:
    """Its border is thicker than any other row's, and its bar has a triangle."""
    widths = "all => all.map(e => [e.classList.contains('broken'), parseFloat(getComputedStyle(e).borderLeftWidth)])"
    with opened(browser, tmp_path, "fail") as page:
        found = page.locator("#f1-sheet .row").evaluate_all(widths)
        assert {width for broken, width in found if broken} == {3}
        assert {width for broken, width in found if not broken} == {1}
        assert page.locator("#f1-sheet .here").count() == page.locator("#f1-sheet .row.broken .bar").count()


def test_a_shadow_tells_where_a_table_goes_on(browser: Browser, tmp_path: Path) -> None:
    """On a telephone the edge is darker at the side at which there is more, and as the paper at the other."""
    with opened(browser, tmp_path, "pass", width=400) as page:
        selector = "section[aria-labelledby=ground] .table"
        for left, shadow_at_left, shadow_at_right in [(0, False, True), (10_000, True, False)]:
            page.locator(selector).evaluate("(e, left) => { e.scrollLeft = left; }", left)
            pixels = photographed(page, selector)
            # The median of a column of pixels is its ground: lettering and lines are the lesser part.
            left_edge, paper, right_edge = np.median(pixels[:, [0, 120, -1]].astype(int).sum(axis=2), axis=0).tolist()
            assert (left_edge < paper - 60) is shadow_at_left
            assert (right_edge < paper - 60) is shadow_at_right
