"""A machine built from parts of which only what matters is said."""

from dataclasses import replace
from fractions import Fraction

from planeproof.contract import Machine, Tiles, Timing, Window

TIME = Timing(standard="by hand", lines=40, shown=20, cycles_per_line=10, setup=4, per_byte=1)
MACHINE = Machine(
    name="by hand",
    window=Window(columns=2, rows=1),
    tiles=Tiles(count=5, pool=(1, 2, 3)),
    time=TIME,
)


def with_part(part: str, **changes: object) -> Machine:
    """The machine with fields of one part changed."""
    changed = replace(getattr(MACHINE, part), **changes)
    return replace(MACHINE, **{part: changed})


def copying(setup: int | Fraction, per_byte: int | Fraction) -> Machine:
    """The machine with another cost of a burst."""
    return with_part("time", setup=setup, per_byte=per_byte)
