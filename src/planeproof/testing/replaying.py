"""A saved scene, played again."""

from pathlib import Path

from planeproof.contract import RULES, rule
from planeproof.hosts import load
from planeproof.judge import CandidateHung, Finding, Outcome, Profile
from planeproof.judge.conversation import CALL_SECONDS
from planeproof.report import fault_page, play_lines
from planeproof.report.story import again_lines, finding_lines
from planeproof.scenes.cases import CaseError, load_case
from planeproof.search.laws import check_laws
from planeproof.search.trial import Trial
from planeproof.testing.asked import Asked


def replayed(asked: Asked, case: Path, name: str | None) -> str | None:
    """What is wrong when the scene is played: with the rule of that name, or with any if None; None if nothing is."""
    try:
        saved = load_case(case)
    except CaseError as error:
        return f"It is UNKNOWN what the case shows: {error}"
    candidate, profile = load(asked.target), Profile(asked.profile)
    judged = frozenset(RULES) if name is None else frozenset([rule(name)])
    trial = Trial(name=candidate.name, make=candidate.make, asked=judged, profile=profile, call_seconds=CALL_SECONDS)
    check_laws(trial, [saved.scene])
    if trial.fault is not None:
        outcome = Outcome.HUNG if isinstance(trial.fault, CandidateHung) else Outcome.CANDIDATE_ERROR
        return _text(fault_page(trial.fault, target=candidate.name, outcome=outcome, case=str(case), scene=saved.scene))
    if not trial.smallest:
        return None
    ((broken, play),) = trial.smallest.items()
    if name is None:
        return _text(play_lines(play, target=candidate.name, case=str(case), profile=profile))
    violation = play.first(frozenset([broken]))
    assert violation is not None
    story = finding_lines(Finding(rule=broken, play=play, violation=violation))
    return _text([*story, "", *again_lines(str(case))])


def _text(lines: list[str]) -> str:
    return "\n".join(lines)
