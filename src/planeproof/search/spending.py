"""What showing pictures took on one machine: what `planeproof.judge.Cost` says, and by the blanking, and the waste.

Said of blankings in which anything was sent; idle ones would only tell how long the renderer took.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from planeproof.contract import Answer, Machine, Rational
from planeproof.judge import Cost, Play
from planeproof.search.costs import cost_of
from planeproof.search.waste import waste_of


@dataclass(frozen=True, kw_only=True)
class Spending:
    """What one candidate spent on one machine, over the same plays as ``cost``.

    ``blankings``: how many it sent anything in. ``sent``: bytes in all of them, ``cycles`` what they took;
    ``most_bytes`` and ``most_cycles``: in the fullest. ``held``, ``unseen``, ``lost``: of the bytes sent, those for
    nothing (see `planeproof.search.waste`). ``tiles``: of the ``cap``, used in the play that used most. ``declined``:
    pictures declined.
    """

    cost: Cost
    blankings: int
    sent: int
    cycles: Rational
    most_bytes: int
    most_cycles: Rational
    held: int
    unseen: int
    lost: int
    tiles: int
    cap: int
    declined: int

    @property
    def mean_bytes(self) -> float:
        """Bytes a blanking in which anything was sent."""
        return self.sent / max(self.blankings, 1)

    @property
    def mean_cycles(self) -> float:
        """Cycles a blanking in which anything was sent."""
        return float(Fraction(self.cycles) / max(self.blankings, 1))

    def share(self, n_bytes: int) -> float:
        """``n_bytes`` as a share of what was sent; 0 where nothing was."""
        return n_bytes / max(self.sent, 1)


def spending_of(machine: Machine, plays: Sequence[Play]) -> Spending:
    """What was spent in those of ``plays`` that were on ``machine`` itself."""
    own = [play for play in plays if play.scene.machine is machine]
    busy = [refresh for play in own for refresh in play.refreshes if refresh.bursts]
    sent = [sum(len(burst.data) for burst in refresh.bursts) for refresh in busy]
    wastes = [waste_of(play) for play in own]
    return Spending(
        cost=cost_of(machine, own),
        blankings=len(busy),
        sent=sum(sent),
        cycles=sum(refresh.used for refresh in busy),
        most_bytes=max(sent, default=0),
        most_cycles=max((refresh.used for refresh in busy), default=0),
        held=sum(waste.held for waste in wastes),
        unseen=sum(waste.unseen for waste in wastes),
        lost=sum(waste.lost for waste in wastes),
        tiles=max((waste.tiles for waste in wastes), default=0),
        cap=machine.cap,
        declined=sum(declined_in(play) for play in own),
    )


def declined_in(play: Play) -> int:
    """How many pictures were declined in ``play``."""
    return sum(refresh.answer is Answer.TOO_BIG for refresh in play.refreshes)
