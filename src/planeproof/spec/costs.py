"""What it costs to send one plane of one tile, on each storage layout: counted from the contract's layouts."""

from dataclasses import dataclass
from itertools import pairwise

from planeproof.contract import TILE_SIDE, Storage


@dataclass(frozen=True, kw_only=True)
class PatternCost:
    """Bursts and bytes that bring one plane of a tile to memory; ``shadow``: a copy of the other planes is needed."""

    bursts: int
    n_bytes: int
    shadow: bool


def offsets_of_plane(storage: Storage, planes: int, plane: int) -> tuple[int, ...]:
    """The bytes of a tile that hold bits of ``plane``, as offsets in rising order."""
    places = ((row, column) for row in range(TILE_SIDE) for column in range(TILE_SIDE))
    return tuple(sorted({storage.place(planes, plane, *place)[0] for place in places}))


def pattern_costs(storage: Storage, planes: int) -> tuple[PatternCost, ...]:
    """The ways to send one plane: its own bytes in as few bursts as they allow, or one burst over its whole span.

    The second is left out where it is the first. A burst over bytes that hold other planes' bits needs a shadow copy.
    """
    offsets = offsets_of_plane(storage, planes, 0)
    shared = any(offset in offsets_of_plane(storage, planes, plane) for plane in range(1, planes) for offset in offsets)
    runs = 1 + sum(later - offset > 1 for offset, later in pairwise(offsets))
    own = PatternCost(bursts=runs, n_bytes=len(offsets), shadow=shared)
    if runs == 1:
        return (own,)
    return (own, PatternCost(bursts=1, n_bytes=offsets[-1] - offsets[0] + 1, shadow=True))
