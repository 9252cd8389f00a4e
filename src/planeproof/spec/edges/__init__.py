"""Edge scenes from the solver: z3 supplies the pictures that meet stated goals on a machine, and proves where none can.

The goals, and their checks without a solver, are in `planeproof.scenes.edge_goals`. Here: `tokens` (what stands in a
cell), `drawing` (pictures as terms), `constraints` (goals in terms), `asking` (one question), `covering` (all pairs).
"""

from collections.abc import Mapping, Sequence

from planeproof.contract import Machine
from planeproof.scenes.edge_goals import GOALS
from planeproof.scenes.edge_pairs import PAIRS
from planeproof.scenes.edge_relatives import edge_relatives
from planeproof.scenes.edges import Edges, EdgeScene, in_order
from planeproof.spec.edges.asking import RLIMIT, scene_meeting
from planeproof.spec.edges.covering import Cover, cover
from planeproof.spec.obligation import Answer

__all__ = ["Cover", "cover", "scene_meeting", "solve_edges", "solve_goals"]

AS_GIVEN = "as-given"


def solve_edges(machine: Machine, *, rlimit: int = RLIMIT) -> Edges:
    """All edge scenes of ``machine``: each goal on the machine as given, each goal and all pairs on small relatives.

    Of a second relative only the pairs are asked that the first does not admit. The scenes are the same for the same
    machine and version of z3. It takes a minute or two. ``rlimit``: resource units of z3 for a question.
    """
    parts = [solve_goals(machine, AS_GIVEN, rlimit=rlimit)]
    pairs = PAIRS
    for small in edge_relatives(machine):
        size, covered = f"small-{small.blank_cycles}", cover(small, pairs, rlimit=rlimit)
        parts += [solve_goals(small, size, rlimit=rlimit), _paired(covered, size)]
        pairs = (*covered.impossible, *covered.open)
    return Edges(
        scenes=in_order([scene for part in parts for scene in part.scenes]),
        impossible=_joined([part.impossible for part in parts]),
        unanswered=_joined([part.unanswered for part in parts]),
    )


def solve_goals(machine: Machine, size: str, *, rlimit: int = RLIMIT) -> Edges:
    """Each goal by itself on ``machine``, which is called ``size`` in the names of the scenes."""
    found = {goal.id: scene_meeting(machine, [frozenset({goal.id})], rlimit=rlimit) for goal in GOALS}
    return Edges(
        scenes=in_order([EdgeScene.of(f"{size}/{id_}", f.scene) for id_, f in found.items() if f.scene is not None]),
        impossible={size: tuple(id_ for id_, f in found.items() if f.answer is Answer.PROVED)},
        unanswered={size: tuple(id_ for id_, f in found.items() if f.answer is Answer.UNKNOWN)},
    )


def _paired(covered: Cover, size: str) -> Edges:
    numbered = enumerate(covered.scenes, 1)
    return Edges(
        scenes=in_order([EdgeScene.of(f"{size}/pairs-{number:02}", scene) for number, scene in numbered]),
        impossible={size: tuple(map(str, covered.impossible))},
        unanswered={size: tuple(map(str, covered.open))},
    )


def _joined(parts: Sequence[Mapping[str, tuple[str, ...]]]) -> dict[str, tuple[str, ...]]:
    sizes = dict.fromkeys(size for part in parts for size in part)
    return {size: tuple(name for part in parts for name in part.get(size, ())) for size in sizes}
