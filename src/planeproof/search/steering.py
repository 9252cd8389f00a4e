"""Search steered by Hypothesis: small scenes first, and what is found is shrunk."""

import contextlib
import math
import time
from collections.abc import Callable, Mapping

from hypothesis import HealthCheck, Phase, Verbosity, given, seed, settings, target
from hypothesis import strategies as st
from hypothesis.database import ExampleDatabase
from hypothesis.errors import Flaky, HypothesisException

from planeproof.contract import Machine, Scene
from planeproof.judge import CandidateHung
from planeproof.judge.distances import Distances
from planeproof.scenes.recipes import LONGEST, recipe
from planeproof.search.trial import Trial

SHRINKING_SECONDS = 10.0
"""How long Hypothesis may shrink what it has found; what it has by then is kept."""


_AWAY = 1 << 100
"""Added to every choice, for Hypothesis likes numbers that it has read in the source files that happen to be loaded:
near 0 a seed would mean other scenes with every edit of the candidate, or in another folder. So far off there are none.
"""


class _DrawSource:
    """A recipe's choices, made by Hypothesis."""

    def __init__(self, draw: st.DrawFn) -> None:
        self._draw = draw

    def number(self, low: int, high: int) -> int:
        return self._draw(st.integers(low + _AWAY, high + _AWAY)) - _AWAY


def scenes(base: Machine, *, as_given: bool = False, longest: int = LONGEST) -> st.SearchStrategy[Scene]:
    """Recipes on small relatives of ``base`` as a Hypothesis strategy, for use in tests of one's own too."""

    @st.composite
    def drawn(draw: st.DrawFn) -> Scene:
        return recipe(base, _DrawSource(draw), as_given=as_given, longest=longest)

    return drawn()


class _ShownError(Exception):
    """A scene showed something. Hypothesis shrinks each subclass by itself, so no rule slips into another."""


class _Over(BaseException):
    """The search is over. What is no Exception ends Hypothesis at once, which would go on to draw what nobody plays."""


def nearness(measured: Distances) -> dict[str, float]:
    """How near a play came to each edge, by name: 1 at the edge, towards 0 far away; for `steer` to raise."""
    return {edge.id: float(1 / (1 + distance)) for edge, distance in measured.items()}


def steer(  # noqa: PLR0913 -- the knobs of one search, all but two by keyword
    trial: Trial,
    base: Machine,
    *,
    as_given: bool,
    most: int,
    first_seed: int,
    go_on: Callable[[], bool],
    longest: int = LONGEST,
    towards: Callable[[], Mapping[str, float]] | None = None,
    database: ExampleDatabase | None = None,
) -> int:
    """Play up to ``most`` scenes of up to ``longest`` pictures, then shrink what was found; how many were played.

    Stops early when ``go_on`` says so, which is asked before each scene, and with the first call that hangs.
    ``towards`` is asked after each scene that showed nothing, see `nearness`: what it names is made greater. Where it
    names nothing, the scenes are those that they would be without it.
    What a ``database`` has of earlier searches is played first, and what is found is kept there.
    """
    errors: dict[object, type[_ShownError]] = {}
    played, until = 0, math.inf
    kept, target_phase = [] if database is None else [Phase.reuse], [] if towards is None else [Phase.target]
    phases = (*kept, Phase.generate, *target_phase, Phase.shrink)

    @settings(
        max_examples=most,
        database=database,
        deadline=None,
        phases=phases,
        suppress_health_check=list(HealthCheck),
        verbosity=Verbosity.quiet,
        print_blob=False,
    )
    @seed(first_seed)  # below the settings, or it would take the database out of them
    @given(scenes(base, as_given=as_given, longest=longest))
    def try_scene(scene: Scene) -> None:
        nonlocal played, until
        if not go_on() or time.monotonic() > until or isinstance(trial.fault, CandidateHung):
            raise _Over
        played += 1
        shown = trial.shows(scene)
        if shown is not None:
            until = min(until, time.monotonic() + SHRINKING_SECONDS)
            kind = shown if not isinstance(shown, Exception) else type(shown)
            raise errors.setdefault(kind, type("ShownError", (_ShownError,), {}))
        for label, nearness in towards().items() if towards is not None else ():
            target(nearness, label=label)

    # What was found is in the trial; Hypothesis reports it again by raising, also when a candidate that is not
    # deterministic fails once and passes the next time.
    with contextlib.suppress(_Over, _ShownError, Flaky, HypothesisException, ExceptionGroup):
        try_scene()
    return played
