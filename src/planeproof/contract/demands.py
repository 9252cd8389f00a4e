"""What a machine demands of a scheduler where its owner has not said."""

from collections.abc import Callable

from planeproof.contract.layout import TILE_SIDE, Storage
from planeproof.contract.parts import Rational, TileMap, Tiles


def must_show_unless_demanded(tiles: Tiles, tile_map: TileMap, cap_of_view: int) -> int:
    """Occupied cells that a picture may have without being declined.

    All the tiles that one view can show, if there are 2 pages and every picture has planes (or a bank) of its own
    beside the other one's; otherwise half of them, for then the seen picture and the next share them.
    """
    own_tiles = tiles.planes >= 2 * tiles.depth or tile_map.banks > 1
    return cap_of_view if tile_map.pages == 2 and own_tiles else cap_of_view // 2


def patience_unless_demanded(
    tiles: Tiles, tile_map: TileMap, cells: int, blank_cycles: int, burst_cycles: Callable[[int], Rational]
) -> int:
    """Full blankings within which a taken picture must be seen.

    4 + 4 x the blankings that every occupied pattern, every cell and the view take when sent in the smallest bursts,
    one at a time. The smallest burst of a pattern is 8 bytes, or 1 where storage is interleaved; packed storage can
    only be written with all its planes.
    """

    def blankings(bursts: int, n_bytes: int) -> int:
        return -(-bursts // int(blank_cycles // burst_cycles(n_bytes)))

    patterns = min(len(tiles.pool), cells)
    if tiles.storage is Storage.INTERLEAVED:
        sent = blankings(patterns * tiles.depth * TILE_SIDE, 1)
    else:
        sent = blankings(patterns * (tiles.planes if tiles.storage is Storage.PACKED else tiles.depth), TILE_SIDE)
    return 4 + 4 * (sent + blankings(cells, tile_map.entry_bytes) + 1)
