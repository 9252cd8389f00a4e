"""How pictures are made: with words or without, how large, and with which shape of the display's pixels."""

from dataclasses import dataclass
from fractions import Fraction

from planeproof.contract import TILE_SIDE, Machine
from planeproof.pictures.shape import WIDEST, Enlargement, enlarged_by, fitting, pixel_shape


@dataclass(frozen=True, kw_only=True)
class Style:
    """How pictures are made.

    ``labels``: with words and legends, or just the picture. ``scale``: pixels down for each line of the display, None
    for as many as fit. ``shape``: the width of the display's pixels by their height, None for the assumed one.
    """

    labels: bool = True
    scale: int | None = None
    shape: Fraction | None = None

    def enlargement(self, machine: Machine, panels: int = 1, *, widest: int = WIDEST) -> Enlargement:
        """By how much pixels are enlarged where ``panels`` windows stand beside one another."""
        shape = pixel_shape(machine) if self.shape is None else self.shape
        if self.scale is not None:
            return enlarged_by(self.scale, shape)
        return fitting(machine.window.columns * TILE_SIDE * max(1, panels), shape, widest)
