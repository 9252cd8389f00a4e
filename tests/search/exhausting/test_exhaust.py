"""Exhausting candidates: right ones pass, premises are told, copies are no shortcut, the unfinished is UNKNOWN."""

import random
import threading
from collections.abc import Iterable, Mapping
from dataclasses import replace
from pathlib import Path

import pytest

from planeproof.candidates.faults import OldInkLeft, StaleEntry
from planeproof.candidates.reference import Delta, Fresh, InPlace
from planeproof.contract import Answer, Burst, Machine, Picture
from planeproof.contract.rules import BLANKING_ONLY, EXACT_REVEAL, FAIR_REFUSAL, HIDDEN_WRITES, IN_ORDER, PROGRESS
from planeproof.judge import MakeScheduler, Outcome, Profile, RuleStatus, Strength, Verdict, play
from planeproof.report import verdict_lines
from planeproof.scenes.cases import load_case
from planeproof.search.exhausting import Bounds, exhaust, tiny
from planeproof.search.exhausting.letters import Letters
from planeproof.search.exhausting.tree import SceneTree
from planeproof.search.exhausting.walking import Walk
from tests.candidates.meant_for import MEANT_FOR
from tests.search.wrong import HangsInBlank, RaisesInOffer

TWO = Bounds(pictures=2, disturbed=1, within=2)
THREE = Bounds(pictures=3, disturbed=1, within=2)

KIND = {
    "vitrine-50": "one-cell",
    "vitrine-60": "one-cell",
    "case-label": "one-page",
    "twin-niche": "one-plane",
    "two-wings": "two-banks",
    "scroll-case": "columns",
    "mosaic-floor": "two-bits",
    "pigment-chart": "interleaved",
    "drawer-front": "packed",
    "long-frieze": "wide-entries",
    "bench": "roomy",
    "name-plate": "one-side",
}
"""The tiny machine of the kind of each that ships."""

WHOLE_PATTERNS = {"Fresh", "SplitPool", "Rows", "Queued"}
"""Strategies that are seen to copy patterns as wholes; all others compare bytes, or leave some out."""


def premise_of(make: MakeScheduler) -> Letters:
    """The letters that a right strategy is exhausted with, where storage lets anything be copied."""
    return Letters.PATTERNS if getattr(make, "__name__", "") in WHOLE_PATTERNS else Letters.BYTES


RIGHT = tuple(dict.fromkeys((KIND[shape], make) for shape, make in MEANT_FOR if make is not InPlace))


def idle(verdict: Verdict) -> set[object]:
    """Rules that nothing is known of."""
    return {report.rule for report in verdict.rules if report.status is RuleStatus.NOT_EXERCISED}


# --- who is right -------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("name", "make"), RIGHT, ids=lambda value: getattr(value, "__name__", value))
def test_a_reference_passes_on_the_tiny_machine_of_its_kind(name: str, make: MakeScheduler) -> None:
    """EXHAUSTED and PASS within small bounds, every rule kept, and every scene of the bounds counted."""
    one = tiny(name)
    bounds = TWO if one.machine.cells * one.machine.tiles.depth > 1 else THREE
    one = replace(one, patterns=bounds, bytes=bounds, values=Bounds(pictures=2, values=4))
    verdict = exhaust(make, machines=one)
    assert verdict.outcomes == (Outcome.PASS,)
    assert {report.status for report in verdict.rules} == {RuleStatus.KEPT}
    assert {basis.strength for basis in verdict.basis} == {Strength.EXHAUSTED}
    totals = {letters: SceneTree(one.machine, one.bounds(letters), letters).total for letters in Letters}
    walked = (Letters.BYTES, Letters.VALUES) if name == "packed" else (premise_of(make),)
    assert [basis.scenes for basis in verdict.basis] == [totals[letters] for letters in walked]
    assert all(letters.name.lower() in basis.source for letters, basis in zip(walked[:1], verdict.basis, strict=False))
    assert not any(basis.failed for basis in verdict.basis)


@pytest.mark.parametrize(("name", "make"), RIGHT, ids=lambda value: getattr(value, "__name__", value))
def test_copies_and_replays_come_to_the_same(name: str, make: MakeScheduler) -> None:
    """Every reference: leaf by leaf the same scene, count, transcript, violations and witnesses; copies play less."""
    one = tiny(name)
    letters = Letters.BYTES
    gaps = (0, 2) if one.machine.cells * one.machine.tiles.depth == 1 else (1,)
    tree = SceneTree(one.machine, Bounds(pictures=2, gaps=gaps, disturbed=1, within=1), letters)
    copied, anew = (Walk(tree=tree, make=make, call_seconds=5, copying=copying) for copying in (True, False))
    for level in tree.levels:
        for one_leaf, other in zip(copied.leaves(level), anew.leaves(level), strict=True):
            assert one_leaf.play is not None
            assert other.play is not None
            assert one_leaf.scenes == other.scenes
            assert one_leaf.scene.ready == other.scene.ready
            straight = play(one_leaf.scene, make)
            assert one_leaf.play.transcript == other.play.transcript == straight.transcript
            assert one_leaf.play.counts == straight.counts == {}
            assert one_leaf.play.exercised == straight.exercised
    assert copied.copying
    assert copied.told == anew.told == anew.played
    assert copied.played < copied.told


def test_a_whole_tiny_machine_is_exhausted() -> None:
    """The stated bounds of one of them, with nothing made smaller: the number of scenes is pinned."""
    verdict = exhaust(Fresh, machines="one-cell", bounds=Bounds(pictures=3, gaps=(0, 3), disturbed=2, within=5))
    assert verdict.outcomes == (Outcome.PASS,)
    assert [(basis.strength, basis.scenes) for basis in verdict.basis] == [(Strength.EXHAUSTED, 2320)]


@pytest.mark.parametrize(("name", "profile"), [("roomy", Profile.SEEN), ("one-side", Profile.STRICT)])
def test_in_place_leaves_rules_that_it_can_not_exercise(name: str, profile: Profile) -> None:
    """All of a picture in one blanking: nothing is left over for another, and no view is changed. So it is narrowed."""
    verdict = exhaust(InPlace, machines=name, profile=profile, bounds=THREE)
    assert verdict.outcomes == (Outcome.PASS if profile is Profile.SEEN else Outcome.VACUOUS,)
    assert idle(verdict) == {BLANKING_ONLY, EXACT_REVEAL}
    narrowed = [report.rule for report in verdict.rules if report.status in (RuleStatus.KEPT, RuleStatus.EXPOSED)]
    again = exhaust(InPlace, machines=name, profile=profile, bounds=THREE, only=narrowed)
    assert again.outcomes == (Outcome.PASS,)


def test_in_place_is_exposed_with_the_least_margin() -> None:
    """What spared the viewer is told as a check tells it, from scenes that were played from the beginning."""
    verdict = exhaust(InPlace, machines="roomy", profile=Profile.SEEN, bounds=THREE)
    (exposed,) = [report for report in verdict.rules if report.status is RuleStatus.EXPOSED]
    assert exposed.rule is HIDDEN_WRITES
    assert exposed.margin is not None
    assert exposed.margin > 0


# --- premises -----------------------------------------------------------------------------------------------


class OnePixelLeft(Delta):
    """Leaves a byte as it is that is to get one pixel more, the last but one of the row: compares by value."""

    def to_send(self, wanted: Mapping[int, int]) -> Iterable[Burst]:
        """What differs by more than that."""
        held, first = self.shadow.bytes, self.machine.layout.patterns
        close = {at: byte for at, byte in wanted.items() if at >= first and held[at] ^ byte == 2 and byte & 2}
        return self.machine.bursts(wanted, {**held, **close})


def test_who_compares_by_value_is_caught_by_all_values_only() -> None:
    """Tokens do not show it; the premise is seen to be broken by renaming, and all bytes of one row have it."""
    one = replace(tiny("one-cell"), bytes=Bounds(pictures=2), values=Bounds(pictures=1))
    verdict = exhaust(OnePixelLeft, machines=one)
    assert verdict.outcomes == (Outcome.FAIL,)
    tokens, values = verdict.basis
    assert (tokens.failed, tokens.scenes) == (False, 8)
    assert (values.failed, values.scenes) == (True, 4)
    assert "does not only copy and compare bytes (" in values.source
    assert "no byte stands for another" in values.source
    (finding,) = verdict.findings
    assert (finding.rule, finding.play.scene.pictures[0].rows.max()) == (PROGRESS, 2)
    blind = exhaust(OnePixelLeft, machines=replace(one, values=Bounds(pictures=1, values=2, empty=(0,))))
    assert not blind.findings


def test_who_leaves_out_empty_rows_does_not_take_patterns_as_wholes() -> None:
    """Tokens for patterns would not show it, for they have ink in every row: the premise is seen to be broken."""
    verdict = exhaust(OldInkLeft, machines="one-cell")
    assert verdict.outcomes == (Outcome.FAIL,)
    assert "does not only copy and compare patterns" in verdict.basis[0].source
    scene = verdict.findings[0].play.scene
    assert (len(scene.pictures), scene.occupied) == (3, 2)


def test_the_premise_is_told_as_an_observation() -> None:
    """With the scenes and renamings that it was tried on; never as a proof."""
    (basis,) = exhaust(Fresh, bounds=TWO).basis
    assert "on 24 scenes with their patterns renamed in 4 ways each" in basis.source
    assert "an observation and no proof" in basis.source


# --- copies -------------------------------------------------------------------------------------------------


class HoldsALock(Fresh):
    """Can't be copied."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Take a lock along."""
        self.lock = threading.Lock()
        return super().start(machine)


class KeepsItElsewhere(Fresh):
    """Keeps what it is at in a place that is all schedulers', cleared by the next that starts: a copy can't have it."""

    waited = 0

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Begin anew."""
        KeepsItElsewhere.waited = 0
        return super().start(machine)

    def offer(self, picture: Picture) -> Answer:
        """Every other time not now."""
        KeepsItElsewhere.waited += 1
        return super().offer(picture) if KeepsItElsewhere.waited % 2 == 0 else Answer.BUSY


@pytest.mark.parametrize(
    ("make", "why"), [(HoldsALock, "it can't be copied"), (KeepsItElsewhere, "a copy of it did not go on")]
)
def test_who_can_not_be_copied_is_played_from_the_beginning(make: MakeScheduler, why: str) -> None:
    """With the same result, and it is told why."""
    verdict, plain = exhaust(make, bounds=THREE), exhaust(Fresh, bounds=THREE)
    assert verdict.outcomes == plain.outcomes == (Outcome.PASS,)
    assert [basis.scenes for basis in verdict.basis] == [basis.scenes for basis in plain.basis]
    assert "each played from its beginning, for " + why in verdict.basis[0].source
    assert "saved by going on from copies" in plain.basis[0].source


# --- how it ends --------------------------------------------------------------------------------------------


def test_when_the_time_is_over_there_is_no_answer() -> None:
    """UNKNOWN, with the scenes that were played by then; they are told as played, not as all there are."""
    verdict = exhaust(Fresh, machines="two-cells", seconds=1.5)
    assert verdict.outcomes == (Outcome.UNKNOWN,)
    for basis in verdict.basis:
        assert basis.strength is Strength.SAMPLED
        assert basis.bound is None
        assert 0 < basis.scenes < 5610
        assert "of 5,610 that there are, until the time was over" in basis.source


class Stops:
    """A watcher who has seen enough at the first step."""

    def stage(self, name: str, total: int | None) -> None:
        """Go on."""

    def step(self, done: int) -> None:
        """As Ctrl-C does."""
        raise KeyboardInterrupt


def test_ctrl_c_is_no_answer_either() -> None:
    """What was played by then is kept."""
    verdict = exhaust(Fresh, machines="two-cells", watcher=Stops())
    assert verdict.outcomes == (Outcome.UNKNOWN,)
    assert "until it was interrupted" in verdict.basis[0].source


def test_bounds_that_exercise_too_little_are_vacuous() -> None:
    """One picture can't be out of order."""
    verdict = exhaust(Fresh, bounds=Bounds(pictures=1))
    assert verdict.outcomes == (Outcome.VACUOUS,)
    assert IN_ORDER in idle(verdict)
    assert exhaust(Fresh, bounds=Bounds(pictures=1), only=[FAIR_REFUSAL]).outcomes == (Outcome.PASS,)


class RaisesLate(Fresh):
    """Fails at its third picture."""

    def offer(self, picture: Picture) -> Answer:
        """Raise."""
        if picture.number == 2:
            raise LookupError("no third picture")
        return super().offer(picture)


class RandomlyBusy(Fresh):
    """Throws a coin."""

    def offer(self, picture: Picture) -> Answer:
        """Busy or not."""
        return Answer.BUSY if random.random() < 0.5 else super().offer(picture)


@pytest.mark.parametrize(
    ("make", "outcome"),
    [
        (RaisesInOffer, Outcome.CANDIDATE_ERROR),
        (RaisesLate, Outcome.CANDIDATE_ERROR),
        (RandomlyBusy, Outcome.CANDIDATE_ERROR),
        (HangsInBlank, Outcome.HUNG),
    ],
)
def test_a_breach_of_the_contract_is_the_candidates(make: MakeScheduler, outcome: Outcome) -> None:
    """Raising, also late; chance; a call that does not return."""
    verdict = exhaust(make, machines="two-cells", bounds=Bounds(pictures=3), call_seconds=0.3)
    assert verdict.outcomes == (outcome,)
    assert verdict.fault_scene is not None


def test_a_finding_is_saved_and_can_be_loaded(tmp_path: Path) -> None:
    """As a check saves it; nothing is left of the scene that was being played."""
    verdict = exhaust(StaleEntry, cases=tmp_path)
    (finding,) = verdict.findings
    assert finding.case is not None
    assert load_case(finding.case).scene.pictures[0].rows.tobytes() == finding.play.scene.pictures[0].rows.tobytes()
    assert [path.name for path in tmp_path.iterdir()] == [Path(finding.case).name]
    assert any(line.lstrip().startswith("exhausted: all ") for line in verdict_lines(verdict))


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({"machines": "vast"}, "there is no tiny machine 'vast'; there are: one-cell, "),
        ({"machines": ()}, "machines is empty"),
        ({"seconds": 0}, "seconds is 0"),
        ({"call_seconds": 0}, "call_seconds is 0"),
        ({"only": ["in-order"]}, "only is"),
    ],
)
def test_what_can_not_be_exhausted_is_refused(given: dict[str, object], said: str) -> None:
    """With what is wrong and what there is."""
    with pytest.raises(ValueError, match=said):
        exhaust(Fresh, **given)  # type: ignore[arg-type]
