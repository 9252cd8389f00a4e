"""The writes of one blanking, in words, and the offending byte."""

from collections.abc import Sequence
from dataclasses import dataclass

from planeproof.contract import Burst, Machine
from planeproof.judge import Violation
from planeproof.report.writes import place_of, said

AROUND = 6
"""Bytes of the offending burst that are shown on either side of the offending byte."""


@dataclass(frozen=True, kw_only=True)
class Write:
    """A burst: its number in its blanking, and what it writes."""

    number: int
    says: str


@dataclass(frozen=True, kw_only=True)
class Offence:
    """The byte that breaks the rule, in hex between those ``before`` and ``after`` it in its burst."""

    number: int
    says: str
    byte: int
    before: str
    value: str
    after: str
    place: str


def writes_of(machine: Machine, bursts: Sequence[Burst]) -> tuple[Write, ...]:
    """Each burst in words."""
    return tuple(Write(number=number, says=said(machine, burst)) for number, burst in enumerate(bursts))


def offence_of(machine: Machine, bursts: Sequence[Burst], violation: Violation | None) -> Offence | None:
    """The byte that ``violation`` names; None where it names none."""
    if violation is None or violation.burst is None or violation.byte is None:
        return None
    burst, byte = bursts[violation.burst], violation.byte
    first, last = max(0, byte - AROUND), min(len(burst.data), byte + 1 + AROUND)
    return Offence(
        number=violation.burst,
        says=said(machine, burst),
        byte=byte,
        before=("… " if first else "") + burst.data[first:byte].hex(" "),
        value=f"{burst.data[byte]:02x}",
        after=burst.data[byte + 1 : last].hex(" ") + (" …" if last < len(burst.data) else ""),
        place=f"address {burst.addresses[byte]}: {place_of(machine, burst.addresses[byte])}",
    )
