"""Reference schedulers pass on the shapes they are meant for, and a pass says what it rests on."""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from itertools import count

import pytest

from planeproof.candidates.reference import Fresh, InPlace
from planeproof.contract import Demands, RuleClass, Scheduler
from planeproof.contract.rules import BLANKING_ONLY, EXACT_REVEAL, HIDDEN_WRITES
from planeproof.judge import MakeScheduler, Outcome, Profile, RuleStatus, Strength
from planeproof.machines import read_machine
from planeproof.report import verdict_lines
from planeproof.scenes.crystals import crystal_scenes
from planeproof.search import check
from planeproof.search.size import size
from tests.candidates.meant_for import MEANT_FOR
from tests.search.wrong import DeclinesSecond

PASSES = tuple((name, scheduler) for name, scheduler in MEANT_FOR if scheduler is not InPlace)
"""In place passes as seen only: see below."""


@pytest.mark.parametrize(("name", "scheduler"), PASSES, ids=lambda value: getattr(value, "__name__", value))
def test_it_passes_on_the_shape_it_is_meant_for(name: str, scheduler: MakeScheduler) -> None:
    """PASS with every rule kept, none left out, and costs of the crystals that it showed."""
    verdict = check(scheduler, machines=[read_machine(name)], scenes=50, seed=5)
    assert verdict.outcomes == (Outcome.PASS,)
    assert {report.rule.id: report.status for report in verdict.rules if report.status is not RuleStatus.KEPT} == {}
    assert len(verdict.rules) == 9
    assert [cost.machine for cost in verdict.costs] == [name]
    assert verdict.costs[0].shown > 20
    assert 0 < verdict.costs[0].fullest <= 1


def test_in_place_passes_as_seen_and_is_exposed() -> None:
    """On the bench, by profile `seen`: hidden-writes EXPOSED, with the least cycles that spared the viewer."""
    verdict = check(InPlace, machines=[read_machine("bench")], profile=Profile.SEEN, scenes=80)
    assert verdict.outcomes == (Outcome.PASS,)
    reports = {report.rule: report for report in verdict.rules}
    exposed = reports[HIDDEN_WRITES]
    assert exposed.status is RuleStatus.EXPOSED
    assert isinstance(exposed.margin, int | Fraction)
    assert exposed.margin > 0
    idle = {report.rule for report in verdict.rules if report.status is RuleStatus.NOT_EXERCISED}
    assert idle <= {EXACT_REVEAL, BLANKING_ONLY}
    assert verdict.findings == ()


def test_in_place_fails_strictly_by_the_rule_it_breaks() -> None:
    """The same scheduler by profile `strict`: FAIL, hidden-writes, in two pictures of which one has a cell."""
    verdict = check(InPlace, machines=[read_machine("bench")], scenes=80)
    assert verdict.outcomes == (Outcome.FAIL,)
    assert [finding.rule for finding in verdict.findings] == [HIDDEN_WRITES]
    scene = verdict.findings[0].play.scene
    assert (len(scene.pictures), scene.occupied, scene.machine.cells) == (1, 1, 1)


def test_both_vitrines_are_checked_unless_told_otherwise() -> None:
    """By default a check is on both line standards, and the verdict names them and the costs on each."""
    verdict = check(Fresh, scenes=60)
    assert verdict.machines == ("vitrine-50", "vitrine-60")
    assert [cost.machine for cost in verdict.costs] == ["vitrine-50", "vitrine-60"]
    assert verdict.outcomes == (Outcome.PASS,)


@pytest.mark.parametrize("as_given", [False, True])
def test_a_verdict_says_where_a_demanded_patience_was_not_asked_for(*, as_given: bool) -> None:
    """On the relatives; on the machine as given, and so with crystals, it is what was demanded."""
    base = read_machine("vitrine-50")
    hasty = replace(base, demands=Demands(patience=40))
    note = "own default patience, not the demanded one"
    verdict = check(Fresh, machines=[hasty], scenes=6, as_given=as_given)
    played = [basis for basis in verdict.basis if basis.scenes]  # it has no edge scenes, which is told too
    assert [note in basis.source for basis in played] == [not as_given] * 5 + [False]
    assert [cost.patience for cost in verdict.costs] == [40]
    assert note not in " ".join(basis.source for basis in check(Fresh, machines=[base], scenes=6).basis)


class WritesToSeenPage(Fresh):
    """Names the tiles of the next picture on the page that is being seen."""

    def entries(self, tiles: Mapping[int, int]) -> dict[int, int]:
        """The entries, on the wrong page."""
        page = self.machine.page_of(self.seen)
        wanted: dict[int, int] = {}
        for cell in range(self.machine.cells):
            wanted |= self.shadow.entry(page, cell, tiles.get(cell, self.machine.blank_tile))
        return wanted


def test_what_names_a_byte_is_told_before_what_the_viewer_sees() -> None:
    """The cause before its effect, though the effect shows in a smaller scene."""
    findings = check(WritesToSeenPage, machines=[read_machine("vitrine-50")], scenes=300).findings
    classes = [finding.rule.rule_class for finding in findings]
    assert (classes[0], classes[-1]) == (RuleClass.DISCIPLINE, RuleClass.SEEN)
    assert size(findings[-1].play.scene) < size(findings[0].play.scene)


def test_no_bound_is_stated_where_an_independent_scene_failed() -> None:
    """Neither in the data nor in the text: what failed once is no zero out of n."""
    vitrine, made = read_machine("vitrine-50"), count(1)

    def right() -> Scheduler:
        next(made)
        return Fresh()

    check(right, machines=[vitrine], scenes=100)
    after = next(made) - 1 - len(crystal_scenes(vitrine)) - 30  # when 30 of the 50 independent ones are still to come
    made = count(1)

    def declines_late() -> Scheduler:
        return DeclinesSecond() if next(made) > after else Fresh()

    verdict = check(declines_late, machines=[vitrine], scenes=100)
    assert verdict.outcome in (Outcome.FAIL, Outcome.CANDIDATE_ERROR)
    (independent,) = [basis for basis in verdict.basis if basis.independent]
    assert independent.scenes >= 13
    assert (independent.failed, independent.bound) == (True, None)
    said = "\n".join(verdict_lines(verdict))
    assert "95 %" not in said
    assert "failed, so there is no" in said


def test_only_independent_draws_have_a_bound() -> None:
    """1 - 0.05^(1/n) over just those n scenes; neither the steered ones nor the crystals count towards it."""
    verdict = check(Fresh, machines=[read_machine("vitrine-50")], scenes=81)
    bounded = [basis for basis in verdict.basis if basis.bound is not None]
    assert [(basis.scenes, basis.independent) for basis in bounded] == [(41, True)]
    assert bounded[0].bound == pytest.approx(1 - 0.05 ** (1 / 41))
    others = [basis for basis in verdict.basis if basis.bound is None]
    assert sorted(basis.scenes for basis in others if "Hypothesis" in basis.source or "crystals" in basis.source) == [
        6,
        40,
    ]
    assert {basis.strength for basis in verdict.basis} == {Strength.SAMPLED}
