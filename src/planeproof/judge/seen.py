"""The seen rules, judged from frames and answers alone: what the viewer sees is the oracle."""

import copy
from collections.abc import Callable
from dataclasses import dataclass
from typing import Self

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import Machine, Picture
from planeproof.contract.rules import FAIR_REFUSAL, IN_ORDER, PROGRESS, WHOLE_REVEAL
from planeproof.display import Frame, blank_frame, look_of
from planeproof.judge.violation import Violation, in_pixels

BACKGROUND = -1
"""Stands for the background where a picture's number is asked for."""


@dataclass(frozen=True, eq=False)
class _Taken:
    picture: int
    look: Frame
    blankings: int


class Viewer:
    """What the viewer has seen so far, and what they are due to see next.

    ``current`` and ``upcoming`` are picture numbers (`BACKGROUND` before picture 0 is seen; None for nothing
    due). ``longest`` is the most full blankings that any picture or BUSY has taken so far.
    """

    def __init__(self, machine: Machine, report: Callable[[Violation], None]) -> None:
        self._machine = machine
        self._report = report
        self._line: list[_Taken] = [_Taken(BACKGROUND, blank_frame(machine), 0)]
        self._place = 0
        self._frame_of_place: Frame | None = None
        # What was last compared, and with what: a frame that is revealed is asked about twice.
        self._compared: tuple[Frame | None, list[_Taken], int | None] = (None, [], None)
        self._blankings = self._seen_at = 0
        self._busy_since: int | None = None
        self.longest = self.changes = 0
        self.gave_up = False

    @property
    def current(self) -> int:
        """The picture being seen."""
        return self._line[self._place].picture

    @property
    def upcoming(self) -> int | None:
        """The first taken picture that does not look like the current one, None if there is none."""
        return self._line[self._place + 1].picture if self.waiting else None

    @property
    def waiting(self) -> bool:
        """Whether a taken picture is still to be seen."""
        return self._place + 1 < len(self._line)

    def twin(self, report: Callable[[Violation], None]) -> Self:
        """A second viewer who has seen the same, and reports to somebody else."""
        twin = copy.copy(self)
        twin._report, twin._line = report, list(self._line)
        return twin

    # --- answers -----------------------------------------------------------------------------------------

    def take(self, picture: Picture) -> None:
        """The picture was TAKEN."""
        self._line.append(_Taken(picture.number, look_of(self._machine, picture), self._blankings))
        self._busy_since = None
        self._see_look_alikes()

    def put_off(self) -> None:
        """The picture was answered BUSY."""
        if self._busy_since is None:
            self._busy_since = self._blankings

    def decline(self, picture: Picture, refresh: int) -> None:
        """The picture was declined: rule fair-refusal."""
        self._busy_since = None
        occupied, must_show = len(picture.occupied), self._machine.must_show
        if occupied <= must_show:
            cells = f"{occupied} occupied cell{'' if occupied == 1 else 's'}"
            said = f"picture {picture.number} was declined with {cells}; up to {must_show} must be shown"
            self._report(Violation(rule=FAIR_REFUSAL, refresh=refresh, picture=picture.number, said=said))

    # --- frames ------------------------------------------------------------------------------------------

    def may_be_shown(self, frame: Frame) -> str | None:
        """None if ``frame`` is the current picture or the next one taken; otherwise what is wrong with it."""
        if self._step_to(frame) is not None:
            return None
        wanted = _name(self.current) + (f" or {_name(self.upcoming)}" if self.upcoming is not None else "")
        wrong = int(self._differing(frame).sum())
        return f"what it shows is not {wanted}: {in_pixels(wrong)} {'is' if wrong == 1 else 'are'} wrong"

    def see(self, frame: Frame, refresh: int, *, full: bool) -> None:
        """A frame was seen, after a blanking that was ``full`` or not: rules whole-reveal, in-order, progress."""
        self._blankings += full
        self._judge_waiting(refresh)
        if frame is self._frame_of_place:
            return
        step = self._step_to(frame)
        if step is None:
            self._judge_other(frame, refresh)
            self._frame_of_place = None
            return
        if step:
            self._move_to(self._place + 1)
        self._frame_of_place = frame

    def _step_to(self, frame: Frame) -> int | None:
        """0 if ``frame`` looks like the current picture, 1 if like the next one, None if like neither."""
        line = self._line[self._place : self._place + 2]
        if frame is not self._compared[0] or line != self._compared[1]:
            step = next((step for step, taken in enumerate(line) if np.array_equal(taken.look, frame)), None)
            self._compared = (frame, line, step)
        return self._compared[2]

    def _judge_other(self, frame: Frame, refresh: int) -> None:
        wrong = self._differing(frame)
        places = [place for place, taken in enumerate(self._line) if np.array_equal(taken.look, frame)]
        if not places:
            said = "the frame is neither the background nor a picture that was taken; "
            number = int(wrong.sum())
            differ = f"{in_pixels(number)} differ{'s' if number == 1 else ''}"
            said += f"{differ} from {_name(self._closest(frame))}"
            rule = WHOLE_REVEAL
        else:
            later = [place for place in places if place > self._place]
            place = later[0] if later else places[-1]
            wanted = "" if self.upcoming is None else f", and {_name(self.upcoming)} is due"
            said = f"the frame is {_name(self._line[place].picture)} while {_name(self.current)} is current{wanted}"
            rule = IN_ORDER
            if later:
                self._move_to(place)
        self._report(Violation(rule=rule, refresh=refresh, picture=self.current, pixels=wrong, said=said))

    def _move_to(self, place: int) -> None:
        waited = self._blankings - max(self._line[place].blankings, self._seen_at)
        self.longest = max(self.longest, waited)
        self.changes += 1
        self._place, self._seen_at = place, self._blankings
        self._see_look_alikes()

    def _see_look_alikes(self) -> None:
        while self.waiting and np.array_equal(self._line[self._place + 1].look, self._line[self._place].look):
            self._place += 1
            self._seen_at = self._blankings

    def _closest(self, frame: Frame) -> int:
        """Of two that are equally close the next one: it is more often what was meant."""
        due = self._line[self._place : self._place + 2][::-1]
        return min(due, key=lambda taken: int((frame != taken.look).sum())).picture

    def _differing(self, frame: Frame) -> NDArray[np.bool_]:
        due = self._line[self._place : self._place + 2][::-1]
        return min((frame != taken.look for taken in due), key=lambda wrong: int(wrong.sum()))

    def _judge_waiting(self, refresh: int) -> None:
        patience = self._machine.patience
        if self.waiting:
            due = self._line[self._place + 1]
            waited = self._blankings - max(due.blankings, self._seen_at)
            self._judge_patience(
                waited, patience, refresh, due.picture, f"{_name(due.picture)} was taken but is not seen"
            )
        elif self._busy_since is not None:
            waited = self._blankings - max(self._busy_since, self._seen_at)
            self._judge_patience(waited, patience, refresh, None, "the next picture is still answered BUSY")

    def _judge_patience(self, waited: int, patience: int, refresh: int, picture: int | None, what: str) -> None:
        self.longest = max(self.longest, waited)
        if waited > patience and not self.gave_up:
            self.gave_up = True
            said = f"{what} after {waited} full blankings; the machine's patience is {patience}"
            self._report(Violation(rule=PROGRESS, refresh=refresh, picture=picture, said=said))


def _name(picture: int | None) -> str:
    return "the background" if picture == BACKGROUND else f"picture {picture}"
