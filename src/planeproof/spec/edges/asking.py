"""Asks z3 for one scene: a fresh context and solver each time, a resource limit, never a wall clock."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import z3

from planeproof.contract import Machine, Picture, Scene
from planeproof.scenes.edge_goals import goals_met
from planeproof.scenes.patterns import in_shape
from planeproof.spec.edges.constraints import CONSTRAINTS
from planeproof.spec.edges.drawing import Drawn, Exact, Necessary, Sufficient, TermMoment, Wording, at_most, filled
from planeproof.spec.edges.tokens import pattern, width
from planeproof.spec.obligation import Answer
from planeproof.spec.solving import answered
from planeproof.spec.vocabulary import Formula

RLIMIT = 40_000_000
"""Resource units of z3 for one scene."""

LOOKED_BACK = 2
"""Pictures before the one that meets a goal that the goal can ask about."""

EXACT_CELLS = 12
"""Up to so many cells everything is asked exactly."""

FULL = frozenset({"at-the-limit", "shared-tiles"})
"""Goals that say themselves how many cells are occupied."""

Demands = Sequence[frozenset[str]]
"""For each picture of a scene, the goals that it must meet, by their ids."""


@dataclass(frozen=True, kw_only=True, eq=False)
class Found:
    """What z3 said: a ``scene``, or that there is none (PROVED), or UNKNOWN.

    Where there are too many cells to ask exactly, that none was found in the stronger form is UNKNOWN too.
    """

    answer: Answer
    scene: Scene | None = None


def scene_meeting(machine: Machine, demands: Demands, *, rlimit: int = RLIMIT) -> Found:
    """A scene whose last pictures meet ``demands``, one set of goals each; where there is none, whether that is proved.

    Up to two pictures of any kind come before them, as few as will do: goals look no further back. Pictures that may be
    declined are taken only where there is no scene without (but for those that are to share tiles).
    """
    found = Found(answer=Answer.UNKNOWN)
    for limit in _limits(machine):
        for lead in range(LOOKED_BACK + 1):
            found = ask(machine, [frozenset()] * lead + list(demands), rlimit=rlimit, limit=limit)
            if found.scene is not None:
                return found
    return found  # the last question admitted all that the others did


def _limits(machine: Machine) -> tuple[int | None, ...]:
    """On a big window full pictures only where they are asked for: what is shipped and played should not be all ink."""
    few = () if is_small(machine) else (machine.must_show // 4,)
    return (*few, machine.must_show, None)


def is_small(machine: Machine) -> bool:
    """Whether everything about the machine is asked exactly."""
    return machine.cells <= EXACT_CELLS


def ask(machine: Machine, demands: Demands, *, rlimit: int = RLIMIT, limit: int | None = None) -> Found:
    """A scene of one picture for each of ``demands``; of pictures of which nothing is demanded anything goes.

    ``limit``: cells that a picture may have unless it is to be full or to share tiles.
    """
    if is_small(machine):
        return _asked(machine, demands, Exact(), rlimit, limit)
    if _asked(machine, demands, Necessary(), rlimit, limit).answer is Answer.PROVED:
        return Found(answer=Answer.PROVED)
    found = _asked(machine, demands, Sufficient(), rlimit, limit)
    return found if found.scene is not None else Found(answer=Answer.UNKNOWN)


def _asked(machine: Machine, demands: Demands, wording: Wording, rlimit: int, limit: int | None) -> Found:
    ctx = z3.Context()
    drawn = _pictures(machine, len(demands), ctx)
    solver = z3.Solver(ctx=ctx)
    solver.set("rlimit", rlimit)
    solver.add(*_demanded(machine, drawn, demands, wording))
    if limit is not None:
        solver.add(*_within(limit, drawn, demands))
    said = answered(solver)
    if said == z3.unsat:
        return Found(answer=Answer.PROVED)
    if said == z3.unknown or isinstance(wording, Necessary):
        return Found(answer=Answer.UNKNOWN)
    return Found(answer=Answer.REFUTED, scene=_scene(machine, drawn, demands, solver.model()))


def _pictures(machine: Machine, count: int, ctx: z3.Context) -> list[Drawn]:
    """With as many shapes as there are cells, or on a few cells as many as cells of four pictures; see `tokens`."""
    bits = width(machine.cells * (4 if is_small(machine) else 1))
    cells = range(machine.cells)
    return [tuple(z3.BitVec(f"picture {p}, cell {c}", bits, ctx) for c in cells) for p in range(count)]


def _demanded(machine: Machine, drawn: list[Drawn], demands: Demands, wording: Wording) -> list[Formula]:
    nothing = tuple(z3.BitVecVal(0, cell.size(), cell.ctx) for cell in drawn[0])
    past = [nothing, nothing, *drawn]
    formulas = []
    for number, goals in enumerate(demands):
        before, last, now = past[number : number + 3]
        moment = TermMoment(machine=machine, now=now, last=last, before=before, wording=wording)
        formulas += [CONSTRAINTS[goal](moment) for goal in sorted(goals)]
    return formulas


def _within(limit: int, drawn: list[Drawn], demands: Demands) -> list[Formula]:
    few = [picture for picture, goals in zip(drawn, demands, strict=True) if not goals & FULL]
    return [at_most(limit, [filled(cell) for cell in picture]) for picture in few]


def _scene(machine: Machine, drawn: list[Drawn], demands: Demands, model: z3.ModelRef) -> Scene:
    """The model as a scene, looked at again by the checks that know nothing of terms."""
    pictures = [_picture(machine, picture, model) for picture in drawn]
    scene = Scene.of(machine, pictures)
    missed = [goals - met for goals, met in zip(demands, goals_met(scene), strict=True)]
    if any(missed):
        raise AssertionError(f"z3's scene on {machine.name} misses {missed}: a goal's two readings differ")
    return scene


def _picture(machine: Machine, drawn: Drawn, model: z3.ModelRef) -> Picture:
    tokens = [model.eval(cell, model_completion=True).as_long() for cell in drawn]
    return Picture.from_rows(0, in_shape(machine, np.array([pattern(machine, token) for token in tokens])))
