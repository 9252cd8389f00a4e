"""The pictures at the head of a finding: what there should have been, what there was, and the difference, enlarged."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import Machine
from planeproof.contract.rules import EXACT_REVEAL, HIDDEN_WRITES
from planeproof.display import Frame
from planeproof.judge import Play, Violation
from planeproof.page.due import due
from planeproof.page.shots import Gallery, Shot, box_round, part_of
from planeproof.pictures.compared import differences
from planeproof.pictures.course import Moment, course_of
from planeproof.report.figures import counted
from planeproof.report.refreshes import Names
from planeproof.report.retrace import moment_of
from planeproof.report.strip import Cut, cells_of, cut_round


@dataclass(frozen=True, kw_only=True, eq=False)
class _Pair:
    """Two frames to compare, each with its label and its caption."""

    right: Frame
    seen: Frame
    values: NDArray[np.uint8]
    right_words: tuple[str, str]
    seen_words: tuple[str, str]


def lead_of(play: Play, violation: Violation, gallery: Gallery) -> tuple[Shot, ...]:
    """The pictures; none for the set-up, in which nothing is seen."""
    if violation.refresh < 0:
        return ()
    moment = course_of(play).moments[violation.refresh]
    return tuple(_shots(moment.machine, _pair(moment, play, violation), gallery))


def _pair(moment: Moment, play: Play, violation: Violation) -> _Pair:
    names, number = Names(play), violation.refresh
    at_byte = moment_of(play, violation) if violation.rule in (HIDDEN_WRITES, EXACT_REVEAL) else None
    if at_byte is not None and violation.rule is HIDDEN_WRITES:
        before = (f"on show, refresh {number}", "just before the byte was written")
        after = ("on show", "just after the byte was written")
        return _told(moment, at_byte.before, before, at_byte.after, after)
    seen_words = ("seen", names.of(moment.refresh))
    if at_byte is not None:
        moment = replace(moment, refresh=replace(moment.refresh, frame=at_byte.after))
        seen_words = ("on show", "as the view had changed")
    right, name = due(moment, names, violation)
    wanted = (f"expected, refresh {number}", name)
    return _told(moment, right.frame, wanted, moment.refresh.frame, seen_words)


def _told(
    moment: Moment, right: Frame, right_words: tuple[str, str], seen: Frame, seen_words: tuple[str, str]
) -> _Pair:
    shown = replace(moment, refresh=replace(moment.refresh, frame=seen))
    values = differences(shown, right)
    return _Pair(right=right, seen=seen, values=values, right_words=right_words, seen_words=seen_words)


def _shots(machine: Machine, pair: _Pair, gallery: Gallery) -> Iterator[Shot]:
    """In a large window the cells concerned, and the whole of it with these marked."""
    cut = cut_round(machine, cells_of(machine, pair.values > 0))
    wrong = int((pair.values > 0).sum())
    part = bool(cut.within(machine)) and wrong > 0
    if part:
        whole = gallery.frame(
            machine, pair.seen, ("whole window", cut.within(machine), _alt(pair.seen_words)), large=True
        )
        yield from _three(machine, pair, gallery, cut)
        yield replace(whole, box=box_round(machine, cut))
        return
    yield from _three(machine, pair, gallery, None)


def _three(machine: Machine, pair: _Pair, gallery: Gallery, cut: Cut | None) -> Iterator[Shot]:
    sides = ((pair.right, pair.right_words), (pair.seen, pair.seen_words))
    for frame, words in sides:
        cells = frame if cut is None else part_of(frame, cut)
        yield gallery.frame(machine, cells, (*words, _alt(words)), large=True)
    wrong = int((pair.values > 0).sum())
    if not wrong:
        yield Shot(label="difference", caption="none: this can't be seen in the picture", alt="")
        return
    said = f"{counted(wrong, 'pixel')} differ" if wrong > 1 else "1 pixel differs"
    values = pair.values if cut is None else part_of(pair.values, cut)
    yield gallery.differences(machine, values, ("difference", said, f"Difference: {said}."), large=True)


def _alt(words: tuple[str, str]) -> str:
    return f"{words[0].capitalize()}: {words[1]}."
