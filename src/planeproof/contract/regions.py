"""The regions of picture memory: what stands from which address on."""

from dataclasses import dataclass
from enum import Enum

from planeproof.contract.errors import MachineError, require

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


def refuse_overlaps(regions: tuple[Region, ...]) -> None:
    """Raise `MachineError` where two regions share an address or one lies out of reach."""
    for region in regions:
        reach = 0 <= region.start and region.end - 1 <= HIGHEST_ADDRESS
        allowed = f"must lie, with its {region.length} bytes, between 0 and {HIGHEST_ADDRESS}"
        require(reach, MachineError, f"memory ({region.kind.value})", region.start, allowed)
    ordered = sorted(regions, key=lambda region: region.start)
    for lower, upper in zip(ordered, ordered[1:], strict=False):
        allowed = f"must not lie below {lower.end}, where the {lower.kind.value} from {lower.start} ends"
        require(lower.end <= upper.start, MachineError, f"memory ({upper.kind.value})", upper.start, allowed)
