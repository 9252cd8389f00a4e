"""Flips: the next picture stands in tiles of its own, and a register turns the map page or the bank of tiles."""

from planeproof.contract import Machine
from planeproof.ways.grounds import described, in_tiles_of_their_own, is_revealed, proved
from planeproof.ways.sending import sending
from planeproof.ways.way import Name, Way, bank_shares, colours_shown, first_of, over_blankings, ruled_out


def page_flip(machine: Machine) -> Way:
    """Two maps over one pool, which the two pictures share."""
    if machine.map.pages == 1:
        return ruled_out(Name.PAGE_FLIP, described("there is one map page, so none to flip to"))
    pool = bank_shares(machine)[0]
    split = proved(
        f"seen and next picture need a tile for each pattern of either, so each may count on half of {len(pool)}",
        "split-pool-patterns",
    )
    tiles = len(pool) // 2
    if not tiles:
        return ruled_out(Name.PAGE_FLIP, split)
    return over_blankings(
        machine,
        Name.PAGE_FLIP,
        colours=colours_shown(machine, machine.tiles.planes),
        tiles=tiles,
        sent=sending(
            machine,
            tiles=first_of(pool, min(tiles, machine.cells)),
            cells=machine.cells,
            side=0,
            view=[machine.page_address],
            page=1,
        ),
        statements=(is_revealed(machine), split, in_tiles_of_their_own()),
    )


def bank_flip(machine: Machine) -> Way:
    """Two banks of tiles; with one map page the same numbers serve in both."""
    if machine.map.banks == 1:
        return ruled_out(Name.BANK_FLIP, described("there is one bank of tiles, so none to flip to"))
    two_pages = machine.map.pages > 1
    first, second = bank_shares(machine)[:2]
    shared = len({tile % machine.tiles_per_bank for tile in first} & {tile % machine.tiles_per_bank for tile in second})
    each_its_own = described(f"each picture has a bank of its own; the smaller has {len(second)} tiles of the pool")
    in_both = proved(
        f"one map page names the same {shared} numbers in both banks, one for each different pair (seen, next), so a "
        "picture may count on half of them",
        known=False,
    )
    tiles, room = (len(second), each_its_own) if two_pages else (shared // 2, in_both)
    if not tiles:
        return ruled_out(Name.BANK_FLIP, room)
    cells = min(tiles, machine.cells)
    return over_blankings(
        machine,
        Name.BANK_FLIP,
        colours=colours_shown(machine, machine.tiles.planes),
        tiles=tiles,
        sent=sending(
            machine,
            tiles=first_of(second, cells),
            cells=machine.cells if two_pages else cells,
            side=0,
            view=[machine.bank_address, *([machine.page_address] if two_pages else [])],
            page=1 if two_pages else 0,
        ),
        statements=(is_revealed(machine), room, in_tiles_of_their_own()),
    )
