"""The cut rule, exhausted: every blanking of up to three writes on a tiny machine, cut at every place.

The machine has one cell, tile 1 for a pool and 0 the blank one, 2 planes and 2 map pages. A write gives one byte one of
two values: a row of tile 1 in either plane, the cell's entry on either page, the palette's two middle entries, the page
register. What is asked of the judge is which blankings keep hidden-writes; all else is worked out from frames here.
"""

import sys
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from itertools import product

import pytest

from planeproof.contract import Burst, Demands, Machine, Scene, Tiles, Timing, Window
from planeproof.contract.rules import HIDDEN_WRITES
from planeproof.display import PictureMemory, View
from planeproof.judge import play
from tests.judge.scripted import entry, pattern, scripted

MACHINE = Machine(
    name="cut anywhere",
    window=Window(columns=1, rows=1),
    tiles=Tiles(count=2, pool=(1,)),
    time=Timing(standard="by hand", lines=60, shown=40, cycles_per_line=10, setup=1, per_byte=1),
    demands=Demands(patience=6_000),
)
EDGE, MIDDLE = (0, 1), (1, 2)
WRITES: tuple[Burst, ...] = (
    *(pattern(1, plane, [byte], machine=MACHINE) for plane in range(2) for byte in (0, 0xFF)),
    *(entry(page, 0, tile, machine=MACHINE) for page in range(2) for tile in range(2)),
    *(Burst(MACHINE.palette_address + value, bytes([shade])) for value in MIDDLE for shade in EDGE),
    *(Burst(MACHINE.page_address, bytes([page])) for page in range(2)),
)
PLAIN, TURNING = range(8), range(8, 14)
"""The numbers of the writes that change what is shown, and of those that change what it is shown through."""
BLANKINGS = tuple(numbers for length in range(4) for numbers in product(range(len(WRITES)), repeat=length))


def start(palette: bytes, planes: tuple[int, int], tiles: tuple[int, int]) -> tuple[Burst, ...]:
    """What makes memory a start: the palette, page 0, a row of each plane of tile 1, the entry on each page."""
    return (
        Burst(MACHINE.palette_address, palette),
        Burst(MACHINE.page_address, b"\x00"),
        *(pattern(1, plane, [byte], machine=MACHINE) for plane, byte in enumerate(planes)),
        *(entry(page, 0, tile, machine=MACHINE) for page, tile in enumerate(tiles)),
    )


STARTS = {
    "plane 0 is seen, and a row in it": start(b"\x00\x01\x00\x01", (0xFF, 0), (1, 0)),
    "background is seen, and plane 1 is ready": start(b"\x00\x01\x00\x01", (0, 0xFF), (0, 1)),
    "both planes are seen": start(b"\x00\x01\x01\x01", (0xFF, 0), (1, 1)),
}


# --- what the judge says ------------------------------------------------------------------------------------


def in_turn(name: str, blankings: Iterable[tuple[int, ...]]) -> list[Sequence[Burst]]:
    """Each blanking after one that makes memory that start again."""
    return [written for numbers in blankings for written in (STARTS[name], [WRITES[number] for number in numbers])]


@lru_cache(maxsize=1)
def kept_by_judge() -> dict[tuple[str, tuple[int, ...]], bool]:
    """Whether each blanking keeps hidden-writes, from each start: one play a start, which it is put back to in turn."""
    kept: dict[tuple[str, tuple[int, ...]], bool] = {}
    for name in STARTS:
        one = play(Scene.of(MACHINE, []), scripted(in_turn(name, BLANKINGS)))
        assert len(one.refreshes) > 2 * len(BLANKINGS)
        broken = {violation.refresh for violation in one.violations if violation.rule is HIDDEN_WRITES}
        kept |= {(name, numbers): 2 * place + 1 not in broken for place, numbers in enumerate(BLANKINGS)}
    return kept


@pytest.fixture(autouse=True)
def keep_every_violation(monkeypatch: pytest.MonkeyPatch) -> None:
    """A play here has thousands of blankings, each of which counts."""
    monkeypatch.setattr(sys.modules[play.__module__], "KEPT_OF_A_RULE", 1_000_000)


# --- what the frames say ------------------------------------------------------------------------------------


@lru_cache(maxsize=4096)
def frame(contents: bytes, view: View) -> bytes:
    """What is seen of memory through a view."""
    return memory_of(contents).frame(view).tobytes()


@lru_cache(maxsize=4096)
def view(contents: bytes) -> View:
    """The view that memory holds."""
    return memory_of(contents).view


def memory_of(contents: bytes) -> PictureMemory:
    """Memory with those contents."""
    memory = PictureMemory(MACHINE)
    memory.contents[:] = list(contents)
    return memory.copy()


def written(contents: bytes, bursts: Sequence[Burst]) -> bytes:
    """The contents that the bursts leave."""
    after = bytearray(contents)
    for burst in bursts:
        after[burst.address : burst.address + len(burst.data)] = burst.data
    return bytes(after)


@dataclass(frozen=True)
class Cuts:
    """One blanking: the contents of memory wherever it is cut, after none of its writes, one, two or all three."""

    states: tuple[bytes, ...]
    numbers: tuple[int, ...]

    @cached_property
    def turning(self) -> list[int]:
        """The places of the writes that change the value of a view byte."""
        states = self.states
        return [place for place, n in enumerate(self.numbers) if n in TURNING and states[place] != states[place + 1]]

    @cached_property
    def change(self) -> tuple[int, int]:
        """How many writes there are before the view change, and at its end; without one, beyond the last."""
        return (self.turning[0], self.turning[-1] + 1) if self.turning else (len(self.numbers) + 1,) * 2

    @property
    def writes_within(self) -> set[str]:
        """What is written between two bytes of the view change."""
        begin, end = self.change
        return {"pattern" if n < 4 else "map" for n in self.numbers[begin:end] if n in PLAIN}

    def cut_rule(self) -> bool:
        """The old view still shows the old frame until the change is over, the new one the new frame from its start."""
        old, new = view(self.states[0]), view(self.states[-1])
        begin, end = self.change
        early = {frame(state, old) for state in self.states[: end + 1]}
        late = {frame(state, new) for state in self.states[begin:]}
        return len(early) <= 1 and len(late) <= 1

    def frames_outside(self) -> bool:
        """Cut before the view change the old frame is seen, cut after it the new one: nothing is said of within."""
        begin, end = self.change
        seen = [frame(state, view(state)) for state in self.states]
        return len(set(seen[: begin + 1])) <= 1 and len(set(seen[end:])) <= 1


@lru_cache(maxsize=1)
def cut_blankings() -> dict[tuple[str, tuple[int, ...]], Cuts]:
    """Every blanking from every start, cut everywhere."""
    cut = {}
    empty = PictureMemory(MACHINE).contents.tobytes()
    for (name, bursts), numbers in product(STARTS.items(), BLANKINGS):
        states = [written(empty, bursts)]
        for number in numbers:
            states.append(written(states[-1], [WRITES[number]]))
        cut[name, numbers] = Cuts(tuple(states), numbers)
    return cut


# --- the cut rule -------------------------------------------------------------------------------------------


def test_a_blanking_keeps_hidden_writes_if_and_only_if_it_can_be_cut_anywhere() -> None:
    """8,865 blankings, none of which judge and cut rule disagree on; both kinds, with and without a view change."""
    kept, cut = kept_by_judge(), cut_blankings()
    assert len(kept) == len(cut) == 3 * (1 + 14 + 14**2 + 14**3) == 8865
    assert [key for key, cuts in cut.items() if cuts.cut_rule() != kept[key]] == []
    found = Counter((kept[key], bool(cuts.turning)) for key, cuts in cut.items())
    assert found == {(True, True): 3628, (True, False): 3070, (False, True): 845, (False, False): 1322}


def test_cuts_outside_the_view_change_alone_do_not_tell() -> None:
    """The frames of such cuts are right wherever the rule is kept, and in some blankings in which it is not.

    In each of those a pattern or map byte stands between two bytes of the view change; both kinds occur.
    """
    kept, cut = kept_by_judge(), cut_blankings()
    assert all(cuts.frames_outside() for key, cuts in cut.items() if kept[key])
    missed = [cuts for key, cuts in cut.items() if cuts.frames_outside() and not kept[key]]
    assert Counter(kind for cuts in missed for kind in cuts.writes_within) == {"pattern": 28, "map": 26}
    assert all(cuts.writes_within for cuts in missed)


@pytest.mark.parametrize("name", STARTS)
def test_a_cut_blanking_shows_the_old_frame_or_the_new_one_when_it_is_played(name: str) -> None:
    """What was left of them is played: of all that keep the rule, cut at every place outside their view change."""
    kept, cut = kept_by_judge(), cut_blankings()
    wanted: dict[tuple[int, ...], set[bytes]] = {}
    for (begun, numbers), cuts in cut.items():
        if begun == name and kept[begun, numbers]:
            begin, end = cuts.change
            for length in (length for length in range(len(numbers)) if not begin < length < end):
                whole = cuts.states[0 if length <= begin else -1]
                wanted.setdefault(numbers[:length], set()).add(frame(whole, view(whole)))
    one = play(Scene.of(MACHINE, []), scripted(in_turn(name, wanted)))
    seen = [refresh.frame.tobytes() for refresh in one.refreshes[1 : 2 * len(wanted) : 2]]
    assert [{frame_seen} for frame_seen in seen] == list(wanted.values())
    assert len(wanted) > 100
