"""A play refresh by refresh: offer and answer, blanking, every burst in words, and what the viewer saw."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import groupby

from planeproof.contract import Answer, Burst
from planeproof.display import UNDEFINED, Frame, blank_frame, look_of
from planeproof.judge import Play, Refresh, Violation
from planeproof.judge.seen import BACKGROUND
from planeproof.report.figures import counted, cycles, wrapped
from planeproof.report.strip import WIDTH
from planeproof.report.writes import in_hex, said

SHOWN_BEFORE = 8
"""Refreshes before the one that matters that are told, unless all are asked for."""

OUT_OF_TURN = ", out of turn"
"""Ends the name of a picture that is whole, and should not be seen now."""

BURSTS_SHOWN, BURSTS_SHOWN_HERE = 5, 10
"""Bursts of one blanking that are told, and of the one that matters, unless all are asked for."""


@dataclass(frozen=True, kw_only=True)
class Trace:
    """The course of ``play`` up to ``marked``, which is pointed out; ``full`` tells all of it, to its end."""

    play: Play
    marked: Violation | None
    full: bool = False

    def lines(self, indent: int) -> Iterator[str]:
        """The course, a line for each thing that happened."""
        margin = " " * indent
        yield f"{margin}set-up, display off{'' if self.play.set_up else ': nothing written'}"
        yield from self._bursts(-1, self.play.set_up, indent)
        told = self._told()
        if told and told[0].number > 0:
            left_out = f"refreshes 0 to {told[0].number - 1}" if told[0].number > 1 else "refresh 0"
            yield f"{margin}({left_out}: left out here; replay tells them)"
        for _, group in groupby(told, key=self._sameness):
            yield from self._group(list(group), indent)

    def _told(self) -> Sequence[Refresh]:
        refreshes = self.play.refreshes
        if self.full or self.marked is None:
            return refreshes
        last = self.marked.refresh
        eventful = [r.number for r in refreshes[: last + 1] if r.bursts or r.answer not in (None, Answer.BUSY)]
        first = eventful[-SHOWN_BEFORE] if len(eventful) > SHOWN_BEFORE else 0
        return refreshes[first : last + 1]

    def _sameness(self, refresh: Refresh) -> tuple[object, ...]:
        """Quiet refreshes with the same key are told as one."""
        if refresh.bursts or (self.marked is not None and self.marked.refresh == refresh.number):
            return (refresh.number,)
        return (None, refresh.offered, refresh.answer, refresh.cycles, self.names.of(refresh))

    def _group(self, group: list[Refresh], indent: int) -> Iterator[str]:
        first, last = group[0], group[-1]
        margin = " " * indent
        name = f"refresh {first.number}" if first is last else f"refreshes {first.number} to {last.number}"
        head, *rest = wrapped(f"{name}: {self._offer(first)}; {self._blanking(first)}", indent, WIDTH - 2)
        yield from (head, *(f"  {line}" for line in rest))
        yield from self._bursts(first.number, first.bursts, indent)
        mark = "  <-- here" if self._is_seen_here(first) else ""
        yield f"{margin}    the viewer sees {self.names.of(first)}{mark}"

    def _is_seen_here(self, refresh: Refresh) -> bool:
        marked = self.marked
        return marked is not None and marked.burst is None and marked.refresh == refresh.number

    def _offer(self, refresh: Refresh) -> str:
        if refresh.answer is None:
            return "nothing offered"
        return f"picture {refresh.offered} offered, answered {refresh.answer.name}"

    def _blanking(self, refresh: Refresh) -> str:
        scene = self.play.scene
        full = scene.machine.blank_cycles
        if refresh.cycles == 0:
            reason = "lost" if scene.cycles_of(refresh.number) == 0 else "taken up by late bytes of the one before"
            return f"blanking {reason}, so blank was not called"
        told = f"{refresh.cycles} cycles" if refresh.cycles == full else f"only {refresh.cycles} of {full} cycles"
        over = f", {cycles(refresh.used - refresh.cycles)} too many" if refresh.used > refresh.cycles else ""
        used = f"{cycles(refresh.used)} used{over}" if refresh.bursts else "nothing written"
        return f"blanking of {told}, {used}"

    def _bursts(self, refresh: int, bursts: Sequence[Burst], indent: int) -> Iterator[str]:
        marked = self.marked if self.marked is not None and self.marked.refresh == refresh else None
        centre = marked.burst if marked is not None and marked.burst is not None else 0
        first, last = 0, len(bursts)
        most = len(bursts) if self.full else BURSTS_SHOWN if marked is None else BURSTS_SHOWN_HERE
        if len(bursts) > most:
            first = max(0, min(centre - most + 3, len(bursts) - most))
            last = first + most
        if first:
            yield f"{' ' * indent}    ... {counted(first, 'burst')} before"
        for number in range(first, last):
            here = marked if marked is not None and marked.burst == number else None
            yield from self._burst(number, bursts[number], here, indent)
        if last < len(bursts):
            yield f"{' ' * indent}    ... {counted(len(bursts) - last, 'burst')} after"

    def _burst(self, number: int, burst: Burst, marked: Violation | None, indent: int) -> Iterator[str]:
        machine = self.play.scene.machine
        first, *others = wrapped(f"burst {number}: {said(machine, burst)}", indent + 4, WIDTH - 4)
        yield from (first, *(f"    {line}" for line in others))
        if marked is not None:
            yield f"{' ' * indent}        {in_hex(burst, marked.byte)}  <-- here, byte {marked.byte}"

    @cached_property
    def names(self) -> "Names":
        """Names for the frames of this play."""
        return Names(self.play)


class Names:
    """What a frame is called: the background, a picture, or what is wrong with it."""

    def __init__(self, play: Play) -> None:
        self._machine = play.scene.machine
        self._pictures = play.scene.pictures
        taken = [r.offered for r in play.refreshes if r.answer is Answer.TAKEN and r.offered is not None]
        self._known = {self.look(number).tobytes(): number for number in [*reversed(taken), BACKGROUND]}

    def look(self, picture: int) -> Frame:
        """The frame that shows ``picture`` whole, or the background."""
        return blank_frame(self._machine) if picture < 0 else look_of(self._machine, self._pictures[picture])

    def name(self, picture: int) -> str:
        """``picture 3``, ``picture 3 (empty)``, or the background."""
        empty = picture >= 0 and not self._pictures[picture].occupied
        return f"{self.short(picture)}{' (empty)' if empty else ''}"

    def short(self, picture: int) -> str:
        """``picture 3``, or the background: enough where it is drawn."""
        return "the background" if picture < 0 else f"picture {picture}"

    def of(self, refresh: Refresh) -> str:
        """What the viewer sees in ``refresh``."""
        frame = refresh.frame
        undefined = frame == UNDEFINED
        if undefined.any():
            line = int(undefined.any(axis=1).argmax())
            return f"a frame that is undefined from line {line} of the window on"
        if (frame == self.look(refresh.current)).all():
            return self.name(refresh.current)
        known = self._known.get(frame.tobytes())
        if known is not None:
            return f"{self.name(known)}{OUT_OF_TURN}"
        due = [refresh.current] if refresh.upcoming is None else [refresh.current, refresh.upcoming]
        unlike = {number: int((frame != self.look(number)).sum()) for number in due}
        nearest = min(reversed(due), key=unlike.__getitem__)  # the next one where it is as like the one as the other
        return f"no whole picture: {counted(unlike[nearest], 'pixel')} unlike {self.name(nearest)}"
