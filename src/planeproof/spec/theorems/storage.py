"""Theorem 8: which storage keeps the shown plane safe from writes to another, by byte and by burst, and the remedy.

The tile is its bytes, as the contract's layouts place them; the palette shows one plane.
"""

from dataclasses import dataclass
from functools import partial
from itertools import product

import z3

from planeproof.contract import TILE_SIDE, Storage
from planeproof.spec.costs import offsets_of_plane
from planeproof.spec.obligation import Answer, Obligation, Question
from planeproof.spec.vocabulary import Formula, Term, all_of, joined

BURST = TILE_SIDE
PLANES = {Storage.PLANAR: (2, 3, 4), Storage.INTERLEAVED: (2, 3, 4), Storage.PACKED: (2, 4)}


@dataclass(frozen=True, kw_only=True)
class _Tile:
    """A tile by its bytes."""

    storage: Storage
    held: list[Term]

    @property
    def planes(self) -> int:
        return len(self.held) // TILE_SIDE

    def bit(self, plane: int, row: int, column: int) -> Term:
        offset, bit = self.storage.place(self.planes, plane, row, column)
        return z3.Extract(bit, bit, self.held[offset])

    def value(self, row: int, column: int) -> Term:
        return joined([self.bit(plane, row, column) for plane in reversed(range(self.planes))])

    def plane(self, plane: int) -> Term:
        """All 64 bits of a plane."""
        return joined([self.bit(plane, row, column) for row in range(TILE_SIDE) for column in range(TILE_SIDE)])


def _free(context: z3.Context, storage: Storage, planes: int, name: str) -> _Tile:
    held = [z3.BitVec(f"{name}-{offset}", 8, context) for offset in range(TILE_SIDE * planes)]
    return _Tile(storage=storage, held=held)


def _after_burst(tile: _Tile, data: _Tile, first: int, length: int) -> _Tile:
    touched = range(first, min(first + length, len(tile.held)))
    return _Tile(
        storage=tile.storage,
        held=[data.held[at] if at in touched else byte for at, byte in enumerate(tile.held)],
    )


def _others_stay(before: _Tile, after: _Tile, written: int) -> Formula:
    """Every plane but ``written`` keeps its bits, so no palette that shows one of them lets a pixel change."""
    others = [plane for plane in range(before.planes) if plane != written]
    return all_of(*(before.plane(plane) == after.plane(plane) for plane in others))


def _isolation_question(storage: Storage, planes: int, length: int, context: z3.Context) -> Question:
    """Every plane, and every row that a burst for it may begin at, at once."""
    tile, data = (_free(context, storage, planes, name) for name in ("held", "written"))
    rows = range(TILE_SIDE) if length == 1 else range(1)
    starts = [(plane, storage.line_offset(planes, plane, row)) for plane in range(planes) for row in rows]
    stays = [_others_stay(tile, _after_burst(tile, data, first, length), plane) for plane, first in starts]
    return Question(premises={}, goal=all_of(*stays))


def _breach_question(storage: Storage, planes: int, length: int, context: z3.Context) -> Question:
    """The first byte, or the first burst, for plane 0: enough to show what happens to plane 1."""
    tile, data = (_free(context, storage, planes, name) for name in ("held", "written"))
    after = _after_burst(tile, data, storage.line_offset(planes, 0, 0), length)
    shown = {
        f"plane 1, row {row}, {when}": joined([state.bit(1, row, column) for column in range(TILE_SIDE)])
        for row in range(TILE_SIDE)
        for when, state in (("before", tile), ("after", after))
    }
    return Question(premises={}, goal=tile.plane(1) == after.plane(1), shown=shown)


def _isolation(storage: Storage, planes: int, length: int) -> Obligation:
    by, what = ("byte", "a byte") if length == 1 else ("burst", f"a burst of {BURST} bytes from its first row on")
    safe = storage is Storage.PLANAR or (storage is Storage.INTERLEAVED and length == 1)
    written = "one plane changes no bit of another" if safe else "plane 0 changes no bit of plane 1"
    return Obligation(
        id=f"{storage.value}-by-{by}-{planes}-planes",
        theorem=8,
        statement=f"On {storage.value} storage, {what} written for {written}.",
        size=f"any tile of {planes} planes, any data",
        build=partial(_isolation_question if safe else _breach_question, storage, planes, length),
        wanted=Answer.PROVED if safe else Answer.REFUTED,
    )


def _merged(shadow: _Tile, picture: _Tile, plane: int) -> _Tile:
    """The bytes that read-modify-write sends: the shadow copy, with the bits of ``plane`` from the picture."""
    masks = [0] * len(shadow.held)
    for row, column in product(range(TILE_SIDE), range(TILE_SIDE)):
        offset, bit = shadow.storage.place(shadow.planes, plane, row, column)
        masks[offset] |= 1 << bit
    held = [(kept & (0xFF ^ m)) | (new & m) for kept, new, m in zip(shadow.held, picture.held, masks, strict=True)]
    return _Tile(storage=shadow.storage, held=held)


def _remedy_question(storage: Storage, planes: int, context: z3.Context) -> Question:
    """Bit by bit, whichever of the bytes have been sent: the plane's own from the picture, all others as they were."""
    tile, shadow, picture = (_free(context, storage, planes, name) for name in ("held", "shadow", "picture"))
    sent = [z3.Bool(f"sent-{offset}", context) for offset in range(len(tile.held))]
    sends = [_merged(shadow, picture, plane) for plane in range(planes)]
    kept, brought, whole = [], [], []
    for written, plane, row, column in product(range(planes), range(planes), range(TILE_SIDE), range(TILE_SIDE)):
        offset, _ = storage.place(planes, plane, row, column)
        merged = sends[written].bit(plane, row, column)
        old, wanted = (state.bit(plane, row, column) for state in (tile, picture))
        after = z3.If(sent[offset], merged, old)
        if plane != written:
            kept.append(after == old)
        else:
            brought.append(z3.Implies(sent[offset], after == wanted))
            whole.append(after == wanted)
    agree = all_of(*(old == copy for old, copy in zip(tile.held, shadow.held, strict=True)))
    return Question(
        premises={"the shadow copy is what memory holds": agree},
        goal=all_of(*kept, *brought),
        shown={"held, byte 0": tile.held[0], "shadow, byte 0": shadow.held[0], "picture, byte 0": picture.held[0]},
        mutants={"the plane holds the picture before all is sent": all_of(*whole)},
    )


def _remedy(storage: Storage, planes: int) -> Obligation:
    return Obligation(
        id=f"{storage.value}-read-modify-write-{planes}-planes",
        theorem=8,
        statement=f"On {storage.value} storage, bytes that are the shadow copy with one plane's bits from the picture "
        "change no bit of another plane, whichever of them have been sent, and once all are, the plane holds the "
        "picture.",
        size=f"any tile of {planes} planes, any picture",
        build=partial(_remedy_question, storage, planes),
    )


def _fewer_question(storage: Storage, planes: int, context: z3.Context) -> Question:
    """For every one of the bytes that the cost of plane 0 counts: leave it out, send all else."""
    tile, picture = (_free(context, storage, planes, name) for name in ("held", "picture"))
    rights = []
    for left_out in offsets_of_plane(storage, planes, 0):
        held = list(picture.held)
        held[left_out] = tile.held[left_out]
        rights.append(_Tile(storage=storage, held=held).plane(0) == picture.plane(0))
    shown = {"held, byte 0": tile.held[0], "picture, byte 0": picture.held[0]}
    return Question(premises={}, goal=z3.Or(*rights), shown=shown)


def _no_fewer(storage: Storage, planes: int) -> Obligation:
    n_bytes = len(offsets_of_plane(storage, planes, 0))
    return Obligation(
        id=f"{storage.value}-no-byte-to-spare-{planes}-planes",
        theorem=8,
        statement=f"On {storage.value} storage, some one of the {n_bytes} bytes that hold plane 0 of a tile can always "
        "be left out.",
        size=f"any tile of {planes} planes, any picture",
        build=partial(_fewer_question, storage, planes),
        wanted=Answer.REFUTED,
    )


OBLIGATIONS: tuple[Obligation, ...] = (
    *(
        _isolation(storage, planes, length)
        for storage in Storage
        for planes in PLANES[storage]
        for length in (1, BURST)
    ),
    *(_remedy(storage, planes) for storage in Storage if storage is not Storage.PLANAR for planes in PLANES[storage]),
    *(_no_fewer(storage, planes) for storage in Storage for planes in PLANES[storage]),
)
