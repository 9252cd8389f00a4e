"""The steered search: Hypothesis draws recipes, shrinks them to the simplest scene, and stops when told."""

import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

import pytest
from hypothesis import Phase, find, settings

from planeproof.candidates.reference import Fresh
from planeproof.contract import RULES, Disturbance, Machine, Picture, Scene, Tiles, Window
from planeproof.contract.rules import FAIR_REFUSAL
from planeproof.judge import CandidateHung, MakeScheduler, Play, Profile
from planeproof.judge import play as judge_play
from planeproof.judge.distances import distances
from planeproof.judge.edges import CUT, EDGES, LOST, Edge
from planeproof.machines import read_machine
from planeproof.scenes.recipes import recipe
from planeproof.scenes.source import Source
from planeproof.search.steering import nearness, scenes, steer
from planeproof.search.trial import Trial
from tests.search.wrong import DeclinesSecond, DeclinesThreeCells, HangsInBlank, Nothing

BASE = read_machine("vitrine-50")
FIRM = settings(database=None, derandomize=True, max_examples=2000, phases=(Phase.generate, Phase.shrink))


def trial(make: MakeScheduler, call_seconds: float = 5.0) -> Trial:
    """A trial by all rules."""
    return Trial(name="tested", make=make, asked=frozenset(RULES), profile=Profile.STRICT, call_seconds=call_seconds)


def steered(trial: Trial, base: Machine = BASE, *, most: int = 60, first_seed: int = 1) -> int:
    """Steer with nothing in the way."""
    return steer(trial, base, as_given=False, most=most, first_seed=first_seed, go_on=lambda: True)


def test_any_scene_shrinks_to_the_simplest_of_all() -> None:
    """One empty picture on one cell, ready at once, undisturbed."""
    scene = find(scenes(BASE), lambda _scene: True, settings=FIRM)
    assert (len(scene.pictures), scene.occupied, scene.machine.cells) == (1, 0, 1)
    assert (scene.ready, scene.disturbances) == ((0,), ())


def test_an_occupied_cell_shrinks_to_a_single_one() -> None:
    """Whatever is not needed to show it goes: pictures, cells, disturbances, waiting."""
    scene = find(scenes(BASE), lambda scene: scene.occupied > 0, settings=FIRM)
    assert (len(scene.pictures), scene.occupied, scene.machine.cells) == (1, 1, 1)
    assert (scene.ready, scene.disturbances) == ((0,), ())


def test_a_disturbance_shrinks_to_the_first_blanking_lost() -> None:
    """Lost is simpler than shortened, and sooner simpler than later.

    Empty pictures may be left over, for a picture and the gap before it are drawn apart: the minimiser drops those.
    """
    scene = find(scenes(BASE), lambda scene: bool(scene.disturbances), settings=FIRM)
    assert [(cut.refresh, cut.cycles) for cut in scene.disturbances] == [(0, 0)]
    assert (scene.occupied, scene.machine.cells) == (0, 1)


def test_as_given_the_strategy_keeps_the_machine() -> None:
    """Nothing but pictures, times and disturbances is drawn."""
    small = Machine(name="own", window=BASE.window, tiles=BASE.tiles)
    scene = find(scenes(small, as_given=True), lambda scene: scene.occupied > 1, settings=FIRM)
    assert scene.machine is small
    assert (len(scene.pictures), scene.occupied) == (1, 2)


def test_what_is_found_is_shrunk() -> None:
    """A fault that shows with two empty pictures on one cell is found, and shrunk to just that."""
    found = trial(DeclinesSecond)
    assert steered(found) >= 1
    scene = found.smallest[FAIR_REFUSAL].scene
    assert (len(scene.pictures), scene.occupied, scene.machine.cells) == (2, 0, 1)
    assert set(found.smallest) == {FAIR_REFUSAL}


def test_it_plays_as_many_as_asked_for_where_nothing_is_found() -> None:
    """Every one of them, and each once."""
    made = []

    def make() -> Fresh:
        made.append(1)
        return Fresh()

    assert steered(trial(make), most=25) == len(made) == 25


@pytest.mark.parametrize("after", [0, 1, 7])
def test_it_stops_when_told(after: int) -> None:
    """After just so many scenes: it is asked before each."""
    left = [after]

    def go_on() -> bool:
        left[0] -= 1
        return left[0] >= 0

    assert steer(trial(Fresh), BASE, as_given=False, most=50, first_seed=3, go_on=go_on) == after


def test_it_stops_with_the_first_call_that_hangs() -> None:
    """One hang is found, and not a second one waited for."""
    hung = trial(HangsInBlank, call_seconds=0.05)
    assert steered(hung) == 1
    assert isinstance(hung.fault, CandidateHung)


def test_a_seed_repeats_the_search() -> None:
    """The same seed plays the same scenes; another seed plays others."""
    said: list[list[object]] = []
    for first_seed in (11, 11, 12):
        played: list[object] = []

        class Noting(Trial):
            """Notes what is played."""

            def shows(self, scene: Scene) -> None:
                """Note it."""
                played.append([picture.rows.tobytes() for picture in scene.pictures])  # noqa: B023 - within the round

        noting = Noting(name="", make=Fresh, asked=frozenset(RULES), profile=Profile.STRICT, call_seconds=1.0)
        steered(noting, first_seed=first_seed, most=30)
        said.append(played)
    assert said[0] == said[1]
    assert said[0] != said[2]
    assert len(said[0]) == 30


def test_a_search_that_is_over_draws_no_more(monkeypatch: pytest.MonkeyPatch) -> None:
    """One scene was drawn before it was asked whether to go on; hundreds of long ones would take minutes."""
    drawn = []

    def counted(base: Machine, source: Source, *, as_given: bool, longest: int) -> Scene:
        drawn.append(longest)
        return recipe(base, source, as_given=as_given, longest=longest)

    monkeypatch.setattr("planeproof.search.steering.recipe", counted)
    assert steer(trial(Fresh), BASE, as_given=False, most=200, first_seed=3, go_on=lambda: False, longest=9) == 0
    assert drawn == [9]


def test_shrinking_takes_only_its_time(monkeypatch: pytest.MonkeyPatch) -> None:
    """With no time for it, what was found first is what is kept, and no scene is played after it.

    The limit is set, not waited for, so that this does not depend on how fast anything runs.
    """
    monkeypatch.setattr("planeproof.search.steering.SHRINKING_SECONDS", -1.0)
    found = trial(DeclinesThreeCells)
    shown: list[int] = []
    before = found.shows

    def shows(scene: Scene) -> object:
        result = before(scene)
        shown.append(result is not None)
        return result

    monkeypatch.setattr(found, "shows", shows)
    steered(found)
    assert sum(shown) == 1


def near(play: Play | None, edges: Sequence[Edge]) -> dict[str, float]:
    """How near a play came to some of the edges."""
    assert play is not None
    wanted = {edge: distance for edge, distance in distances(play).items() if edge in edges}
    return nearness(wanted)


def nearest(first_seed: int, edges: Sequence[Edge] | None) -> tuple[list[bool], list[object]]:
    """Of each scene whether it reached a cut blanking while a picture waits, and what was played."""
    at_it: list[bool] = []
    said: list[object] = []

    class Looking(Trial):
        """Keeps the play."""

        latest: Play | None = None

        def shows(self, scene: Scene) -> None:
            """Play it and note how near it came."""
            self.latest = judge_play(scene, self.make)
            at_it.append(near(self.latest, [CUT]).get(CUT.id) == 1)
            said.append((scene.machine, scene.ready, scene.disturbances))

    looking = Looking(name="", make=Fresh, asked=frozenset(RULES), profile=Profile.STRICT, call_seconds=1.0)
    towards = None if edges is None else lambda: near(looking.latest, edges)
    steer(looking, BASE, as_given=False, most=100, first_seed=first_seed, go_on=lambda: True, towards=towards)
    return at_it, said


def test_it_climbs_towards_an_edge() -> None:
    """Over four seeds more scenes reach the edge with its distance to steer by than without."""
    with_it, without = (sum(sum(nearest(number, edges)[0]) for number in range(4)) for edges in ([CUT], None))
    assert with_it > 1.5 * without > 0


def test_steered_by_distance_a_seed_repeats_the_search_too() -> None:
    """Scene by scene; and towards nothing it is the search that it is without."""
    one, other = nearest(7, EDGES)[1], nearest(7, EDGES)[1]
    assert one == other
    assert len(one) == 100
    assert one != nearest(7, None)[1] == nearest(7, [])[1]


def test_nearness_is_one_at_the_edge_and_less_away_from_it() -> None:
    """A lost blanking two refreshes before a picture waits: a third; nothing is told of what can't be measured."""
    dot = Picture.from_rows(0, [[1] * 8])
    small = Machine(name="small", window=Window(columns=1, rows=1), tiles=Tiles(count=2, pool=(1,)))
    for ready, wanted in ((0, 1.0), (2, 1 / 3)):
        scene = Scene.of(small, [dot], [ready], [Disturbance(0, 0)])
        assert near(judge_play(scene, Nothing), [LOST, CUT]) == {LOST.id: pytest.approx(wanted)}


READING = """
import sys
from planeproof.candidates.reference import Fresh
from planeproof.machines import read_machine
from planeproof.search.steering import scenes
from hypothesis import HealthCheck, Phase, given, seed, settings
sys.path.insert(0, {folder!r})
{more}
said = []
@seed(1)
@settings(max_examples=40, database=None, phases=[Phase.generate], suppress_health_check=list(HealthCheck))
@given(scenes(read_machine("vitrine-50")))
def drawn(scene):
    said.append((scene.machine, scene.ready, [picture.rows.tobytes() for picture in scene.pictures]))
drawn()
print(said)
"""


def test_the_source_files_that_are_loaded_change_nothing(tmp_path: Path) -> None:
    """A module full of numbers, as a candidate may be, makes no other scenes of the same seed."""
    (tmp_path / "numbers_of_ones_own.py").write_text(f"NUMBERS = {list(range(-300, 300))}\n", "utf-8")
    said = []
    for more in ("", "import numbers_of_ones_own"):
        program = READING.format(folder=str(tmp_path), more=more)
        done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True, cwd=tmp_path)
        said.append(done.stdout)
    assert len(said[0]) > 1000
    assert said[0] == said[1]
