"""The right place, and the wrong bytes: how entries and patterns are laid out is misread."""

from collections.abc import Mapping

from planeproof.candidates.reference import Delta, Fresh, Reuse, Rows
from planeproof.candidates.reference.shadow import Shadow
from planeproof.contract import ByteOrder, Picture


class TileIndexWraps(Fresh):
    """A tile number is kept in eight bits, so the tile after 255 is tile 0, and the blank tile gets drawn on."""

    def tiles_for(self, picture: Picture) -> Mapping[int, int] | None:
        """The tiles, modulo 256."""
        tiles = super().tiles_for(picture)
        return None if tiles is None else {cell: tile % 256 for cell, tile in tiles.items()}


class MapBytesSwapped(Delta):
    """The two bytes of a map entry stand in the wrong order, so cells show tiles that have nothing to do with them."""

    def entries(self, tiles: Mapping[int, int]) -> dict[int, int]:
        """Each entry turned round."""
        page, blank = self.machine.page_of(self.hidden), self.machine.blank_tile
        wanted: dict[int, int] = {}
        for cell in range(self.machine.cells):
            entry = self.shadow.entry(page, cell, tiles.get(cell, blank))
            wanted |= zip(entry, reversed(entry.values()), strict=True)
        return wanted


class LowByteOnly(Reuse):
    """Only the low byte of a map entry is sent: right until a tile above 255 is used, whose cell then shows another."""

    def entries(self, tiles: Mapping[int, int]) -> dict[int, int]:
        """The low bytes of the entries."""
        machine, page = self.machine, self.machine.page_of(self.hidden)
        low = machine.map.entry_bytes - 1 if machine.map.byte_order is ByteOrder.HIGH_FIRST else 0
        kept = {machine.map_address(page, cell) + low for cell in range(machine.cells)}
        return {address: byte for address, byte in super().entries(tiles).items() if address in kept}


class PackedWrittenWhole(Fresh):
    """Packed bytes are written as if the other plane were empty, so the seen picture loses lines meanwhile."""

    def patterns(self, picture: Picture, tiles: Mapping[int, int]) -> dict[int, int]:
        """Bytes made without reading the shadow first."""
        nothing, wanted = Shadow(self.machine), dict[int, int]()
        for cell, tile in tiles.items():
            wanted |= nothing.pattern(tile, self.hidden, picture.planes[cell])
        return wanted


class InterleavedAsPlanar(Fresh):
    """The eight bytes of a plane are sent as neighbours though planes alternate, so the drawing comes out in shreds."""

    def patterns(self, picture: Picture, tiles: Mapping[int, int]) -> dict[int, int]:
        """Each plane's bytes from its first on, without a gap."""
        wanted: dict[int, int] = {}
        for cell, tile in tiles.items():
            for plane, rows in zip(self.machine.planes_of(self.hidden), picture.planes[cell].tolist(), strict=True):
                first = self.machine.pattern_address(tile, plane)
                wanted |= {first + row: byte for row, byte in enumerate(rows)}
        return wanted


class PlanesExchanged(Rows):
    """The two planes of a picture are written each to the other's place, so the drawing has the wrong inks."""

    def patterns(self, picture: Picture, tiles: Mapping[int, int]) -> dict[int, int]:
        """The bytes of the picture with its planes turned round."""
        return super().patterns(Picture.from_rows(picture.number, picture.planes[:, ::-1]), tiles)
