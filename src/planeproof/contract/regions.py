"""The regions of picture memory: what stands from which address on."""

from dataclasses import dataclass
from enum import Enum
from itertools import pairwise

from planeproof.contract.errors import MachineError, require
from planeproof.contract.layout import TILE_SIDE
from planeproof.contract.parts import Colours, Memory, TileMap, Tiles, Window

HIGHEST_ADDRESS = (1 << 20) - 1
"""The last address a machine may use."""


class RegionKind(Enum):
    """What a region of picture memory holds."""

    PALETTE = "palette"
    PAGE_REGISTER = "page register"
    BANK_REGISTER = "bank register"
    MAP = "tile map"
    PATTERNS = "patterns"

    @property
    def is_view(self) -> bool:
        """Whether a change here changes what the display shows through, not what it shows."""
        return self in (RegionKind.PALETTE, RegionKind.PAGE_REGISTER, RegionKind.BANK_REGISTER)


@dataclass(frozen=True, kw_only=True)
class Region:
    """``length`` bytes from address ``start``; ``page`` is the map page where it is a map, else 0."""

    kind: RegionKind
    start: int
    length: int
    page: int = 0

    @property
    def end(self) -> int:
        """The address after the last byte."""
        return self.start + self.length

    def __contains__(self, address: int) -> bool:
        return self.start <= address < self.end


def palette_entries(colours: Colours, tiles: Tiles) -> int:
    """Entries of the whole palette, the rest of the screen's included."""
    return colours.first_entry + (1 << tiles.planes) if colours.entries is None else colours.entries


def map_bytes(window: Window, tile_map: TileMap) -> int:
    """Bytes of one map page."""
    return window.pitch * window.map_height * tile_map.entry_bytes


def one_after_the_other(window: Window, tiles: Tiles, tile_map: TileMap, colours: Colours) -> Memory:
    """The layout of a machine that does not give one: palette, registers, maps, patterns."""
    address = 0 if colours.fixed else palette_entries(colours, tiles)
    page_register, address = (address, address + 1) if tile_map.pages > 1 else (None, address)
    bank_register, address = (address, address + 1) if tile_map.banks > 1 else (None, address)
    size = map_bytes(window, tile_map)
    return Memory(
        patterns=address + tile_map.pages * size,
        maps=tuple(address + page * size for page in range(tile_map.pages)),
        palette=None if colours.fixed else 0,
        page_register=page_register,
        bank_register=bank_register,
    )


def regions_of(memory: Memory, window: Window, tiles: Tiles, tile_map: TileMap, colours: Colours) -> tuple[Region, ...]:
    """Every region of picture memory."""
    size = map_bytes(window, tile_map)
    regions = [Region(kind=RegionKind.MAP, start=base, length=size, page=i) for i, base in enumerate(memory.maps)]
    for kind, base, length in [
        (RegionKind.PATTERNS, memory.patterns, tiles.count * tiles.planes * TILE_SIDE),
        (RegionKind.PALETTE, memory.palette, palette_entries(colours, tiles)),
        (RegionKind.PAGE_REGISTER, memory.page_register, 1),
        (RegionKind.BANK_REGISTER, memory.bank_register, 1),
    ]:
        if base is not None:
            regions.append(Region(kind=kind, start=base, length=length))
    return tuple(regions)


def refuse_overlaps(regions: tuple[Region, ...]) -> None:
    """Raise `MachineError` where two regions share an address or one lies out of reach."""
    for region in regions:
        reach = region.start >= 0 and region.end - 1 <= HIGHEST_ADDRESS
        allowed = f"must lie, with its {region.length} bytes, between 0 and {HIGHEST_ADDRESS}"
        require(reach, MachineError, f"memory ({region.kind.value})", region.start, allowed)
    ordered = sorted(regions, key=lambda region: region.start)
    for lower, upper in pairwise(ordered):
        allowed = f"must not lie below {lower.end}, where the {lower.kind.value} from {lower.start} ends"
        require(lower.end <= upper.start, MachineError, f"memory ({upper.kind.value})", upper.start, allowed)
