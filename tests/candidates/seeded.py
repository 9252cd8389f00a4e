"""Scenes drawn at random from a seed: pictures that come back, stay, move and overlap, among disturbances."""

import random
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import Disturbance, Machine, Picture, Scene

MOST_PICTURES = 7
LAST_READY = 12
LAST_DISTURBED = 40


def tight(machine: Machine) -> Machine:
    """The same machine with the shortest blanking it may have: one 8-byte burst, or one change of view."""
    sides = range(machine.sides)
    changes = [sum(machine.cost(burst) for burst in machine.view_bursts(a, b)) for a in sides for b in sides]
    need = int(max(machine.burst_cycles(8), *changes)) + 1
    reserve = machine.time.reserve + machine.blank_cycles - need
    return replace(machine, name=f"{machine.name}, tight", time=replace(machine.time, reserve=reserve))


def seeded_scene(machine: Machine, seed: int) -> Scene:
    """A scene of a few pictures of up to ``must_show`` cells; in every other one each picture has just that many."""
    draw = random.Random(seed)
    most = min(machine.must_show, machine.cells)
    pictures: list[Picture] = []
    for _ in range(draw.randint(1, MOST_PICTURES)):
        if pictures and draw.random() < 0.3:
            pictures.append(draw.choice(pictures))
        else:
            pictures.append(_picture(machine, draw, most if seed % 2 else draw.randint(0, most)))
    ready = sorted(draw.randint(0, LAST_READY) for _ in pictures)
    return Scene.of(machine, pictures, ready, _disturbances(machine, draw))


def _picture(machine: Machine, draw: random.Random, occupied: int) -> Picture:
    rows = np.zeros((machine.cells, machine.tiles.depth, 8), dtype=np.uint8)
    for cell in draw.sample(range(machine.cells), occupied):
        rows[cell] = _pattern(machine, draw)
    return Picture.from_rows(0, rows[:, 0] if machine.tiles.depth == 1 else rows)


def _pattern(machine: Machine, draw: random.Random) -> NDArray[np.uint8]:
    """One of sixteen patterns, so that many recur; never an empty one."""
    kind = random.Random(draw.randrange(16))
    planes = [[kind.randrange(256) for _ in range(8)] for _ in range(machine.tiles.depth)]
    return np.array(planes, dtype=np.uint8)


def _disturbances(machine: Machine, draw: random.Random) -> list[Disturbance]:
    struck = [refresh for refresh in range(LAST_DISTURBED) if draw.random() < 0.3]
    return [Disturbance(refresh, draw.choice([0, draw.randrange(machine.blank_cycles)])) for refresh in struck]
