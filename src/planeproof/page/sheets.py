"""A proof sheet: one finding, its head that says what is wrong, and its play row by row."""

from dataclasses import dataclass

from planeproof.contract.rules import BLANKING_ONLY
from planeproof.judge import Finding, Play, Violation
from planeproof.page.lead import lead_of
from planeproof.page.rows import Row, Stretch, spent, stretches_of
from planeproof.page.scenes import SceneView, in_short, view_of_scene
from planeproof.page.sentences import others, sentence, spared
from planeproof.page.shots import Gallery, Shot
from planeproof.page.writes import Offence, Write
from planeproof.pictures import CAUTION
from planeproof.pictures.course import course_of
from planeproof.report.figures import counted, cycles
from planeproof.report.story import again_lines, not_seen_as_given

AROUND = 2
"""Writes before and after the offending one that are told at the head."""


@dataclass(frozen=True, kw_only=True)
class Sheet:
    """The rows of one play, read downwards. ``broken`` is the id of the row that breaks the rule.

    ``again`` is the command that plays it again, empty if its scene was not saved.
    """

    id: str
    title: str
    scene: SceneView
    stretches: tuple[Stretch, ...]
    broken: str
    again: str
    caution: str = CAUTION


@dataclass(frozen=True, kw_only=True)
class Found:
    """A finding: its ``sentence`` for everybody, the pictures at its head, the rule, and its sheets.

    ``near`` are the writes just before and after the offending one, and it. ``remarks`` are what else is to be said,
    ``scene`` is the smallest scene in short.
    ``given`` is the sheet of the same on a machine as given, if there is one.
    """

    id: str
    rule: str
    statement: str
    why: str
    said: str
    sentence: str
    lead: tuple[Shot, ...]
    offence: Offence | None
    near: tuple[Write, ...]
    remarks: tuple[str, ...]
    scene: str
    sheet: Sheet
    given: Sheet | None


def found_of(finding: Finding, number: int, gallery: Gallery) -> Found:
    """Finding ``number``, counted from 1."""
    play, violation, rule = finding.play, finding.violation, finding.rule
    sheet = _sheet(
        play, violation, f"f{number}", f"The smallest scene found that breaks {rule.id}", finding.case, gallery
    )
    row = next(stretch.head for stretch in sheet.stretches if stretch.head.broken)
    return Found(
        id=f"f{number}",
        rule=rule.id,
        statement=rule.statement,
        why=rule.why,
        said=violation.said,
        sentence=sentence(violation, play),
        lead=lead_of(play, violation, gallery),
        offence=row.offence,
        near=_near(row),
        remarks=_remarks(finding),
        scene=in_short(play.scene),
        sheet=sheet,
        given=_given(finding, number, gallery),
    )


def _given(finding: Finding, number: int, gallery: Gallery) -> Sheet | None:
    play = finding.given
    violation = None if play is None else play.first(frozenset({finding.rule}))
    if play is None or violation is None:
        return None
    title = f"How {finding.rule.id} is broken on a machine as given: {play.scene.machine.name}"
    return _sheet(play, violation, f"f{number}-given", title, finding.given_case, gallery)


def _sheet(play: Play, violation: Violation, name: str, title: str, case: str | None, gallery: Gallery) -> Sheet:
    stretches = stretches_of(play, violation, gallery, name)
    return Sheet(
        id=name,
        title=title,
        scene=view_of_scene(play.scene, gallery),
        stretches=stretches,
        broken=next(stretch.head.id for stretch in stretches if stretch.head.broken),
        again="" if case is None else again_lines(case)[1].strip(),
    )


def _near(row: Row) -> tuple[Write, ...]:
    number = None if row.offence is None else row.offence.number
    return () if number is None else row.writes[max(0, number - AROUND) : number + 1 + AROUND]


def _remarks(finding: Finding) -> tuple[str, ...]:
    said = (_used(finding), spared(finding), others(finding), _after(finding), not_seen_as_given(finding))
    return tuple(filter(None, said))


def _used(finding: Finding) -> str:
    """Where too many cycles were used, what for."""
    violation = finding.violation
    if violation.rule is not BLANKING_ONLY:
        return ""
    moment = course_of(finding.play).moments[violation.refresh]
    return f"The {cycles(moment.refresh.used)} cycles that it used are: {spent(moment)}."


def _after(finding: Finding) -> str:
    return "" if finding.after is None else f"It was found after {counted(finding.after, 'scene')}."
