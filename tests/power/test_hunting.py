from dataclasses import replace

import pytest

from planeproof.candidates.faults import ZOO, Fault
from planeproof.candidates.reference import Delta
from planeproof.contract import RULES, rule
from planeproof.judge import play
from planeproof.machines import read_machine
from planeproof.power import ENGINES, Limits, Outcome, engine_named, exhaustion, measure
from planeproof.power.hunt import Hunt
from planeproof.scenes.crystals import crystal_scenes
from planeproof.scenes.edges import edge_scenes
from planeproof.search.exhausting import TINY
from planeproof.search.order import draw
from planeproof.search.units import CUT_SCENES, LAW_SCENES, WHOLE_SCENES

FAULT = {fault.id: fault for fault in ZOO}
NO_FAULT = replace(FAULT["last-row-not-sent"], make=Delta)


def hunted(fault: Fault, engine: str, *, seed: int = 0, scenes: int = 100) -> Hunt:
    """A hunt that is over."""
    hunt = Hunt(fault=fault, engine=engine, seed=seed, limits=Limits(scenes=scenes))
    engine_named(engine).hunt(hunt)
    return hunt


@pytest.mark.parametrize("engine", ["recipes", "fitting", "arrays"])
def test_a_fault_is_caught_by_its_own_rule(engine: str) -> None:
    """The detection says in which scene that was first seen, and how big the scene is."""
    found = hunted(FAULT["stale-entry"], engine).detection()
    assert found.outcome is Outcome.CAUGHT
    assert found.wanted in found.rules
    assert 1 <= found.scenes <= 100
    assert found.smallest is not None
    assert found.smallest.pictures >= FAULT["stale-entry"].pictures
    assert found.smallest.cells <= found.smallest.n_bytes


@pytest.mark.parametrize("engine", ["recipes", "uniform", "fitting", "arrays"])
def test_the_same_seed_finds_the_same(engine: str) -> None:
    """All but the seconds."""
    first, again = (hunted(FAULT["wrong-pitch"], engine, seed=3, scenes=30).detection() for _ in range(2))
    assert replace(first, seconds=0) == replace(again, seconds=0)


@pytest.mark.parametrize("engine", ["recipes", "uniform", "fitting", "arrays"])
def test_what_is_right_survives_all_of_the_scenes(engine: str) -> None:
    """Without its mistake nothing is found, and as many scenes were played as were allowed."""
    found = hunted(NO_FAULT, engine, scenes=12).detection()
    assert (found.outcome, found.rules, found.smallest) == (Outcome.SURVIVED, (), None)
    assert 12 <= found.scenes <= 12 + (_besides(found.fault) if engine == "recipes" else 0)


def _besides(fault: str) -> int:
    """How many scenes a check plays at most besides those that are searched and drawn."""
    machine = read_machine(FAULT[fault].machine)
    full, edges = 5, len(edge_scenes(machine))
    twice = 2 * LAW_SCENES
    return twice + full + edges + WHOLE_SCENES + CUT_SCENES + len(crystal_scenes(machine))


def test_a_catch_by_another_rule_is_told_apart() -> None:
    """What breaks own-memory alone, and is wanted for progress, is caught by the wrong rule."""
    mislabelled = replace(FAULT["wrong-pitch"], rule=rule("progress"))
    found = hunted(mislabelled, "recipes").detection()
    assert (found.outcome, found.rules) == (Outcome.WRONG_RULE, ("own-memory",))
    assert found.smallest is None


def test_scenes_are_those_up_to_the_first_sight() -> None:
    """Of three scenes the second shows the rule: two, though a third was played."""
    fault = FAULT["declines-everything"]
    hunt = Hunt(fault=fault, engine="recipes", seed=0, limits=Limits(scenes=9))
    scene = draw(hunt.machine, "scene", 0, seed=0)
    hunt.sees(scene, None)
    hunt.sees(scene, fault.rule.id)
    hunt.sees(scene, "progress")
    assert (hunt.detection().scenes, hunt.played, hunt.detection().rules) == (2, 3, (fault.rule.id, "progress"))


def test_the_recipes_are_those_of_a_check() -> None:
    """A fault that shows in the first scene of the laws was caught in the scene that a check draws first."""
    fault = FAULT["wrong-pitch"]
    hunt = hunted(fault, "recipes")
    first = play(draw(hunt.machine, "law", 0, seed=0), fault.make)
    assert hunt.detection().scenes == 1
    assert [violation.rule for violation in first.violations[:1]] == [fault.rule]


def test_what_leaves_the_proved_steps_has_strayed_and_names_no_rule() -> None:
    """The note says where; a base that is right does not stray; one that has no steps can't be asked."""
    found = hunted(FAULT["last-row-not-sent"], "spec").detection()
    assert (found.outcome, found.rules) == (Outcome.STRAYED, ())
    assert "is no step of the scheduler" in found.note
    assert hunted(NO_FAULT, "spec", scenes=2).detection().outcome is Outcome.SURVIVED
    (nothing,) = measure([FAULT["split-in-place"]], engines=[engine_named("spec")])
    assert (nothing.outcome, nothing.note) == (Outcome.NOT_FOR, "InPlace is not written as steps for name-plate")


def test_exhaustion_ends_with_the_smallest_scene(monkeypatch: pytest.MonkeyPatch) -> None:
    """Of the least number of pictures and cells; a fault whose kind of machine is never exhausted can't be asked."""
    fault = FAULT["stale-entry"]
    found = hunted(fault, "exhaustion").detection()
    assert found.outcome is Outcome.CAUGHT
    assert found.smallest is not None
    assert (found.smallest.pictures, found.smallest.cells) == (fault.pictures, fault.cells)
    of_other_kinds = [tiny for tiny in TINY if tiny.machine.map.pages == 1]
    monkeypatch.setattr(exhaustion, "TINY", of_other_kinds)
    (nothing,) = measure([fault], engines=[engine_named("exhaustion")])
    assert (nothing.outcome, nothing.note) == (Outcome.NOT_FOR, "no tiny machine is of the kind of vitrine-60")


def test_edge_scenes_are_played_in_their_order() -> None:
    """Up to the first that shows the fault; where none shows anything, all of them, once."""
    kept = edge_scenes(hunted(NO_FAULT, "edges").machine)
    assert hunted(NO_FAULT, "edges").detection().scenes == len(kept)
    found = hunted(FAULT["stale-entry"], "edges").detection()
    shown = [play(edge.scene, FAULT["stale-entry"].make).first(frozenset(RULES)) for edge in kept[: found.scenes]]
    assert [violation and violation.rule for violation in shown] == [*[None] * (found.scenes - 1), rule("exact-reveal")]


def test_a_hunt_ends_in_time() -> None:
    """When the seconds are over no scene is begun."""
    hunt = Hunt(fault=NO_FAULT, engine="fitting", seed=0, limits=Limits(seconds=1e-9))
    engine_named("fitting").hunt(hunt)
    assert hunt.played == 0


def test_engines_go_by_their_names() -> None:
    """Each once; an unknown one is refused with those that there are."""
    assert [engine_named(engine.name) for engine in ENGINES] == list(ENGINES)
    with pytest.raises(ValueError, match="there is no engine 'luck': take one of recipes, edges"):
        engine_named("luck")


@pytest.mark.parametrize(
    ("limits", "said"), [({"scenes": 0}, "scenes is 0: at least 1"), ({"seconds": 0.0}, "seconds is 0.0: it must")]
)
def test_limits_that_allow_nothing_are_refused(limits: dict[str, int], said: str) -> None:
    """With the figure."""
    with pytest.raises(ValueError, match=said):
        Limits(**limits)
