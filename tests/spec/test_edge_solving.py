"""Edge scenes from the solver: its reading of each goal is the checks' reading, and its *no* is right."""

from collections.abc import Iterator
from functools import cache
from itertools import product

import numpy as np
import pytest
import z3

from planeproof.contract import Machine, Picture, Scene
from planeproof.machines import read_machine
from planeproof.scenes.cases import Case, encode_case
from planeproof.scenes.edge_goals import GOALS, goals_met
from planeproof.scenes.edge_pairs import PAIRS, pairs_met
from planeproof.scenes.edge_relatives import edge_relatives
from planeproof.scenes.edges import cached_edges, files_of
from planeproof.scenes.patterns import in_shape
from planeproof.scenes.relatives import with_blanking
from planeproof.spec.edges import Cover, cover, scene_meeting, solve_goals
from planeproof.spec.edges.asking import ask
from planeproof.spec.edges.constraints import CONSTRAINTS
from planeproof.spec.edges.drawing import Drawn, Exact, Necessary, Sufficient, TermMoment, Wording
from planeproof.spec.edges.tokens import LAST_BITS, pattern, width
from planeproof.spec.obligation import Answer
from tests.candidates.small import small

PAIR = with_blanking(small("vitrine-50", 2), 146, time=read_machine("vitrine-50").time)
"""Two cells, one tile, two sides; a pattern (78 cycles), an entry (22) and the reveal (46) just fill a blanking."""

PLATE = small("name-plate", 2, tiles=5, pool=(1, 2, 3, 4))
"""Two cells that must both be shown, one side."""

MOSAIC = small("mosaic-floor", 2, tiles=4, pool=(1, 2))
TINY = {machine.name: machine for machine in (PAIR, PLATE, MOSAIC)}

TOKENS = (0, 1, 3, 8, 9, 16)
"""Empty; one and two bits of the last byte alone; a shape without and with one; another shape."""

every_tiny = pytest.mark.parametrize("name", TINY)


def contents() -> Iterator[tuple[tuple[int, ...], ...]]:
    """Every three pictures of two cells out of `TOKENS`."""
    return product(list(product(TOKENS, repeat=2)), repeat=3)


@cache
def covered_once(name: str) -> Cover:
    """The cover of a tiny machine, solved once for all tests."""
    return cover(TINY[name])


def scene_of(machine: Machine, tokens: tuple[tuple[int, ...], ...]) -> Scene:
    """The pictures that the tokens stand for."""
    rows = (in_shape(machine, np.array([pattern(machine, token) for token in cells])) for cells in tokens)
    return Scene.of(machine, [Picture.from_rows(0, row) for row in rows])


def truths(machine: Machine, wording: Wording, every: int) -> Iterator[tuple[frozenset[str], frozenset[str]]]:
    """For one in ``every`` contents: the goals of the last picture by the checks, and by the solver's reading."""
    ctx = z3.Context()
    bits = width(machine.cells * 4)
    drawn: list[Drawn] = [tuple(z3.BitVec(f"{p}.{c}", bits, ctx) for c in range(machine.cells)) for p in range(3)]
    moment = TermMoment(machine=machine, before=drawn[0], last=drawn[1], now=drawn[2], wording=wording)
    formulas = {goal.id: CONSTRAINTS[goal.id](moment) for goal in GOALS}
    for tokens in list(contents())[::every]:
        fixed = [
            cell == value
            for terms, cells in zip(drawn, tokens, strict=True)
            for cell, value in zip(terms, cells, strict=True)
        ]
        said = frozenset(name for name, formula in formulas.items() if possible(ctx, formula, fixed))
        yield goals_met(scene_of(machine, tokens))[-1], said


def possible(ctx: z3.Context, formula: z3.BoolRef, fixed: list[z3.BoolRef]) -> bool:
    """Whether the formula can be true of what is fixed."""
    values = [(term.arg(0), term.arg(1)) for term in fixed]
    left = z3.simplify(z3.substitute(formula, *values))
    if z3.is_true(left) or z3.is_false(left):
        return bool(z3.is_true(left))
    solver = z3.Solver(ctx=ctx)
    solver.add(left)
    return bool(solver.check() == z3.sat)


@every_tiny
def test_the_exact_reading_is_the_checks_reading(name: str) -> None:
    """On a sample of all contents of three pictures, terms and numpy say the same of every goal."""
    found = list(truths(TINY[name], Exact(), 101))
    assert [both for both in found if both[0] != both[1]] == []
    assert len(found) == 462
    assert len(frozenset.union(*(met for met, _ in found))) >= 8


@every_tiny
def test_the_other_readings_stand_on_either_side(name: str) -> None:
    """What suffices implies the goal, and the goal implies what is necessary."""
    assert [met for met, said in truths(TINY[name], Sufficient(), 401) if not said <= met] == []
    assert [met for met, said in truths(TINY[name], Necessary(), 401) if not met <= said] == []


def test_every_goal_has_a_constraint() -> None:
    """The solver knows just the goals there are."""
    assert list(CONSTRAINTS) == [goal.id for goal in GOALS]


@pytest.mark.parametrize("shape", ["vitrine-50", "mosaic-floor"])
def test_tokens_stand_for_different_patterns(shape: str) -> None:
    """No two tokens are the same bytes, 0 alone is empty, and a low bit is a bit of the last byte."""
    machine = read_machine(shape)
    patterns = [pattern(machine, token) for token in range(1 << 14)]
    assert len({rows.tobytes() for rows in patterns}) == len(patterns)
    assert [token for token, rows in enumerate(patterns) if not rows.any()] == [0]
    for token, place in product(range(64), range(LAST_BITS)):
        differ = np.unpackbits(patterns[token] ^ patterns[token ^ 1 << place], axis=1)
        assert (differ.sum(), differ[:, -8:].sum()) == (1, 1)


@every_tiny
def test_no_is_right(name: str) -> None:
    """Pairs that are said to be impossible are met in none of a sample of all contents of three pictures."""
    machine, covered = TINY[name], covered_once(name)
    sample = list(contents())[::23]
    seen = set().union(*(pairs_met(goals_met(scene_of(machine, tokens))) for tokens in sample))
    assert len(seen) > 20
    assert seen & set(covered.impossible) == set()
    assert covered.impossible
    assert covered.open == ()


@every_tiny
def test_a_cover_holds_every_pair_or_says_that_none_can(name: str) -> None:
    """Every pair of goals is in some scene, or proved impossible, and never both."""
    covered = covered_once(name)
    held = set().union(*(pairs_met(goals_met(scene)) for scene in covered.scenes))
    assert held | set(covered.impossible) == set(PAIRS)
    assert held & set(covered.impossible) == set()


def test_unknown_is_told() -> None:
    """With next to no resources nothing is proved and nothing found, and every goal is listed as unanswered."""
    edges = solve_goals(edge_relatives(read_machine("vitrine-50"))[0], "small", rlimit=1)
    assert edges.scenes == ()
    assert edges.impossible == {"small": ()}
    assert edges.unanswered == {"small": tuple(goal.id for goal in GOALS)}


def test_a_big_window_is_never_said_to_be_impossible_for_want_of_a_scene() -> None:
    """Where only the stronger form has no scene, the answer is UNKNOWN: two goals that can be met otherwise."""
    machine = small("vitrine-50", 5, 3, tiles=9, pool=(1, 2, 3, 4))
    demands = [frozenset(), frozenset({"moved", "shared-tiles", "at-the-limit"})]
    assert scene_meeting(machine, demands).answer is Answer.PROVED  # exactly 4 cells, and 5
    shifted = [frozenset({"at-the-limit"}), frozenset({"moved", "at-the-limit"})]
    assert ask(machine, shifted).answer is Answer.UNKNOWN
    assert scene_meeting(small("vitrine-50", 4, 3, tiles=9, pool=(1, 2, 3, 4)), shifted).scene is not None


@pytest.mark.parametrize("name", ["name-plate", "twin-niche"])
def test_what_is_cached_is_what_is_solved(name: str) -> None:
    """A sample is solved anew, byte for byte the same; if not: python -m tests.edges."""
    base = read_machine(name)
    small_one = edge_relatives(base)[-1]
    size = f"small-{small_one.blank_cycles}"
    cached = cached_edges(base)
    assert cached is not None
    kept = files_of(cached)
    anew = [*solve_goals(small_one, size).scenes, *solve_goals(base, "as-given").scenes]
    stale = [edge.name for edge in anew if kept.get(f"{edge.name}.json") != encode_case(Case(scene=edge.scene))]
    assert stale == []
    assert len(anew) >= 15


def test_a_window_of_one_cell_is_solved_too() -> None:
    """Where no two cells can be compared, the goals have their answers all the same."""
    one = solve_goals(small("vitrine-50", 1, tiles=2, pool=(1,)), "as-given")
    assert one.unanswered == {"as-given": ()}
    assert "as-given/at-the-limit" in {edge.name for edge in one.scenes}
