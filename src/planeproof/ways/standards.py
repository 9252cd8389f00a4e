"""The blanking of a machine on its own line standard, and on the other one.

The other one is reckoned from the same clock and the same shown lines: a line lasts as long as that standard says, so
the cycles of a line change with it; what other work takes from a blanking stays.
"""

import math
from dataclasses import dataclass
from fractions import Fraction

from planeproof.contract import Machine, Rational


@dataclass(frozen=True, kw_only=True)
class LineStandard:
    """A line standard as displays without interlace use it: whole ``lines`` a refresh, each of ``line`` microseconds.

    625 lines at 15,625 Hz are 64 microseconds a line, 525 lines at 4.5 MHz / 286 are 572/9 (the rates READ-2 in a table
    of both systems, 4.5 MHz / 286 MEM); 312 and 262 lines READ-2, in a copy of a table of CTA-861 modes.
    """

    name: str
    lines: int
    line: Fraction


STANDARDS = (
    LineStandard(name="625/50", lines=312, line=Fraction(64)),
    LineStandard(name="525/60", lines=262, line=Fraction(572, 9)),
)


@dataclass(frozen=True, kw_only=True)
class Blanking:
    """One blanking: whole ``cycles`` that a scheduler may use, 0 if the shown lines leave none."""

    standard: str
    cycles: int

    def refreshes(self, cost: Rational, least: Rational) -> int | None:
        """Blankings that work of ``cost`` cycles takes at least; None if ``least``, a part of it, does not fit one."""
        return None if least > self.cycles or not self.cycles else max(1, math.ceil(Fraction(cost) / self.cycles))


def blanking_here(machine: Machine) -> Blanking:
    """The machine's own."""
    return Blanking(standard=machine.time.standard, cycles=machine.blank_cycles)


def blanking_there(machine: Machine) -> Blanking | None:
    """The one on the other line standard; None for a machine whose standard is neither of the two."""
    time = machine.time
    own = next((standard for standard in STANDARDS if standard.name == time.standard), None)
    if own is None:
        return None
    other = STANDARDS[1 - STANDARDS.index(own)]
    cycles_per_line = time.cycles_per_line * other.line / own.line
    cycles = math.floor((other.lines - time.shown) * cycles_per_line - time.reserve)
    return Blanking(standard=other.name, cycles=max(0, cycles))
