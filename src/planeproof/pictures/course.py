"""A play gone through again, with picture memory, the sides and what would be seen without buffering at hand."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from planeproof.contract import Machine, Scene
from planeproof.display import Arrivals, Frame, PictureMemory, Piece, View, active_display, land, set_up
from planeproof.judge import Play, Refresh
from planeproof.pictures.sides import side_shown, view_of_side
from planeproof.pictures.unbuffered import Unbuffered


@dataclass(frozen=True, kw_only=True, eq=False)
class Moment:
    """One refresh, as its pictures need it.

    ``before`` and ``after`` are picture memory at the end of the refresh before and of this one; don't change them.
    ``arrivals`` says where the bytes landed. ``seen`` is the side that is shown at the end of the refresh, None while
    the view is that of no side. ``behind`` is the side that the run shows next, or would if it went on; None on a
    machine with one side. ``reveal`` is picture memory as it stands when that side is shown, None if it never is.
    ``previous`` is the refresh before. ``unbuffered`` is the frame as it would be without buffering.
    """

    scene: Scene
    refresh: Refresh
    previous: Refresh | None
    before: PictureMemory
    after: PictureMemory
    arrivals: Arrivals
    seen: int | None
    behind: int | None
    reveal: PictureMemory | None
    unbuffered: Frame

    @property
    def machine(self) -> Machine:
        """The machine."""
        return self.scene.machine

    @property
    def behind_view(self) -> View | None:
        """The view that the side behind will be seen through."""
        return None if self.behind is None else view_of_side(self.machine, self.behind)

    @property
    def name(self) -> str:
        """``refresh 12``."""
        return f"refresh {self.refresh.number}"


@dataclass(frozen=True, kw_only=True, eq=False)
class Course:
    """Every refresh of ``play``; ``moments[n]`` is refresh n."""

    play: Play
    moments: tuple[Moment, ...]

    @property
    def machine(self) -> Machine:
        """The machine."""
        return self.play.scene.machine

    @property
    def eventful(self) -> tuple[int, ...]:
        """The refreshes in which something was said, written or seen to change, the first and the last included."""
        return tuple(m.refresh.number for m in self.moments if self._is_eventful(m))

    def _is_eventful(self, moment: Moment) -> bool:
        refresh, previous = moment.refresh, moment.previous
        ends = previous is None or refresh.number == len(self.moments) - 1
        done = bool(refresh.bursts) or refresh.answer not in (None, previous.answer if previous else None)
        return ends or done or not np.array_equal(refresh.frame, previous.frame if previous else refresh.frame)


@dataclass(frozen=True, kw_only=True, eq=False)
class _State:
    """Picture memory at the end of a refresh, and how its bytes came."""

    memory: PictureMemory
    arrivals: Arrivals
    seen: int | None
    unbuffered: Frame


def course_of(play: Play) -> Course:
    """Go through ``play`` again."""
    memory = PictureMemory(play.scene.machine)
    for piece in set_up(play.set_up):
        store(memory, piece)
    beginning = memory.twin()
    states = list(_states(play, memory))
    befores = [beginning, *(state.memory for state in states)]
    moments = [
        Moment(
            scene=play.scene,
            refresh=refresh,
            previous=play.refreshes[n - 1] if n else None,
            before=befores[n],
            after=state.memory,
            arrivals=state.arrivals,
            seen=state.seen,
            behind=_behind(play.scene.machine, states, n),
            reveal=_reveal(states, n),
            unbuffered=state.unbuffered,
        )
        for n, (refresh, state) in enumerate(zip(play.refreshes, states, strict=True))
    ]
    return Course(play=play, moments=tuple(moments))


def store(memory: PictureMemory, piece: Piece) -> None:
    """Write those bytes of ``piece`` that are within memory."""
    there = (piece.addresses >= 0) & (piece.addresses < memory.plan.extent)
    memory.store(piece.addresses[there], piece.values[there])


def _states(play: Play, memory: PictureMemory) -> Iterator[_State]:
    machine = play.scene.machine
    without = Unbuffered(memory)
    overdue: tuple[Piece, ...] = ()
    for refresh in play.refreshes:
        arrivals = land(machine, refresh.number, refresh.bursts, refresh.cycles, overdue)
        overdue = arrivals.overdue
        frame = without.frame(arrivals)
        drawn = []
        for piece in arrivals.pieces:
            if piece.line is None:
                store(memory, piece)
            else:
                drawn.append(piece)
        active_display(memory, drawn, lambda piece: store(memory, piece))
        yield _State(memory=memory.twin(), arrivals=arrivals, seen=side_shown(machine, memory.view), unbuffered=frame)


def _next(states: list[_State], number: int) -> int | None:
    """The first refresh after ``number`` that shows another side."""
    seen = states[number].seen
    later = range(number + 1, len(states))
    return next((n for n in later if states[n].seen is not None and states[n].seen != seen), None)


def _behind(machine: Machine, states: list[_State], number: int) -> int | None:
    if machine.sides == 1:
        return None
    following = _next(states, number)
    if following is not None:
        return states[following].seen
    seen = states[number].seen
    return 0 if seen is None else (seen + 1) % machine.sides


def _reveal(states: list[_State], number: int) -> PictureMemory | None:
    following = _next(states, number)
    return None if following is None else states[following].memory
