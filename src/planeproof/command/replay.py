"""``planeproof replay``: play a saved scene again, and tell all of it."""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that --help answers at once

from typing import TYPE_CHECKING

import click

from planeproof.command.printing import show
from planeproof.command.saved import candidate_for, loaded

if TYPE_CHECKING:
    from planeproof.hosts import Candidate
    from planeproof.judge import Profile
    from planeproof.scenes.cases import Case


@click.command(short_help="Play a saved scene again, and tell all of it.")
@click.argument("case", type=click.Path(), metavar="CASE")
@click.argument("target", required=False)
def replay(case: str, target: str | None) -> int:
    """Play the saved CASE again, against the target it was found with or another TARGET, and tell it in full.

    The exit code says what was seen: 0 no rule broken, 1 FAIL, 4 CANDIDATE ERROR, 5 HUNG.
    """
    saved = loaded(case)
    return _play_again(saved, case, candidate_for(saved, case, target, "replay"), _profile(case, saved))


def _profile(case: str, saved: "Case") -> "Profile":
    from planeproof.judge import Profile

    written = "strict" if saved.found is None else saved.found.profile
    try:
        return Profile(written)
    except ValueError as error:
        raise click.ClickException(f"{case}: found.profile is {written!r}: must be 'strict' or 'seen'") from error


def _play_again(saved: "Case", case: str, candidate: "Candidate", profile: "Profile") -> int:
    from planeproof.contract import RULES
    from planeproof.judge import CandidateHung, Outcome, play
    from planeproof.judge.conversation import CALL_SECONDS
    from planeproof.report import fault_page, play_lines
    from planeproof.search.laws import check_laws
    from planeproof.search.trial import Trial

    asked = frozenset(RULES)
    trial = Trial(name=candidate.name, make=candidate.make, asked=asked, profile=profile, call_seconds=CALL_SECONDS)
    check_laws(trial, [saved.scene])
    if trial.fault is not None:
        outcome = Outcome.HUNG if isinstance(trial.fault, CandidateHung) else Outcome.CANDIDATE_ERROR
        show(fault_page(trial.fault, target=candidate.name, outcome=outcome, case=case, scene=saved.scene))
        return int(outcome.value)
    result = play(saved.scene, candidate.make)
    wanted = "" if saved.found is None else saved.found.rule
    show(play_lines(result, target=candidate.name, case=case, profile=profile, wanted=wanted))
    failing = frozenset(rule for rule in RULES if profile.fails_on(rule))
    return int((Outcome.PASS if result.first(failing) is None else Outcome.FAIL).value)
