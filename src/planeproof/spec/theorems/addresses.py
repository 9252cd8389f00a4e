"""Theorem 8, the addresses: on each storage layout, different bytes of different tiles have different addresses.

The layouts are the contract's own functions, run on symbols.
"""

import z3

from planeproof.contract import TILE_SIDE, Storage
from planeproof.spec.obligation import Obligation, Question
from planeproof.spec.vocabulary import Term, all_of

BITS = 16
TILES = 512
MOST_PLANES = 4


def pattern_address(storage: Storage, base: Term, tile: Term, planes: Term | int, plane: Term, row: Term) -> Term:
    """Address of byte ``row`` of ``plane`` of ``tile``: the contract's, on terms of 16 bits."""
    offset, _ = storage.place(planes, plane, row, 0)
    return base + tile * (TILE_SIDE * planes) + offset


def packed_address(base: Term, tile: Term, planes: int, byte: Term, row: Term) -> Term:
    """Address of byte number ``byte`` of a row of pixels, of which there are ``planes``, on packed storage."""
    places = [Storage.PACKED.place(planes, 0, row, number * (8 // planes))[0] for number in range(planes)]
    chosen = places[-1]
    for number in reversed(range(planes - 1)):
        chosen = z3.If(byte == number, places[number], chosen)
    return base + tile * (TILE_SIDE * planes) + chosen


def _numbers(context: z3.Context, *names: str) -> list[Term]:
    return [z3.BitVec(name, BITS, context) for name in names]


def _one_to_one(storage: Storage, planes: int | None) -> Obligation:
    """``planes`` None: any number of planes up to 4."""

    def build(context: z3.Context) -> Question:
        base, count = _numbers(context, "base", "planes")
        tiles, rows, parts = (_numbers(context, f"{what}-one", f"{what}-other") for what in ("tile", "row", "part"))
        held = count if planes is None else planes
        if storage is Storage.PACKED:
            at = [packed_address(base, tiles[n], planes or 1, parts[n], rows[n]) for n in range(2)]
        else:
            at = [pattern_address(storage, base, tiles[n], held, parts[n], rows[n]) for n in range(2)]
        limits = {
            "there are 512 tiles": all_of(*(z3.ULT(tile, TILES) for tile in tiles)),
            "a tile has 8 rows": all_of(*(z3.ULT(row, TILE_SIDE) for row in rows)),
            "a row has a byte for each plane": all_of(*(z3.ULT(part, held) for part in parts)),
            "they are two different bytes": z3.Or(tiles[0] != tiles[1], rows[0] != rows[1], parts[0] != parts[1]),
        }
        if planes is None:
            limits["there are 1 to 4 planes"] = z3.And(z3.ULE(1, count), z3.ULE(count, MOST_PLANES))
        return Question(
            premises=limits,
            goal=at[0] != at[1],
            shown={
                "address": at[0],
                "tile of one": tiles[0],
                "tile of the other": tiles[1],
                "row of one": rows[0],
                "row of the other": rows[1],
                "part of one": parts[0],
                "part of the other": parts[1],
            },
        )

    return Obligation(
        id=f"addresses-{storage.value}" + (f"-{planes}-planes" if planes else ""),
        theorem=8,
        statement=f"On {storage.value} storage, no two pattern bytes have the same address, wherever patterns begin.",
        size=f"{TILES} tiles of {'1 to 4' if planes is None else planes} planes, {BITS}-bit addresses",
        build=build,
    )


OBLIGATIONS: tuple[Obligation, ...] = (
    _one_to_one(Storage.PLANAR, None),
    _one_to_one(Storage.INTERLEAVED, None),
    *(_one_to_one(Storage.PACKED, planes) for planes in (2, 4)),
)
