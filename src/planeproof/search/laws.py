"""The candidate's law that takes two plays to see, checked before any rule: it is deterministic.

Right types, no exceptions, calls that return and nothing changed that it is given are checked with every call, in
`planeproof.judge`.
"""

from collections.abc import Sequence

from planeproof.contract import Scene
from planeproof.judge import CandidateFault, Play
from planeproof.search.trial import Trial


def check_laws(trial: Trial, scenes: Sequence[Scene]) -> None:
    """Play each scene, then all again, each with a new scheduler: what it said must be the same both times."""
    first: list[Play] = []
    for scene in scenes:
        played = trial.play(scene)
        if played is None:
            return
        first.append(played)
    # Backwards, so that what alternates from one scheduler to the next does not fall into step with the first round.
    for scene, one in reversed(list(zip(scenes, first, strict=True))):
        again = trial.play(scene)
        if again is None:
            return
        if one.transcript != again.transcript:
            trial.blame(_unlike(one.transcript, again.transcript), scene)
            return


def check_again(trial: Trial, kept: Play) -> None:
    """Play the scene of ``kept`` once more: what the candidate says must be what it said then."""
    again = trial.play(kept.scene)
    if again is not None and again.transcript != kept.transcript:
        trial.blame(_unlike(kept.transcript, again.transcript), kept.scene)


def _unlike(one: Sequence[object], other: Sequence[object]) -> CandidateFault:
    pairs = enumerate(zip(one, other, strict=False))
    place = next((place for place, (a, b) in pairs if a != b), min(len(one), len(other)))
    advice = (
        "Make it deterministic: no clock, no randomness, no order of a set, nothing kept outside the object (class "
        "attributes, module globals, default arguments), for every scene is played by a new one."
    )
    said = "wrote something else when the same scene was played again"
    return CandidateFault("start" if place == 0 else "offer or blank", place - 1, said, advice)
