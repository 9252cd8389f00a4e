"""Playing one scene against one candidate, and what came of it."""

import copy
from collections import Counter
from collections.abc import Mapping
from contextlib import AbstractContextManager
from dataclasses import dataclass

import numpy as np

from planeproof.contract import Answer, Burst, Machine, Outside, Picture, Rational, Rule, RuleClass, Scene
from planeproof.contract.rules import BLANKING_ONLY, HIDDEN_WRITES, RULES
from planeproof.display import Arrivals, Frame, PictureMemory, Piece, active_display, blank_frame, land, set_up
from planeproof.display.landing import taken_by
from planeproof.judge.conversation import CALL_SECONDS, Conversation, Halted, MakeScheduler
from planeproof.judge.local import WriteJudge, judge_lateness, with_margin
from planeproof.judge.seen import Viewer
from planeproof.judge.violation import Violation
from planeproof.judge.witness import Witnesses

SETTLED = (Answer.TAKEN, Answer.TOO_BIG)
"""Answers after which a picture is not offered again."""

KEPT_OF_A_RULE = 64
"""Violations of one rule that a play keeps; the others are only counted."""


@dataclass(frozen=True, kw_only=True, eq=False)
class Refresh:
    """One refresh of a play.

    ``offered`` is the picture that was offered, ``answer`` the answer. ``cycles`` is what the blanking was told to
    have, 0 if it was not had; ``used`` how many the bursts took. ``frame`` is what was seen; ``current`` the picture
    that the viewer then has, ``upcoming`` the one they are due to see next.
    """

    number: int
    offered: int | None
    answer: Answer | None
    cycles: int
    bursts: tuple[Burst, ...]
    used: Rational
    frame: Frame
    current: int
    upcoming: int | None


@dataclass(frozen=True, kw_only=True, eq=False)
class Play:
    """What came of one scene.

    ``violations`` holds at most `KEPT_OF_A_RULE` of a rule, ``counts`` how many there were. ``exercised``: rules that
    could have been broken. ``longest_wait`` is in full blankings, ``shown`` counts changes of the picture seen.
    """

    scene: Scene
    set_up: tuple[Burst, ...]
    refreshes: tuple[Refresh, ...]
    violations: tuple[Violation, ...]
    counts: Mapping[Rule, int]
    exercised: frozenset[Rule]
    longest_wait: int
    shown: int

    def first(self, rules: frozenset[Rule]) -> Violation | None:
        """The first violation of one of ``rules``: by refresh and byte, then causes before effects.

        What no byte is named for was found at the end of its refresh.
        """
        chosen = [violation for violation in self.violations if violation.rule in rules]
        return min(chosen, key=_when, default=None)

    @property
    def transcript(self) -> tuple[object, ...]:
        """Everything the candidate said, for comparing two plays of one scene."""
        return (self.set_up, *((refresh.answer, refresh.bursts) for refresh in self.refreshes))


def play(scene: Scene, make: MakeScheduler, *, call_seconds: float = CALL_SECONDS) -> Play:
    """Play ``scene`` against a new scheduler of ``make``. Raises `CandidateFault` where it breaks a law."""
    player, offered = Player(scene.machine, make, call_seconds=call_seconds), 0
    with player.open():
        player.set_up()
        while not player.over(more=offered < len(scene.pictures)):
            due = offered < len(scene.pictures) and scene.ready[offered] <= player.number
            answer = player.refresh(scene.pictures[offered] if due else None, scene.cycles_of(player.number))
            offered += answer in SETTLED
    return player.told(scene)


class Player:
    """Plays refresh after refresh on ``machine`` against a new scheduler of ``make``, and judges.

    Call `set_up`, then `refresh` until it is `over`, all inside `open`; ``number`` is the refresh that comes next.
    Between two refreshes it can be `paused`, and gone on with from there more than once. Raises `CandidateFault` where
    the scheduler breaks a law.
    """

    def __init__(self, machine: Machine, make: MakeScheduler, *, call_seconds: float = CALL_SECONDS) -> None:
        self.machine = machine
        self.number = 0
        self.refreshes: list[Refresh] = []
        self.violations: list[Violation] = []
        self.counts: Counter[Rule] = Counter()
        self.conversation = Conversation(machine=machine, make=make, call_seconds=call_seconds)
        self.memory = PictureMemory(machine)
        self.viewer = Viewer(machine, self._report)
        self.writes = WriteJudge(self.memory, self._report, self.viewer.may_be_shown)
        self.witnesses = Witnesses(machine)
        self.blank = blank_frame(machine)
        self.overdue: tuple[Piece, ...] = ()
        self.frame: Frame | None = None
        self.torn, self.asked_of, self.something = False, self.blank, False
        self.answered_at = 0

    def open(self) -> AbstractContextManager[None]:
        """The scheduler may be called inside."""
        return self.conversation.open()

    def set_up(self) -> None:
        """Let the scheduler set up."""
        self.bursts = self.conversation.start()
        pieces = set_up(self.bursts)
        self.writes.begin(pieces, setting_up=True)
        for piece in pieces:
            self.writes.write(piece)

    def over(self, *, more: bool) -> bool:
        """Whether nothing is left to be seen; ``more`` tells whether there are pictures yet to be offered."""
        idle = not more and not self.viewer.waiting and self.answered_at > self.machine.patience
        return self.viewer.gave_up or idle

    def refresh(self, picture: Picture | None, cycles: int) -> Answer | None:
        """Offer ``picture``, if any, then play one refresh whose blanking has ``cycles``; the answer."""
        self.conversation.refresh = self.number
        answer = None if picture is None else self._offer(picture)
        if answer in SETTLED:
            self.answered_at = 0
        self.answered_at += cycles == self.machine.blank_cycles
        self._play(None if picture is None else picture.number, answer, cycles)
        self.number += 1
        return answer

    def told(self, scene: Scene) -> Play:
        """What came of it, where it was ``scene`` that was played."""
        return Play(
            scene=scene,
            set_up=self.bursts,
            refreshes=tuple(self.refreshes),
            violations=tuple(self.violations),
            counts=dict(self.counts),
            exercised=self.witnesses.exercised,
            longest_wait=self.viewer.longest,
            shown=self.viewer.changes,
        )

    def paused(self) -> "Paused":
        """This moment, between two refreshes. Raises `NotDuplicable` for a scheduler that can't be had twice."""
        return Paused(self._twin(self.conversation), self.conversation.halted())

    def _twin(self, conversation: Conversation) -> "Player":
        twin = copy.copy(self)
        twin.conversation = conversation
        twin.refreshes, twin.violations = list(self.refreshes), list(self.violations)
        twin.counts, twin.witnesses = self.counts.copy(), self.witnesses.twin()
        twin.memory, twin.viewer = self.memory.twin(), self.viewer.twin(twin._report)
        twin.writes = self.writes.twin(twin.memory, twin._report, twin.viewer.may_be_shown)
        return twin

    def _report(self, violation: Violation) -> None:
        self.counts[violation.rule] += 1
        if self.counts[violation.rule] <= KEPT_OF_A_RULE:
            self.violations.append(violation)

    def _offer(self, picture: Picture) -> Answer:
        answer = self.conversation.offer(picture)
        self.witnesses.offered(picture, taken=answer is Answer.TAKEN)
        if answer is Answer.TAKEN:
            self.viewer.take(picture)
        elif answer is Answer.BUSY:
            self.viewer.put_off()
        else:
            self.viewer.decline(picture, self.number)
        return answer

    def _play(self, offered: int | None, answer: Answer | None, disturbed: int) -> None:
        machine, number = self.machine, self.number
        cycles = min(disturbed, machine.blank_cycles - taken_by(machine, self.overdue))
        bursts = self.conversation.blank(cycles) if cycles > 0 else ()
        arrivals = land(machine, number, bursts, cycles, self.overdue)
        self.overdue = arrivals.overdue
        kept = len(self.violations)
        self._display(number, arrivals)
        assert self.frame is not None
        self._set_margins(kept, cycles - arrivals.used)
        self.viewer.see(self.frame, number, full=disturbed == machine.blank_cycles)
        if cycles > 0:
            self.witnesses.used(arrivals.used, cycles - arrivals.used, waiting=self.viewer.waiting)
        something = self.viewer.current >= 0 and self._shows_something(self.frame)
        self.witnesses.saw(something=something, changes=self.viewer.changes, waited=self.viewer.longest)
        self.refreshes.append(
            Refresh(
                number=number,
                offered=offered,
                answer=answer,
                cycles=cycles,
                bursts=bursts,
                used=arrivals.used,
                frame=self.frame,
                current=self.viewer.current,
                upcoming=self.viewer.upcoming,
            )
        )

    def _display(self, number: int, arrivals: Arrivals) -> None:
        if not arrivals.pieces and not arrivals.overdue and self.frame is not None and not self.torn:
            return
        machine = self.machine
        for piece in (*arrivals.pieces, *arrivals.overdue):
            if piece.late and piece.refresh == number:
                judge_lateness(piece, machine.outside, self._report)
        inside = [piece for piece in arrivals.pieces if piece.line is None]
        drawn = [piece for piece in arrivals.pieces if piece.line is not None]
        before = self.blank if self.frame is None else self.frame
        self.writes.begin(inside if machine.outside is Outside.LOST else [*inside, *drawn])
        self.writes.write_all(inside)
        if self.memory.frame() is not before:
            self.writes.judge_shown_tiles(number)
        self.frame = active_display(self.memory, drawn, self.writes.write)
        self.torn = bool(drawn)
        if drawn and machine.outside is not Outside.LOST:
            self.writes.judge_shown_tiles(number)
        self._witness_writes(before)

    def _witness_writes(self, before: Frame) -> None:
        patterns, entries = self.writes.changed_patterns, self.writes.changed_map
        self.witnesses.wrote(patterns=patterns, map_entries=entries, something_seen=self._shows_something(before))
        shown = self.writes.revealed
        if shown is not None and not np.array_equal(shown, before):
            self.witnesses.revealed()

    def _shows_something(self, frame: Frame) -> bool:
        """Whether a frame is not all background; asked again and again of the same one."""
        if frame is not self.asked_of:
            self.asked_of, self.something = frame, not np.array_equal(frame, self.blank)
        return self.something

    def _set_margins(self, kept: int, left: Rational) -> None:
        """What spared the viewer: the cycles ``left`` of the blanking, or those until the window would be drawn."""
        if kept == len(self.violations):
            return
        time = self.machine.time
        until_drawn = max(self.machine.window.first_line * time.cycles_per_line + left, 0)
        for place in range(kept, len(self.violations)):
            violation = self.violations[place]
            if violation.rule.rule_class is RuleClass.DISCIPLINE:
                late = violation.rule is BLANKING_ONLY or left < 0
                self.violations[place] = with_margin(violation, until_drawn if late else left)


@dataclass(frozen=True, eq=False)
class Paused:
    """A player at one moment between two refreshes."""

    _player: Player
    _halted: Halted

    def again(self) -> Player:
        """A player that goes on from there, with a scheduler of its own. Raises `NotDuplicable`."""
        return self._player._twin(self._halted.again())


def _when(violation: Violation) -> tuple[int, bool, int, int, int]:
    byte = (violation.burst or 0, violation.byte or 0)
    return (violation.refresh, violation.burst is None, *byte, RULES.index(violation.rule))


def not_applicable(scene: Scene) -> frozenset[Rule]:
    """The rules that say nothing on the scene's machine: hidden-writes where there is one side only."""
    return frozenset() if scene.machine.sides > 1 else frozenset({HIDDEN_WRITES})
