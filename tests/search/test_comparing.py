from dataclasses import replace
from fractions import Fraction

import pytest

from planeproof.candidates.faults import LastRowNotSent
from planeproof.candidates.reference import Delta, Fresh, InPlace, Pairs
from planeproof.contract import Answer, Burst, Machine, Picture, Scene, Tiles, Timing, Window
from planeproof.contract.rules import FAIR_REFUSAL, HIDDEN_WRITES
from planeproof.judge import MakeScheduler, Outcome, Play, Profile, play
from planeproof.machines import read_machine
from planeproof.search.comparing import Comparison, Standing, compare
from planeproof.search.spending import Spending, spending_of

TIME = Timing(standard="by hand", lines=40, shown=20, cycles_per_line=20, setup=12, per_byte=8)
TINY = Machine(name="by hand", window=Window(columns=2, rows=1), tiles=Tiles(count=3, pool=(1, 2)), time=TIME)
"""A burst costs 12 and 8 a byte, a blanking has 400: palette at 0 to 3, page register at 4, maps at 5 and 7."""

A, B, C, D = [0x0F] * 8, [0xF0] * 8, [0x3C] * 8, [0xC3] * 8
ONE_CELL_CHANGED = Scene.of(TINY, [Picture.from_rows(0, cells) for cells in ([A, B], [A, C], [A, D])])
"""Picture 2 finds picture 0 on its side, and differs from it in one cell."""


def spent(make: MakeScheduler, scene: Scene = ONE_CELL_CHANGED) -> Spending:
    """What a strategy spends on the scene."""
    return spending_of(scene.machine, [play(scene, make)])


def test_what_fresh_spends_worked_by_hand() -> None:
    """Each picture: two entries, two patterns and the view (colours 1 to 3 and the page, one burst): 22 bytes.

    They take 28 + 2 x 76 + 44 = 224 cycles, so each fits one blanking. Colour 3 is held each time; the third time so
    are both entries and the pattern of A: 3 + 10. Unseen are colour 1 the first time, for no pixel has value 1 yet, and
    the page the second and third time, for both pages name the same tiles by then: 3.
    """
    cost = spent(Fresh)
    assert (cost.cost.shown, cost.cost.refreshes_each, cost.cost.bytes_each) == (3, 1.0, 22.0)
    assert (cost.blankings, cost.sent, cost.most_bytes, cost.mean_bytes) == (3, 66, 22, 22.0)
    assert (cost.cycles, cost.most_cycles, cost.mean_cycles) == (3 * 224, 224, 224.0)
    assert (cost.held, cost.unseen, cost.lost) == (13, 3, 0)
    assert (cost.tiles, cost.cap, cost.declined) == (2, 2, 0)
    assert cost.share(cost.held) == 13 / 66


def test_what_delta_spends_worked_by_hand() -> None:
    """The first two pictures as Fresh; the third is one pattern and the view: 12 bytes in 76 + 44 = 120 cycles.

    Held is colour 3 alone, three times; unseen are the same three bytes as with Fresh.
    """
    cost = spent(Delta)
    assert (cost.cost.shown, cost.cost.refreshes_each, cost.cost.bytes_each) == (3, 1.0, 56 / 3)
    assert (cost.blankings, cost.sent, cost.most_bytes) == (3, 22 + 22 + 12, 22)
    assert (cost.cycles, cost.most_cycles) == (224 + 224 + 120, 224)
    assert cost.mean_cycles == float(Fraction(568, 3))
    assert (cost.held, cost.unseen, cost.lost) == (3, 3, 0)
    assert cost.tiles == 2


def test_only_the_plays_on_the_machine_itself_count() -> None:
    """A play on another machine, even on one that is equal, is left out."""
    other = replace(ONE_CELL_CHANGED, machine=replace(TINY))
    both = spending_of(TINY, [play(ONE_CELL_CHANGED, Fresh), play(other, Fresh)])
    assert (both.sent, both.cost.shown) == (66, 3)
    nothing: list[Play] = []
    assert (spending_of(TINY, nothing).mean_bytes, spending_of(TINY, nothing).mean_cycles) == (0.0, 0.0)


@pytest.fixture(scope="module")
def five() -> Comparison:
    """Right and wrong ones, one of them twice, on a machine of some cells."""
    return compare([Fresh, Delta, Fresh, LastRowNotSent, Pairs], machines=["vitrine-60"], scenes=40, seed=3)


def facts(standing: Standing) -> tuple[object, ...]:
    """All that is said of one."""
    return (standing.outcomes, standing.played, standing.broken, standing.declined, standing.spent)


def test_all_play_the_same_scenes(five: Comparison) -> None:
    """The same candidate a second time says the same, figure by figure; every one played every scene."""
    first, _, again, *_ = five.standings
    assert facts(first) == facts(again)
    assert {standing.played for standing in five.standings} == {five.scenes}
    assert [basis.scenes for basis in five.basis] == [40, 1, 6]
    assert [basis.independent for basis in five.basis] == [True, False, False]


def test_right_and_wrong_are_told_apart(five: Comparison) -> None:
    """Outcomes, rules broken with scenes, pictures declined; the comparison has the most serious outcome."""
    assert [standing.outcome for standing in five.standings] == [
        Outcome.PASS,
        Outcome.PASS,
        Outcome.PASS,
        Outcome.FAIL,
        Outcome.FAIL,
    ]
    assert five.outcome is Outcome.FAIL
    fresh, delta, _, wrong, pairs = five.standings
    assert (fresh.broken, delta.broken) == ((), ())
    assert [rule for rule, _ in pairs.broken] == [FAIR_REFUSAL]
    assert 0 < pairs.broken[0][1] < five.scenes
    assert {"exact-reveal", "progress"} <= {rule.id for rule, _ in wrong.broken}
    assert pairs.declined > fresh.declined == delta.declined


def test_delta_has_less_to_send_than_fresh(five: Comparison) -> None:
    """On crystals and at the limit: fewer bytes, fewer refreshes, less that was held already, as many pictures."""
    fresh, delta = (standing.spent[0] for standing in five.standings[:2])
    assert fresh.cost.shown == delta.cost.shown > 60
    assert delta.cost.bytes_each < fresh.cost.bytes_each / 2
    assert delta.cost.refreshes_each < fresh.cost.refreshes_each
    assert delta.held < fresh.held / 10
    assert fresh.most_cycles <= read_machine("vitrine-60").blank_cycles


def test_another_seed_draws_other_scenes() -> None:
    """And the same seed the same ones."""
    told = [facts(compare([Pairs], machines=[TINY], scenes=40, seed=seed).standings[0]) for seed in (1, 2, 1)]
    assert told[0] == told[2] != told[1]


class Hangs(Delta):
    """Never ends, from the second blanking on."""

    calls = 0

    def blank(self, cycles: int) -> list[Burst]:
        """The first is answered."""
        self.calls += 1
        while self.calls > 1:
            pass
        return []


class Raises(Fresh):
    """Raises when it is offered a picture of two cells."""

    def offer(self, picture: Picture) -> Answer:
        """Looks at the picture first."""
        if len(picture.occupied) == 2:
            raise LookupError("two cells are one too many")
        return super().offer(picture)


def test_one_that_hangs_and_one_that_raises_end_nothing_for_the_others() -> None:
    """They are left out from there on, without figures; what comes after them in the list plays every scene."""
    found = compare([Hangs, Raises, Fresh], machines=["vitrine-60"], scenes=20, call_seconds=0.2)
    hung, raised, fresh = found.standings
    assert [one.outcome for one in found.standings] == [Outcome.HUNG, Outcome.CANDIDATE_ERROR, Outcome.PASS]
    assert found.outcome is Outcome.HUNG
    assert (hung.played, hung.spent, raised.spent) == (0, (), ())
    assert raised.played < found.scenes
    assert raised.fault_scene is not None
    assert "two cells are one too many" in str(raised.fault)
    assert fresh.played == found.scenes
    assert fresh.spent[0].cost.shown > 60


def test_what_the_profile_lets_be_is_exposed() -> None:
    """In place on a bench: hidden-writes fails strictly, and is exposed under the profile `seen`."""
    (strict,) = compare([InPlace], machines=["bench"], scenes=60).standings
    assert (HIDDEN_WRITES in dict(strict.broken), strict.outcome) == (True, Outcome.FAIL)
    (seen,) = compare([InPlace], machines=["bench"], scenes=60, profile=Profile.SEEN).standings
    assert seen.broken == ()
    assert dict(seen.exposed)[HIDDEN_WRITES] == dict(strict.broken)[HIDDEN_WRITES]
    assert seen.outcome is Outcome.PASS


def test_what_gives_no_rule_its_chance_is_vacuous() -> None:
    """One scene is too few for every rule to have been exercised."""
    (one,) = compare([Fresh], machines=[TINY], scenes=1).standings
    assert one.outcome is Outcome.VACUOUS
    assert one.idle


@pytest.mark.parametrize(("targets", "machines", "scenes"), [([], [TINY], 1), ([Fresh], [], 1), ([Fresh], [TINY], 0)])
def test_nothing_to_compare_is_refused(targets: list[MakeScheduler], machines: list[Machine], scenes: int) -> None:
    """With what was given and what to give instead."""
    with pytest.raises(ValueError, match=r"name at least one target and one machine, and ask for at least 1 scene"):
        compare(targets, machines=machines, scenes=scenes)
