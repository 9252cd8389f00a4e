"""What is wrong in one sentence, for somebody who has never heard of the rules."""

from collections.abc import Callable

from planeproof.contract.rules import (
    BLANKING_ONLY,
    EXACT_REVEAL,
    FAIR_REFUSAL,
    HIDDEN_WRITES,
    IN_ORDER,
    OWN_MEMORY,
    PROGRESS,
    TILE_CAP,
    WHOLE_REVEAL,
)
from planeproof.judge import Finding, Play, Violation
from planeproof.report.figures import counted, cycles, listed
from planeproof.report.refreshes import OUT_OF_TURN, Names


def sentence(violation: Violation, play: Play) -> str:
    """The sentence that fits the rule."""
    return f"{_when(violation)} {_SENTENCES[violation.rule.id](violation, play)}."


def spared(finding: Finding) -> str:
    """Whether the viewer saw anything of it; nothing where that goes without saying."""
    violation = finding.violation
    if violation.rule is not HIDDEN_WRITES or violation.refresh < 0 or violation.margin is None:
        return ""
    if violation.margin < 0 or _seen_to_break(finding.play, violation.refresh):
        return ""
    left = cycles(violation.margin)
    return (
        f"This time nobody saw it, for {left} cycles of the blanking were left over. A shorter one would have shown it."
    )


def others(finding: Finding) -> str:
    """What else is broken in the same scene."""
    counts = finding.play.counts
    times = counts.get(finding.rule, 0)
    again = [f"In this scene the rule is broken {times} times."] if times > 1 else []
    also = [f"{rule.id} ({counted(n, 'time')})" for rule, n in counts.items() if rule is not finding.rule and n]
    return " ".join([*again, *([f"Also broken in it: {listed(also)}."] if also else [])])


def _when(violation: Violation) -> str:
    if violation.refresh < 0:
        return "In the set-up,"
    return f"{'By' if violation.rule is PROGRESS else 'In'} refresh {violation.refresh},"


def _seen_to_break(play: Play, refresh: int) -> bool:
    seen = {WHOLE_REVEAL, IN_ORDER}
    return any(violation.refresh == refresh and violation.rule in seen for violation in play.violations)


def _hidden_writes(violation: Violation, _play: Play) -> str:
    pixels = counted(violation.pixel_count, "pixel")
    return f"the scheduler wrote into the picture that was on show: one byte changed {pixels} of it"


def _exact_reveal(violation: Violation, play: Play) -> str:
    seen = Names(play).of(play.refreshes[violation.refresh]) if violation.refresh >= 0 else ""
    if seen.endswith(OUT_OF_TURN):
        return f"the display was switched over to the wrong picture: what is seen then is {seen}"
    return "the display was switched over to a picture that was not ready: what it shows is no whole picture"


def _blanking_only(violation: Violation, play: Play) -> str:
    refresh = play.refreshes[violation.refresh]
    over = f"{cycles(refresh.used - refresh.cycles)} cycles too long ({cycles(refresh.used)} of {refresh.cycles})"
    return f"the scheduler went on writing, {over}, when the picture was being drawn already"


def _own_memory(_violation: Violation, _play: Play) -> str:
    return "the scheduler wrote a byte where it may not write at all: it is not the window's"


def _tile_cap(_violation: Violation, _play: Play) -> str:
    return "the scheduler used a tile that is not the window's"


def _whole_reveal(violation: Violation, _play: Play) -> str:
    return f"the viewer saw what is no picture: {counted(violation.pixel_count, 'pixel')} of it wrong"


def _in_order(_violation: Violation, _play: Play) -> str:
    return "the viewer saw a whole picture, but the wrong one: it was not its turn"


def _progress(violation: Violation, play: Play) -> str:
    patience = counted(play.scene.machine.patience, "full blanking")
    if violation.picture is None:
        return f"the scheduler had accepted no new picture for more than {patience}"
    return f"picture {violation.picture}, which was accepted, had not been shown after more than {patience}"


def _fair_refusal(violation: Violation, _play: Play) -> str:
    return f"the scheduler declined picture {violation.picture}, which is small enough that it has to show it"


_SENTENCES: dict[str, Callable[[Violation, Play], str]] = {
    HIDDEN_WRITES.id: _hidden_writes,
    EXACT_REVEAL.id: _exact_reveal,
    BLANKING_ONLY.id: _blanking_only,
    OWN_MEMORY.id: _own_memory,
    TILE_CAP.id: _tile_cap,
    WHOLE_REVEAL.id: _whole_reveal,
    IN_ORDER.id: _in_order,
    PROGRESS.id: _progress,
    FAIR_REFUSAL.id: _fair_refusal,
}
