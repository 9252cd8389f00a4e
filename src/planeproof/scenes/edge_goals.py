"""Goals: situations at the edge of what a machine can do, each with a check in plain numpy whether a scene meets it.

A goal is met by one picture of a scene, seen with the two before it. What the hidden side holds is taken to be what a
scheduler leaves there that shows every picture and takes the sides in turn: on two sides the picture before last. So
*content that the hidden side holds already* and *the picture before last again* are one goal, `before-last`, and
`hidden-moved` is the other way of holding it already: all the patterns, but none in its place.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Self

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import TILE_SIDE, Machine, Scene
from planeproof.scenes.patterns import Rows
from planeproof.scenes.uploads import Tariff, changed


@dataclass(frozen=True, kw_only=True, eq=False)
class Moment:
    """A picture and the two before it, as (cells, depth, 8); before the first picture all are empty."""

    machine: Machine
    now: Rows
    last: Rows
    before: Rows

    @classmethod
    def of(cls, scene: Scene, number: int) -> Self:
        """The moment of picture ``number`` of ``scene``."""
        empty = np.zeros((scene.machine.cells, scene.machine.tiles.depth, TILE_SIDE), dtype=np.uint8)
        past = [empty] * 2 + [picture.planes for picture in scene.pictures[: number + 1]]
        return cls(machine=scene.machine, now=past[-1], last=past[-2], before=past[-3])

    @property
    def held(self) -> Rows:
        """What the side that ``now`` is written to holds: where there is one side, the last picture."""
        return self.last if self.machine.sides == 1 else self.before


@dataclass(frozen=True, kw_only=True)
class EdgeGoal:
    """A situation, in a ``sentence`` about a picture; ``met`` says whether it is so at a moment."""

    id: str
    sentence: str
    met: Callable[[Moment], bool]


def goals_met(scene: Scene) -> tuple[frozenset[str], ...]:
    """For each picture of ``scene``, wherever it comes from, the ids of the goals that it meets."""
    moments = (Moment.of(scene, number) for number in range(len(scene.pictures)))
    return tuple(frozenset(goal.id for goal in GOALS if goal.met(moment)) for moment in moments)


def goal(goal_id: str) -> EdgeGoal:
    """The goal of that id. Raises `ValueError`, naming those there are."""
    for candidate in GOALS:
        if candidate.id == goal_id:
            return candidate
    raise ValueError(f"there is no goal {goal_id!r}; there are: {', '.join(goal.id for goal in GOALS)}")


# --- the checks -------------------------------------------------------------------------------------------


def _filled(rows: Rows) -> NDArray[np.bool_]:
    return np.asarray(rows.any(axis=(1, 2)))


def _patterns(rows: Rows) -> Iterator[bytes]:
    return (rows[cell].tobytes() for cell in np.flatnonzero(_filled(rows)))


def _at_the_limit(moment: Moment) -> bool:
    most, patterns = min(moment.machine.must_show, moment.machine.cells), list(_patterns(moment.now))
    return 0 < most == len(patterns) == len(set(patterns))


def _shared_tiles(moment: Moment) -> bool:
    cap, patterns = moment.machine.cap_of_view, list(_patterns(moment.now))
    return len(patterns) == cap + 1 and len(set(patterns)) <= cap


def _fills_blankings(moment: Moment) -> bool:
    patterns, entries = changed(moment.now, moment.held)
    full = Tariff.of(moment.machine).ends_full(patterns=patterns, entries=entries)
    return full and _may_not_be_declined(moment)


def _a_byte_over(moment: Moment) -> bool:
    patterns, entries = changed(moment.now, moment.held)
    late = Tariff.of(moment.machine).ends_a_byte_late(patterns=patterns, entries=entries)
    return late and _may_not_be_declined(moment)


def _may_not_be_declined(moment: Moment) -> bool:
    """Neither the picture nor the one that its side holds."""
    return max(int(_filled(rows).sum()) for rows in (moment.now, moment.held)) <= moment.machine.must_show


def _before_last(moment: Moment) -> bool:
    again = np.array_equal(moment.now, moment.before) and not np.array_equal(moment.now, moment.last)
    return again and bool(moment.now.any())


def _same_again(moment: Moment) -> bool:
    return bool(moment.now.any()) and np.array_equal(moment.now, moment.last)


def _rearranged(now: Rows, was: Rows) -> bool:
    """The same patterns, at least one, and none where it was."""
    stay = _filled(now) & (now == was).all(axis=(1, 2))
    patterns = sorted(_patterns(now))
    return bool(patterns) and patterns == sorted(_patterns(was)) and not stay.any()


def _moved(moment: Moment) -> bool:
    return _rearranged(moment.now, moment.last)


def _hidden_moved(moment: Moment) -> bool:
    return _rearranged(moment.now, moment.held)


def _emptied(moment: Moment) -> bool:
    return bool(moment.last.any()) and not moment.now.any()


def _refilled(moment: Moment) -> bool:
    there, gone, back = _filled(moment.before), ~_filled(moment.last), _filled(moment.now)
    other = (moment.now != moment.before).any(axis=(1, 2))
    return bool((there & gone & back & other).any())


def _one_bit(moment: Moment) -> bool:
    return _last_bit(moment.now, moment.last)


def _one_bit_hidden(moment: Moment) -> bool:
    return _last_bit(moment.now, moment.held)


def _last_bit(now: Rows, was: Rows) -> bool:
    """One bit in the last byte of the last cell, of any plane, is all that differs."""
    differ = now ^ was
    return int(np.unpackbits(differ).sum()) == int(np.unpackbits(differ[-1, :, -1]).sum()) == 1


GOALS: tuple[EdgeGoal, ...] = (
    EdgeGoal(
        id="at-the-limit",
        sentence="Exactly as many cells as must be shown are occupied, no two alike.",
        met=_at_the_limit,
    ),
    EdgeGoal(
        id="shared-tiles",
        sentence="One cell more is occupied than a view has tiles, with no more different patterns than tiles.",
        met=_shared_tiles,
    ),
    EdgeGoal(
        id="fills-blankings",
        sentence="What differs from what its side holds, and the reveal, ends with the last cycle of a blanking.",
        met=_fills_blankings,
    ),
    EdgeGoal(
        id="a-byte-over",
        sentence="What differs from what its side holds, and the reveal, needs a blanking more for its last byte.",
        met=_a_byte_over,
    ),
    EdgeGoal(
        id="before-last",
        sentence="The picture before last comes back after another; on two sides the hidden one holds it already.",
        met=_before_last,
    ),
    EdgeGoal(
        id="same-again",
        sentence="The last picture comes again.",
        met=_same_again,
    ),
    EdgeGoal(
        id="moved",
        sentence="Every pattern of the last picture is in another cell, and none is new or gone.",
        met=_moved,
    ),
    EdgeGoal(
        id="hidden-moved",
        sentence="Every pattern that the hidden side holds is wanted in another cell, and no other pattern is.",
        met=_hidden_moved,
    ),
    EdgeGoal(
        id="emptied",
        sentence="The last picture is taken away, all of it.",
        met=_emptied,
    ),
    EdgeGoal(
        id="refilled",
        sentence="A cell that was emptied by the last picture is filled again, with another pattern.",
        met=_refilled,
    ),
    EdgeGoal(
        id="one-bit",
        sentence="One bit in the last byte of the last cell is all that differs from the last picture.",
        met=_one_bit,
    ),
    EdgeGoal(
        id="one-bit-hidden",
        sentence="One bit in the last byte of the last cell is all that differs from what the hidden side holds.",
        met=_one_bit_hidden,
    ),
)
"""Every goal there is."""
