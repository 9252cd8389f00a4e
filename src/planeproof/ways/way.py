"""A way as a value: what it leaves room for on one machine, how far it gets, and what that rests on."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum

from planeproof.contract import Machine
from planeproof.ways.grounds import Statement
from planeproof.ways.sending import Sending
from planeproof.ways.standards import Blanking, blanking_here, blanking_there


class Name(Enum):
    """The ways, by what turns the old picture into the new one."""

    HIDDEN_PLANE = "hidden plane"
    PAGE_FLIP = "page flip"
    BANK_FLIP = "bank flip"
    ONE_BLANKING = "one blanking"
    WHILE_SEEN = "while seen"


IN_PLACE = frozenset({Name.ONE_BLANKING, Name.WHILE_SEEN})
"""The ways that write to what is being seen, and so break hidden-writes wherever that rule applies."""


@dataclass(frozen=True, kw_only=True)
class Reach:
    """How far a way gets on one line standard.

    ``cells``: occupied cells that a picture may have, all different. ``refreshes``: how many such a picture takes at
    least when it is sent whole; None where a part of it that can't be split does not fit the blanking.
    """

    blanking: Blanking
    cells: int
    refreshes: int | None

    @property
    def possible(self) -> bool:
        """Whether any picture that is not empty can be shown this way."""
        return self.cells > 0 and self.refreshes is not None


@dataclass(frozen=True, kw_only=True)
class Way:
    """One way on one machine.

    ``colours`` of a picture, background included; ``tiles`` left for one; ``sending`` a picture that uses as many of
    them as there are cells; ``here`` and ``there``: the reach on the machine's own line standard and on the other
    one. A way that the machine rules out has none of these; the ``statements`` say why, or what the figures rest on.
    """

    name: Name
    statements: tuple[Statement, ...]
    colours: int = 0
    tiles: int = 0
    sending: Sending | None = None
    here: Reach | None = None
    there: Reach | None = None

    @property
    def possible(self) -> bool:
        """Whether pictures can be shown whole this way, on the machine as it is."""
        return self.here is not None and self.here.possible


def ruled_out(name: Name, *statements: Statement) -> Way:
    """A way that the machine has not."""
    return Way(name=name, statements=statements)


def over_blankings(
    machine: Machine, name: Name, *, colours: int, tiles: int, sent: Sending, statements: tuple[Statement, ...]
) -> Way:
    """A way that sends a picture over as many blankings as it takes."""

    def reach(blanking: Blanking) -> Reach:
        refreshes = blanking.refreshes(sent.cycles, sent.least)
        return Reach(blanking=blanking, cells=min(tiles, machine.cells), refreshes=refreshes)

    there = blanking_there(machine)
    return Way(
        name=name,
        statements=statements,
        colours=colours,
        tiles=tiles,
        sending=sent,
        here=reach(blanking_here(machine)),
        there=None if there is None else reach(there),
    )


def bank_shares(machine: Machine) -> list[list[int]]:
    """The tiles of the pool by bank, the bank with most of them first."""
    banks: list[list[int]] = [[] for _ in range(machine.map.banks)]
    for tile in machine.pool:
        banks[tile // machine.tiles_per_bank].append(tile)
    return sorted(banks, key=len, reverse=True)


def colours_shown(machine: Machine, planes: int) -> int:
    """Colours of a picture that has so many planes of its tiles to itself, as far as the display has so many."""
    return min(1 << planes, len(machine.colours.meaning))


def first_of(tiles: Sequence[int], count: int) -> Sequence[int]:
    """The first ``count`` tiles in rising order, which take the fewest bursts where the pool is one run."""
    return sorted(tiles)[:count]
