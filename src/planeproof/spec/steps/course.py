"""A course: what a scheduler does refresh by refresh, in numbers. A refutation is one; a scheduler can follow one."""

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Taken:
    """A picture and its plan: ``units[cell][row]``, the tile of each cell, and the cell of each tile."""

    units: tuple[tuple[int, ...], ...]
    place: tuple[int, ...]
    cell_of: tuple[int, ...]


@dataclass(frozen=True, kw_only=True)
class Turn:
    """One refresh. A picture may be taken; then the blanking may be lost, or else bytes and entries are sent.

    ``sent`` has (tile, row) of each byte, ``entries`` the cells. The hidden side may be shown after that.
    """

    taken: Taken | None = None
    lost: bool = False
    sent: tuple[tuple[int, int], ...] = ()
    entries: tuple[int, ...] = ()
    shows: bool = False


Course = tuple[Turn, ...]
