"""One question, asked of both models of the display; an answer only where they give the same."""

from collections.abc import Sequence

import numpy as np

from planeproof.contract import Burst, Machine
from tests.display.first_model import filled, in_colours, play_first
from tests.oracle.described import described
from tests.oracle.plain_display import Memory, Rows, Seen, memory_before_start, pixel_bit, play, still_frame
from tests.strategies.sessions import Refresh


def plainly_filled(machine: Machine, writes: Sequence[Burst]) -> Memory:
    """The oracle's memory after the same bursts as in `filled`."""
    memory = memory_before_start(described(machine))
    for burst in writes:
        memory |= {burst.address + i * burst.step: value for i, value in enumerate(burst.data)}
    return memory


def plainly_played(machine: Machine, fills: Sequence[Burst], refreshes: Sequence[Refresh]) -> tuple[Memory, list[Seen]]:
    """Refreshes in the oracle: memory at their end, and what was seen."""
    memory = plainly_filled(machine, fills)
    plain = [(cut, [(burst.address, burst.data, burst.step) for burst in written]) for cut, written in refreshes]
    return memory, play(described(machine), memory, plain)


def plain_pixels(machine: Machine, memory: Memory, tile: int) -> list[list[int]]:
    """The pixel values of a tile, put together from the oracle's bits."""
    display, planes = described(machine), range(machine.tiles.planes)
    return [
        [sum(pixel_bit(display, memory, tile, plane, (y, x)) << plane for plane in planes) for x in range(8)]
        for y in range(8)
    ]


def pixels(machine: Machine, writes: Sequence[Burst], tile: int) -> list[str]:
    """The pixel values of a tile after ``writes``: a row of pixels a line, a hexadecimal digit a pixel."""
    plain = plain_pixels(machine, plainly_filled(machine, writes), tile)
    assert filled(machine, writes).pixels(np.array([tile]))[0].tolist() == plain
    return ["".join(f"{value:x}" for value in row) for row in plain]


def frame(machine: Machine, writes: Sequence[Burst]) -> list[str]:
    """The frame seen after ``writes``; see `lettered`."""
    plain = still_frame(described(machine), plainly_filled(machine, writes))
    assert in_colours(machine.colours, filled(machine, writes).frame()) == plain
    return lettered(machine, plain)


def frames(machine: Machine, writes: Sequence[Burst], refreshes: Sequence[Refresh]) -> list[list[str]]:
    """The frames of several refreshes that begin with memory after ``writes``."""
    second = plainly_played(machine, writes, refreshes)[1]
    assert [told.frame for told in play_first(filled(machine, writes), refreshes)] == [seen.frame for seen in second]
    return [lettered(machine, seen.frame) for seen in second]


def landing_lines(machine: Machine, refreshes: Sequence[Refresh]) -> list[list[int | None]]:
    """For each refresh the displayed line of every byte that landed in it, None for its blanking."""
    first = play_first(filled(machine, ()), refreshes)
    second = plainly_played(machine, (), refreshes)[1]
    assert [told.landed for told in first] == [seen.landed for seen in second]
    return [[line for _, _, line in seen.landed] for seen in second]


def lettered(machine: Machine, rows: Rows) -> list[str]:
    """Rows of pixels as text: a dot for background, 1 for the first ink and so on, ``?`` for undefined."""
    shades = [machine.colours.background, *machine.colours.inks]
    letter = {machine.colours.look(shade): "." if not value else str(value) for value, shade in enumerate(shades)}
    return ["".join("?" if colour is None else letter[colour] for colour in row) for row in rows]
