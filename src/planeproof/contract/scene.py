"""A scene: everything that a run needs."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

from planeproof.contract.errors import SceneError, require
from planeproof.contract.machine import Machine
from planeproof.contract.picture import Picture


@dataclass(frozen=True, order=True)
class Disturbance:
    """Blanking number ``refresh`` has only ``cycles`` left: it begins late and ends on time. 0 means lost."""

    refresh: int
    cycles: int


@dataclass(frozen=True, eq=False)
class Scene:
    """``pictures`` on ``machine``, the i-th ready for offering from refresh ``ready[i]`` on, and disturbances.

    Raises `SceneError` for pictures, times or disturbances that do not fit the machine.
    """

    machine: Machine
    pictures: tuple[Picture, ...]
    ready: tuple[int, ...]
    disturbances: tuple[Disturbance, ...] = ()

    def __post_init__(self) -> None:
        for number, picture in enumerate(self.pictures):
            _refuse_picture(self.machine, number, picture)
        paired = len(self.ready) == len(self.pictures)
        require(paired, SceneError, "ready", self.ready, f"must be {len(self.pictures)} refreshes, one a picture")
        orderly = all(a <= b for a, b in zip((0, *self.ready), self.ready, strict=False))
        require(orderly, SceneError, "ready", self.ready, "must be 0 or more and must not decrease")
        refreshes = [disturbance.refresh for disturbance in self.disturbances]
        once = all(a < b for a, b in zip((-1, *refreshes), refreshes, strict=False))
        require(once, SceneError, "disturbances", refreshes, "must be in order, refresh 0 or later, one a refresh")
        for disturbance in self.disturbances:
            top = self.machine.blank_cycles
            inside = 0 <= disturbance.cycles < top
            require(inside, SceneError, "disturbance.cycles", disturbance.cycles, f"must be 0..{top - 1} here")

    def __repr__(self) -> str:
        many = f"{len(self.pictures)} pictures, {self.occupied} occupied cells, {len(self.disturbances)} disturbed"
        return f"<scene on {self.machine.name}: {many}>"

    @classmethod
    def of(
        cls,
        machine: Machine,
        pictures: Iterable[Picture],
        ready: Iterable[int] | None = None,
        disturbances: Iterable[Disturbance] = (),
    ) -> "Scene":
        """A scene of ``pictures``, numbered anew from 0 and all ready at once unless said otherwise."""
        numbered = tuple(picture.renumbered(number) for number, picture in enumerate(pictures))
        times = (0,) * len(numbered) if ready is None else tuple(ready)
        return cls(machine, numbered, times, tuple(sorted(disturbances)))

    @cached_property
    def occupied(self) -> int:
        """Occupied cells of all pictures together."""
        return sum(len(picture.occupied) for picture in self.pictures)

    def cycles_of(self, refresh: int) -> int:
        """Cycles of blanking number ``refresh``, 0 if it is lost."""
        return self._cut.get(refresh, self.machine.blank_cycles)

    @cached_property
    def _cut(self) -> dict[int, int]:
        return {disturbance.refresh: disturbance.cycles for disturbance in self.disturbances}


def _refuse_picture(machine: Machine, number: int, picture: Picture) -> None:
    require(picture.number == number, SceneError, "picture.number", picture.number, f"must be {number} in this place")
    shape, depth = picture.rows.shape, machine.tiles.depth
    wanted = (machine.cells, 8) if depth == 1 else (machine.cells, depth, 8)
    require(shape == wanted, SceneError, f"pictures[{number}].rows", shape, f"must have the shape {wanted} here")
