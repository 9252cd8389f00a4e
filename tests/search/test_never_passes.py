"""What does next to nothing, or too little to be judged, never passes."""

import pytest

from planeproof.candidates.reference import Fresh, SplitPool
from planeproof.contract import RULES, Machine, Rule, RuleClass, TileMap, Tiles, Window
from planeproof.contract.rules import (
    BLANKING_ONLY,
    EXACT_REVEAL,
    FAIR_REFUSAL,
    HIDDEN_WRITES,
    PROGRESS,
    TILE_CAP,
    WHOLE_REVEAL,
)
from planeproof.judge import MakeScheduler, Outcome, Profile, RuleStatus
from planeproof.machines import read_machine
from planeproof.search import check
from tests.search.wrong import AlwaysBusy, DeclinesAll, Nothing, OnlyBackground

IDLERS: tuple[tuple[MakeScheduler, Rule], ...] = (
    (Nothing, PROGRESS),
    (AlwaysBusy, PROGRESS),
    (DeclinesAll, FAIR_REFUSAL),
    (OnlyBackground, PROGRESS),
)
ROOMY = Machine(name="roomy", window=Window(columns=2, rows=1), tiles=Tiles(count=4, pool=(1, 2, 3)))
each_idler = pytest.mark.parametrize(("idler", "rule"), IDLERS, ids=lambda value: getattr(value, "__name__", ""))


@each_idler
@pytest.mark.parametrize(
    ("name", "profile"),
    [
        ("vitrine-50", Profile.STRICT),
        ("vitrine-50", Profile.SEEN),
        ("case-label", Profile.STRICT),
        ("twin-niche", Profile.SEEN),
    ],
)
def test_doing_nothing_fails(idler: MakeScheduler, rule: Rule, name: str, profile: Profile) -> None:
    """By the rule that it must come to something, in one picture, on every kind of machine and by either profile."""
    verdict = check(idler, machines=[read_machine(name)], profile=profile, scenes=20)
    assert verdict.outcomes == (Outcome.FAIL,)
    assert [finding.rule for finding in verdict.findings] == [rule]
    scene = verdict.findings[0].play.scene
    assert (len(scene.pictures), scene.machine.cells, scene.disturbances) == (1, 1, ())
    # An empty picture looks like the background, so one that is never shown must have something in it.
    assert scene.occupied == (1 if idler in (Nothing, OnlyBackground) else 0)


@pytest.mark.parametrize(("idler", "rule"), IDLERS[:3], ids=lambda value: getattr(value, "__name__", ""))
@pytest.mark.parametrize(
    ("asked", "profile"),
    [(rule, Profile.STRICT) for rule in RULES]
    + [(rule, Profile.SEEN) for rule in RULES if rule.rule_class is RuleClass.DISCIPLINE],
)
def test_doing_nothing_does_not_pass_for_most_rules_alone(
    idler: MakeScheduler, rule: Rule, asked: Rule, profile: Profile
) -> None:
    """Asked for one rule, it fails by it, or could not have failed by it: VACUOUS.

    What it keeps having had the chance to break it, is a pass, and the verdict says of which rule: it was offered
    the hardest picture, or took it.
    """
    verdict = check(idler, machines=[ROOMY], only=[asked], profile=profile, scenes=20)
    if asked is rule:
        assert verdict.outcomes == (Outcome.FAIL,)
    elif verdict.outcomes == (Outcome.PASS,):
        had_the_chance = {FAIR_REFUSAL} if idler in (AlwaysBusy, DeclinesAll) else {FAIR_REFUSAL, TILE_CAP}
        assert asked in had_the_chance
    else:
        assert verdict.outcomes == (Outcome.VACUOUS,)


def test_one_scene_is_too_thin() -> None:
    """A right scheduler, one scene: VACUOUS, and the rules that were not exercised are named."""
    verdict = check(Fresh, machines=[ROOMY], scenes=1)
    assert verdict.outcomes == (Outcome.VACUOUS,)
    assert RuleStatus.NOT_EXERCISED in {report.status for report in verdict.rules}
    assert verdict.findings == ()


def test_scenes_that_never_come_near_an_edge_are_vacuous() -> None:
    """Of two drawn scenes none brings a picture back, or loses a blanking: the rules that ask for it say so."""
    verdict = check(Fresh, machines=[ROOMY], scenes=2, as_given=True)
    assert verdict.outcomes == (Outcome.VACUOUS,)
    idle = [report for report in verdict.rules if report.status is RuleStatus.NOT_EXERCISED]
    assert all(report.missed for report in idle)
    assert EXACT_REVEAL in [report.rule for report in idle]


def test_a_rule_that_was_not_asked_for_makes_nothing_vacuous() -> None:
    """The same machine and scheduler, asked for the other rules only: PASS."""
    verdict = check(Fresh, machines=[ROOMY], scenes=150, as_given=True, only=set(RULES) - {BLANKING_ONLY})
    assert verdict.outcomes == (Outcome.PASS,)
    assert len(verdict.rules) == 8


def test_only_the_rules_asked_for_are_judged() -> None:
    """A scheduler that shows nothing, asked for the frames alone: nothing to fail on, and nothing was exercised."""
    verdict = check(Nothing, machines=[ROOMY], scenes=20, only=[WHOLE_REVEAL, EXACT_REVEAL])
    assert [report.rule for report in verdict.rules] == [EXACT_REVEAL, WHOLE_REVEAL]
    assert verdict.outcomes == (Outcome.VACUOUS,)


def test_a_profile_that_fails_on_nothing_asked_for_is_vacuous() -> None:
    """`seen` and a rule of discipline alone: nothing could have failed, so nothing has passed."""
    for candidate in (Nothing, Fresh):
        verdict = check(candidate, machines=[ROOMY], scenes=40, profile=Profile.SEEN, only=[HIDDEN_WRITES])
        assert verdict.outcomes == (Outcome.VACUOUS,)


def one_page() -> TileMap:
    """A map of one page."""
    return TileMap(pages=1)


def test_one_side_only_has_nothing_hidden() -> None:
    """On a machine with one side hidden-writes is not applicable, and asked for alone it is no pass."""
    single = Machine(name="single", window=ROOMY.window, tiles=Tiles(count=4, pool=(1, 2, 3), planes=1), map=one_page())
    verdict = check(SplitPool, machines=[single], scenes=20, only=[HIDDEN_WRITES])
    assert verdict.outcome is not Outcome.PASS
