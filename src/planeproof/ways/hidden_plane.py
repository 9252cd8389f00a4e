"""The method itself: the next picture goes to planes that the palette hides, and a palette change reveals it."""

import math

from planeproof.contract import TILE_SIDE, Machine, Rational, Storage
from planeproof.ways.grounds import (
    Statement,
    colours_exist,
    counted,
    described,
    is_hidden,
    is_revealed,
    no_more_colours,
    proved,
    storage_obligations,
    witnessed,
)
from planeproof.ways.sending import own_bytes, sending, whole_span
from planeproof.ways.way import Name, Way, bank_shares, colours_shown, first_of, over_blankings, ruled_out


def hidden_plane(machine: Machine) -> Way:
    """Two pictures in the same tiles, if palette and planes allow."""
    planes, two_pages = machine.tiles.planes, machine.map.pages > 1
    if machine.colours.fixed:
        return ruled_out(Name.HIDDEN_PLANE, described("the colours are fixed, so no palette can hide a plane"))
    if machine.plane_sets < 2:
        return ruled_out(Name.HIDDEN_PLANE, no_more_colours(planes, 1 << machine.tiles.depth))
    pool = bank_shares(machine)[0]
    tiles = len(pool) if two_pages else len(pool) // 2
    if not tiles:
        return ruled_out(Name.HIDDEN_PLANE, a_tile_for_each_pair(len(pool)))
    cells = min(tiles, machine.cells)
    sent = sending(
        machine,
        tiles=first_of(pool, cells),
        cells=machine.cells if two_pages else cells,
        side=1,
        view=[address for burst in machine.view_bursts(1, 0) for address in burst.addresses],
        page=machine.page_of(1),
    )
    turns = described("the map page turns together with the palette, so every tile is free for either picture")
    statements = (
        is_hidden(machine),
        is_revealed(machine),
        colours_exist(planes, 1 << planes // 2),
        no_more_colours(planes, math.isqrt(1 << planes) + 1),
        turns if two_pages else a_tile_for_each_pair(len(pool)),
        *on_this_storage(machine),
    )
    colours = colours_shown(machine, planes // 2)
    return over_blankings(machine, Name.HIDDEN_PLANE, colours=colours, tiles=tiles, sent=sent, statements=statements)


def a_tile_for_each_pair(share: int) -> Statement:
    """What one map page leaves room for."""
    return proved(
        f"one map page: each different pair (seen, next) takes a tile, so a picture may count on half of {share}",
        "one-page-pairs",
        "one-page-cap-of-one",
    )


def on_this_storage(machine: Machine) -> tuple[Statement, ...]:
    """What it costs that the planes of two pictures are stored beside one another."""
    sound, broken = storage_obligations(machine)
    known = bool(sound)
    own, span = own_bytes(machine, 1), whole_span(machine, 1)
    if machine.tiles.storage is Storage.PLANAR:
        says = f"planar storage: the {own.n_bytes} bytes of a pattern hold nothing of the seen picture"
        return (proved(says, *sound, known=known),)
    copy = f"a copy of {machine.cap} tiles, {machine.cap * machine.tile_bytes} bytes, in the scheduler's own memory"
    if machine.tiles.storage is Storage.INTERLEAVED:
        return (
            witnessed(
                "interleaved storage: a burst over neighbouring bytes changes the seen picture", *broken, known=known
            ),
            proved("byte by byte, or with what is seen written back unchanged, it does not", *sound, known=known),
            counted(
                f"a pattern takes {own.bursts} bursts and {_cycles(own.cycles)} cycles that way, or one burst of "
                f"{span.n_bytes} bytes and {_cycles(span.cycles)} cycles with {copy}"
            ),
        )
    share = machine.tiles.depth * TILE_SIDE
    return (
        witnessed(
            "packed storage: each byte holds bits of the seen picture, and none can be left out", *broken, known=known
        ),
        proved("read-modify-write of a copy changes no bit of what is seen", *sound, known=known),
        counted(f"a pattern takes {own.n_bytes} bytes for {share} that are its own, and {copy}"),
    )


def _cycles(amount: Rational) -> str:
    return f"{float(amount):.2f}".rstrip("0").rstrip(".")
