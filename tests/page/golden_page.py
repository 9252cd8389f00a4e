"""What is kept in ``golden/``: what pages say, as JSON, and photographs of what is drawn on them.

Write the files anew, then read the difference: python -m tests.page.golden_page
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from PIL import Image
from playwright.sync_api import Browser

from planeproof.page import page_data
from tests.page.browser import THEMES, Theme, chromium, opened
from tests.page.shown import photographed
from tests.page.verdicts import GOLDEN, verdict_of

SAID = ("pass", "fail", "fail-half", "vacuous", "fault")
"""The pages whose data is kept."""

DRAWN = {
    "seen": ("fail", ".lead .shot:nth-child(2) svg"),
    "difference": ("fail", ".lead .shot:nth-child(3) svg"),
    "bar": ("fail", "#f1-sheet .row.broken .bar"),
    "late": ("fail-late", "#f1-sheet .row.broken .bar"),
    "legend": ("fail", ".legend li:nth-child(4) svg"),
}
"""Name -> the page and the part of it that is photographed. Parts without lettering, which differs by machine."""


def data_of(kind: str) -> str:
    """The data of one page as its file has it."""
    return page_data(verdict_of(kind)) + "\n"


def photograph(browser: Browser, folder: Path, name: str, theme: Theme) -> Image.Image:
    """One part of a page in one theme."""
    kind, selector = DRAWN[name]
    with opened(browser, folder, kind, theme=theme) as page:
        return Image.fromarray(photographed(page, selector))


def main() -> None:
    """Write all of them anew."""
    GOLDEN.mkdir(exist_ok=True)
    for kind in SAID:
        (GOLDEN / f"{kind}.json").write_text(data_of(kind), "utf-8")
    with TemporaryDirectory() as folder, chromium() as browser:
        for name in DRAWN:
            for theme in THEMES:
                photograph(browser, Path(folder), name, theme).save(GOLDEN / f"{name}-{theme}.png", optimize=True)


if __name__ == "__main__":
    main()
