"""The engines: who hunts, with which module, and whether a seed makes a difference."""

from collections.abc import Callable
from dataclasses import dataclass

from planeproof.power import arrays, edges, exhaustion, fitting, recipes, spec, uniform
from planeproof.power.hunt import Hunt


@dataclass(frozen=True, kw_only=True)
class Engine:
    """A way to hunt.

    ``ours`` is False for what a user would otherwise write. ``seeded``: whether another seed may find something else.
    ``must``: whether a fault that it does not catch by its own rule counts as a survivor.
    """

    name: str
    hunt: Callable[[Hunt], None]
    what: str
    ours: bool = True
    seeded: bool = True
    must: bool = False


ENGINES: tuple[Engine, ...] = (
    Engine(name="recipes", hunt=recipes.hunt, what="what planeproof check does", must=True),
    Engine(name="edges", hunt=edges.hunt, what="the solver's edge scenes, on the machine as given", seeded=False),
    Engine(name="exhaustion", hunt=exhaustion.hunt, what="every scene of a tiny machine", seeded=False),
    Engine(name="spec", hunt=spec.hunt, what="whether it takes the proved steps of its base; names no rule"),
    Engine(name="uniform", hunt=uniform.hunt, what="random bytes in every cell, on the machine as given", ours=False),
    Engine(name="fitting", hunt=fitting.hunt, what="random pictures of cells that must be shown", ours=False),
    Engine(name="arrays", hunt=arrays.hunt, what="plain Hypothesis arrays on the machine as given", ours=False),
)
"""All engines; the last three are the baselines."""


def engine_named(name: str) -> Engine:
    """The engine of that name. Raises `ValueError`, which says what names there are."""
    for engine in ENGINES:
        if engine.name == name:
            return engine
    known = ", ".join(engine.name for engine in ENGINES)
    raise ValueError(f"there is no engine {name!r}: take one of {known}")
