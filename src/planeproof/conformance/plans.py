"""What is read off a play before it is compared: the plan of each picture, from the map as it was revealed."""

from collections.abc import Iterator
from itertools import product

from planeproof.contract import Answer, ByteOrder, Machine
from planeproof.judge import Play


def view_of(machine: Machine, side: int) -> dict[int, int]:
    """The view bytes of ``side``, by address, on a machine of two pages and one bank."""
    held = {machine.page_address: machine.page_of(side)}
    if not machine.colours.fixed:
        held |= enumerate(machine.palette_showing(side), machine.palette_address)
    return held


def first_view(machine: Machine) -> dict[int, int]:
    """The view bytes before the set-up: page 0, every colour the background."""
    page = machine.page_address
    return {address: 0 if address == page else machine.colours.background for address in view_of(machine, 0)}


def first_maps(machine: Machine) -> dict[int, int]:
    """The bytes of the window's map entries before the set-up: every one names the blank tile."""
    entry, places = machine.map_entry(machine.blank_tile), product(range(machine.map.pages), range(machine.cells))
    return {a: byte for place in places for a, byte in enumerate(entry, machine.map_address(*place))}


def plans(play: Play) -> Iterator[tuple[int, list[int]]]:
    """The number of each picture that was taken, and the tile of each cell.

    As the hidden page has it when the view next changes, or at the end if it does not.
    """
    machine = play.scene.machine
    memory = first_view(machine) | first_maps(machine)
    memory |= {a: b for burst in play.set_up for a, b in zip(burst.addresses, burst.data, strict=True)}
    waiting: list[int] = []
    for refresh in play.refreshes:
        if refresh.answer is Answer.TAKEN and refresh.offered is not None:
            waiting.append(refresh.offered)
        for burst in refresh.bursts:
            for address, byte in zip(burst.addresses, burst.data, strict=True):
                if machine.is_view(address) and memory.get(address) != byte:
                    yield from ((number, _hidden_map(machine, memory)) for number in waiting)
                    waiting = []
                memory[address] = byte
    yield from ((number, _hidden_map(machine, memory)) for number in waiting)


def _hidden_map(machine: Machine, memory: dict[int, int]) -> list[int]:
    page = 1 - memory[machine.page_address] % 2
    order = "little" if machine.map.byte_order is ByteOrder.LOW_FIRST else "big"
    length = machine.map.entry_bytes
    firsts = [machine.map_address(page, cell) for cell in range(machine.cells)]
    return [int.from_bytes(bytes(memory[first + i] for i in range(length)), order) for first in firsts]  # type: ignore[arg-type]
