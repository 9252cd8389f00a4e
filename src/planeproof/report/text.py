"""A verdict, or one play, as lines of text.

Headings stand at the margin and everything else is indented, so that whoever prints can set them apart; nothing
depends on that, or on colour.
"""

from collections.abc import Iterator, Sequence

from planeproof.contract import Scene
from planeproof.contract.rules import RULES
from planeproof.judge import CandidateFault, Finding, Outcome, Play, Profile, RuleReport, RuleStatus, Strength, Verdict
from planeproof.report.evidence import basis_lines, cost_lines, edge_lines, rule_table
from planeproof.report.expected import expected_lines
from planeproof.report.fault import fault_lines
from planeproof.report.figures import counted, listed, wrapped
from planeproof.report.refreshes import Trace
from planeproof.report.scene import scene_lines
from planeproof.report.story import again_lines, finding_lines, given_lines, summary_lines
from planeproof.report.strip import WIDTH

OPENINGS = {
    Outcome.PASS: "no rule that was asked for was broken",
    Outcome.FAIL: "a rule is broken",
    Outcome.UNKNOWN: "there is no answer; nothing was shown to be right",
    Outcome.VACUOUS: "there is no answer for every rule: nothing was broken, but not every rule could have been",
    Outcome.CANDIDATE_ERROR: "the candidate broke the contract, so it can't be judged",
    Outcome.HUNG: "the candidate did not come to an end, so it can't be judged",
}
"""What an outcome means, in a clause; see `meaning`."""

_LET_BE = "no rule was broken but in scenes in which a failure that is expected came first"

_TOO_SHORT = (
    "The time was up before any scene was drawn independently, and the scenes of the laws and the crystals are too few "
    "to say anything. What to do: give the search more time (--seconds), or a number of scenes (--scenes)."
)


def verdict_lines(verdict: Verdict, *, besides: Sequence[str] = ()) -> list[str]:
    """The whole answer of a check: what was found first, then what it rests on.

    ``besides``: lines about a further question that was asked, told before what the answer rests on.
    """
    asked = [list(besides)] if besides else []
    parts = [_opening(verdict), *_faults(verdict), *_findings(verdict), *_gaps(verdict), *asked, *_rest(verdict)]
    return [line for number, part in enumerate(parts) for line in (["", *part] if number else part)]


def play_lines(play: Play, *, target: str, case: str, profile: Profile, wanted: str = "") -> list[str]:
    """The story of one saved scene, in full; ``wanted`` is the id of the rule it was saved for, if any."""
    failing = frozenset(rule for rule in RULES if profile.fails_on(rule))
    violation = play.first(failing)
    if violation is not None:
        head = _head(Outcome.FAIL, target, f"a rule is broken in {case} (profile {profile.value})")
        story = finding_lines(Finding(rule=violation.rule, play=play, violation=violation), full=True)
        return [*head, *_saved_for(wanted, play), "", *story]
    exposed = play.first(frozenset(RULES))
    lines = [
        *wrapped(f"{target}: no rule is broken in {case} (profile {profile.value})", 0),
        "  That is one scene, and says no more than that.",
        *_saved_for(wanted, play),
    ]
    if exposed is not None:
        lines += ["", "EXPOSED, which this profile lets be"]
        lines += summary_lines(Finding(rule=exposed.rule, play=play, violation=exposed), 2)
    trace = Trace(play=play, marked=exposed, full=True)
    return [*lines, "", "The scene", *scene_lines(play.scene, 2), "", "What happened", *trace.lines(2)]


def _saved_for(wanted: str, play: Play) -> list[str]:
    """What has become of the rule that the scene was saved for."""
    if not wanted or wanted in {rule.id for rule, times in play.counts.items() if times}:
        return []
    return wrapped(f"It was saved because {wanted} was broken in it; now that rule is kept here.", 2)


def fault_page(fault: CandidateFault, *, target: str, outcome: Outcome, case: str, scene: Scene) -> list[str]:
    """The page about a candidate that can't be judged, met when one saved ``scene`` was played."""
    return [*_head(outcome, target, OPENINGS[outcome]), "", *fault_lines(fault, case, scene, full=True)]


def _head(outcome: Outcome, target: str, said: str) -> list[str]:
    first, *others = wrapped(f"{target}: {said}", 0, WIDTH - len(_word(outcome)) - 2)
    return [f"{_word(outcome)}  {first}", *others]


def _word(outcome: Outcome) -> str:
    return outcome.name.replace("_", " ")


def meaning(verdict: Verdict, outcome: Outcome) -> str:
    """What ``outcome`` means, in a clause, as one of those of ``verdict``."""
    let_be = any(basis.let_be for basis in verdict.basis)
    return _LET_BE if let_be and outcome is Outcome.PASS else OPENINGS[outcome]


def _opening(verdict: Verdict) -> list[str]:
    first, *others = verdict.outcomes
    broken = verdict.findings if first is Outcome.FAIL else ()
    seed = f"seed {verdict.seed}, " if _is_sampled(verdict) else ""
    said = f"{len(broken)} rules are broken" if len(broken) > 1 else meaning(verdict, first)
    lines = [
        *_head(first, verdict.target, said),
        *wrapped(
            f"profile {verdict.profile.value}, {seed}asked about {listed(verdict.machines)}"
            + ("" if len(verdict.rules) == len(RULES) else f", for {counted(len(verdict.rules), 'rule')} only"),
            2,
        ),
    ]
    return lines + [f"  also {_word(outcome)}: {meaning(verdict, outcome)}" for outcome in others]


def _faults(verdict: Verdict) -> Iterator[list[str]]:
    if verdict.fault is not None:
        yield fault_lines(verdict.fault, verdict.fault_case, verdict.fault_scene)


def _findings(verdict: Verdict) -> Iterator[list[str]]:
    """The first finding, which has the smallest scene, in full; of the others where and what."""
    for number, finding in enumerate(verdict.findings):
        if number == 0:
            yield [*finding_lines(finding), *given_lines(finding), "", *again_lines(finding.case, finding.given_case)]
        else:
            yield [*summary_lines(finding), *(f"  {line.strip()}" for line in again_lines(finding.case)[1:])]


def _gaps(verdict: Verdict) -> Iterator[list[str]]:
    if verdict.findings or verdict.fault is not None:
        return
    unsearched = _is_sampled(verdict) and not any(basis.independent for basis in verdict.basis)
    if Outcome.VACUOUS in verdict.outcomes and unsearched:
        yield ["What was not searched", *wrapped(_TOO_SHORT, 2)]
    missing = [report for report in verdict.rules if report.status is RuleStatus.NOT_EXERCISED]
    if not missing:
        return
    judged = (RuleStatus.KEPT, RuleStatus.EXPOSED)
    others = [report.rule.id for report in verdict.rules if report.status in judged]
    yield [
        "What was not exercised",
        *(line for report in missing for line in wrapped(not_exercised(report), 2)),
        *wrapped(f"What to do: {_remedy(others, sampled=_is_sampled(verdict))}", 2),
    ]


def not_exercised(report: RuleReport) -> str:
    """What never happened, for a rule that was not exercised."""
    if not report.missed:
        return f"{report.rule.id}: it never happened that {report.rule.witness}."
    return f"{report.rule.id}: in no generated scene, {listed([f'{e.statement} ({e.id})' for e in report.missed])}."


def _is_sampled(verdict: Verdict) -> bool:
    """Whether scenes were drawn, so that more could be; not where all of them were played."""
    return not any(basis.strength is Strength.EXHAUSTED for basis in verdict.basis)


def _remedy(others: list[str], *, sampled: bool) -> str:
    more = "play more scenes (--scenes, --seconds), and let the small relatives of the machines in (no --as-given). "
    more = more if sampled else "there are no more scenes within these bounds; take another tiny machine (--list). "
    narrow = f"To ask only for what was exercised: {' '.join(f'--only {rule}' for rule in others)}." if others else ""
    idle = "A scheduler that shows nothing exercises nothing: see that it answers TAKEN and shows the picture. "
    return more + idle + narrow


def _rest(verdict: Verdict) -> Iterator[list[str]]:
    if verdict.expected:
        yield ["What is expected", *expected_lines(verdict.expected)]
    yield ["What this rests on", *basis_lines(verdict)]
    yield ["The rules", *rule_table(verdict)]
    if verdict.edges and not verdict.findings and verdict.fault is None:
        yield ["The edges that generated scenes came to", *edge_lines(verdict)]
    if verdict.costs:
        yield ["What it costs, over turning crystals", *cost_lines(verdict)]
