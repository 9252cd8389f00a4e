"""Detection power: how many scenes, and seconds, each engine needs to find each fault of the zoo.

One value an idea: a `Detection` is one hunt (fault, engine, seed) and what came of it, `measure` hunts many, a
`Summary` adds them up. An engine is a module: `recipes` (what `planeproof.search.check` does), `edges`, `exhaustion`
and `spec` are ours; `uniform` and `arrays` are what a user would otherwise write, measured in the same run by the
same judge. A `journal` keeps each row as it comes, so that a long run goes on where it was stopped.
"""

from planeproof.power.detection import Detection, Outcome, SceneSize
from planeproof.power.engines import ENGINES, Engine, engine_named
from planeproof.power.journal import JournalError
from planeproof.power.measuring import Limits, measure
from planeproof.power.summary import Beside, EngineRow, FaultRow, Summary, summary_of

__all__ = [
    "ENGINES",
    "Beside",
    "Detection",
    "Engine",
    "EngineRow",
    "FaultRow",
    "JournalError",
    "Limits",
    "Outcome",
    "SceneSize",
    "Summary",
    "engine_named",
    "measure",
    "summary_of",
]
