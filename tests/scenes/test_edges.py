"""The cached edge scenes: each is at the edge that its name says, all pairs are there, and no solver is needed."""

import subprocess
import sys
from dataclasses import replace
from importlib import resources

import pytest

from planeproof.machines import read_machine, shipped
from planeproof.scenes.edge_goals import GOALS
from planeproof.scenes.edge_pairs import PAIRS, pairs_met
from planeproof.scenes.edge_relatives import edge_relatives, uploads
from planeproof.scenes.edges import Edges, cached_edges, edge_scenes, files_of
from planeproof.scenes.relatives import picture_cycles
from planeproof.scenes.uploads import Tariff

MOST_BYTES = 1_500_000
"""What all machines' scenes may take in the package."""

every_shape = pytest.mark.parametrize("name", shipped())


def edges_of(name: str) -> Edges:
    """What is cached for the shipped machine."""
    found = cached_edges(read_machine(name))
    assert found is not None, f"nothing is cached for {name}: python -m tests.edges {name}"
    return found


def sizes(name: str) -> dict[str, object]:
    """The machines on which scenes are cached, by the size that stands in their names."""
    base = read_machine(name)
    return {"as-given": base, **{f"small-{small.blank_cycles}": small for small in edge_relatives(base)}}


@every_shape
def test_each_scene_is_on_its_machine(name: str) -> None:
    """The machine of each case is the shipped one or the relative of that size as it is drawn today."""
    machines = sizes(name)
    stale = [
        edge.name for edge in edge_scenes(read_machine(name)) if edge.scene.machine != machines[edge.name.split("/")[0]]
    ]
    assert stale == []


@every_shape
def test_every_goal_is_met_or_proved_impossible(name: str) -> None:
    """On each size the last picture of a goal's scene meets it by the check; where there is none, that is proved."""
    edges = edges_of(name)
    last = {edge.name: edge.goals[-1] for edge in edges.scenes}
    for size in sizes(name):
        for goal in GOALS:
            if goal.id in edges.impossible[size]:
                assert f"{size}/{goal.id}" not in last
            else:
                assert goal.id in last[f"{size}/{goal.id}"], (size, goal.id)


@every_shape
def test_every_pair_is_met_or_proved_impossible(name: str) -> None:
    """Every pair of goals is in a scene by the checks, or listed as impossible on each relative, never both on one."""
    edges = edges_of(name)
    wanted = set(map(str, PAIRS))
    for size in [size for size in sizes(name) if size != "as-given"]:
        scenes = [edge for edge in edges.scenes if edge.name.startswith(f"{size}/pairs-")]
        held = {str(pair) for pair in frozenset.union(*(pairs_met(edge.goals) for edge in scenes))}
        impossible = {said for said in edges.impossible[size] if " " in said}
        assert wanted <= held | impossible, size
        assert held & impossible == set(), size
        wanted = impossible


@every_shape
def test_nothing_is_left_unanswered(name: str) -> None:
    """The solver gave up on no goal and no pair."""
    assert set(edges_of(name).unanswered.values()) == {()}


@every_shape
def test_a_relative_admits_what_its_blanking_is_made_for(name: str) -> None:
    """Between them the relatives admit an upload that fills a blanking, and one a byte over unless all must fit one."""
    base = read_machine(name)
    relatives = edge_relatives(base)
    full = [any(Tariff.of(m).ends_full(patterns=p, entries=e) for p, e in uploads(m)) for m in relatives]
    late = [any(Tariff.of(m).ends_a_byte_late(patterns=p, entries=e) for p, e in uploads(m)) for m in relatives]
    assert any(full)
    assert any(late) is (picture_cycles(base) > base.blank_cycles)


def test_all_of_them_are_not_too_big() -> None:
    """The package stays small, and holds nothing but what is read."""
    folder = resources.files("planeproof.scenes") / "edge_cases"
    assert {file.name for file in folder.iterdir()} == set(shipped())
    texts = {name: files_of(edges_of(name)) for name in shipped()}
    assert sum(len(text) for files in texts.values() for text in files.values()) < MOST_BYTES
    for name, files in texts.items():
        assert all((folder / name / path).read_bytes() == text for path, text in files.items())


def test_only_the_very_machine_is_known() -> None:
    """A machine that differs in anything from the shipped one, or has another name, has no cached scenes."""
    base = read_machine("name-plate")
    assert edge_scenes(base)
    for other in (
        replace(base, name="my plate"),
        replace(base, time=replace(base.time, reserve=61)),
        edge_relatives(base)[0],
    ):
        assert edge_scenes(other) == ()
        assert cached_edges(other) is None


def test_the_small_come_first() -> None:
    """In the order of what is filled, so that a fault is met in little before it is met in much."""
    filled = [edge.scene.occupied for edge in edge_scenes(read_machine("vitrine-60"))]
    assert filled == sorted(filled)
    assert filled[0] == 1


def test_no_solver_is_needed() -> None:
    """Where z3 is not installed the cached scenes are there all the same."""
    code = (
        "import sys; sys.modules['z3'] = None\n"
        "from planeproof.machines import read_machine\n"
        "from planeproof.scenes.edges import edge_scenes\n"
        "print(len(edge_scenes(read_machine('name-plate'))))"
    )
    said = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert int(said.stdout) == len(edge_scenes(read_machine("name-plate")))
