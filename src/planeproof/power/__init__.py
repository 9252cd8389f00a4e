"""Detection power: how many scenes, and seconds, each engine needs to find each fault of the zoo.

One value an idea: a `Detection` is one hunt (fault, engine, seed) and what came of it, `measure` hunts many, a
`Summary` adds them up. An engine is a module: `recipes` (what `planeproof.search.check` does), `edges`, `exhaustion`
and `spec` are ours; `uniform`, `fitting` and `arrays` are what a user would otherwise write, measured in the same run
by the same judge. A `journal` keeps each row as it comes, so that a long run goes on where it was stopped.
"""

from planeproof.power.detection import Detection, Outcome, SceneSize
from planeproof.power.engines import ENGINES, Engine, engine_named
from planeproof.power.exporting import Line, csv_of, json_of, lines_of
from planeproof.power.hunt import Limits
from planeproof.power.journal import JournalError
from planeproof.power.measuring import measure
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
    "Line",
    "Outcome",
    "SceneSize",
    "Summary",
    "csv_of",
    "engine_named",
    "json_of",
    "lines_of",
    "measure",
    "summary_of",
]
