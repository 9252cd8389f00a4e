"""The two figures that the page of a long run promises: how large it is, and how soon it is open.

The one place in which seconds are asserted, for they are what is promised: under one second. What was measured on a
busy machine with two processors when this was written is said beside it.
"""

from pathlib import Path
from time import perf_counter

from pytest_benchmark.fixture import BenchmarkFixture

from planeproof.page import page_html
from tests.page.browser import chromium
from tests.page.verdicts import long

MOST_BYTES = 2_000_000
SECONDS = 1.0
ROUNDS = 9
DRAWN = "new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))"


def test_a_long_run(benchmark: BenchmarkFixture, tmp_path: Path) -> None:
    """A run of 200 refreshes at full size: under 2 MB (1.2), and drawn in Chromium in under 1 s (0.2 to 0.4)."""
    verdict = long()
    assert len(verdict.findings[0].play.refreshes) >= 200
    file = tmp_path / "index.html"
    file.write_text(page_html(verdict), "utf-8")
    assert file.stat().st_size < MOST_BYTES
    times = []
    with chromium() as browser:
        for _ in range(ROUNDS):
            page = browser.new_page()
            begun = perf_counter()
            page.goto(file.as_uri())
            page.evaluate(DRAWN)
            times.append(perf_counter() - begun)
            page.close()
    assert min(times) < SECONDS  # what else the computer does only ever adds to it
    benchmark.extra_info.update(bytes=file.stat().st_size, opened=round(min(times), 3), slowest=round(max(times), 3))
    benchmark.pedantic(page_html, args=(verdict,), rounds=3)  # type: ignore[no-untyped-call]
