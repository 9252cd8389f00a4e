"""The five ways together, and whether the method was needed."""

from collections.abc import Callable, Iterable

from planeproof.contract import Machine
from planeproof.ways.flips import bank_flip, page_flip
from planeproof.ways.hidden_plane import hidden_plane
from planeproof.ways.in_place import one_blanking, while_seen
from planeproof.ways.way import IN_PLACE, Name, Way

WAYS: dict[Name, Callable[[Machine], Way]] = {
    Name.HIDDEN_PLANE: hidden_plane,
    Name.PAGE_FLIP: page_flip,
    Name.BANK_FLIP: bank_flip,
    Name.ONE_BLANKING: one_blanking,
    Name.WHILE_SEEN: while_seen,
}


def ways_of(machine: Machine) -> tuple[Way, ...]:
    """Every way on ``machine``, in the order of `Name`."""
    return tuple(judge(machine) for judge in WAYS.values())


def needed_above(ways: Iterable[Way]) -> int | None:
    """Above how many occupied cells, all different, a picture is revealed within the rules only by the method.

    0 means that no other way keeps the rules, None that another one shows as much. That flips show no more is proved
    (theorem 6: a tile for each pattern of either picture); what is written in place breaks hidden-writes.
    """
    cells = {way.name: way.here.cells if way.here is not None and way.possible else 0 for way in ways}
    others = max(count for name, count in cells.items() if name not in {Name.HIDDEN_PLANE, *IN_PLACE})
    return others if cells[Name.HIDDEN_PLANE] > others else None
