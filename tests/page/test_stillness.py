from pathlib import Path

import pytest
from playwright.sync_api import Browser

from planeproof.pictures import CAUTION
from tests.page.browser import opened
from tests.page.shown import current_row

MOVING = """[...document.querySelectorAll('*')].filter(e => {
    const { animationName, transitionDuration, scrollBehavior } = getComputedStyle(e);
    return animationName !== 'none' || parseFloat(transitionDuration) > 0 || scrollBehavior === 'smooth';
}).length + document.getAnimations().length"""


@pytest.mark.parametrize("still", [False, True])
def test_nothing_moves(browser: Browser, tmp_path: Path, still: bool) -> None:
    """There is no animation, transition or smooth scrolling, whatever the reader has asked for."""
    with opened(browser, tmp_path, "fail", still=still) as page:
        assert page.evaluate(MOVING) == 0
        assert page.locator("video, animate, animateTransform, set, marquee, canvas").count() == 0


def test_nothing_plays_by_itself(browser: Browser, tmp_path: Path) -> None:
    """Left alone for a minute, the page is where it was."""
    with opened(browser, tmp_path, "fail", stopped=True) as page:
        before = page.content()
        page.clock.run_for(60_000)
        assert page.content() == before


def test_a_key_held_down_does_not_run_on(browser: Browser, tmp_path: Path) -> None:
    """Keys that repeat themselves make one step."""
    with opened(browser, tmp_path, "fail", stopped=True) as page:
        for _ in range(5):
            page.clock.run_for(1000)
            page.keyboard.down("ArrowRight")  # down again without up in between: that is what holding it does
        assert current_row(page)["id"] == "f1-setup"


def test_no_more_than_six_rows_a_second(browser: Browser, tmp_path: Path) -> None:
    """However fast the key is pressed, a second shows at most six changes, and so three flashes."""
    with opened(browser, tmp_path, "fail-large", stopped=True) as page:
        page.clock.pause_at("2030-01-01T00:00:00Z")
        places = set()
        for _ in range(50):
            page.clock.run_for(20)
            page.keyboard.press("ArrowRight")
            places.add(current_row(page)["id"])
        assert 2 < len(places) <= 6


def test_the_caution_stands_wherever_one_can_step(browser: Browser, tmp_path: Path) -> None:
    """Every sheet has the usual words above its rows."""
    with opened(browser, tmp_path, "fail") as page:
        sheets = page.locator(".proof")
        assert sheets.count() == 3
        for sheet in sheets.all():
            assert sheet.locator(".caution").text_content() == CAUTION
