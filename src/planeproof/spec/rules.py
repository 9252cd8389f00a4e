"""The symbolic reading of the rules: one function a rule, on the terms of `planeproof.spec.vocabulary`.

Theorems and the comparison with the concrete reading both use these, so that there is one symbolic reading. A rule
that speaks of every cell or pixel is given here for one of them: it is kept if the formula holds for each.
"""

import z3

from planeproof.spec.vocabulary import (
    Formula,
    PatternByte,
    PictureMemory,
    Pixel,
    SymbolicPicture,
    Term,
    View,
    Write,
)


def keeps_hidden_writes(memory: PictureMemory, view: View, write: Write, pixel: Pixel) -> Formula:
    """hidden-writes, for one ``pixel``: the write does not change it, as far as it can be seen under ``view``.

    For all pixels together: no entry of the shown page names the written tile, or each pixel whose bit changes keeps
    its colour; the written page is not shown, or each pixel keeps the colour it has in the tile named before.
    """
    if isinstance(write, PatternByte):
        before, after = (state.value(write.tile, write.row, pixel.column) for state in (memory, memory.after(write)))
        elsewhere = z3.Or(memory.named(view, pixel.cell) != write.tile, write.row != pixel.row)
        return z3.Or(elsewhere, before == after, view.colour(before) == view.colour(after))
    old, new = memory.named(view, write.cell), memory.tile_of(view.bank, write.entry)
    before, after = (memory.value(tile, pixel.row, pixel.column) for tile in (old, new))
    return z3.Or(view.page != write.page, pixel.cell != write.cell, view.colour(before) == view.colour(after))


def exact_reveal(shown: Term, current: Term, following: Term, is_next: Formula) -> Formula:
    """exact-reveal, for one pixel: the new view shows the current picture or, where ``is_next``, the next taken.

    ``is_next`` is one truth value for the whole frame: half of each picture is neither.
    """
    return shown == z3.If(is_next, following, current)


def whole_reveal(memory: PictureMemory, view: View, pixel: Pixel, picture: SymbolicPicture, seen: Formula) -> Formula:
    """whole-reveal, for one pixel: ``picture`` where it is the one ``seen``, otherwise background."""
    background = picture.shade(z3.BitVecVal(0, picture.depth, pixel.cell.ctx))
    return memory.shown(view, pixel) == z3.If(seen, picture.look(pixel), background)


def blanking_only(spent: Term, set_up: Term, per_byte: Term, n_bytes: int, cycles: Term) -> Formula:
    """blanking-only, for a burst of ``n_bytes`` begun after ``spent`` cycles: its last byte is in time.

    All are unsigned, and wide enough that no sum wraps round.
    """
    return z3.ULE(spent + set_up + per_byte * n_bytes, cycles)


def tile_cap(memory: PictureMemory, view: View, cell: Term, pool: Term, blank: Term) -> Formula:
    """tile-cap, for the entry shown in one cell. ``pool`` has a bit for each tile of the pool."""
    tile = memory.named(view, cell)
    return z3.Or(tile == blank, in_pool(tile, pool))


def own_memory(write: Write, pool: Term) -> Formula:
    """own-memory: a pattern write is to a tile of the pool. Every map entry that a `MapEntry` can name is ours."""
    if isinstance(write, PatternByte):
        return in_pool(write.tile, pool)
    return z3.BoolVal(True, write.cell.ctx)


def in_pool(tile: Term, pool: Term) -> Formula:
    """Whether the bit of ``tile`` is set in ``pool``."""
    return z3.Extract(0, 0, z3.LShR(pool, z3.ZeroExt(pool.size() - tile.size(), tile))) == 1


def in_order(seen_before: Formula, seen_now: Formula) -> Formula:
    """in-order, for background and one picture: once the picture has been seen, the background does not come back."""
    return z3.Implies(seen_before, seen_now)
