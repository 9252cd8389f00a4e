"""Bytes that plainly can't be seen are judged all at once; that must say just what judging them one by one says."""

import pytest

from planeproof.candidates.faults.zoo import ZOO, Fault
from planeproof.judge import Play, play
from planeproof.judge.local import WriteJudge
from planeproof.judge.unseen import Unseen
from planeproof.machines import read_machine
from planeproof.scenes.recipes import recipe
from planeproof.scenes.source import RandomSource

SCENES = 12


def told(found: Play) -> list[object]:
    """All that a play says, in plain values."""
    violations = [(v.rule, v.refresh, v.burst, v.byte, v.address, v.cell, v.said, v.margin) for v in found.violations]
    frames = [(r.number, r.current, r.upcoming, r.frame.tobytes()) for r in found.refreshes]
    return [violations, frames, found.counts, found.exercised, found.longest_wait]


@pytest.mark.parametrize("fault", ZOO, ids=[fault.id for fault in ZOO])
def test_all_at_once_says_what_one_by_one_says(fault: Fault, monkeypatch: pytest.MonkeyPatch) -> None:
    """The same violations, frames and witnesses, for broken schedulers and for what they are made from."""
    scenes = [recipe(read_machine(fault.machine), RandomSource(f"quick/{number}")) for number in range(SCENES)]
    pairs = [(scene, make) for scene in scenes for make in (fault.make, fault.base)]
    quick = [told(play(scene, make)) for scene, make in pairs]
    monkeypatch.setattr(Unseen, "plainly", lambda *_: False)
    assert [told(play(scene, make)) for scene, make in pairs] == quick


def test_most_bytes_are_judged_at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """The quick way is taken: of a right scheduler's pieces it stores all but those that change the view."""
    slow = 0
    write = WriteJudge.write

    def counted(self: WriteJudge, piece: object) -> None:
        nonlocal slow
        slow += 1
        write(self, piece)  # type: ignore[arg-type]

    monkeypatch.setattr(WriteJudge, "write", counted)
    fault = next(fault for fault in ZOO if fault.id == "stale-entry")
    found = play(recipe(read_machine("vitrine-50"), RandomSource("quick/3")), fault.base)
    reveals = found.shown
    assert reveals > 1
    assert slow <= 1 + reveals  # the set-up, and the reveals
