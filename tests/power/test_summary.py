import json

import pytest

from planeproof.power import Detection, Outcome, SceneSize, Summary, csv_of, json_of, lines_of, summary_of
from planeproof.report.power import power_lines, power_markdown


def hunt(
    fault: str,
    engine: str = "recipes",
    seed: int = 0,
    *,
    scenes: int = 5,
    seconds: float = 1.0,
    outcome: Outcome = Outcome.CAUGHT,
    rules: tuple[str, ...] = ("progress",),
) -> Detection:
    """A hunt by hand, for progress."""
    found = outcome is Outcome.CAUGHT
    return Detection(
        fault=fault,
        wanted="progress",
        engine=engine,
        seed=seed,
        outcome=outcome,
        rules=rules,
        scenes=scenes,
        seconds=seconds,
        smallest=SceneSize(pictures=2, cells=scenes, n_bytes=9) if found else None,
        note="nothing to ask" if outcome is Outcome.NOT_FOR else "",
    )


def missed(fault: str, engine: str = "recipes", seed: int = 0, *, scenes: int = 90) -> Detection:
    """A hunt that found nothing."""
    return hunt(fault, engine, seed, scenes=scenes, outcome=Outcome.SURVIVED, rules=())


BY_HAND = summary_of(
    [
        *(hunt("slow", seed=seed, scenes=scenes, seconds=scenes / 10) for seed, scenes in enumerate([2, 4, 9])),
        hunt("slow", "fitting", scenes=8, seconds=2.0),
        hunt("slow", "spec", outcome=Outcome.NOT_FOR, rules=()),
        *(hunt("quick", seed=seed, scenes=1, seconds=0.5) for seed in range(3)),
        missed("quick", "fitting"),
        hunt("quick", "spec", scenes=3, outcome=Outcome.STRAYED, rules=()),
    ]
)


def test_medians_and_worsts() -> None:
    """Over the seeds for a fault, over the faults for an engine."""
    slow, *_, quick = [row for row in BY_HAND.faults if row.engine == "recipes"]
    assert (slow.scenes, slow.worst_scenes, slow.seconds, slow.worst_seconds) == (4, 9, 0.4, 0.9)
    assert slow.smallest == SceneSize(pictures=2, cells=2, n_bytes=9)
    assert (quick.scenes, quick.seeds, quick.caught, quick.tried) == (1, 3, 3, None)
    recipes, spec, fitting = BY_HAND.engines
    assert (recipes.scenes, recipes.worst_scenes, recipes.seconds, recipes.found) == (2.5, 9, 0.45, 2)
    assert (spec.asked, spec.found, fitting.asked, fitting.found) == (1, 1, 2, 1)


def test_a_baseline_stands_beside_ours() -> None:
    """Over what both find: 8 scenes by 4, 8 at the most, 2 s by 0.4 s; what it misses counts with the 90 it tried."""
    (beside,) = BY_HAND.beside
    assert (beside.engine, beside.asked, beside.found) == ("fitting", 2, 1)
    assert (beside.ratio, beside.at_most, beside.at_least) == (2, 8, (2 + 90) / 2)
    assert beside.slower == pytest.approx(5)


@pytest.mark.parametrize(
    ("seeds", "caught", "enough"), [(1, 0, False), (10, 9, False), (100, 94, False), (100, 95, True)]
)
def test_95_of_100_seeds_are_enough(seeds: int, caught: int, enough: bool) -> None:
    """And of few seeds all."""
    rows = [hunt("f", seed=seed) if seed < caught else missed("f", seed=seed) for seed in range(seeds)]
    assert summary_of(rows).survivors == (() if enough else ("f",))


def test_survivors_and_wrong_rules_are_told_apart() -> None:
    """A fault that only another rule caught is no survivor; baselines may miss what they like."""
    other = hunt("mistaken", outcome=Outcome.WRONG_RULE, rules=("in-order",), scenes=30)
    summary = summary_of([hunt("fine"), missed("tough"), other, missed("fine", "fitting")])
    assert (summary.survivors, summary.wrong) == (("tough",), ("mistaken",))
    assert power_lines(summary)[:3] == [
        "FAIL  not caught: 1 fault; caught by other rules than their own only: 1 fault",
        "  tough: progress was found by recipes with 0 of 1 seeds",
        "  mistaken: progress was found by recipes with 0 of 1 seeds; broken first were in-order",
    ]


PAGE = """\
PASS  2 faults, each caught by its own rule with enough of 3 seeds

Scenes to find
  ...
  fault  rule      recipes  spec  fitting
  slow   progress  4 / 9    -     8
  quick  progress  1 / 1    3     none in 90
"""


def cells(summary: Summary) -> list[list[str]]:
    """The cells of the table of faults in the Markdown page."""
    _, _, table = power_markdown(summary).partition("## Scenes to find")
    return [[cell.strip() for cell in line.split("|")[1:-1]] for line in table.splitlines() if line[:1] == "|"]


def test_the_page_is_the_table_and_what_it_comes_to() -> None:
    """On a terminal and as Markdown the same cells."""
    lines = power_lines(BY_HAND)
    start = next(place for place, line in enumerate(lines) if line.split()[:2] == ["fault", "rule"])
    assert [*lines[:3], "  ...", *lines[start : start + 3]] == PAGE.splitlines()
    assert cells(BY_HAND)[0] == ["fault", "rule", "recipes", "spec", "fitting"]
    assert cells(BY_HAND)[2:] == [
        ["slow", "progress", "4 / 9", "-", "8"],
        ["quick", "progress", "1 / 1", "3", "none in 90"],
    ]
    assert "| fitting | 1 | 2 | 2 x | 8 x | 5 x | 46 x |" in power_markdown(BY_HAND)
    assert lines[-1].split() == ["fitting", "1", "2", "2", "x", "8", "x", "5", "x", "46", "x"]


def test_without_an_engine_that_must_find_all_nothing_is_said() -> None:
    """UNKNOWN is not PASS."""
    assert power_lines(summary_of([missed("f", "fitting")]))[0].startswith("UNKNOWN  ")


def test_the_csv_can_be_read_back() -> None:
    """A line for each fault and engine that was asked, figures and all."""
    lines = list(lines_of(csv_of(BY_HAND)))
    assert [(line.fault, line.engine) for line in lines] == [
        (row.fault, row.engine) for row in BY_HAND.faults if row.asked
    ]
    slow = lines[0]
    assert (slow.rule, slow.seeds, slow.caught, slow.scenes_median, slow.scenes_worst) == ("progress", 3, 3, 4, 9)
    assert (slow.smallest_pictures, slow.smallest_cells, slow.smallest_bytes) == (2, 2, 9)


def test_the_json_holds_every_hunt() -> None:
    """With outcomes in words."""
    hunts = [hunt("slow"), missed("quick", "fitting")]
    held = json.loads(json_of(hunts, summary_of(hunts)))
    assert [(one["fault"], one["outcome"], one["scenes"]) for one in held["hunts"]] == [
        ("slow", "caught", 5),
        ("quick", "survived", 90),
    ]
    assert {row["engine"] for row in held["summary"]["faults"]} == {"recipes", "fitting"}
