import json
from dataclasses import replace

import pytest

from planeproof.candidates.faults import LastRowNotSent
from planeproof.candidates.reference import Delta, Fresh, InPlace, Pairs, Reuse
from planeproof.contract import Burst, Machine, Tiles, Timing, Window
from planeproof.judge import Profile
from planeproof.report.comparison import comparison_lines
from planeproof.report.comparison_data import comparison_json
from planeproof.search.comparing import Comparison, compare

TIME = Timing(standard="by hand", lines=40, shown=20, cycles_per_line=20, setup=12, per_byte=8)
TINY = Machine(name="by hand", window=Window(columns=2, rows=1), tiles=Tiles(count=3, pool=(1, 2)), time=TIME)


class Raises(Delta):
    """Raises in its first blanking."""

    def blank(self, cycles: int) -> list[Burst]:
        """Not even that."""
        raise LookupError("no blanking today")


class ASchedulerWithANameThatIsLongerThanAnyColumn(Fresh):
    """Right, and wordy."""


@pytest.fixture(scope="module")
def two() -> Comparison:
    """Two right ones on a machine of two cells, which is too small for crystals."""
    return compare([Fresh, Delta], machines=[TINY], scenes=120)


@pytest.fixture(scope="module")
def seven() -> Comparison:
    """More than stand side by side, of every kind."""
    wordy = ASchedulerWithANameThatIsLongerThanAnyColumn
    return compare([Fresh, wordy, Reuse, LastRowNotSent, Raises, Pairs, InPlace], machines=[TINY], scenes=60)


def cells(lines: list[str], label: str) -> list[str]:
    """The figures of the row that begins so, in the first table that has one."""
    row = next(line for line in lines if line.strip().startswith(label))
    return row.strip().removeprefix(label).split("  ")


def figures(lines: list[str], label: str) -> list[str]:
    """The same without the room between them."""
    return [cell.strip() for cell in cells(lines, label) if cell.strip()]


def one_line(lines: list[str]) -> str:
    """Text as it reads, wherever it was wrapped."""
    return " ".join(" ".join(lines).split())


def test_two_side_by_side(two: Comparison) -> None:
    """The row of a figure has it for each, as it is in the comparison, and the outcome stands first."""
    lines = comparison_lines(two)
    fresh, delta = (standing.spent[0] for standing in two.standings)
    assert lines[0] == "PASS  2 schedulers compared"
    assert figures(lines, "outcome") == ["PASS", "PASS"]
    assert figures(lines, "bytes a picture") == [f"{fresh.cost.bytes_each:.1f}", f"{delta.cost.bytes_each:.1f}"]
    assert figures(lines, "cycles a blanking, fullest") == [str(fresh.most_cycles), str(delta.most_cycles)]
    assert figures(lines, "bytes held already")[0] == f"{100 * fresh.held / fresh.sent:.1f} %"
    assert figures(lines, "tiles used, of the pool") == ["2 of 2", "2 of 2"]
    assert not any("What to know" in line or "broke" in line for line in lines)


def test_the_figures_of_fresh_at_the_limit_worked_by_hand(two: Comparison) -> None:
    """The only scene on the machine itself has six pictures in a row, of 2, 2, 0, 2, 2 and 2 cells.

    A picture of two cells is 22 bytes (two entries, two patterns, the view), the empty one 6: 116 bytes. Each is sent
    in one blanking and shown: 116 / 6 bytes a picture.
    """
    lines = comparison_lines(two)
    fresh = two.standings[0].spent[0]
    assert (fresh.sent, fresh.blankings, fresh.cost.shown) == (5 * 22 + 6, 6, 6)
    assert figures(lines, "bytes a blanking, mean")[0] == "19.3"
    assert figures(lines, "bytes a blanking, fullest")[0] == "22"
    assert figures(lines, "cycles a blanking, fullest")[0] == "224"


def test_no_line_is_too_long_and_no_column_runs_into_the_next(seven: Comparison) -> None:
    """At most 100 columns, five candidates in a table; each column is told by a letter whatever the name."""
    lines = comparison_lines(seven)
    assert max(map(len, lines)) <= 100
    heads = [line for line in lines if line.startswith("Right or wrong")]
    assert [len(figures([head], "Right or wrong, 61 scenes")) for head in heads] == [5, 2]
    assert figures([heads[0]], "Right or wrong, 61 scenes")[1] == "B ASch..umn"
    assert any(line.endswith("ASchedulerWithANameThatIsLongerThanAnyColumn") for line in lines)


class PaletteBeforeThePage(Fresh):
    """Its name begins as that of the next."""


class PaletteBeforeThePattern(Fresh):
    """Its name ends otherwise."""


class PaletteBeforeTheNextPage(Fresh):
    """Its name begins and ends as that of the first."""


def test_names_that_are_too_long_are_never_made_alike() -> None:
    """What is left out is the middle; where that leaves two names the same, their letters stand alone."""
    first, second, third = PaletteBeforeThePage, PaletteBeforeThePattern, PaletteBeforeTheNextPage
    lines = comparison_lines(compare([first, second], machines=[TINY], scenes=1))
    assert figures(lines, "Right or wrong, 2 scenes") == ["A Pale..age", "B Pale..ern"]
    lines = comparison_lines(compare([first, second, third], machines=[TINY], scenes=1))
    assert figures(lines, "Right or wrong, 2 scenes") == ["A", "B Pale..ern", "C"]
    assert [line.split(":")[-1] for line in lines if line[:4] in ("  A ", "  C ")] == [first.__name__, third.__name__]


def test_a_machine_is_told_by_its_whole_name() -> None:
    """However long it is, and whatever the other one is called."""
    long = [replace(TINY, name=f"the small showcase by the window of room {number}") for number in (1, 2)]
    lines = comparison_lines(compare([Fresh], machines=long, scenes=2))
    assert [line for line in lines if line.startswith("Spent on")] == [f"Spent on {machine.name}" for machine in long]


def test_no_figure_stands_twice_in_one_column(two: Comparison) -> None:
    """With one machine each label is there once."""
    labels = [line[:31].strip() for line in comparison_lines(two) if line.startswith("  ") and line[31:44].strip()]
    assert labels.count("pictures declined") == 1


def test_what_is_wrong_is_said_with_what_to_do_next(seven: Comparison) -> None:
    """Who has the most serious outcome, what broke the contract, how to see the smallest scene, whom a bound is for."""
    lines = comparison_lines(seven)
    text = "\n".join(lines)
    assert text.startswith("CANDIDATE ERROR  7 schedulers compared; the most serious outcome is that of E\n")
    assert "E: blank in refresh 0: raised LookupError: no blanking today." in text
    smallest = "For the smallest scene in which a rule is broken: planeproof check asked about D, F and G one by one"
    assert smallest in one_line(lines)
    assert "what is said of failures goes for A, B and C" in text
    outcomes = figures(lines, "outcome")
    assert outcomes == ["PASS", "PASS", "PASS", "FAIL", "ERROR"]
    assert figures(lines, "bytes a picture")[4] == "-"
    assert figures(lines, "exact-reveal broken in")[:3] == ["-", "-", "-"]


def test_a_bound_is_said_of_those_without_failure_only(two: Comparison) -> None:
    """With 120 scenes and no failure there is one; where all fail there is none."""
    assert "with 95 % confidence fewer than 2.5 %" in one_line(comparison_lines(two))
    failed = compare([LastRowNotSent], machines=[TINY], scenes=20)
    assert not any("confidence" in line for line in comparison_lines(failed))


def test_what_is_exposed_or_idle_stands_in_the_table() -> None:
    """Under the profile `seen` a breach of discipline is a row too; so is a rule that had no chance."""
    lines = comparison_lines(compare([InPlace], machines=["bench"], scenes=30, profile=Profile.SEEN))
    assert figures(lines, "hidden-writes broken in")[0].startswith("exposed ")
    idle = comparison_lines(compare([Fresh], machines=[TINY], scenes=1))
    assert any(line.endswith("idle") for line in idle)
    assert "A: nothing is known of what was not exercised." in one_line(idle)


def test_the_data_says_what_the_table_says(seven: Comparison) -> None:
    """JSON with the same outcomes and figures, unrounded, and no figures for who broke the contract."""
    data = json.loads(comparison_json(seven))
    assert (data["planeproof_comparison"], data["outcome"], data["machines"]) == (1, "CANDIDATE_ERROR", ["by hand"])
    assert [one["outcomes"][0] for one in data["candidates"]] == [one.outcome.name for one in seven.standings]
    assert sum(part["scenes"] for part in data["scenes"]) == seven.scenes
    fresh, spent = data["candidates"][0]["spent"][0], seven.standings[0].spent[0]
    assert (fresh["bytes"], fresh["bytes_held"], fresh["bytes_unseen"]) == (spent.sent, spent.held, spent.unseen)
    assert (fresh["bytes_a_picture"], fresh["most_cycles"]) == (spent.cost.bytes_each, spent.most_cycles)
    assert data["candidates"][3]["broken"] == {rule.id: times for rule, times in seven.standings[3].broken}
    raised = data["candidates"][4]
    assert (raised["spent"], raised["fault"]) == ([], str(seven.standings[4].fault))
