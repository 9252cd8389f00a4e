"""The list of expected failures is strict: an entry stands only while its own case shows what it says."""

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from planeproof.candidates.reference import Delta
from planeproof.contract import RULES, Machine, Picture, Rule, Scene, Tiles, Window
from planeproof.contract.rules import BLANKING_ONLY, EXACT_REVEAL, HIDDEN_WRITES, WHOLE_REVEAL
from planeproof.judge import CandidateFault, MakeScheduler, Profile
from planeproof.judge.expected import Expected
from planeproof.report.expected import expected_lines
from planeproof.scenes.cases import Case, CaseError, save_case
from planeproof.search.expected import ExpectedFileError, excused, held, read_expected, settled
from planeproof.search.trial import Trial
from tests.report.schedulers import Early
from tests.search.wrong import RaisesInOffer

TODAY = date(2027, 3, 31)
ENTRY = """
[[expected]]
target = "mine.py:Mine"
rule = "exact-reveal"
case = "kept/here.json"
reason = "Two pages are not told apart yet."
expires = 2027-03-31
"""


def listed(**changes: object) -> Expected:
    """An entry that stands on `TODAY`, but for ``changes``."""
    entry = Expected(
        place="list.toml, entry 1",
        target="mine.py:Mine",
        rule=EXACT_REVEAL,
        case="kept/here.json",
        reason="Two pages are not told apart yet.",
        expires=TODAY,
    )
    return replace(entry, **changes)  # type: ignore[arg-type]


def wrong(
    entry: Expected,
    shown: Rule | CandidateFault | None = EXACT_REVEAL,
    *,
    asked: frozenset[Rule] = frozenset(RULES),
    profile: Profile = Profile.STRICT,
) -> str | None:
    """What is wrong with ``entry`` in a check of mine.py:Mine if its case shows ``shown``."""
    (after,) = settled(
        [entry], target="mine.py:Mine", asked=asked, profile=profile, today=TODAY, shows=lambda case: shown
    )
    assert replace(after, wrong=None) == entry
    return after.wrong


# --- reading ----------------------------------------------------------------------------------------------


def test_a_list_is_read(tmp_path: Path) -> None:
    """Every field, with the case relative to the file and not to where we are."""
    file = tmp_path / "list.toml"
    file.write_text(ENTRY, "utf-8")
    (entry,) = read_expected(file)
    assert entry == listed(place=f"{file}, entry 1", case=str(tmp_path / "kept" / "here.json"))


def test_an_empty_list_expects_nothing(tmp_path: Path) -> None:
    """As it is once all has been mended."""
    (tmp_path / "list.toml").write_text("# nothing now\n", "utf-8")
    assert read_expected(tmp_path / "list.toml") == ()


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('"exact-reveal"', '"exact-revel"', "expected[0].rule is 'exact-revel': there is no such rule; did you mean"),
        ('rule = "exact-reveal"\n', "", "expected[0].rule is missing: add it, text in quotes that is not empty"),
        ("reason", "because", "expected[0].because is unknown ('Two pages are not told apart yet.' stands there)"),
        ('"Two pages are not told apart yet."', '"  "', "expected[0].reason is '  ': must be text in quotes that is"),
        ("2027-03-31", '"soon"', "expected[0].expires is 'soon': must be a day without quotes, as 2027-03-31"),
        ("2027-03-31", "2027-02-30", "is not TOML in UTF-8"),
        ("[[expected]]", "[[expect]]", "expect is unknown"),
    ],
)
def test_a_list_with_a_mistake_is_refused(old: str, new: str, said: str, tmp_path: Path) -> None:
    """With file, field, what stood there and what to do."""
    file = tmp_path / "list.toml"
    file.write_text(ENTRY.replace(old, new), "utf-8")
    with pytest.raises(ExpectedFileError) as caught:
        read_expected(file)
    assert str(caught.value).startswith(f"{file}: {said}")


def test_a_list_that_is_not_there_is_refused(tmp_path: Path) -> None:
    """A wrong path is not an empty list."""
    with pytest.raises(ExpectedFileError, match="no such file: check the path"):
        read_expected(tmp_path / "lost.toml")
    with pytest.raises(ExpectedFileError, match="can't be read"):
        read_expected(tmp_path)


# --- what becomes of an entry -----------------------------------------------------------------------------


def test_an_entry_stands_while_its_case_breaks_its_rule_first() -> None:
    """On its last day too; then the rule is excused."""
    assert wrong(listed()) is None
    assert excused([listed()]) == {EXACT_REVEAL}


@pytest.mark.parametrize(
    ("entry", "shown", "said"),
    [
        (listed(), None, "no rule is broken in kept/here.json any more: remove the entry"),
        (listed(), WHOLE_REVEAL, "in kept/here.json whole-reveal is broken first, not exact-reveal"),
        (listed(), CandidateFault("blank", 3, "raised", "mend it"), "breaks the contract, not exact-reveal (blank in"),
        (listed(expires=date(2027, 3, 30)), EXACT_REVEAL, "it expired on 2027-03-30 (today is 2027-03-31)"),
        (listed(target="other.py:Mine"), EXACT_REVEAL, "it is about the target 'other.py:Mine', which is not what"),
    ],
)
def test_an_entry_that_does_not_hold_fails(entry: Expected, shown: Rule | None, said: str) -> None:
    """It says what is wrong and what to do, and excuses nothing."""
    found = wrong(entry, shown)
    assert found is not None
    assert said in found
    assert excused([replace(entry, wrong=found)]) == frozenset()


def test_an_entry_about_a_rule_that_nothing_fails_on_fails() -> None:
    """It is not asked for, or the profile lets it be."""
    others = frozenset(RULES) - {EXACT_REVEAL}
    assert wrong(listed(), asked=others) == (
        "exact-reveal is not asked for in this check: ask for it too, or leave the list out"
    )
    assert wrong(listed(), profile=Profile.SEEN) == (
        "profile seen does not fail on exact-reveal anyway: remove the entry"
    )


def test_a_case_that_cannot_be_read_fails_its_entry_alone() -> None:
    """The others are still held to theirs."""

    def shows(case: str) -> Rule:
        if case == "gone.json":
            raise CaseError(case, "no such file: check the path")
        return EXACT_REVEAL

    gone, there = settled(
        [listed(case="gone.json"), listed()],
        target="mine.py:Mine",
        asked=frozenset(RULES),
        profile=Profile.STRICT,
        today=TODAY,
        shows=shows,
    )
    assert gone.wrong == "its case can't be played: gone.json: no such file: check the path"
    assert there.wrong is None


# --- against a candidate ----------------------------------------------------------------------------------


def scene() -> Scene:
    """One picture of one cell, which a scheduler that reveals before it sends draws while it is seen."""
    machine = Machine(name="two", window=Window(columns=2, rows=1), tiles=Tiles(count=4, pool=(1, 2)))
    return Scene.of(machine, [Picture.from_rows(0, [[255] * 8, [0] * 8])])


def trial_of(make: MakeScheduler) -> Trial:
    """A trial of it under the name mine.py:Mine."""
    asked = frozenset(RULES)
    return Trial(name="mine.py:Mine", make=make, asked=asked, profile=Profile.STRICT, call_seconds=10)


@pytest.mark.parametrize(
    ("make", "rule", "said"),
    [
        (Early, HIDDEN_WRITES, None),
        (Early, BLANKING_ONLY, "hidden-writes is broken first, not blanking-only"),
        (Delta, EXACT_REVEAL, "no rule is broken in"),
        (RaisesInOffer, EXACT_REVEAL, "no rule is broken in"),
    ],
)
def test_an_entry_is_held_to_what_the_candidate_does(
    make: MakeScheduler, rule: Rule, said: str | None, tmp_path: Path
) -> None:
    """By playing its case again; the trial itself is left as it was."""
    case, trial = tmp_path / "here.json", trial_of(make)
    save_case(case, Case(scene=scene()))
    (entry,) = held([listed(rule=rule, case=str(case))], trial, today=TODAY)
    assert (entry.wrong is None) if said is None else (entry.wrong is not None and said in entry.wrong)
    assert (trial.played, trial.decided) == (0, False)


# --- told -------------------------------------------------------------------------------------------------


def test_both_kinds_of_entry_are_told() -> None:
    """What is let be with its reason and date; what can't stand with what to do."""
    stands, fails = expected_lines([listed()], 0), expected_lines([listed(wrong="it expired: give it a later date")], 0)
    assert " ".join(stands) == (
        "exact-reveal is broken, which is let be until 2027-03-31: Two pages are not told apart yet. "
        "(list.toml, entry 1)"
    )
    assert " ".join(fails) == ("list.toml, entry 1 (exact-reveal) fails the check: it expired: give it a later date.")
