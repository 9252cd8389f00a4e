"""From a model of a bounded run to a scene and what is written in it, so that a judge can play it.

The names are those that `planeproof.spec.bounded_run` gives to what it shows. A model says everything, so nothing is
made up here but the machine, which has the run's shape, and its costs.
"""

import json
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import count

import numpy as np

from planeproof.contract import (
    TILE_SIDE,
    Burst,
    Disturbance,
    Machine,
    Picture,
    Scene,
    Tiles,
    Timing,
    Window,
)
from planeproof.spec.bounded_run import SENDS_ENTRY, SENDS_PATTERN, SHOWS, SIZE
from planeproof.spec.judged_refresh import CYCLES, PER_BYTE, SET_UP

Witness = Mapping[str, int | bool]
_PATTERN = re.compile(r"set-up: tile (\d+), plane (\d+), row (\d+)")
_PAGE = re.compile(r"set-up: page (\d+)")
_PICTURE = re.compile(r"picture: cell (\d+), row (\d+)")


def run_machine(columns: int, pool: tuple[int, ...]) -> Machine:
    """The machine of a bounded run, its window the first ``columns`` of the cells.

    Its costs are those of `planeproof.spec.judged_refresh`.
    """
    return Machine(
        name="bounded run",
        window=Window(columns=columns, rows=1, map_columns=SIZE.cells),
        tiles=Tiles(count=SIZE.tiles, pool=pool),
        time=Timing(
            standard="bounded run",
            lines=20 + CYCLES // 10,
            shown=20,
            cycles_per_line=10,
            setup=SET_UP,
            per_byte=PER_BYTE,
        ),
    )


@dataclass(frozen=True, kw_only=True, eq=False)
class WitnessRun:
    """A scene, the bursts of its set-up, and those of each blanking. Every picture that is offered is taken."""

    scene: Scene
    set_up: tuple[Burst, ...]
    blankings: tuple[tuple[Burst, ...], ...]

    @classmethod
    def from_witness(cls, witness: Witness, machine: Machine) -> "WitnessRun":
        """The run that ``witness`` tells of, on ``machine``, which `run_machine` made."""
        rows = np.zeros((machine.cells, TILE_SIDE), dtype=np.uint8)
        for (cell, row), byte in _read(_PICTURE, witness):
            if cell < machine.cells:
                rows[cell, row] = byte
        refreshes = list(_refreshes(witness))
        cycles = [int(witness.get(f"refresh {number}: cycles", machine.blank_cycles)) for number in refreshes]
        cut = [Disturbance(number, had) for number, had in enumerate(cycles) if had < machine.blank_cycles]
        return cls(
            scene=Scene.of(machine, [Picture.from_rows(0, rows)], disturbances=cut),
            set_up=_set_up(witness, machine),
            blankings=tuple(_blanking(witness, machine, number) for number in refreshes),
        )

    def to_json(self) -> str:
        """What is written, as text: for each burst its address and its bytes in hex. The scene is a case of its own."""
        written = {"set_up": _bursts(self.set_up), "blankings": [_bursts(bursts) for bursts in self.blankings]}
        return json.dumps(written, indent=1) + "\n"

    @classmethod
    def from_json(cls, text: str, scene: Scene) -> "WitnessRun":
        """What `to_json` wrote, in ``scene``."""
        read = json.loads(text)
        return cls(
            scene=scene,
            set_up=tuple(Burst(address, bytes.fromhex(data)) for address, data in read["set_up"]),
            blankings=tuple(
                tuple(Burst(address, bytes.fromhex(data)) for address, data in bursts) for bursts in read["blankings"]
            ),
        )


def _bursts(bursts: tuple[Burst, ...]) -> list[tuple[int, str]]:
    return [(burst.address, burst.data.hex()) for burst in bursts]


def _read(pattern: re.Pattern[str], witness: Witness) -> Iterator[tuple[tuple[int, ...], int]]:
    for name, value in witness.items():
        found = pattern.fullmatch(name)
        if found:
            yield tuple(map(int, found.groups())), int(value)


def _refreshes(witness: Witness) -> Iterator[int]:
    for number in count():
        if f"refresh {number}: tile" not in witness:
            return
        yield number


def _set_up(witness: Witness, machine: Machine) -> tuple[Burst, ...]:
    patterns = [
        Burst(machine.pattern_address(tile, plane, row), bytes([byte]))
        for (tile, plane, row), byte in _read(_PATTERN, witness)
        if byte
    ]
    entries = [
        Burst(machine.map_address(page, 0), machine.map_entry(tile))
        for (page,), tile in _read(_PAGE, witness)
        if tile != machine.blank_tile
    ]
    return (*machine.view_bursts(0), *patterns, *entries)


def _blanking(witness: Witness, machine: Machine, number: int) -> tuple[Burst, ...]:
    told = {
        name.removeprefix(f"refresh {number}: "): int(value)
        for name, value in witness.items()
        if name.startswith(f"refresh {number}: ")
    }
    kind = told["0 sends a pattern byte, 1 a map entry, 2 shows"]
    if kind == SENDS_PATTERN:
        return (Burst(machine.pattern_address(told["tile"], told["plane"], told["row"]), bytes([told["byte"]])),)
    if kind == SENDS_ENTRY:
        place = machine.layout.maps[told["page"]] + told["cell"] * machine.map.entry_bytes
        return (Burst(place, machine.map_entry(told["entry"])),)
    if kind != SHOWS:
        raise ValueError(f"refresh {number}: {kind} is no kind of burst; a model that keeps the rules has 0, 1 or 2")
    before = int(witness[f"refresh {number - 1}: side then seen"]) if number else 0
    side = told["side then seen"]
    return machine.view_bursts(side, before) if side != before else ()
