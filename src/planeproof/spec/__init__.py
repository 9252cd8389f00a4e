"""The spec: what is proved about the rules, by which solver, within which bounds. The only package that imports z3.

One subject a module: `vocabulary` and `symbols` (picture memory as terms), `rules` (the symbolic reading of the rules),
`obligation` (one statement), `solving` (asks z3), `proving` (asks for many), `telling` (the answers as text),
`certificates` and `other_solvers` (the same statements for anybody's solver), `premises` (what happens without each
premise), `costs` (bytes of a pattern). Over time: `rules_over_time`, `judged_refresh` (one refresh, every rule judged),
`bounded_run` (a few of them, from the set-up), `witness_run` (such a run as a scene). Tied to code that runs:
`evaluation` (a formula's values in concrete states), `executed` (the proved strategies as schedulers). Your own
scheduler, proved: `planeproof.spec.steps`.

To add a theorem: make a module in `planeproof.spec.theorems` that ends in a tuple ``OBLIGATIONS`` of `Obligation`s
built without quantifiers from `Symbols` and the rules, name it in ``theorems/__init__.py``, then write the certificates
and all that depends on them anew (``python -m tests.specs``); the tests say when something is stale.
"""

from planeproof.spec.obligation import Answer, Obligation, Question
from planeproof.spec.proving import Report, prove_all
from planeproof.spec.solving import RLIMIT, Outcome, Result, prove
from planeproof.spec.telling import confirmation_lines, decision_lines, report_lines
from planeproof.spec.theorems import OBLIGATIONS, THEOREMS

__all__ = [
    "OBLIGATIONS",
    "RLIMIT",
    "THEOREMS",
    "Answer",
    "Obligation",
    "Outcome",
    "Question",
    "Report",
    "Result",
    "confirmation_lines",
    "decision_lines",
    "prove",
    "prove_all",
    "report_lines",
]
