"""Where a scheduler works: how many tiles, cells and rows there are, and which tiles are whose."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

import z3

from planeproof.spec.steps.functions import Function, Place, Table
from planeproof.spec.steps.sharing import Sharing
from planeproof.spec.vocabulary import Term

FULL_TILES, FULL_CELLS = 512, 1024


@dataclass(frozen=True, kw_only=True, eq=False)
class Site:
    """``pool(tile)``: whether the window may use a tile; ``half(tile)``: the side it belongs to if the pool is split.

    ``blank`` is the blank tile. ``listed``: small enough that every function is a table.
    """

    context: z3.Context
    sharing: Sharing
    tiles: int
    cells: int
    rows: int
    blank: Term
    pool: Function
    half: Function
    listed: bool

    @classmethod
    def any(
        cls, context: z3.Context, sharing: Sharing, *, tiles: int, cells: int, rows: int, listed: bool = False
    ) -> "Site":
        """Any pool, any split of it, any blank tile. The counts are powers of two, so that each number is one."""
        tile = _sort(context, tiles)

        def free(name: str, result: z3.SortRef) -> Function:
            if not listed:
                return z3.Function(name, tile, result)  # type: ignore[no-any-return]
            values: dict[Place, Term] = {(number,): z3.Const(f"{name}-{number}", result) for number in range(tiles)}
            return Table(sorts=(tile,), counts=(tiles,), values=values)

        return cls(
            context=context,
            sharing=sharing,
            tiles=tiles,
            cells=cells,
            rows=rows,
            blank=z3.Const("blank", tile),
            pool=free("pool", z3.BoolSort(context)),
            half=free("half", z3.BitVecSort(1, context)),
            listed=listed,
        )

    @classmethod
    def given(
        cls,
        context: z3.Context,
        sharing: Sharing,
        *,
        tiles: int,
        cells: int,
        blank: int,
        half_of: dict[int, int],
        rows: int | None = None,
    ) -> "Site":
        """A machine given tile by tile: ``half_of`` has each tile of the pool, and the side it would belong to."""
        sort = _sort(context, tiles)

        def table(value: Callable[[int], Term]) -> Table:
            return Table(sorts=(sort,), counts=(tiles,), values={(tile,): value(tile) for tile in range(tiles)})

        return cls(
            context=context,
            sharing=sharing,
            tiles=tiles,
            cells=cells,
            rows=sharing.rows if rows is None else rows,
            blank=z3.BitVecVal(blank, sort),
            pool=table(lambda tile: z3.BoolVal(tile in half_of, context)),
            half=table(lambda tile: z3.BitVecVal(half_of.get(tile, 0), 1, context)),
            listed=True,
        )

    @cached_property
    def tile_sort(self) -> z3.SortRef:
        """Tile numbers, which are also what entries hold."""
        return _sort(self.context, self.tiles)

    @cached_property
    def cell_sort(self) -> z3.SortRef:
        """Cell numbers."""
        return _sort(self.context, self.cells)

    @cached_property
    def row_sort(self) -> z3.SortRef:
        """Numbers of the bytes of a tile that hold one side."""
        return _sort(self.context, self.rows)

    @cached_property
    def unit_sort(self) -> z3.SortRef:
        """Units; see `planeproof.spec.steps.sharing`."""
        return z3.BitVecSort(self.sharing.unit_bits, self.context)

    @cached_property
    def side_sort(self) -> z3.SortRef:
        """Sides, map pages and stores: 0 and 1."""
        return z3.BitVecSort(1, self.context)

    @cached_property
    def truth(self) -> z3.SortRef:
        """Truth values."""
        return z3.BoolSort(self.context)

    @cached_property
    def all_tiles(self) -> tuple[Term, ...]:
        """Every tile, as a literal."""
        return _literals(self.tile_sort, self.tiles)

    @cached_property
    def all_cells(self) -> tuple[Term, ...]:
        """Every cell, as a literal."""
        return _literals(self.cell_sort, self.cells)

    @cached_property
    def all_rows(self) -> tuple[Term, ...]:
        """Every row, as a literal."""
        return _literals(self.row_sort, self.rows)

    @cached_property
    def sides(self) -> tuple[Term, ...]:
        """Both sides, as literals."""
        return _literals(self.side_sort, 2)

    def number(self, value: int, sort: z3.SortRef) -> Term:
        """A literal."""
        return z3.BitVecVal(value, sort)

    def constant(self, value: bool) -> Term:
        """A truth value that is known."""
        return z3.BoolVal(value, self.context)

    @cached_property
    def _counts(self) -> dict[str, tuple[tuple[z3.SortRef, int], ...]]:
        store, side = (self.side_sort, self.sharing.stores), (self.side_sort, 2)
        tile, cell, row = ((self.tile_sort, self.tiles), (self.cell_sort, self.cells), (self.row_sort, self.rows))
        return {
            "units": (store, tile, row),
            "entries": (side, cell),
            "picture": (cell, row),
            "bytes": (tile, row),
            "cells": (cell,),
            "tiles": (tile,),
        }

    def free(self, name: str, kind: str, result: z3.SortRef) -> Function:
        """Any function of the arguments of ``kind``: uninterpreted, or a table of free terms."""
        arguments = self._counts[kind]
        if not self.listed:
            return z3.Function(name, *(sort for sort, _ in arguments), result)  # type: ignore[no-any-return]
        table = self.table(kind, lambda *_: z3.BoolVal(False, self.context))
        values = {place: z3.Const("-".join([name, *map(str, place)]), result) for place in table.values}
        return Table(sorts=table.sorts, counts=table.counts, values=values)

    def table(self, kind: str, function: Function) -> Table:
        """The table of ``function``, which takes the arguments of ``kind``."""
        sorts, counts = zip(*self._counts[kind], strict=True)
        return Table.of(sorts, counts, function)


def _sort(context: z3.Context, count: int) -> z3.SortRef:
    return z3.BitVecSort(max(1, (count - 1).bit_length()), context)


def _literals(sort: z3.SortRef, count: int) -> tuple[Term, ...]:
    return tuple(z3.BitVecVal(number, sort) for number in range(count))
