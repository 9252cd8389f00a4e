"""A real Chromium, without a window, and axe-core: both got by ``sh ci/browser``."""

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path
from typing import Literal

import pytest
from playwright.sync_api import Browser, Page, sync_playwright

from planeproof.page import page_html
from tests.page.verdicts import verdict_of

ROOT = Path(__file__).parents[2]
AXE = ROOT / ".venv" / "browser" / "axe.min.js"
WHAT_TO_DO = "run `sh ci/browser`, which gets it"

Theme = Literal["light", "dark"]
THEMES: tuple[Theme, ...] = ("light", "dark")


@contextmanager
def chromium() -> Iterator[Browser]:
    """Chromium. It fails where there is none: a test that is left out says nothing."""
    named = os.environ.get("CHROMIUM", "chromium")
    path = shutil.which(named)
    if path is None:
        pytest.fail(f"no {named}: {WHAT_TO_DO}")
    with sync_playwright() as playwright:
        # In a container there may be neither a second user for the sandbox nor room in /dev/shm.
        browser = playwright.chromium.launch(executable_path=path, args=["--no-sandbox", "--disable-dev-shm-usage"])
        yield browser
        browser.close()


@cache
def axe() -> str:
    """The text of axe-core."""
    if not AXE.exists():
        pytest.fail(f"no axe-core at {AXE.relative_to(ROOT)}: {WHAT_TO_DO}")
    return AXE.read_text("utf-8")


@cache
def html_of(kind: str) -> str:
    """The page of that kind."""
    return page_html(verdict_of(kind))


@contextmanager
def opened(
    browser: Browser,
    folder: Path,
    kind: str,
    *,
    theme: Theme = "light",
    width: int = 1280,
    height: int = 800,
    script: bool = True,
    still: bool = False,
    stopped: bool = False,
) -> Iterator[Page]:
    """The page of that kind, opened from disk; ``stopped`` stops its clock, so that steps need no waiting for."""
    file = folder / "index.html"
    file.write_text(html_of(kind), "utf-8")
    context = browser.new_context(
        viewport={"width": width, "height": height},
        color_scheme=theme,
        java_script_enabled=script,
        reduced_motion="reduce" if still else "no-preference",
    )
    page = context.new_page()
    if stopped:
        page.clock.install()
    page.goto(file.as_uri())
    yield page
    context.close()
