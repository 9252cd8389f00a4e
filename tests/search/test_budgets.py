"""A check plays as much as it was told to, by scenes or by the clock; the clock here is the test's own."""

import time
from collections.abc import Callable, Iterable
from types import SimpleNamespace

import pytest

from planeproof.candidates.reference import Fresh
from planeproof.contract import Answer, Burst, Picture, Rule, Scheduler
from planeproof.contract.rules import WHOLE_REVEAL
from planeproof.judge import MakeScheduler, Outcome, Verdict
from planeproof.machines import read_machine
from planeproof.report import verdict_lines
from planeproof.scenes.crystals import crystal_scenes
from planeproof.scenes.edges import edge_scenes
from planeproof.scenes.full import full_scene, long_scene
from planeproof.search import check
from planeproof.search.checking import GIVEN_SHARE, SEEKING_SHARE
from planeproof.search.steering import SHRINKING_SECONDS
from planeproof.search.units import CUT_SCENES, LAW_SCENES, WHOLE_SCENES
from tests.search.wrong import DeclinesSecond, DeclinesThreeCells

SMALL = 60.0
CRYSTALS = 6
AT_THE_LIMIT = 5
VITRINE = read_machine("vitrine-50")


class Clock:
    """A clock that goes on by a second with every scheduler that is made, so with every scene that is played."""

    def __init__(self) -> None:
        self.now = 1000.0

    def monotonic(self) -> float:
        """Seconds."""
        return self.now

    def ticking(self, make: MakeScheduler) -> Callable[[], Scheduler]:
        """The candidate, each scene of which takes a second."""

        def made() -> Scheduler:
            self.now += 1
            return make()

        return made


@pytest.fixture
def clock(monkeypatch: pytest.MonkeyPatch) -> Clock:
    """The clock that checking and steering read."""
    clock = Clock()
    for module in ("checking", "steering", "units"):
        monkeypatch.setattr(f"planeproof.search.{module}.time", SimpleNamespace(monotonic=clock.monotonic))
    return clock


def scenes_of(verdict: Verdict, source: str) -> int:
    """Scenes that the verdict says it rests on, of a source with that word in its name."""
    return sum(basis.scenes for basis in verdict.basis if source in basis.source)


@pytest.mark.parametrize(
    ("scenes", "names"), [(1, ("vitrine-50",)), (20, ("vitrine-50",)), (7, ("vitrine-50", "long-frieze", "bench"))]
)
def test_as_many_scenes_as_told(scenes: int, names: tuple[str, ...], clock: Clock) -> None:
    """Half of them steered, the rest independent, all machines together; beside them those that are always played."""
    machines = [read_machine(name) for name in names]
    verdict = check(clock.ticking(Fresh), machines=machines, scenes=scenes)
    always = [scenes_of(verdict, source) for source in ("stated edges", "cut at a byte")]
    assert always[0] == sum(len(edge_scenes(machine)) for machine in machines)
    assert WHOLE_SCENES * len(names) < always[1] <= (WHOLE_SCENES + CUT_SCENES) * len(names)
    assert scenes_of(verdict, "Hypothesis") == scenes // 2
    assert scenes_of(verdict, "independently") == scenes - scenes // 2
    assert scenes_of(verdict, "crystals") == CRYSTALS * len(names)
    assert clock.now - 1000 == scenes + (2 * LAW_SCENES + AT_THE_LIMIT + CRYSTALS) * len(names) + sum(always)


@pytest.mark.parametrize("seconds", [20.0, 400.0])
def test_seconds_are_kept_to(seconds: float, clock: Clock) -> None:
    """By one scene at the most, the crystals apart, which are always played; and they are used up."""
    verdict = check(clock.ticking(Fresh), machines=[VITRINE], seconds=seconds)
    assert verdict.outcomes == ((Outcome.PASS,) if seconds > 100 else (Outcome.VACUOUS,))
    assert seconds <= clock.now - 1000 <= seconds + 1 + AT_THE_LIMIT + CRYSTALS


@pytest.mark.parametrize("seconds", [20.0, 60.0, 150.0])
def test_seconds_are_shared_with_independent_scenes(seconds: float, clock: Clock) -> None:
    """A check by the clock has a bound as well: a third of the time at least goes into scenes that count for it."""
    verdict = check(clock.ticking(Fresh), machines=[VITRINE], seconds=seconds)
    assert scenes_of(verdict, "independently") >= seconds / 3


@pytest.mark.parametrize("only", [(), (WHOLE_REVEAL,)])
def test_no_time_at_all_still_checks_the_laws_and_is_no_pass(clock: Clock, only: tuple[Rule, ...]) -> None:
    """And the crystals; nothing was drawn independently, so it is VACUOUS, even for a rule that crystals exercise."""
    verdict = check(clock.ticking(Fresh), machines=[VITRINE], seconds=0.5, only=only)
    assert verdict.outcomes == (Outcome.VACUOUS,)
    assert "What was not searched" in verdict_lines(verdict)
    assert scenes_of(verdict, "independently") == scenes_of(verdict, "Hypothesis") == 0
    assert [basis.bound for basis in verdict.basis] == [None] * len(verdict.basis)
    assert clock.now - 1000 == 2 * LAW_SCENES + AT_THE_LIMIT + CRYSTALS


def test_a_call_gets_no_more_than_the_time_that_is_left_and_its_grace(
    monkeypatch: pytest.MonkeyPatch, clock: Clock
) -> None:
    """Not the minute that it would have had: a crystal, played when the time is over, hangs."""
    monkeypatch.setattr("planeproof.search.trial.GRACE_SECONDS", 0.05)

    class HangsLate(Fresh):
        """Never returns from a blanking once the time is over."""

        def blank(self, cycles: int) -> Iterable[Burst]:
            """Loop, or do it right."""
            while clock.now > 1020:
                time.sleep(0.001)
            return super().blank(cycles)

    verdict = check(clock.ticking(HangsLate), machines=[VITRINE], seconds=20.0, call_seconds=60.0)
    assert verdict.outcome is Outcome.HUNG
    assert verdict.fault is not None
    assert "did not return in 0.05 s" in verdict.fault.said


def test_making_smaller_takes_only_its_time(monkeypatch: pytest.MonkeyPatch, clock: Clock) -> None:
    """A finding adds what shrinking and making smaller may take, and seeing it again, and no more."""
    monkeypatch.setattr("planeproof.search.checking.SMALLER_SECONDS", SMALL)
    verdict = check(clock.ticking(DeclinesThreeCells), machines=[VITRINE], seconds=30.0)
    assert verdict.outcomes == (Outcome.FAIL,)
    again = 2 * len(verdict.findings)
    assert clock.now - 1000 <= 30.0 + SHRINKING_SECONDS + SMALL * (1 + GIVEN_SHARE) + 2 * again + 8


def test_seeking_shorter_scenes_leaves_time_to_take_away(monkeypatch: pytest.MonkeyPatch, clock: Clock) -> None:
    """Half of the time at most, even where it goes on as long as it may; the rest makes the scene as small as it is."""
    sought = []

    def seeks(*_: object, go_on: Callable[[], bool], **__: object) -> None:
        begun = clock.now
        while go_on():
            clock.now += 1
        sought.append(clock.now - begun)

    monkeypatch.setattr("planeproof.search.smaller.look_for_shorter", seeks)
    verdict = check(clock.ticking(DeclinesThreeCells), machines=[VITRINE], smaller_seconds=400.0)
    scene = verdict.findings[0].play.scene
    assert sought == [400.0 * SEEKING_SHARE]
    assert (len(scene.pictures), scene.occupied) == (1, 3)


@pytest.mark.parametrize("seed", [0, 77])
def test_a_seed_repeats_the_verdict(seed: int) -> None:
    """The same outcome, what it rests on, and the very same smallest scene."""
    one, other = (check(DeclinesSecond, machines=[VITRINE], scenes=60, seed=seed) for _ in range(2))
    assert one.outcomes == other.outcomes == (Outcome.FAIL,)
    assert one.basis == other.basis
    a, b = one.findings[0].play.scene, other.findings[0].play.scene
    assert (a.machine, a.ready, a.disturbances) == (b.machine, b.ready, b.disturbances)
    assert [picture.rows.tobytes() for picture in a.pictures] == [picture.rows.tobytes() for picture in b.pictures]


def test_another_seed_plays_other_scenes() -> None:
    """Of two seeds, the scenes that are drawn have hardly any in common."""
    edges = [edge.scene for edge in edge_scenes(VITRINE)]
    always = [full_scene(VITRINE), long_scene(VITRINE), *edges, *crystal_scenes(VITRINE)]
    drawn_by_no_seed = {picture.rows.tobytes() for scene in always for picture in scene.pictures}
    played: list[set[bytes]] = []
    for seed in (0, 1):
        seen: set[bytes] = set()

        class Noting(Fresh):
            """Notes the pictures that it is offered."""

            def offer(self, picture: Picture) -> Answer:
                """Note it."""
                seen.add(picture.rows.tobytes())  # noqa: B023 - within this round
                return super().offer(picture)

        check(Noting, machines=[VITRINE], scenes=60, seed=seed)
        played.append(seen - drawn_by_no_seed)
    assert len(played[0] & played[1]) < min(map(len, played)) / 2
