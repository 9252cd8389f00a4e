"""Values as HTML for the cell of a notebook.

Made as a tree of elements, never as text, so that no name in a machine, a target or a case can be anything but text.
Only what HTML itself has is used, no colours and no script: the notebook's own theme, dark or light, is kept.
"""

from base64 import b64encode
from collections.abc import Iterable
from xml.etree import ElementTree as ET

from planeproof.contract import Machine
from planeproof.judge import Finding, Outcome, Verdict
from planeproof.pictures import Figure, Style, course_of, figure_of, kind_named, png
from planeproof.report import machine_headline, machine_page
from planeproof.report.evidence import basis_sentence, cost_sentence, rule_state
from planeproof.report.fault import fault_lines
from planeproof.report.story import again_lines, finding_lines
from planeproof.report.text import meaning

_BROKEN_OFF = (Outcome.FAIL, Outcome.CANDIDATE_ERROR, Outcome.HUNG)

_LETTERS = "font-family: monospace; white-space: pre; overflow-x: auto; line-height: 1.2"
"""So that the text pictures keep their shape, whatever the notebook's own style does to text of fixed width."""


def verdict_html(verdict: Verdict) -> str:
    """Outcome, the smallest scene if something is broken, the rules, and what it all rests on."""
    page = ET.Element("div")
    _add(page, "h3", f"{verdict.outcome.name.replace('_', ' ')}: {meaning(verdict, verdict.outcome)}")
    _add(
        page,
        "p",
        f"{verdict.target} on {', '.join(verdict.machines)}; profile {verdict.profile.value}, {_also(verdict)}",
    )
    if verdict.fault is not None:
        _letters(page, fault_lines(verdict.fault, verdict.fault_case, verdict.fault_scene))
    for number, finding in enumerate(verdict.findings):
        _finding(page, finding, opened=number == 0)
    _rules(page, verdict)
    clean = verdict.outcome not in _BROKEN_OFF
    _list(page, "What this rests on", [basis_sentence(basis, clean=clean) for basis in verdict.basis])
    _list(page, "What it costs", [f"{cost.machine}: {cost_sentence(cost)}" for cost in verdict.costs])
    return _text(page)


def finding_html(finding: Finding) -> str:
    """A broken rule: picture and story."""
    page = ET.Element("div")
    _finding(page, finding, opened=True)
    return _text(page)


def machine_html(machine: Machine) -> str:
    """A machine with all its figures."""
    page = ET.Element("details")
    _add(page, "summary", " ".join(machine_headline(machine).split()))
    _letters(page, machine_page(machine)[1:])
    page.set("open", "open")
    return _text(page)


def figure_words(figure: Figure) -> str:
    """What a figure shows."""
    return " ".join([figure.title, *figure.notes])


def _also(verdict: Verdict) -> str:
    others = "".join(f"; also {outcome.name.replace('_', ' ')}" for outcome in verdict.outcomes[1:])
    return f"seed {verdict.seed}{others}"


def _finding(page: ET.Element, finding: Finding, *, opened: bool) -> None:
    told = ET.SubElement(page, "details", {"open": "open"} if opened else {})
    _add(told, "summary", f"{finding.rule.id} is broken: {finding.violation.said}")
    _picture(told, finding)
    _letters(told, [*finding_lines(finding), "", *again_lines(finding.case)])


def _picture(page: ET.Element, finding: Finding) -> None:
    """Expected, seen and what differs, in the refresh of the violation; the set-up has none."""
    refresh = finding.violation.refresh
    if refresh < 0:
        return
    figure = figure_of(course_of(finding.play), refresh, kind_named("compared"), Style())
    source = f"data:image/png;base64,{b64encode(png(figure)).decode()}"
    ET.SubElement(page, "img", {"src": source, "alt": figure_words(figure), "style": "max-width: 100%"})


def _rules(page: ET.Element, verdict: Verdict) -> None:
    table = ET.SubElement(page, "table")
    head = ET.SubElement(ET.SubElement(table, "thead"), "tr")
    for title in ("rule", "state"):
        _add(head, "th", title).set("scope", "col")
    body = ET.SubElement(table, "tbody")
    for report in verdict.rules:
        row = ET.SubElement(body, "tr")
        _add(row, "th", report.rule.id).set("scope", "row")
        _add(row, "td", rule_state(verdict, report))


def _list(page: ET.Element, title: str, sentences: Iterable[str]) -> None:
    items = list(sentences)
    if not items:
        return
    _add(page, "p", f"{title}:")
    listed = ET.SubElement(page, "ul")
    for sentence in items:
        _add(listed, "li", sentence)


def _letters(page: ET.Element, lines: Iterable[str]) -> None:
    _add(page, "pre", "\n".join(lines)).set("style", _LETTERS)


def _add(parent: ET.Element, tag: str, text: str) -> ET.Element:
    element = ET.SubElement(parent, tag)
    element.text = text
    return element


def _text(page: ET.Element) -> str:
    return ET.tostring(page, encoding="unicode", method="html")
