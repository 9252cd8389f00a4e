"""Cutting blankings where it matters: scenes played whole, then again with one blanking lost, or cut at a byte.

Whether a scheduler bears a cut depends on where it falls: between two bytes of one burst, before the last of a view
change. Drawn at random, a cut hardly ever falls just there; a play says where the places are. They are of few kinds,
and each kind gets its share, so that a rare one (inside a burst with a step, say) is not lost among the common ones.
"""

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator
from itertools import chain, zip_longest

from planeproof.contract import Disturbance, Machine, Rational, Scene
from planeproof.judge import Play, Refresh

Kind = tuple[object, ...]
"""What a cut falls into: kind of memory, whether the burst has a step, and whether it has begun."""


def undisturbed(scene: Scene) -> Scene:
    """The scene with every blanking as long as it should be."""
    return Scene.of(scene.machine, scene.pictures, scene.ready, [])


def cut_scenes(wholes: Iterable[Play], *, most: int) -> list[Scene]:
    """At most ``most`` scenes, each that of one of ``wholes``, in which no blanking was cut, with one that is."""
    by_kind: dict[Kind, list[Scene]] = defaultdict(list)
    for whole in wholes:
        scene = whole.scene
        for refresh in whole.refreshes:
            for kind, cycles in _cuts(scene.machine, refresh):
                cut = Disturbance(refresh.number, cycles)
                by_kind[kind].append(Scene.of(scene.machine, scene.pictures, scene.ready, [cut]))
    share = math.ceil(most / max(len(by_kind), 1))
    spread = (scenes[:: max(1, len(scenes) // share)] for scenes in by_kind.values())
    in_turn = chain.from_iterable(zip_longest(*spread))
    return [scene for scene in in_turn if scene is not None][:most]


def _cuts(machine: Machine, refresh: Refresh) -> Iterator[tuple[Kind, int]]:
    """Lost altogether; and for each byte, all but the last fraction of the cycles that it takes to send up to it."""
    if not refresh.bursts:
        return
    yield ("lost",), 0
    spent: Rational = 0
    for burst in refresh.bursts:
        setup, per_byte = machine.rates(view=machine.is_view(burst.address))
        region = next((region.kind for region in machine.regions if burst.address in region), None)
        spent += setup
        for place in range(len(burst.data)):
            spent += per_byte
            cycles = math.ceil(spent) - 1
            if 0 < cycles < machine.blank_cycles:
                yield (region, burst.step > 1, place > 0), cycles
