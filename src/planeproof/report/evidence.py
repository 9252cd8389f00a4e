"""What an answer rests on, in words: the scenes, the state of each rule, the costs."""

from planeproof.judge import Basis, Cost, EdgeReport, Outcome, RuleReport, RuleStatus, Strength, Verdict
from planeproof.report.figures import counted, cycles, share_at_most, wrapped

_STRENGTHS = {
    Strength.SAMPLED: "sampled",
    Strength.EXHAUSTED: "exhausted",
    Strength.PROVED: "proved",
    Strength.OBSERVED: "observed",
}
_STATES = {
    RuleStatus.BROKEN: "BROKEN",
    RuleStatus.EXPECTED: "broken, which is expected and let be until a date",
    RuleStatus.MASKED: "not known: it was broken in scenes in which a failure that is expected came first",
    RuleStatus.NOT_APPLICABLE: "not applicable: it says nothing on machines with one side",
}
_NOWHERE = "nothing came near"
_TOGETHER = "broken too, in a scene where another rule was broken first"
_BROKEN_OFF = (Outcome.FAIL, Outcome.CANDIDATE_ERROR, Outcome.HUNG)


def basis_lines(verdict: Verdict) -> list[str]:
    """A sentence for each source of scenes."""
    if not verdict.basis:
        return ["  nothing: no scene was played"]
    clean = verdict.fault is None and not any(outcome in _BROKEN_OFF for outcome in verdict.outcomes)
    return [line for basis in verdict.basis for line in wrapped(basis_sentence(basis, clean=clean), 2)]


def basis_sentence(basis: Basis, *, clean: bool) -> str:
    """What ``basis`` says; ``clean`` if none of its scenes failed, for only then is there a bound."""
    kind = _STRENGTHS[basis.strength]
    if not basis.scenes:
        return f"{kind}: no scene ({basis.source})"
    every = "all " if basis.strength is Strength.EXHAUSTED else ""
    return f"{kind}: {every}{counted(basis.scenes, 'scene')} ({basis.source}){_came_of(basis, clean=clean)}"


def _came_of(basis: Basis, *, clean: bool) -> str:
    if basis.failed:
        return ", the last of which failed, so there is no bound"
    if basis.let_be:
        return f", of which {basis.let_be:,} failed as is expected, so there is no bound"
    if not clean:
        return ""
    if basis.strength is not Strength.SAMPLED:
        return ", no failure"
    if basis.bound is None:
        return ", no failure; not drawn independently of one another, so there is no bound"
    fewer = share_at_most(basis.bound)
    return (
        f", no failure: with 95 % confidence fewer than {fewer} of the scenes that can be so drawn fail (one-sided, "
        f"exact){_residual(basis)}"
    )


def _residual(basis: Basis) -> str:
    """Beside the bound, never instead: an estimate of what was not seen."""
    if basis.residual is None or basis.singletons is None:
        return ""
    return (
        f"; {counted(basis.singletons, 'behaviour')} of the candidate came up only once, so the next scene shows a new "
        f"one with a chance of about {100 * basis.residual:.2g} % (Good-Turing, an estimate)"
    )


def rule_table(verdict: Verdict) -> list[str]:
    """The rules that were asked for by what is known of them, and what a margin or a gap means."""
    by_state: dict[str, list[str]] = {}
    for report in verdict.rules:
        by_state.setdefault(rule_state(verdict, report), []).append(report.rule.id)
    return [line for state, rules in by_state.items() for line in wrapped(f"{', '.join(rules)}: {state}", 2)]


def rule_state(verdict: Verdict, report: RuleReport) -> str:
    """What is known of one rule."""
    cut_short = not verdict.basis or any(outcome in _BROKEN_OFF for outcome in verdict.outcomes)
    own = {finding.rule for finding in verdict.findings}
    broken = {rule for finding in verdict.findings for rule, times in finding.play.counts.items() if times}
    together = report.status is RuleStatus.KEPT and report.rule in broken
    if together or (report.status is RuleStatus.BROKEN and report.rule not in own):
        return _TOGETHER
    return _state(report, cut_short=cut_short)


def edge_lines(verdict: Verdict) -> list[str]:
    """How near the generated scenes came to each edge, in as few lines as will do."""
    reached = [f"{each.edge.id} {each.scenes}" for each in verdict.edges if each.scenes]
    near = [_nearest(each) for each in verdict.edges if not each.scenes and each.admitting]
    excluded = [each.edge.id for each in verdict.edges if not each.scenes and not each.admitting]
    lines = wrapped(f"reached, in so many scenes: {', '.join(reached) or 'none'}", 2)
    lines += [line for text in near for line in wrapped(f"not reached: {text}", 2)]
    return lines + (wrapped(f"excluded by what the machines are: {', '.join(excluded)}", 2) if excluded else [])


def _nearest(report: EdgeReport) -> str:
    far = distance(report)
    return f"{report.edge.id} ({report.edge.statement}): " + (f"the nearest scene was {far} away" if far else _NOWHERE)


def distance(report: EdgeReport) -> str:
    """How far the nearest scene stayed from the edge, as in ``1 cell``; nothing where nothing came near."""
    if report.least is None:
        return ""
    return f"{cycles(report.least)} {report.edge.unit.removesuffix('s') if report.least == 1 else report.edge.unit}"


def cost_lines(verdict: Verdict) -> list[str]:
    """A line or two for each machine."""
    return [line for cost in verdict.costs for line in wrapped(f"{cost.machine}: {cost_sentence(cost)}", 2)]


def _state(report: RuleReport, *, cut_short: bool) -> str:
    if report.status is RuleStatus.EXPOSED:
        return f"EXPOSED: {_exposed(report)}"
    if report.status in _STATES:
        return _STATES[report.status]
    if report.status is RuleStatus.NOT_EXERCISED:
        return "not exercised" + (" before the check ended" if cut_short else ": nothing is known of it")
    return "no breach of its own was found before the check ended" if cut_short else "kept"


def _exposed(report: RuleReport) -> str:
    broken = "it was broken, which this profile lets be"
    if report.margin is None:
        return broken
    if report.margin < 0:
        return f"{broken}; at worst {cycles(-report.margin)} cycles beyond the end of a blanking"
    return (
        f"{broken}; at the closest, {cycles(report.margin)} cycles of a blanking were left over, and only they spared "
        "the viewer: a blanking shortened by more could have ended before the change did"
    )


def cost_sentence(cost: Cost) -> str:
    """What showing pictures cost on one machine."""
    wait = f"longest wait {cost.longest_wait} of the {counted(cost.patience, 'full blanking')} of its patience"
    if not cost.shown:
        return f"no picture was seen; {wait}"
    return (
        f"{cost.refreshes_each:.1f} refreshes and {cost.bytes_each:.0f} bytes a picture "
        f"({counted(cost.shown, 'picture')} seen), fullest blanking {100 * cost.fullest:.0f} %, {wait}"
    )
