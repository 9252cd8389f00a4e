"""Steps that leave out disturbances, move them, or cut blankings otherwise."""

import math
from collections.abc import Iterator
from dataclasses import replace
from itertools import product

from planeproof.contract import Disturbance, Scene
from planeproof.search.minimising.shares import shares

FEW_BURSTS = 16
"""One-byte bursts up to which a cut blanking is tried."""


def fewer_disturbances(scene: Scene) -> Iterator[Scene]:
    """Disturbances left out, several at once and one by one."""
    for dropped in [*shares(scene.disturbances), *((each,) for each in scene.disturbances)]:
        kept = [disturbance for disturbance in scene.disturbances if disturbance not in dropped]
        yield Scene.of(scene.machine, scene.pictures, scene.ready, kept)


def plainer_disturbances(scene: Scene) -> Iterator[Scene]:
    """Each sooner, or its blanking cut more."""
    for place, disturbance in enumerate(scene.disturbances):
        rest = [*scene.disturbances[:place], *scene.disturbances[place + 1 :]]
        sooner = {0, disturbance.refresh // 2, disturbance.refresh - 1} - {other.refresh for other in rest}
        for refresh in sorted(refresh for refresh in sooner if 0 <= refresh < disturbance.refresh):
            moved = replace(disturbance, refresh=refresh)
            yield Scene.of(scene.machine, scene.pictures, scene.ready, [*rest, moved])
        # How short it may be and still be written in tells how many cycles the scheduler reckons with.
        for cycles in sorted({disturbance.cycles // 2, *(disturbance.cycles - less for less in (16, 4, 1))}):
            if 0 < cycles < disturbance.cycles:
                shorter = replace(disturbance, cycles=cycles)
                yield Scene.of(scene.machine, scene.pictures, scene.ready, [*rest, shorter])


def otherwise_disturbed(scenes: Iterator[Scene]) -> Iterator[Scene]:
    """Smaller scenes in which one blanking, or the one before, is cut to some number of one-byte bursts."""
    for smaller in scenes:
        machine = smaller.machine
        cuts = [math.ceil(number * machine.burst_cycles(1)) for number in range(FEW_BURSTS)]
        for cut, sooner in product(smaller.disturbances, (0, 1)):
            refresh = cut.refresh - sooner
            rest = [other for other in smaller.disturbances if other.refresh not in (cut.refresh, refresh)]
            for cycles in cuts if refresh >= 0 else ():
                if cycles < machine.blank_cycles:
                    again = [*rest, Disturbance(refresh, cycles)]
                    yield Scene.of(machine, smaller.pictures, smaller.ready, again)
