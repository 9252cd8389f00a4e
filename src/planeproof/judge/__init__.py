"""The judge: plays one scene against one candidate, and gives a verdict."""

from planeproof.judge.conversation import CandidateFault, CandidateHung, MakeScheduler
from planeproof.judge.play import Play, Refresh, not_applicable, play
from planeproof.judge.verdict import (
    Basis,
    Cost,
    Finding,
    Outcome,
    Profile,
    RuleReport,
    RuleStatus,
    Strength,
    Verdict,
    by_seriousness,
)
from planeproof.judge.violation import Violation

__all__ = [
    "Basis",
    "CandidateFault",
    "CandidateHung",
    "Cost",
    "Finding",
    "MakeScheduler",
    "Outcome",
    "Play",
    "Profile",
    "Refresh",
    "RuleReport",
    "RuleStatus",
    "Strength",
    "Verdict",
    "Violation",
    "by_seriousness",
    "not_applicable",
    "play",
]
