"""A burst: consecutive bytes written from one address."""

from dataclasses import dataclass

FARTHEST = 1 << 40
"""Addresses beyond this, either way, are refused at once: they are slips, and no array could hold them."""


@dataclass(frozen=True, slots=True)
class Burst:
    """``data`` written from ``address`` on, each next byte ``step`` addresses further.

    Raises `TypeError` or `ValueError` for what is not bytes, holds none, or has no address or step.
    Whether the address is anybody's, and whether the machine permits the step, is judged when it is played.
    """

    address: int
    data: bytes
    step: int = 1

    def __post_init__(self) -> None:
        if not isinstance(self.data, bytes):
            raise TypeError(
                f"Burst.data is {type(self.data).__name__}: it must be bytes (try .tobytes() or bytes(...))"
            )
        if not self.data:
            raise ValueError("Burst.data is empty: a burst writes at least one byte, leave it out instead")
        for field, value in (("address", self.address), ("step", self.step)):
            if not isinstance(value, int) or isinstance(value, bool):
                raise TypeError(f"Burst.{field} is {value!r} ({type(value).__name__}): it must be an int")
        if not -FARTHEST <= self.address <= FARTHEST:
            raise ValueError(
                f"Burst.address is {self.address}: no machine reaches so far, it must be within {FARTHEST}"
            )
        if self.step < 1:
            raise ValueError(f"Burst.step is {self.step}: it must be 1, or a map row where the machine permits it")

    @property
    def addresses(self) -> range:
        """The address of each byte."""
        return range(self.address, self.address + len(self.data) * self.step, self.step)
