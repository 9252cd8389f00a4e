"""A quick test of many bytes at once: whether it is plain that none of them can be seen or is anybody else's.

Nearly all bytes of a right scheduler pass it. Those that do not are judged one by one, with the same result.
"""

import copy
from typing import Self

import numpy as np
from numpy.typing import NDArray

from planeproof.display import PictureMemory, View


class Unseen:
    """The test, for one picture memory."""

    def __init__(self, memory: PictureMemory) -> None:
        self._memory = memory
        self._showing: dict[bytes, NDArray[np.uint8]] = {}

    def twin(self, memory: PictureMemory) -> Self:
        """The same test for another memory of the same machine; what is known of its palettes is shared."""
        twin = copy.copy(self)
        twin._memory = memory
        return twin

    def plainly(self, addresses: NDArray[np.intp], values: NDArray[np.uint8]) -> bool:
        """Whether all bytes are ours, none is of the shown page, and no bit that shows changes in a tile that is named.

        Each byte is compared with what memory holds now. If none of them differs from that in a bit that shows,
        then neither do any two of them that are written to the same address one after the other.
        """
        memory, plan, view = self._memory, self._memory.plan, self._memory.view
        if addresses.min() < 0 or addresses.max() >= plan.extent or not plan.owned[addresses].all():
            return False
        if (plan.page[addresses] == view.page).any():
            return False
        flips = memory.contents[addresses] ^ values
        showing = flips & self._bits_that_show(view)[plan.offset[addresses]] != 0
        if not showing.any():
            return True
        return not np.isin(plan.tile[addresses[showing]], memory.tiles_named(view.page, view.bank)).any()

    def _bits_that_show(self, view: View) -> NDArray[np.uint8]:
        """The bits of each byte of a tile, shape (tile bytes + 1,), of planes that the palette does not hide."""
        if view.palette not in self._showing:
            shades, planes = self._memory.shades(view), self._memory.machine.tiles.planes
            values = np.arange(1 << planes)
            shown = [plane for plane in range(planes) if (shades[values ^ (1 << plane)] != shades).any()]
            bits = np.bitwise_or.reduce(self._memory.plan.bits_of[shown], axis=0, initial=0)
            self._showing[view.palette] = bits.astype(np.uint8)
        return self._showing[view.palette]
