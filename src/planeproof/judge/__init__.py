"""The judge: plays one scene against one candidate, and gives a verdict."""

from planeproof.judge.conversation import CandidateFault, CandidateHung, MakeScheduler
from planeproof.judge.duplicating import NotDuplicable
from planeproof.judge.play import SETTLED, Paused, Play, Player, Refresh, not_applicable, play
from planeproof.judge.verdict import (
    Basis,
    Cost,
    EdgeReport,
    Finding,
    Outcome,
    Profile,
    RuleReport,
    RuleStatus,
    Source,
    Strength,
    Verdict,
    by_seriousness,
)
from planeproof.judge.violation import Violation

__all__ = [
    "SETTLED",
    "Basis",
    "CandidateFault",
    "CandidateHung",
    "Cost",
    "EdgeReport",
    "Finding",
    "MakeScheduler",
    "NotDuplicable",
    "Outcome",
    "Paused",
    "Play",
    "Player",
    "Profile",
    "Refresh",
    "RuleReport",
    "RuleStatus",
    "Source",
    "Strength",
    "Verdict",
    "Violation",
    "by_seriousness",
    "not_applicable",
    "play",
]
