"""The rows of a proof sheet: the set-up, then one row for each refresh of a play, like neighbours drawn together."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import groupby

from planeproof.contract import Answer, Rational
from planeproof.judge import Play, Refresh, Violation
from planeproof.page.bars import Bar, bars_of
from planeproof.page.due import due
from planeproof.page.shots import Gallery, Shot, box_round
from planeproof.page.writes import Offence, Write, offence_of, writes_of
from planeproof.pictures.blanking import Part, stretches
from planeproof.pictures.compared import differences
from planeproof.pictures.course import Moment, course_of
from planeproof.pictures.frames import behind_frame
from planeproof.report.figures import counted, cycles
from planeproof.report.refreshes import Names
from planeproof.report.strip import cells_of, cut_round

SHORT = 3
"""Neighbours that are alike are folded from this many on."""

_INTO = {
    Part.SET_UP: "setting up",
    Part.PATTERNS: "patterns",
    Part.MAP: "tile map",
    Part.VIEW: "view",
    Part.NOWHERE: "no picture memory",
}


@dataclass(frozen=True, kw_only=True)
class Row:
    """One refresh, or the set-up: ``name``, what was said, the blanking, its pictures, and its writes.

    ``broken`` tells what breaks the rule here, and is empty in all rows but one. ``offence`` is the byte that does.
    """

    id: str
    name: str
    offer: str
    blanking: str
    bars: tuple[Bar, ...] = ()
    shots: tuple[Shot, ...] = ()
    writes: tuple[Write, ...] = ()
    broken: str = ""
    offence: Offence | None = None

    @property
    def alike(self) -> tuple[object, ...]:
        """Neighbours with the same are told as one; a row in which something is written is like no other."""
        if self.writes or self.broken:
            return (self.id,)
        return (self.offer, self.blanking, tuple((shot.image, shot.caption) for shot in self.shots))


@dataclass(frozen=True, kw_only=True)
class Alike:
    """One of several refreshes that are alike."""

    id: str
    name: str
    sees: str


@dataclass(frozen=True, kw_only=True)
class Stretch:
    """One row, or several one after another that are ``alike``: then ``head`` says what is true of each."""

    head: Row
    alike: tuple[Alike, ...] = ()


def stretches_of(play: Play, marked: Violation | None, gallery: Gallery, prefix: str) -> tuple[Stretch, ...]:
    """All rows of ``play``, in order. ``prefix`` begins their ids."""
    rows = [_set_up(play, marked, prefix), *_refreshes(play, marked, gallery, prefix)]
    return tuple(stretch for _, group in groupby(rows, key=lambda row: row.alike) for stretch in _drawn(list(group)))


def _drawn(rows: list[Row]) -> Iterator[Stretch]:
    """Alike rows as one stretch, if that is worth it."""
    if len(rows) < SHORT:
        yield from (Stretch(head=row) for row in rows)
        return
    first, last = rows[0], rows[-1]
    name = f"Refreshes {first.name.split()[-1]} to {last.name.split()[-1]}"
    alike = tuple(Alike(id=row.id, name=row.name, sees=_seen(row)) for row in rows)
    yield Stretch(head=replace(first, id=f"{first.id}-on", name=name), alike=alike)


def _seen(row: Row) -> str:
    return next(shot.caption for shot in row.shots if shot.label == "seen")


def _set_up(play: Play, marked: Violation | None, prefix: str) -> Row:
    bursts, here = play.set_up, marked is not None and marked.refresh < 0
    return Row(
        id=f"{prefix}-setup",
        name="The set-up",
        offer="Before anything is offered",
        blanking=f"The display is off: there is no time limit, and nothing is seen. {_written(len(bursts))}.",
        writes=writes_of(play.scene.machine, bursts),
        broken=marked.said if here and marked is not None else "",
        offence=offence_of(play.scene.machine, bursts, marked) if here else None,
    )


def _written(bursts: int) -> str:
    return f"{counted(bursts, 'burst')} written" if bursts else "Nothing written"


def _refreshes(play: Play, marked: Violation | None, gallery: Gallery, prefix: str) -> Iterator[Row]:
    names, machine = Names(play), play.scene.machine
    for moment in course_of(play).moments:
        refresh = moment.refresh
        here = marked if marked is not None and marked.refresh == refresh.number else None
        yield Row(
            id=f"{prefix}-r{refresh.number}",
            name=f"Refresh {refresh.number}",
            offer=_offer(refresh),
            blanking=_blanking(moment),
            bars=bars_of(moment, marked),
            shots=tuple(_shots(moment, names, here, gallery)),
            writes=writes_of(machine, refresh.bursts),
            broken="" if here is None else here.said,
            offence=offence_of(machine, refresh.bursts, here),
        )


def _offer(refresh: Refresh) -> str:
    if refresh.answer is None:
        return "Nothing offered"
    meaning = {Answer.TAKEN: "", Answer.BUSY: " (offer it again)", Answer.TOO_BIG: " (it will not be shown)"}
    return f"Picture {refresh.offered} offered, answered {refresh.answer.name}{meaning[refresh.answer]}"


def _blanking(moment: Moment) -> str:
    refresh, full = moment.refresh, moment.machine.blank_cycles
    if not refresh.cycles:
        return "No blanking was had: nothing could be written."
    whole = f"{full} cycles" if refresh.cycles == full else f"only {refresh.cycles} of {full} cycles"
    if not refresh.bursts:
        return f"Blanking of {whole}: nothing written."
    over = refresh.used - refresh.cycles
    late = f", {cycles(over)} TOO MANY" if over > 0 else ""
    used = f"{cycles(refresh.used)} cycles used ({spent(moment)})"
    return f"Blanking of {whole}: {counted(len(refresh.bursts), 'burst')}, {used}{late}."


def spent(moment: Moment) -> str:
    """What the cycles of a blanking went into, as in ``setting up 14, view 32``."""
    parts: dict[Part, Rational] = {}
    for stretch in stretches(moment):
        if stretch.burst is not None:
            parts[stretch.part] = parts.get(stretch.part, 0) + stretch.end - stretch.start
    return ", ".join(f"{_INTO[part]} {cycles(length)}" for part, length in parts.items())


def _shots(moment: Moment, names: Names, broken: Violation | None, gallery: Gallery) -> Iterator[Shot]:
    """Prepared, seen, expected, and what differs between these two."""
    machine, number, seen = moment.machine, moment.refresh.number, moment.refresh.frame
    yield _prepared(moment, gallery)
    right, wanted = due(moment, names, broken)
    values = differences(moment, right.frame)
    wrong = int((values > 0).sum())
    name = names.of(moment.refresh)
    shot = gallery.frame(machine, seen, ("seen", name, f"Seen in refresh {number}: {name}."))
    cut = cut_round(machine, cells_of(machine, values > 0))
    yield replace(shot, box=box_round(machine, cut)) if wrong and cut.within(machine) else shot
    wanted = wanted if wrong else name  # two pictures may look alike
    yield gallery.frame(
        machine, right.frame, ("expected", wanted, f"What should be seen in refresh {number}: {wanted}.")
    )
    if not wrong:
        yield Shot(label="difference", caption="none", alt="")
        return
    said = f"{counted(wrong, 'pixel')} differ" if wrong > 1 else "1 pixel differs"
    cells = f"in {counted(len(cells_of(machine, values > 0)), 'cell')}"
    yield gallery.differences(
        machine, values, ("difference", said, f"Difference in refresh {number}: {said}, {cells}.")
    )


def _prepared(moment: Moment, gallery: Gallery) -> Shot:
    if moment.behind is None:
        return Shot(label="prepared", caption="nothing: this machine has one side only", alt="")
    side, number = moment.behind, moment.refresh.number
    words = ("prepared", f"out of sight, side {side}", f"Prepared out of sight on side {side}, as of refresh {number}.")
    return gallery.frame(moment.machine, behind_frame(moment), words)
