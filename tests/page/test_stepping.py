from pathlib import Path

import numpy as np
import pytest
from playwright.sync_api import Browser, Page

from planeproof.contract.rules import PROGRESS
from planeproof.display import blank_frame, look_of
from planeproof.judge import Play, Refresh, Violation
from planeproof.page.shots import FINE
from planeproof.pictures.course import course_of
from planeproof.pictures.frames import behind_frame, in_colours
from tests.page.browser import opened
from tests.page.shown import current_row, picture, rows
from tests.page.verdicts import verdict_of

FAILS = ["fail", "fail-late", "fail-silent", "fail-half", "fail-large"]
APART = 200
"""Milliseconds after which the page lets another step be made."""


def step(page: Page, key: str = "ArrowRight") -> None:
    """Press a key, after as long as is needed."""
    page.clock.run_for(APART)
    page.keyboard.press(key)


def due(play: Play, number: int) -> list[int]:
    """The pictures that could rightly be seen, said anew here: the one seen before, and the next that was taken."""
    before = play.refreshes[number - 1] if number else None
    refresh = play.refreshes[number]
    waiting = before.upcoming if before else None
    if waiting is None and refresh.answer is not None and refresh.answer.name == "TAKEN":
        waiting = refresh.offered
    return [before.current if before else -1, *([] if waiting is None else [waiting])]


def check_row(page: Page, row: dict[str, object], play: Play, refresh: Refresh, violation: Violation) -> None:
    """The row says and shows what the play holds of this refresh."""
    machine, shots = play.scene.machine, row["shots"]
    assert isinstance(shots, dict)
    told = str(row["told"])
    asked = "Nothing offered" if refresh.answer is None else f"Picture {refresh.offered} offered, answered "
    assert told.startswith(asked + ("" if refresh.answer is None else refresh.answer.name))
    assert len(row["writes"]) == len(refresh.bursts)  # type: ignore[arg-type]  # a list, by what reads it
    assert ("TOO MANY" in told) == (refresh.used > refresh.cycles)
    assert row["broken"] == (refresh.number == violation.refresh)

    moment = course_of(play).moments[refresh.number]
    assert np.array_equal(picture(page, shots["prepared"][1]), in_colours(machine, behind_frame(moment)))
    torn = refresh.frame == -1
    seen = picture(page, shots["seen"][1])
    if torn.any():  # drawn larger, to be hatched; a pixel that is defined is a block of one colour
        assert seen.shape[:2] == (FINE * torn.shape[0], FINE * torn.shape[1])
        seen = seen[::FINE, ::FINE]
    assert np.array_equal(seen[~torn], in_colours(machine, refresh.frame)[~torn])
    # Where a picture was waited for in vain, it is that one; so late the one seen before is right no more.
    waited_for = violation.picture if row["broken"] and violation.rule is PROGRESS else None
    numbers = due(play, refresh.number) if waited_for is None else [waited_for]
    looks = [blank_frame(machine) if n < 0 else look_of(machine, play.scene.pictures[n]) for n in numbers]
    wanted = min(reversed(looks), key=lambda look: int((look != refresh.frame).sum()))
    assert np.array_equal(picture(page, shots["expected"][1]), in_colours(machine, wanted))
    wrong = int((refresh.frame != wanted).sum())
    said = "none" if not wrong else "1 pixel differs" if wrong == 1 else f"{wrong} pixels differ"
    assert shots["difference"][0] == said
    assert (
        all(f"refresh {refresh.number}" in alt for _, image, alt in shots.values() if image is not None) or row["alike"]
    )


@pytest.mark.parametrize("kind", FAILS)
def test_stepping_shows_every_refresh_as_it_was(browser: Browser, tmp_path: Path, kind: str) -> None:
    """From the set-up to the end with one key, each refresh is shown as the play has it, in a row in view."""
    finding = verdict_of(kind).findings[0]
    play = finding.play
    shown: list[int] = []
    with opened(browser, tmp_path, kind, stopped=True) as page:
        count = len(rows(page, "#f1-sheet"))
        step(page)
        assert current_row(page)["id"] == "f1-setup"
        for _ in range(count - 1):
            step(page)
            row = current_row(page)
            assert row["inView"]
            first = int(str(row["id"]).removeprefix("f1-r").removesuffix("-on"))
            covered = range(first, first + max(1, len(row["alike"])))
            for number in covered:
                check_row(page, row, play, play.refreshes[number], finding.violation)
            assert row["alike"] == [] or [text.split(":")[0] for text in row["alike"]] == [
                f"Refresh {n}" for n in covered
            ]
            shown += covered
        last = current_row(page)["id"]
        step(page)
        assert current_row(page)["id"] == last
    assert shown == list(range(len(play.refreshes)))


def test_back_again(browser: Browser, tmp_path: Path) -> None:
    """The other key goes up again, by as many rows."""
    with opened(browser, tmp_path, "fail", stopped=True) as page:
        for key in ["ArrowRight", "ArrowRight", "ArrowRight", "ArrowLeft"]:
            step(page, key)
        assert current_row(page)["id"] == "f1-r0"
        assert page.locator("#f1-sheet .at").inner_text().startswith("Row 2 of ")


def test_buttons_do_what_the_keys_do(browser: Browser, tmp_path: Path) -> None:
    """With the buttons, too, one can go on, back, and to the row that breaks the rule."""
    violation = verdict_of("fail").findings[0].violation
    with opened(browser, tmp_path, "fail", stopped=True) as page:
        places = []
        for button in ["row after", "row after", "row before", "broken row"]:
            page.clock.run_for(APART)
            page.locator("#f1-sheet").get_by_role("button", name=button).click()
            places.append(current_row(page)["id"])
        assert places == ["f1-setup", "f1-r0", "f1-setup", f"f1-r{violation.refresh}"]


def test_the_broken_row_is_told_in_words(browser: Browser, tmp_path: Path) -> None:
    """One row of a sheet says that the rule is broken there, marks the byte, and has its writes unfolded."""
    finding = verdict_of("fail").findings[0]
    violation, play = finding.violation, finding.play
    with opened(browser, tmp_path, "fail") as page:
        broken = [row for row in rows(page, "#f1-sheet") if row["broken"]]
        assert [row["id"] for row in broken] == [f"f1-r{violation.refresh}"]
        assert "✕ the rule is broken here" in broken[0]["name"]
        assert violation.burst is not None
        assert violation.byte is not None
        value = play.refreshes[violation.refresh].bursts[violation.burst].data[violation.byte]
        assert broken[0]["bytes"] == f"{value:02x}"
        assert [n for n, text in enumerate(broken[0]["writes"]) if "here" in text] == [violation.burst]
        assert page.locator("#f1-sheet .row.broken .writes[open]").count() == 1


def test_a_link_unfolds_what_it_leads_into(browser: Browser, tmp_path: Path) -> None:
    """The rules' table leads to the second finding, which is folded until then."""
    with opened(browser, tmp_path, "fail") as page:
        assert not page.locator("#f2-sheet").is_visible()
        page.locator("tr a[href='#f2']").click()
        page.locator("#f2-sheet").wait_for(state="visible")
        assert page.locator("details#f2").get_attribute("open") is not None


def test_the_keys_go_on_where_a_link_has_led(browser: Browser, tmp_path: Path) -> None:
    """Through the finding that is being read, not the first."""
    with opened(browser, tmp_path, "fail", stopped=True) as page:
        page.locator("tr a[href='#f2']").click()
        page.locator("#f2-sheet").wait_for(state="visible")
        step(page)
        assert current_row(page)["id"] == "f2-setup"


def test_the_machine_as_given_has_a_sheet_of_its_own(browser: Browser, tmp_path: Path) -> None:
    """The play on a machine as given is folded, and holds one row for each of its refreshes."""
    given = verdict_of("fail").findings[0].given
    assert given is not None
    with opened(browser, tmp_path, "fail") as page:
        assert not page.locator("#f1-given-sheet").is_visible()
        found = [max(1, len(row["alike"])) for row in rows(page, "#f1-given-sheet")]
        assert sum(found) == len(given.refreshes) + 1
