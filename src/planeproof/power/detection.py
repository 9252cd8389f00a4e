"""What came of one hunt: one fault, one engine, one seed."""

from dataclasses import dataclass
from enum import Enum
from typing import Self

import numpy as np

from planeproof.contract import Scene


class Outcome(Enum):
    """What came of a hunt.

    ``CAUGHT``: the fault's own rule was broken first in a scene. ``WRONG_RULE``: only other rules were. ``SURVIVED``:
    nothing was. ``STRAYED``: the fault left the proved steps of its base, which names no rule. ``NOT_FOR``: the engine
    has nothing to ask of this fault.
    """

    CAUGHT = "caught"
    WRONG_RULE = "wrong rule"
    SURVIVED = "survived"
    STRAYED = "strayed"
    NOT_FOR = "not for"

    def __bool__(self) -> bool:
        raise TypeError(f"an outcome is not a bool: compare it, as in `detection.outcome is Outcome.{self.name}`")


@dataclass(frozen=True, kw_only=True)
class SceneSize:
    """How big a scene is: pictures, occupied cells over all of them, and bytes of theirs that are not 0."""

    pictures: int
    cells: int
    n_bytes: int

    @classmethod
    def of(cls, scene: Scene) -> Self:
        """The size of ``scene``."""
        n_bytes = sum(int(np.count_nonzero(picture.rows)) for picture in scene.pictures)
        return cls(pictures=len(scene.pictures), cells=scene.occupied, n_bytes=n_bytes)

    @property
    def key(self) -> tuple[int, int, int]:
        """For comparing: pictures first."""
        return (self.pictures, self.cells, self.n_bytes)


@dataclass(frozen=True, kw_only=True)
class Detection:
    """One hunt for one fault.

    ``wanted`` is the id of the fault's own rule. ``rules``: ids of the rules that were the first broken in some scene,
    in the order in which they were seen (``contract``: the candidate broke the contract). ``scenes``: how many were
    played up to and with the one in which ``wanted`` was first seen; in all, where it was not. ``seconds``: of the
    whole hunt. ``smallest``: the smallest scene that showed ``wanted``, None where none did. ``note``: why there was
    nothing to ask, or where the fault strayed.
    """

    fault: str
    wanted: str
    engine: str
    seed: int
    outcome: Outcome
    rules: tuple[str, ...] = ()
    scenes: int = 0
    seconds: float = 0.0
    smallest: SceneSize | None = None
    note: str = ""

    @property
    def key(self) -> tuple[str, str, int]:
        """What makes it the same hunt."""
        return (self.fault, self.engine, self.seed)

    @property
    def fails(self) -> bool:
        """Whether it is a hunt that should have caught the fault, and did not."""
        return self.outcome in {Outcome.SURVIVED, Outcome.WRONG_RULE}
