"""A browser for the tests of one file at a time."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser

from tests.page.browser import chromium


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """Chromium. Not for the whole session: while it is there an event loop runs, and other tests start their own."""
    with chromium() as found:
        yield found
