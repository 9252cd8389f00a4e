import base64
import io
import json
import re
from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from planeproof.candidates.faults import PatternsToSeenPlane
from planeproof.contract import Scene
from planeproof.contract.rules import HIDDEN_WRITES, RULES
from planeproof.judge import Outcome, Verdict, Violation
from planeproof.page import page_data, page_html
from planeproof.page.bars import LONG, bars_of
from planeproof.page.content import page_of
from planeproof.page.shots import Gallery
from planeproof.page.visible import shown
from planeproof.pictures.course import Moment, course_of
from planeproof.record import read_record, write_record
from planeproof.scenes.relatives import RELATIVE
from tests.page.browser import html_of
from tests.page.golden_page import SAID, data_of
from tests.page.verdicts import GOLDEN, KINDS, verdict_of
from tests.report.stories import findings


@pytest.mark.parametrize("kind", SAID)
def test_what_a_page_says(kind: str) -> None:
    """The data of the page is what it was when somebody last read it."""
    assert data_of(kind) == (GOLDEN / f"{kind}.json").read_text("utf-8")


@pytest.mark.parametrize("kind", ["pass", "fail", "fault"])
def test_the_record_is_enough(kind: str) -> None:
    """A verdict read from its record has the very same page."""
    assert page_html(read_record(write_record(verdict_of(kind)), "record.json")) == html_of(kind)


@pytest.mark.parametrize("kind", KINDS)
def test_every_picture_is_in_it_once(kind: str) -> None:
    """No two pictures of a page are alike, and each is used."""
    pictures = re.findall(r'<g id="(i\d+)"><image [^>]*href="([^"]*)"', html_of(kind))
    used = set(re.findall(r'<use href="#(i\d+)"', html_of(kind)))
    assert len({address for _, address in pictures}) == len(pictures)
    assert {name for name, _ in pictures} == used


def test_pictures_that_are_alike_are_kept_once() -> None:
    """Of the same frame twice and another one, the gallery keeps two, in their colours."""
    machine = verdict_of("fail").findings[0].play.scene.machine
    frame = np.zeros((8, 16), dtype=np.int16)
    gallery = Gallery()
    words = ("label", "caption", "alt")
    shots = [gallery.frame(machine, each, words) for each in (frame, frame.copy(), frame + 1)]
    assert [shot.image for shot in shots] == [0, 0, 1]
    for kept, look in zip(gallery, (0, 1), strict=True):
        with Image.open(io.BytesIO(base64.b64decode(kept.address.split(",")[1]))) as image:
            assert image.size == (16, 8)
            assert image.convert("RGB").getcolors() == [(128, machine.colours.look(look))]


def test_what_was_waited_for_is_expected_in_the_broken_row_too() -> None:
    """The head and the row that breaks the rule say the same of it, and both have something that differs."""
    found = page_of(verdict_of("fail-silent"), Gallery()).findings[0]
    row = next(stretch.head for stretch in found.sheet.stretches if stretch.head.broken)
    head, row_shots = found.lead, {shot.label: shot for shot in row.shots}
    assert head[0].caption == row_shots["expected"].caption
    assert head[0].image == row_shots["expected"].image
    assert row_shots["difference"].image is not None


@pytest.mark.parametrize("kind", ["fail", "fail-late", "fail-half"])
def test_what_cycles_went_into_adds_up(kind: str) -> None:
    """The parts that a row names are together what it says was used."""
    sheet = page_of(verdict_of(kind), Gallery()).findings[0].sheet
    told = [re.search(r"([\d,]+) cycles used \((.*)\)", stretch.head.blanking) for stretch in sheet.stretches]
    sums = [(said[1], sum(int(part.split()[-1]) for part in said[2].split(", "))) for said in told if said]
    assert sums
    assert all(int(used) == parts for used, parts in sums)


def test_what_was_used_of_too_few_cycles_stands_at_the_head() -> None:
    """What the cycles went into, in the words of the broken row; only where they are too many."""
    found = page_of(verdict_of("fail-late"), Gallery()).findings[0]
    row = next(stretch.head for stretch in found.sheet.stretches if stretch.head.broken)
    said = re.search(r"([\d,]+) cycles used \((.*)\)", row.blanking)
    assert said is not None
    assert f"The {said[1]} cycles that it used are: {said[2]}." in found.remarks
    assert "cycles that it used are" not in html_of("fail")


def test_what_was_not_seen_on_the_machine_as_given_is_said() -> None:
    """Of a small relative's scene, where there is no sheet of the machine itself."""
    finding = verdict_of("fail").findings[0]
    small = replace(finding.play.scene.machine, name=RELATIVE + "bench")
    scene = Scene.of(small, finding.play.scene.pictures, finding.play.scene.ready)
    alone = replace(finding, given=None, play=replace(finding.play, scene=scene))
    for each, said in ((alone, True), (replace(alone, given=finding.given), False), (finding, False)):
        remarks = page_of(replace(verdict_of("fail"), findings=(each,)), Gallery()).findings[0].remarks
        assert any("It has not been seen on bench as given" in remark for remark in remarks) is said


def test_what_does_not_differ_has_one_name() -> None:
    """Where two pictures look alike, a row does not say that one of them is seen and the other expected."""
    scene = verdict_of("fail-large").findings[0].play.scene
    first, *others = scene.pictures
    found = findings(Scene.of(scene.machine, [first, first, *others]), PatternsToSeenPlane, HIDDEN_WRITES)
    page = page_of(replace(verdict_of("fail-large"), findings=tuple(found)), Gallery())
    rows = [
        {shot.label: shot.caption for shot in stretch.head.shots}
        for stretch in page.findings[0].sheet.stretches
        if stretch.head.shots
    ]
    alike = [row for row in rows if row["difference"] == "none"]
    assert alike
    assert all(row["seen"] == row["expected"] for row in alike)


def test_what_is_broken_besides_stands_at_the_head() -> None:
    """Every other finding, with a link to it, and how the smallest scene is disturbed."""
    head = html_of("fail").split('id="how"')[0]
    others = page_of(verdict_of("fail"), Gallery()).findings[1:]
    assert others
    assert all(f'<a href="#{other.id}">{other.rule}</a>' in head for other in others)
    assert "Disturbed: blanking 0 has 110 of 7884 cycles." in html_of("fail-half").split('id="how"')[0]


def byte_begins(moment: Moment, violation: Violation) -> Fraction:
    """The cycle of the whole blanking at which the byte begins, by the costs of what is written before it."""
    machine, refresh = moment.machine, moment.refresh
    assert violation.burst is not None
    *before, burst = refresh.bursts[: violation.burst + 1]
    set_up, per_byte = machine.rates(view=machine.is_view(burst.address))
    spent = sum(Fraction(machine.cost(each)) for each in before) + Fraction(set_up)
    return machine.blank_cycles - refresh.cycles + spent + (violation.byte or 0) * Fraction(per_byte)


@pytest.mark.parametrize("kind", ["fail", "fail-late", "fail-half", "fail-large"])
def test_bars_are_to_scale(kind: str) -> None:
    """What is drawn of a blanking is as long as its cycles, to a unit a stroke; what comes too late is lower."""
    finding = verdict_of(kind).findings[0]
    for moment in course_of(finding.play).moments:
        bar, refresh, full = bars_of(moment, finding.violation)[0], moment.refresh, moment.machine.blank_cycles
        span = Fraction(full * LONG, bar.end) if bar.end < LONG else Fraction(full)
        strokes = {
            p.part: [tuple(map(int, each)) for each in re.findall(r"M(\d+) (\d+)h(\d+)", p.path)] for p in bar.pieces
        }
        inside = [stroke for part, found in strokes.items() if part != "late" for stroke in found]
        written = sum(width for part in set(strokes) - {"lost", "left", "late"} for _, _, width in strokes[part])
        assert abs(written - LONG * Fraction(refresh.used) / span) <= len(inside)
        assert min(left for left, _, _ in inside) == 0
        assert ("late" in strokes) == (refresh.used > refresh.cycles)
        assert all((left >= bar.end - 1) == (y > 30) for left, y, width in inside if width > 1)
        here = refresh.number == finding.violation.refresh and finding.violation.burst is not None
        assert (bar.marked is not None) == here
        if bar.marked is not None:
            assert abs(bar.marked - LONG * byte_begins(moment, finding.violation) / span) <= 1


def test_the_state_of_every_rule_is_told() -> None:
    """A row for each rule: its sign, its state, its witness, and where it is broken a link to how."""
    rows = json.loads(page_data(verdict_of("fail")))["page"]["rules"]
    assert [row["id"] for row in rows] == [rule.id for rule in RULES]
    assert {row["id"]: row["finding"] for row in rows if row["finding"]} == {
        "exact-reveal": "f1",
        "hidden-writes": "f2",
    }
    assert all((row["sign"] == "✕") == bool(row["finding"]) for row in rows)
    assert all(row["witness"] for row in rows)


def test_edges_that_were_not_reached_come_first() -> None:
    """A page of a PASS tells each edge's distance, those first that say how weak it is."""
    edges = json.loads(page_data(verdict_of("pass")))["page"]["edges"]
    assert len(edges) == len(verdict_of("pass").edges)
    assert [edge["reached"] for edge in edges] == sorted(edge["reached"] for edge in edges)
    assert {edge["least"] for edge in edges if not edge["reached"]} > {"nothing to measure"}
    assert {edge["least"] for edge in edges if edge["reached"]} == {"reached"}


def test_a_vacuous_page_says_what_is_missing() -> None:
    """It names the rule that was not exercised, and says so where nothing was drawn independently."""
    verdict = verdict_of("vacuous")
    assert [gap.split(":")[0] for gap in _gaps(verdict)] == ["fair-refusal"]
    steered = tuple(basis for basis in verdict.basis if not basis.independent)
    short, named = _gaps(replace(verdict, basis=steered))
    assert "--seconds" in short
    assert named.startswith("fair-refusal: ")


def _gaps(verdict: Verdict) -> list[str]:
    gaps: list[str] = json.loads(page_data(verdict))["page"]["gaps"]
    return gaps


@pytest.mark.parametrize("outcome", Outcome)
def test_every_outcome_has_a_page(outcome: Outcome) -> None:
    """Whatever the verdict, its word stands on the page, and in its title."""
    verdict = verdict_of("hung") if outcome in (Outcome.HUNG, Outcome.CANDIDATE_ERROR) else verdict_of("pass")
    html = page_html(replace(verdict, outcomes=(outcome,), basis=()))
    word = outcome.name.replace("_", " ")
    assert f"<title>{word}: " in html
    assert f"</span>{word}</strong>" in html


@given(st.text())
def test_nothing_unseen_stays_unseen(text: str) -> None:
    """Whatever is in a text, what is shown of it can be printed, and reads the same where that was so already."""
    found = shown(text)
    assert all(sign.isprintable() or sign in "\n\t\u00a0\u3000" or sign.isspace() for sign in found)
    assert not re.search("[\u200b-\u200f\u202a-\u202e\u2066-\u2069\x00-\x08]", found)
    assert text.isprintable() <= (found == text)
