"""A scheduler that says again what another one said: how a written play becomes a play."""

from collections.abc import Iterable, Sequence

from planeproof.contract import Answer, Burst, Machine, Picture


class Scripted:
    """Says what it was told to, call by call; nothing more once that is used up."""

    def __init__(
        self, set_up: Sequence[Burst], answers: Sequence[Answer], blankings: Sequence[Sequence[Burst]]
    ) -> None:
        self._set_up = set_up
        self._answers = iter(answers)
        self._blankings = iter(blankings)

    def start(self, machine: Machine) -> Iterable[Burst]:
        """The set-up as it was."""
        return self._set_up

    def offer(self, picture: Picture) -> Answer:
        """The next answer."""
        return next(self._answers, Answer.BUSY)

    def blank(self, cycles: int) -> Iterable[Burst]:
        """The bursts of the next blanking that was had."""
        return next(self._blankings, ())
