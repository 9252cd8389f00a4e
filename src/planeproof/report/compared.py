"""What should have been seen beside what was seen, and the difference, as text."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import Answer, Machine, Rule
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


@dataclass(frozen=True, eq=False)
class Right:
    """A frame that would have been right: what it is, and the title it is shown under."""

    name: str
    title: str
    frame: Frame


@dataclass(frozen=True, kw_only=True, eq=False)
class Compared:
    """The frames that would have been right, and the one there was.

    ``wrong`` are the pixels (height, width) in which it is unlike ``unlike``, the name of one of them.
    """

    right: tuple[Right, ...]
    seen_title: str
    seen: Frame
    wrong: NDArray[np.bool_]
    unlike: str


def compared_lines(play: Play, violation: Violation, indent: int) -> list[str]:
    """The comparison that fits the rule; nothing where there is no difference to be seen."""
    pair = _compared(play, violation)
    if pair is None or not pair.wrong.any():
        return []
    machine = play.scene.machine
    cut = cut_round(machine, cells_of(machine, pair.wrong))
    where = cut.within(machine)
    lines = [*_cells(machine, pair, indent), "", f"{' ' * indent}enlarged: {where}"] if where else []
    panels = [
        *(frame_panel(machine, right.title, right.frame, cut) for right in pair.right),
        frame_panel(machine, pair.seen_title, pair.seen, cut),
        mask_panel(f"{counted(int(pair.wrong.sum()), 'pixel')} unlike {pair.unlike}", pair.wrong, cut),
    ]
    key = legend(machine, (*(right.frame for right in pair.right), pair.seen), mask=True)
    return [*lines, *side_by_side(panels, indent=indent), " " * indent + key]


def _cells(machine: Machine, pair: Compared, indent: int) -> list[str]:
    """Which cells of a large window differ, from each of the frames that would have been right."""
    differing = [(right.name, cells_of(machine, right.frame != pair.seen)) for right in pair.right]
    panels = [cell_panel(machine, f"cells unlike {name}", cells, "X") for name, cells in differing]
    return side_by_side(panels, indent=indent)


def _compared(play: Play, violation: Violation) -> Compared | None:
    rule: Rule = violation.rule
    if violation.refresh < 0:
        return None
    if rule is HIDDEN_WRITES:
        return _byte_by_byte(play, violation)
    if rule is EXACT_REVEAL:
        moment = moment_of(play, violation)
        return None if moment is None else _against_due(play, violation, moment.after, "the new view shows")
    frame = play.refreshes[violation.refresh].frame
    if rule is PROGRESS and violation.picture is not None:
        names = Names(play)
        name, due = names.short(violation.picture), names.look(violation.picture)
        right = (Right(name, f"due: {name}", due),)
        return Compared(right=right, seen_title="seen instead", seen=frame, wrong=frame != due, unlike=name)
    if rule in (WHOLE_REVEAL, IN_ORDER, BLANKING_ONLY, TILE_CAP, OWN_MEMORY):
        return _against_due(play, violation, frame, "the viewer saw")
    return None


def _byte_by_byte(play: Play, violation: Violation) -> Compared | None:
    moment = moment_of(play, violation)
    if moment is None or violation.pixels is None:
        return None
    right = (Right("before", "before this byte", moment.before),)
    wrong = violation.pixels
    return Compared(right=right, seen_title="after this byte", seen=moment.after, wrong=wrong, unlike="before")


def _against_due(play: Play, violation: Violation, frame: Frame, title: str) -> Compared:
    """``frame`` beside the pictures due then; what differs is told from the one it is most like.

    Where it is as like the one as the other, that is the next picture: a wrong reveal was meant to show it.
    """
    names = Names(play)
    due = {names.short(number): names.look(number) for number in _due(play, violation.refresh)}
    heads = ("expected", "or")
    right = tuple(Right(name, f"{head}: {name}", look) for head, (name, look) in zip(heads, due.items(), strict=False))
    nearest = min(reversed(right), key=lambda one: int((frame != one.frame).sum()))
    wrong = frame != nearest.frame
    return Compared(right=right, seen_title=title, seen=frame, wrong=wrong, unlike=nearest.name)


def _due(play: Play, number: int) -> list[int]:
    """The pictures that could rightly be seen in refresh ``number``: the one seen before, and the next taken."""
    before = play.refreshes[number - 1] if number else None
    current = before.current if before is not None else -1
    if before is not None and before.upcoming is not None:
        return [current, before.upcoming]
    refresh = play.refreshes[number]
    taken = refresh.offered if refresh.answer is Answer.TAKEN else None
    return [current] if taken is None else [current, taken]
