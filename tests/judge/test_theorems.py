"""What makes the local rules worth keeping: they imply the seen one, and say what holds wherever a blanking is cut.

Everything is computed anew from whole frames here, byte by byte: the judge's own short cuts are put to the test.
"""

import sys
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings

from planeproof.contract import Burst, Machine
from planeproof.contract.rules import BLANKING_ONLY, EXACT_REVEAL, HIDDEN_WRITES, WHOLE_REVEAL
from planeproof.display import Frame, PictureMemory, View
from planeproof.judge import play
from tests.judge.tiny_scripts import Script, scripts

LOCAL = {HIDDEN_WRITES, EXACT_REVEAL, BLANKING_ONLY}


def for_many(claim: Callable[[Script], None], *, most: int = 3) -> None:
    """Put ``claim`` to scripts that are drawn anew for every change of this file, and the same otherwise.

    So what is counted about them does not hang on luck.
    """
    many = settings(max_examples=250, derandomize=True, deadline=None, suppress_health_check=[HealthCheck.too_slow])
    many(given(scripts(most=most))(claim))()


# --- the local rules imply whole-reveal ---------------------------------------------------------------------


def test_the_local_rules_imply_whole_reveal() -> None:
    """Whatever is written: where all three are kept, every frame is whole. Where one is not, some are not."""
    plays = Counter[tuple[bool, bool, bool]]()

    def claim(script: Script) -> None:
        one = script.play()
        kept, whole = not LOCAL & set(one.counts), WHOLE_REVEAL not in one.counts
        plays[kept, whole, one.shown > 0] += 1
        assert whole or not kept

    for_many(claim)
    assert plays[True, True, True] >= 10, "hardly ever was a picture revealed with all three kept"
    assert plays[False, True, True] >= 10, "whole-reveal is meant to be kept also where the others are not"
    assert plays[False, False, True] >= 10, "hardly ever was a frame not whole"


# --- a blanking, byte by byte -------------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class Write:
    """One write: a byte, or the bytes of one map entry in one burst."""

    burst: Burst
    first: int
    end: int

    def into(self, memory: PictureMemory) -> None:
        """Store it."""
        addresses = np.array(self.burst.addresses[self.first : self.end], dtype=np.intp)
        memory.store(addresses, np.frombuffer(self.burst.data[self.first : self.end], dtype=np.uint8))


def writes_of(machine: Machine, bursts: Sequence[Burst]) -> Iterator[Write]:
    """The writes of a blanking, in order."""
    maps = range(machine.layout.maps[0], machine.layout.patterns)
    wide = machine.map.entry_bytes
    for burst in bursts:
        place = 0
        while place < len(burst.data):
            address = burst.address + place
            of_entry = wide - (address - maps.start) % wide if address in maps else 1
            end = min(place + of_entry, len(burst.data))
            yield Write(burst=burst, first=place, end=end)
            place = end


@dataclass(frozen=True, kw_only=True)
class Step:
    """One write of a blanking, with the frame it left; ``turns`` tells whether it changed a view byte's value.

    ``plainly`` tells whether it changed another byte's value. ``visible``: under each of old and new view, whether
    the write changed a pixel of the frame.
    """

    turns: bool
    plainly: bool
    frame: Frame
    visible: tuple[bool, bool]


def steps_of(memory: PictureMemory, bursts: Sequence[Burst]) -> list[Step]:
    """Play a blanking on a copy of ``memory``, write by write."""
    machine, twin, end = memory.machine, memory.copy(), memory.copy()
    writes = list(writes_of(machine, bursts))
    for write in writes:
        write.into(end)
    old, new = memory.view, end.view
    return [_step(twin, write, old, new) for write in writes]


def _step(memory: PictureMemory, write: Write, old: View, new: View) -> Step:
    held, view_bytes = memory.contents.copy(), memory.plan.view_addresses
    before = [memory.frame(view) for view in (old, new)]
    write.into(memory)
    changed = np.flatnonzero(memory.contents != held)
    turns = bool(np.isin(changed, view_bytes).any())
    after = [memory.frame(view) for view in (old, new)]
    seen_old, seen_new = (bool((a != b).any()) for a, b in zip(before, after, strict=True))
    plainly = bool(len(changed)) and not turns
    return Step(turns=turns, plainly=plainly, frame=memory.frame(), visible=(seen_old, seen_new))


@dataclass(frozen=True, kw_only=True)
class Blanked:
    """One blanking of a play: the frame before it, its steps, and whether the judge found hidden-writes kept."""

    before: Frame
    steps: list[Step]
    kept: bool

    @property
    def change(self) -> tuple[int, int] | None:
        """The numbers of the first and last step of the view change."""
        turning = [number for number, step in enumerate(self.steps) if step.turns]
        return (turning[0], turning[-1]) if turning else None


def blanked(script: Script) -> Iterator[Blanked]:
    """The blankings of a script, with what the judge said of each."""
    one = script.play()
    memory = PictureMemory(script.scene.machine)
    for write in writes_of(script.scene.machine, one.set_up):
        write.into(memory)
    broken_in = {violation.refresh for violation in one.violations if violation.rule is HIDDEN_WRITES}
    for refresh in one.refreshes:
        steps = steps_of(memory, refresh.bursts)
        yield Blanked(before=memory.frame(), steps=steps, kept=refresh.number not in broken_in)
        for write in writes_of(script.scene.machine, refresh.bursts):
            write.into(memory)


@pytest.fixture(autouse=True)
def keep_every_violation(monkeypatch: pytest.MonkeyPatch) -> None:
    """What is asked here of a blanking may be told by a play's hundredth violation."""
    monkeypatch.setattr(sys.modules[play.__module__], "KEPT_OF_A_RULE", 1_000_000)


# --- the rule said anew, and the cut rule -------------------------------------------------------------------


def visible_writes(blanking: Blanked) -> list[Step]:
    """The steps that change a pixel under the old view before the change, the new after it, either between."""
    first, last = blanking.change or (len(blanking.steps), len(blanking.steps))
    return [
        step
        for number, step in enumerate(blanking.steps)
        if not step.turns and ((step.visible[0] and number <= last) or (step.visible[1] and number >= first))
    ]


def test_hidden_writes_is_that_no_write_changes_the_frame_under_the_views_that_count() -> None:
    """Byte by byte and frame by frame, as plainly as it can be said."""
    blankings = Counter[tuple[bool, bool]]()

    def claim(script: Script) -> None:
        for blanking in blanked(script):
            blankings[blanking.kept, blanking.change is not None] += bool(blanking.steps)
            assert blanking.kept == (not visible_writes(blanking))

    for_many(claim, most=2)
    assert min(blankings[kept, turned] for kept in (True, False) for turned in (True, False)) >= 5


def cut_rule_holds(blanking: Blanked) -> bool:
    """Whether every cut outside the view change leaves the frame as it was before, or as it is in the end."""
    steps = blanking.steps
    first, last = blanking.change or (len(steps), len(steps))
    new = steps[last].frame if blanking.change else blanking.before
    early = all((step.frame == blanking.before).all() for step in steps[:first])
    return early and all((step.frame == new).all() for step in steps[last:])


def test_the_cut_rule() -> None:
    """Hidden-writes holds if and only if every cut outside the view change leaves the old or the new frame.

    Where something is written within the view change, the rule asks for more than such cuts can tell.
    """
    cut = Counter[tuple[bool, bool]]()

    def claim(script: Script) -> None:
        for blanking in blanked(script):
            first, last = blanking.change or (0, 0)
            within, holds = any(step.plainly for step in blanking.steps[first:last]), cut_rule_holds(blanking)
            cut[holds, last > 0] += any(step.plainly for step in blanking.steps)
            assert holds or not blanking.kept
            assert within or holds == blanking.kept

    for_many(claim, most=2)
    assert min(cut[holds, turned] for holds in (True, False) for turned in (True, False)) >= 5
