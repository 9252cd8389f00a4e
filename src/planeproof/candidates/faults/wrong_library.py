"""A library of patterns whose catalogue is wrong."""

import numpy as np

from planeproof.candidates.reference import Library
from planeproof.contract import Picture


class ReplacedStillListed(Library):
    """A pattern whose tile was given to another stays listed, so when it comes back it is drawn over the other."""

    def replace(self, pattern: bytes, tile: int) -> None:
        """Put the pattern on the shelf, and take nothing off."""
        self.shelf[pattern] = tile


class FoundInOtherBank(Library):
    """One catalogue is kept for both banks, so what was drawn in one bank is looked for in the other and not there."""

    @property
    def shelf(self) -> dict[bytes, int]:
        """The same for either side."""
        return self.shelves[0]


class ListedByInk(Library):
    """Patterns are listed by how many pixels are inked, so cells with equally much ink are given the same tile."""

    def pattern(self, picture: Picture, cell: int) -> bytes:
        """The number of pixels."""
        return int(np.unpackbits(picture.planes[cell]).sum()).to_bytes(2, "big")
