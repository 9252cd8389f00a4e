import re
from html.parser import HTMLParser
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from planeproof.page import page_html
from tests.page.browser import html_of, opened
from tests.page.verdicts import HOSTILE, KINDS, hostile


class Skeleton(HTMLParser):
    """The elements of a page and the names of their attributes, without any of its words."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.found: list[tuple[str, ...]] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """One more element."""
        self.found.append((tag, *(name for name, _ in attrs)))


@pytest.mark.parametrize("kind", KINDS)
def test_it_loads_nothing(browser: Browser, tmp_path: Path, kind: str) -> None:
    """From disk, a page asks for itself and for the pictures it holds; it complains of nothing."""
    with opened(browser, tmp_path, kind) as page:
        asked: list[str] = []
        said: list[str] = []
        page.on("request", lambda request: asked.append(request.url))
        page.on("console", lambda message: said.append(message.text))
        page.on("pageerror", lambda error: said.append(str(error)))
        page.reload()
        assert [url for url in asked if not url.startswith("data:image/png;base64,")] == [page.url]
        assert said == []


def test_it_may_load_nothing(browser: Browser, tmp_path: Path) -> None:
    """A script that came in somehow may not run, and nothing may be fetched, styled or drawn from elsewhere."""
    tries = """new Promise(done => {
        const broken = [];
        document.addEventListener('securitypolicyviolation', e => {
            broken.push(e.effectiveDirective); if (broken.length === 4) done(broken.sort()); });
        const script = document.createElement('script'); script.text = 'window.hurt = 1'; document.body.append(script);
        const image = document.createElement('img'); image.src = 'file:///x.png'; document.body.append(image);
        const style = document.createElement('style'); style.textContent = '*{color:red}'; document.body.append(style);
        fetch('file:///x').catch(() => {});
    })"""
    with opened(browser, tmp_path, "fail") as page:
        assert page.evaluate(tries) == ["connect-src", "img-src", "script-src-elem", "style-src-elem"]
        assert page.evaluate("window.hurt") is None


def test_no_address_of_anywhere_else_is_in_it() -> None:
    """What looks like an address leads into the page itself, or is a picture in it."""
    ours = "".join(html_of(kind) for kind in KINDS if kind != "hostile")
    addresses = re.findall(r'(?:href|src|action|data|srcset|poster)="([^"]*)"', ours)
    assert len(addresses) > 100
    assert [each for each in addresses if not each.startswith(("#", "data:image/png;base64,"))] == []


def test_hostile_names_do_nothing(browser: Browser, tmp_path: Path) -> None:
    """Names of targets, machines, cases and sources that are markup, script or controls are shown, and that is all."""
    with opened(browser, tmp_path, "hostile") as page:
        dialogs: list[str] = []
        page.on("dialog", lambda dialog: dialogs.append(dialog.message))
        for element in page.locator("bdi, summary, td, code").all()[:40]:
            element.dispatch_event("mouseover")
        assert page.evaluate("window.hurt") is None
        assert dialogs == []
        target = page.locator(".target").inner_text()
        for name in HOSTILE[:5]:
            assert name in target
        assert "a⟨U+202E⟩txt.exe⟨U+2066⟩⟨U+0000⟩⟨U+001B⟩[31m⟨U+D800⟩" in target
        assert not re.search("[\u202a-\u202e\u2066-\u2069\x00-\x08\x0e-\x1f]", page.content())


def test_hostile_names_leave_the_page_as_it_is() -> None:
    """Element for element, the page is the one that harmless names make."""
    hurtful = page_html(hostile())
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("tests.page.verdicts.HOSTILE", ("harmless",))
        harmless = page_html(hostile())
    assert "onerror" in hurtful
    assert "onerror" not in harmless
    assert Skeleton(hurtful).found == Skeleton(harmless).found


@pytest.mark.parametrize("kind", ["pass", "fail", "fail-large", "fault"])
def test_all_is_there_without_its_script(browser: Browser, tmp_path: Path, kind: str) -> None:
    """With scripts switched off the page says the same, but for the buttons that would do nothing."""
    with opened(browser, tmp_path, kind) as page:
        with_script = page.locator("main").text_content()
    with opened(browser, tmp_path, kind, script=False) as page:
        assert page.locator("main").text_content() == with_script
        assert page.locator("button:visible").count() == 0
        folded = page.locator("main details:not([open])")
        while folded.count():
            folded.first.locator("> summary").click()
        assert all(each.is_visible() for each in page.locator("main li").all())


@pytest.mark.parametrize("script", [True, False])
def test_printed_it_is_unfolded(browser: Browser, tmp_path: Path, script: bool) -> None:
    """On paper every write of every refresh takes room, rows are kept whole, and there is nothing to press."""
    height = "all => all.filter(e => e.getBoundingClientRect().height === 0).length"
    with opened(browser, tmp_path, "fail", script=script) as page:
        folded = page.locator(".writes:not([open])").count()
        assert folded > 0
        page.emulate_media(media="print")
        assert page.locator(".writes li, .fold li").evaluate_all(height) == 0
        assert page.locator("button:visible").count() == 0
        kept = page.locator("#f1-sheet .row").evaluate_all("all => all.map(e => getComputedStyle(e).breakInside)")
        assert set(kept) == {"avoid"}
        assert page.pdf(format="A4").startswith(b"%PDF-")
