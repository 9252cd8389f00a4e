"""Pictures that are answered wrongly, or answered and not shown."""

from collections.abc import Iterable, Mapping

from planeproof.candidates.reference import Delta, Fresh, Pairs, SplitPool
from planeproof.contract import Answer, Burst, Picture


class TakesOneTooMany(Fresh):
    """It takes a picture of one cell more than there are tiles, and that cell is missing."""

    def tiles_for(self, picture: Picture) -> Mapping[int, int] | None:
        """Tiles as far as they go."""
        pool = self.pool
        if len(picture.occupied) > len(pool) + 1:
            return None
        return dict(zip(picture.occupied, pool, strict=False))


class DeclinesTheLargest(SplitPool):
    """It declines a picture that needs exactly as many tiles as there are, so the fullest drawing is never seen."""

    def tiles_for(self, picture: Picture) -> Mapping[int, int] | None:
        """Tiles, if one is left over."""
        return super().tiles_for(picture) if len(picture.occupied) < len(self.pool) else None


class AlwaysBusy(Fresh):
    """It is always busy, so the window stays empty."""

    def offer(self, picture: Picture) -> Answer:
        """Busy."""
        return Answer.BUSY


class DeclinesEverything(Fresh):
    """It declines every picture, so the window stays empty, and nothing is ever wrong in it."""

    def offer(self, picture: Picture) -> Answer:
        """Too big."""
        return Answer.TOO_BIG


class DoesNothing(Fresh):
    """It takes a picture and writes nothing, so the window stays empty."""

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Nothing."""
        return ()


class TakenAndDropped(Delta):
    """A picture that comes while it is at work is taken and forgotten, so it is never seen."""

    def offer(self, picture: Picture) -> Answer:
        """Taken, in any case but the one where there are too few tiles."""
        answer = super().offer(picture)
        return Answer.TAKEN if answer is Answer.BUSY else answer


class TakesMoreThanHalf(Pairs):
    """It takes a picture of more than half the cap, so there are too few tiles for the next, which is declined."""

    @property
    def most(self) -> int:
        """The whole cap."""
        return self.machine.cap
