"""A play that is paused and gone on with is the play that is not, and what can't be had twice is refused."""

import threading
from collections.abc import Callable, Iterable, Iterator

import pytest

from planeproof.candidates.faults import FlipsWhenIdle
from planeproof.candidates.reference import Fresh
from planeproof.contract import Answer, Burst, Machine, Picture, Scene
from planeproof.judge import SETTLED, CandidateFault, MakeScheduler, NotDuplicable, Play, Player, play
from tests.candidates.meant_for import MEANT_FOR
from tests.candidates.seeded import seeded_scene, tight
from tests.candidates.small import scene, small

ONE = small("vitrine-50")
SCENE = scene(ONE, ("A", ".", "B"), cut={1: 0})
NAMES = [f"{make.__name__}, {shape}" for shape, make in MEANT_FOR]


def relayed(whole: Scene, make: MakeScheduler, go_on: Callable[[Player], Player]) -> Play:
    """The play of a scene in which ``go_on`` says who plays each next refresh."""
    player, offered = Player(whole.machine, make), 0
    with player.open():
        player.set_up()
        while not player.over(more=offered < len(whole.pictures)):
            player = go_on(player)
            due = offered < len(whole.pictures) and whole.ready[offered] <= player.number
            picture = whole.pictures[offered] if due else None
            offered += player.refresh(picture, whole.cycles_of(player.number)) in SETTLED
    return player.told(whole)


def after_another(player: Player) -> Player:
    """A copy; the original, and a copy beside it, go on in another way first, so that nothing can be shared unseen."""
    paused, full = player.paused(), player.machine.blank_cycles
    for other in (paused.again(), player):
        for _ in range(3):
            other.refresh(None, full)
    return paused.again()


def told(of: Play) -> tuple[object, ...]:
    """All that a play says, in values that can be compared."""
    refreshes = [
        (r.number, r.offered, r.cycles, r.used, r.frame.tobytes(), r.current, r.upcoming) for r in of.refreshes
    ]
    violations = [(v.rule, v.refresh, v.burst, v.byte, v.said, v.margin) for v in of.violations]
    return of.transcript, refreshes, violations, of.counts, of.exercised, of.longest_wait, of.shown


@pytest.mark.parametrize(("shape", "make"), MEANT_FOR, ids=NAMES)
def test_copies_play_as_the_original_does(shape: str, make: MakeScheduler) -> None:
    """Every reference strategy: refresh by refresh with copies, the same bursts, frames, violations and witnesses."""
    machine = small(shape, 2, tiles=6, pool=(1, 2, 4, 5))
    for seed in range(4):
        whole = seeded_scene(tight(machine) if seed % 2 else machine, seed)
        assert told(relayed(whole, make, after_another)) == told(play(whole, make))


def test_a_breach_is_judged_by_whoever_plays_on() -> None:
    """What the original breaks after it was copied is not counted for the copy, which breaks it too when it comes."""
    player = Player(ONE, FlipsWhenIdle)
    with player.open():
        player.set_up()
        player.refresh(SCENE.pictures[0], ONE.blank_cycles)
        paused = player.paused()
        while not player.counts:
            player.refresh(None, ONE.blank_cycles)
        copy = paused.again()
        assert (copy.number, dict(copy.counts), copy.violations) == (1, {}, [])
        while copy.number < player.number:
            copy.refresh(None, ONE.blank_cycles)
    assert copy.counts == player.counts


class Holding(Fresh):
    """Holds something that is to be copied, or can't be."""

    held: object

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Get hold of it."""
        self.held = self.get(machine)
        return super().start(machine)

    def get(self, machine: Machine) -> object:
        """Nothing."""
        return None


class Generator(Holding):
    """A generator that has begun."""

    def get(self, machine: Machine) -> Iterator[int]:
        """Three numbers."""
        return (number for number in range(3))


class Lock(Holding):
    """A lock."""

    def get(self, machine: Machine) -> object:
        """Not taken."""
        return threading.Lock()


class Remembers(Holding):
    """A function that remembers this very scheduler: a deep copy of it would be the same function."""

    def get(self, machine: Machine) -> Callable[[int], list[Burst]]:
        """What fills a blanking."""
        return lambda cycles: list(self.blank(cycles))


class HangsOnTheMachine(Holding):
    """Something of its own, on the machine that it was given, where a copy that holds it too would find it."""

    def get(self, machine: Machine) -> None:
        """A list."""
        vars(machine)["mine"] = []


@pytest.mark.parametrize("make", [Generator, Lock, Remembers, HangsOnTheMachine])
def test_what_can_not_be_had_twice_is_refused(make: MakeScheduler) -> None:
    """Rather than copied in part."""
    with pytest.raises(NotDuplicable):
        relayed(SCENE, make, after_another)


class WritesLater(Fresh):
    """Keeps the rows of a picture and writes to them in the next blanking, which is a breach of the contract."""

    rows: Picture | None = None

    def offer(self, picture: Picture) -> Answer:
        """Keep them."""
        self.rows = picture
        return super().offer(picture)

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Write."""
        if self.rows is not None and not self.outbox:
            self.rows.rows.copy()[:] = 1
            self.rows.rows[0] = 1
        return super().blank(cycles)


def test_what_was_lent_stays_lent() -> None:
    """Rows that can't be written to can't be in a copy either, so the same breach is found."""
    with pytest.raises(CandidateFault, match="read-only"):
        play(SCENE, WritesLater)
    with pytest.raises(CandidateFault, match="read-only"):
        relayed(SCENE, WritesLater, lambda player: player.paused().again())
