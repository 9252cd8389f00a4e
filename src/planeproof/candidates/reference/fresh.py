"""Everything anew: every picture gets tiles from the beginning of the pool and is sent whole."""

from collections.abc import Iterable, Mapping

from planeproof.candidates.reference.two_sides import TwoSides
from planeproof.contract import Burst, Picture


class Fresh(TwoSides):
    """Hidden side, fresh tiles each time. The simplest strategy, and the dearest."""

    def tiles_for(self, picture: Picture) -> Mapping[int, int] | None:
        """The first tiles of the pool, in the order of the cells."""
        pool = self.pool
        if len(picture.occupied) > len(pool):
            return None
        return dict(zip(picture.occupied, pool, strict=False))

    def to_send(self, wanted: Mapping[int, int]) -> Iterable[Burst]:
        """All of it."""
        return self.machine.bursts(wanted, {})
