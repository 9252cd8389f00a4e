"""The baseline `arrays`: plain Hypothesis arrays at full size, as one writes them in ten minutes.

On the machine as given, all of it: a list of 1 to 6 arrays of (cells, 8) bytes, or (cells, depth, 8), all ready at
once, no blanking disturbed. ``fill`` is the empty byte, as its author has seen that the default, a random byte in every
cell that Hypothesis does not draw, makes pictures of more cells than need be shown, all of which are declined. What is
found is not shrunk: scenes to the first sight are counted. The same judge, the same rules.
"""

import contextlib
import warnings

from hypothesis import HealthCheck, Phase, Verbosity, given, seed, settings
from hypothesis import strategies as st
from hypothesis.errors import HypothesisException, HypothesisWarning
from hypothesis.extra import numpy as arrays

from planeproof.contract import Machine, Picture, Scene
from planeproof.power.hunt import Hunt

LONGEST = 6
"""Pictures in a scene, as many as in one of our recipes."""


class _Over(Exception):
    """Nothing more is to be played."""


def hunt(hunted: Hunt) -> None:
    """Have Hypothesis make scenes until the hunt is over."""

    @seed(hunted.seed)
    @settings(
        max_examples=hunted.limits.scenes,
        database=None,
        deadline=None,
        phases=(Phase.generate,),
        report_multiple_bugs=False,
        suppress_health_check=list(HealthCheck),
        verbosity=Verbosity.quiet,
        print_blob=False,
    )
    @given(scenes(hunted.machine))
    def try_scene(scene: Scene) -> None:
        if not hunted.over:
            hunted.shows(scene)
        if hunted.over:
            raise _Over

    with warnings.catch_warnings(), contextlib.suppress(_Over, HypothesisException):
        # What is found is too big to be printed, and nobody prints it.
        warnings.simplefilter("ignore", HypothesisWarning)
        try_scene()


def scenes(machine: Machine) -> st.SearchStrategy[Scene]:
    """1 to `LONGEST` pictures on ``machine``, each an array."""
    depth = machine.tiles.depth
    shape = (machine.cells, 8) if depth == 1 else (machine.cells, depth, 8)
    rows = arrays.arrays("uint8", shape, fill=st.just(0))
    pictures = st.lists(rows, min_size=1, max_size=LONGEST)
    return pictures.map(lambda made: Scene.of(machine, [Picture.from_rows(0, one) for one in made]))
