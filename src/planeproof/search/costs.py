"""What showing pictures cost, over plays of one machine."""

from collections.abc import Iterable

from planeproof.contract import Machine
from planeproof.judge import Cost, Play


def cost_of(machine: Machine, plays: Iterable[Play]) -> Cost:
    """Costs over those of ``plays`` that were on ``machine``."""
    own = [play for play in plays if play.scene.machine is machine]
    busy = [refresh for play in own for refresh in play.refreshes if refresh.bursts]
    sent = sum(len(burst.data) for refresh in busy for burst in refresh.bursts)
    shown = sum(play.shown for play in own)
    return Cost(
        machine=machine.name,
        shown=shown,
        refreshes_each=len(busy) / max(shown, 1),
        bytes_each=sent / max(shown, 1),
        fullest=max((float(refresh.used) / refresh.cycles for refresh in busy), default=0.0),
        longest_wait=max((play.longest_wait for play in own), default=0),
        patience=machine.patience,
    )
