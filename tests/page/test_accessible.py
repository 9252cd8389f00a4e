from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from tests.page.browser import THEMES, Theme, axe, opened

PAGES = ["pass", "fail", "fail-silent", "fail-large", "vacuous", "fault", "hung"]


def complaints(page: Page) -> list[str]:
    """What axe-core finds, by rule and element; nothing is left out of its rules."""
    page.evaluate(axe())
    found: dict[str, Any] = page.evaluate("axe.run(document)")
    assert len(found["passes"]) > 15  # it did look
    return [
        f"{each['id']}: {node['target']} {node['failureSummary']}"
        for each in found["violations"]
        for node in each["nodes"]
    ]


@pytest.mark.parametrize("theme", THEMES)
@pytest.mark.parametrize("kind", PAGES)
def test_axe_finds_nothing(browser: Browser, tmp_path: Path, kind: str, theme: Theme) -> None:
    """As it is opened, and with everything unfolded and a row pointed out, there is no violation."""
    with opened(browser, tmp_path, kind, theme=theme) as page:
        assert complaints(page) == []
        page.evaluate("document.querySelectorAll('details').forEach(each => { each.open = true; })")
        page.keyboard.press("ArrowRight")
        assert complaints(page) == []


def test_axe_would_find_something(browser: Browser, tmp_path: Path) -> None:
    """A page whose pictures have lost their words and whose text is pale is not let pass."""
    with opened(browser, tmp_path, "fail") as page:
        page.evaluate("""document.querySelectorAll('svg[role=img]').forEach(e => e.removeAttribute('aria-label'));
            document.querySelector('h1').attributeStyleMap.set('color', '#ddd');""")
        found = {line.split(":")[0] for line in complaints(page)}
    assert {"svg-img-alt", "color-contrast"} <= found


@pytest.mark.parametrize("kind", PAGES)
def test_landmarks_and_headings(browser: Browser, tmp_path: Path, kind: str) -> None:
    """There is one h1, no level is passed over going down, and header, main and footer hold everything."""
    with opened(browser, tmp_path, kind) as page:
        levels = page.locator("h1, h2, h3, h4").evaluate_all("all => all.map(e => Number(e.tagName[1]))")
        assert levels.count(1) == 1
        assert all(after <= before + 1 for before, after in pairwise(levels))
        outside = (
            "all => all.map(e => e.tagName).filter(n => !['HEADER', 'MAIN', 'FOOTER', 'SCRIPT', 'svg'].includes(n))"
        )
        assert page.locator("body > *").evaluate_all(outside) == []


@pytest.mark.parametrize("width", [320, 768, 1280, 1920])
@pytest.mark.parametrize("kind", ["pass", "fail", "fail-large", "fault", "hostile"])
def test_nothing_is_wider_than_the_window(browser: Browser, tmp_path: Path, kind: str, width: int) -> None:
    """From a narrow telephone on, nobody has to scroll sideways."""
    with opened(browser, tmp_path, kind, width=width) as page:
        page.evaluate("document.querySelectorAll('details').forEach(each => { each.open = true; })")
        assert page.evaluate("document.documentElement.scrollWidth") <= width
