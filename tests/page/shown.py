"""What a page shows, read out of the browser as plain values."""

import base64
import io
from typing import Any

import numpy as np
from numpy.typing import NDArray
from PIL import Image
from playwright.sync_api import Page

_ROW = """row => ({
    id: row.id,
    name: row.querySelector(':scope > h4').innerText,
    told: row.querySelector(':scope > .told').innerText,
    writes: [...row.querySelectorAll(':scope > .writes > ol > li')].map(li => li.textContent.trim()),
    bytes: row.querySelector(':scope .bytes mark')?.innerText ?? null,
    alike: [...row.querySelectorAll(':scope > .fold li')].map(li => li.textContent.trim()),
    broken: row.classList.contains('broken'),
    inView: row.getBoundingClientRect().top >= 0 && row.getBoundingClientRect().top < innerHeight,
    shots: Object.fromEntries([...row.querySelectorAll(':scope > .shots .shot')].map(shot => [
        shot.querySelector('b').innerText,
        [shot.querySelector('figcaption span').innerText,
         shot.querySelector('use')?.href.baseVal ?? null,
         shot.querySelector('svg')?.getAttribute('aria-label') ?? null]]))
})"""


def current_row(page: Page) -> dict[str, Any]:
    """The row that is pointed out, and has the focus."""
    row = page.locator(".row[aria-current=step]")
    assert row.count() == 1
    assert page.evaluate("document.activeElement.id") == row.get_attribute("id")
    found: dict[str, Any] = row.evaluate(_ROW)
    return found


def rows(page: Page, sheet: str) -> list[dict[str, Any]]:
    """All rows of one sheet."""
    found: list[dict[str, Any]] = page.locator(f"{sheet} .row").evaluate_all(f"rows => rows.map({_ROW})")
    return found


def picture(page: Page, reference: str) -> NDArray[np.uint8]:
    """The pixels of a picture of the gallery, (height, width, 3), decoded from the page itself."""
    address = page.locator(f"{reference} image").get_attribute("href")
    assert address is not None
    assert address.startswith("data:image/png;base64,")
    with Image.open(io.BytesIO(base64.b64decode(address.split(",")[1]))) as image:
        return np.asarray(image.convert("RGB"))


def photographed(page: Page, selector: str) -> NDArray[np.uint8]:
    """What the first element of that kind looks like on the screen."""
    with Image.open(io.BytesIO(page.locator(selector).first.screenshot(animations="allow"))) as image:
        return np.asarray(image.convert("RGB"))
