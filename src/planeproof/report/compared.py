"""What should have been seen beside what was seen, and the difference, as text."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import Answer, Rule
from planeproof.contract.rules import (
    BLANKING_ONLY,
    EXACT_REVEAL,
    HIDDEN_WRITES,
    IN_ORDER,
    OWN_MEMORY,
    PROGRESS,
    TILE_CAP,
    WHOLE_REVEAL,
)
from planeproof.display import Frame
from planeproof.judge import Play, Violation
from planeproof.report.figures import counted
from planeproof.report.refreshes import Names
from planeproof.report.retrace import moment_of
from planeproof.report.strip import (
    cell_panel,
    cells_of,
    cut_round,
    frame_panel,
    legend,
    mask_panel,
    side_by_side,
)


@dataclass(frozen=True, kw_only=True, eq=False)
class Compared:
    """Two frames under their titles, and the pixels meant, shape (height, width)."""

    expected_title: str
    expected: Frame
    seen_title: str
    seen: Frame
    wrong: NDArray[np.bool_]


def compared_lines(play: Play, violation: Violation, indent: int) -> list[str]:
    """The comparison that fits the rule; nothing where there is no difference to be seen."""
    pair = _compared(play, violation)
    if pair is None or not pair.wrong.any():
        return []
    machine = play.scene.machine
    cells = cells_of(machine, pair.wrong)
    cut = cut_round(machine, cells)
    where = cut.within(machine)
    lines = []
    if where:
        panel = cell_panel(machine, "cells that differ", cells, "X")
        lines += [*side_by_side([panel], indent=indent), "", " " * indent + f"enlarged: {where}"]
    panels = [
        frame_panel(machine, pair.expected_title, pair.expected, cut),
        frame_panel(machine, pair.seen_title, pair.seen, cut),
        mask_panel(f"{counted(int(pair.wrong.sum()), 'pixel')} of difference", pair.wrong, cut),
    ]
    key = legend(machine, (pair.expected, pair.seen), mask=True)
    return [*lines, *side_by_side(panels, indent=indent), " " * indent + key]


def _compared(play: Play, violation: Violation) -> Compared | None:
    rule: Rule = violation.rule
    if violation.refresh < 0:
        return None
    if rule is HIDDEN_WRITES:
        return _byte_by_byte(play, violation)
    if rule is EXACT_REVEAL:
        moment = moment_of(play, violation)
        return None if moment is None else _against_due(play, violation, moment.after, "the new view shows")
    if rule is PROGRESS and violation.picture is not None:
        frame = play.refreshes[violation.refresh].frame
        return _pair(f"due: picture {violation.picture}", Names(play).look(violation.picture), "seen instead", frame)
    if rule in (WHOLE_REVEAL, IN_ORDER, BLANKING_ONLY, TILE_CAP, OWN_MEMORY):
        return _against_due(play, violation, play.refreshes[violation.refresh].frame, "the viewer saw")
    return None


def _byte_by_byte(play: Play, violation: Violation) -> Compared | None:
    moment = moment_of(play, violation)
    if moment is None or violation.pixels is None:
        return None
    return Compared(
        expected_title="before this byte",
        expected=moment.before,
        seen_title="after this byte",
        seen=moment.after,
        wrong=violation.pixels,
    )


def _against_due(play: Play, violation: Violation, frame: Frame, title: str) -> Compared:
    """``frame`` beside that of the pictures due then which it is most like."""
    names = Names(play)
    due = _due(play, violation.refresh)
    nearest = min(due, key=lambda number: int((frame != names.look(number)).sum()))
    called = "the background" if nearest < 0 else f"picture {nearest}"
    return _pair(f"expected: {called}", names.look(nearest), title, frame)


def _pair(expected_title: str, expected: Frame, seen_title: str, seen: Frame) -> Compared:
    return Compared(
        expected_title=expected_title, expected=expected, seen_title=seen_title, seen=seen, wrong=expected != seen
    )


def _due(play: Play, number: int) -> list[int]:
    """The pictures that could rightly be seen in refresh ``number``: the one seen before, and the next taken."""
    before = play.refreshes[number - 1] if number else None
    current = before.current if before is not None else -1
    if before is not None and before.upcoming is not None:
        return [current, before.upcoming]
    refresh = play.refreshes[number]
    taken = refresh.offered if refresh.answer is Answer.TAKEN else None
    return [current] if taken is None else [current, taken]
