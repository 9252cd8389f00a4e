"""Whoever watches a check is told its stages and how far each has come; bad arguments are refused in plain words."""

from pathlib import Path
from typing import Any

import pytest

from planeproof.candidates.reference import Fresh
from planeproof.hosts import TargetError
from planeproof.machines import MachineFileError, read_machine
from planeproof.scenes.edges import edge_scenes
from planeproof.search import check
from tests.search.wrong import DeclinesSecond

VITRINE = read_machine("vitrine-50")


class Notes:
    """A watcher that notes what it is told: name and total of a stage, and its steps."""

    def __init__(self) -> None:
        self.stages: list[tuple[str, int | None, list[int]]] = []

    def stage(self, name: str, total: int | None) -> None:
        """A stage begins."""
        self.stages.append((name, total, []))

    def step(self, done: int) -> None:
        """Some are done."""
        self.stages[-1][2].append(done)


def test_every_stage_counts_up_to_its_total() -> None:
    """At full size, laws, edges, cuts, steered, independent, crystals; steps count up and end at the total, if any."""
    notes = Notes()
    machines = [VITRINE, read_machine("long-frieze")]
    check(Fresh, machines=machines, scenes=21, watcher=notes)
    edges = sum(len(edge_scenes(machine)) for machine in machines)
    totals = [total for _, total, _ in notes.stages]
    assert totals == [10, None, edges, None, 10, 11, 12]
    assert [steps[-1] for _, total, steps in notes.stages if total is not None] == [10, edges, 10, 11, 12]
    assert all(steps == list(range(1, len(steps) + 1)) for _, _, steps in notes.stages)
    words = ("tour", "laws", "edges", "cut at a byte", "Hypothesis", "independently", "crystals")
    assert [word in name for word, (name, _, _) in zip(words, notes.stages, strict=True)] == [True] * len(words)


def test_a_finding_ends_the_search_and_begins_the_shrinking() -> None:
    """Then the stage is told in which what was found is made smaller, and no stage after it."""
    notes = Notes()
    check(DeclinesSecond, machines=[VITRINE], scenes=20, watcher=notes)
    assert [name for name, _, _ in notes.stages][-2:] == [
        "making what was found smaller",
        "showing it on the machine as given",
    ]
    assert not any("crystals" in name for name, _, _ in notes.stages)


def test_with_a_time_limit_no_total_is_made_up() -> None:
    """Where only the clock ends a stage, its total is None."""
    notes = Notes()
    check(Fresh, machines=[VITRINE], seconds=0.01, watcher=notes)
    assert [total for _, total, _ in notes.stages] == [5, None, len(edge_scenes(VITRINE)), None, None, None, 6]


REFUSED: tuple[tuple[dict[str, Any], type[Exception], str], ...] = (
    ({"scenes": 0}, ValueError, "scenes is 0: at least 1 must be played"),
    ({"scenes": -5}, ValueError, "scenes is -5"),
    ({"seconds": 0.0}, ValueError, "seconds is 0.0: it must be above 0"),
    ({"seconds": -1.0}, ValueError, "seconds is -1.0"),
    ({"seconds": float("nan")}, ValueError, "seconds is nan"),
    ({"seconds": float("inf")}, ValueError, "seconds is inf"),
    ({"machines": []}, ValueError, "machines is empty: name at least one machine"),
    ({"machines": "vitrine-51"}, MachineFileError, "vitrine-50"),
    ({"target": "wrong"}, TargetError, "package.module:Name"),
    ({"target": "tests.search.wrong:Missing"}, TargetError, "has no 'Missing'"),
    ({"target": 7}, TargetError, "must be a class"),
)


@pytest.mark.parametrize(
    ("wrong", "error", "said"), REFUSED, ids=lambda value: str(value) if isinstance(value, dict) else ""
)
def test_a_bad_argument_is_refused(wrong: dict[str, Any], error: type[Exception], said: str) -> None:
    """By name, with the value and what it may be."""
    arguments: dict[str, Any] = {"target": Fresh, "machines": [VITRINE], "scenes": 4} | wrong
    with pytest.raises(error, match=said.replace(".", r"\.")):
        check(**arguments)


SLIPS: tuple[dict[str, Any], ...] = (
    {"only": ["hidden-writes"]},
    {"call_seconds": 0.0},
    {"call_seconds": -1.0},
    {"profile": "strict"},
)


@pytest.mark.parametrize("wrong", SLIPS, ids=str)
def test_a_slip_is_refused_and_not_worked_around(wrong: dict[str, Any]) -> None:
    """The text of a rule or profile instead of its value; a time in which no call could return."""
    with pytest.raises((ValueError, TypeError), match=next(iter(wrong))):
        check(Fresh, machines=[VITRINE], scenes=4, **wrong)


def test_a_folder_that_can_t_be_is_refused_before_anything_is_played(tmp_path: Path) -> None:
    """A file stands where the folder should be."""
    (tmp_path / "file").write_text("")
    made: list[int] = []

    def candidate() -> Fresh:
        made.append(1)
        return Fresh()

    with pytest.raises(OSError, match="file"):
        check(candidate, machines=[VITRINE], scenes=4, cases=tmp_path / "file")
    assert made == []
