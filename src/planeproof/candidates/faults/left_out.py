"""Bytes that are not sent: the last of something, or what seems to need no writing."""

from collections.abc import Mapping

from planeproof.candidates.reference import Fresh
from planeproof.contract import TILE_SIDE, Picture


class LastRowNotSent(Fresh):
    """A loop ends one row early, so the lowest line of every tile is missing, or is that of an older picture."""

    def patterns(self, picture: Picture, tiles: Mapping[int, int]) -> dict[int, int]:
        """Seven rows of eight."""
        machine, planes = self.machine, self.machine.planes_of(self.hidden)
        last = {machine.pattern_address(tile, plane, TILE_SIDE - 1) for tile in tiles.values() for plane in planes}
        return {address: byte for address, byte in super().patterns(picture, tiles).items() if address not in last}


class LastCellNotSent(Fresh):
    """A loop ends one cell early, so the bottom right cell of the window always stays empty."""

    def entries(self, tiles: Mapping[int, int]) -> dict[int, int]:
        """All entries but the last."""
        last = self.machine.map_address(self.machine.page_of(self.hidden), self.machine.cells - 1)
        return {address: byte for address, byte in super().entries(tiles).items() if address < last}


class StaleEntry(Fresh):
    """Only occupied cells are mapped, so a cell that was left empty shows what stood there two pictures ago."""

    def entries(self, tiles: Mapping[int, int]) -> dict[int, int]:
        """Entries of occupied cells."""
        page, wanted = self.machine.page_of(self.hidden), dict[int, int]()
        for cell, tile in tiles.items():
            wanted |= self.shadow.entry(page, cell, tile)
        return wanted


class OldInkLeft(Fresh):
    """Empty bytes are not sent, as if the hidden side had been cleared, so old ink shines through the new drawing."""

    def patterns(self, picture: Picture, tiles: Mapping[int, int]) -> dict[int, int]:
        """The bytes with ink in them."""
        return {address: byte for address, byte in super().patterns(picture, tiles).items() if byte}


class EmptyPlaneLeft(Fresh):
    """A plane without ink is not sent, so lines turn up in the wrong ink where an older picture used that plane."""

    def patterns(self, picture: Picture, tiles: Mapping[int, int]) -> dict[int, int]:
        """Planes with ink in them."""
        wanted, planes = super().patterns(picture, tiles), self.machine.planes_of(self.hidden)
        for cell, tile in tiles.items():
            for plane, rows in zip(planes, picture.planes[cell], strict=True):
                for row in () if rows.any() else range(TILE_SIDE):
                    del wanted[self.machine.pattern_address(tile, plane, row)]
        return wanted


class PaletteEntryForgotten(Fresh):
    """One palette entry is left out of the reveal and stays inked, so the next picture is seen being drawn."""

    def reveal(self) -> None:
        """The view without the palette entry of pixel value 1."""
        bursts = self.machine.view_bursts(self.hidden, self.seen)
        wanted = {address: byte for burst in bursts for address, byte in zip(burst.addresses, burst.data, strict=True)}
        wanted.pop(self.machine.palette_address + 1, None)
        self.outbox.put_together(self.machine.bursts(wanted, {}))
        self.seen = self.hidden
