"""What an answer rests on, for the page: the scenes, the state of each rule, the edges, the costs."""

from dataclasses import dataclass

from planeproof.judge import Basis, EdgeReport, Outcome, RuleReport, RuleStatus, Verdict
from planeproof.report.evidence import basis_sentence, cost_sentence, distance, rule_state
from planeproof.report.figures import listed, share_at_most

_BROKEN_OFF = (Outcome.FAIL, Outcome.CANDIDATE_ERROR, Outcome.HUNG)

SIGNS = {
    RuleStatus.KEPT: "✓",
    RuleStatus.BROKEN: "✕",
    RuleStatus.EXPOSED: "△",
    RuleStatus.EXPECTED: "◇",
    RuleStatus.MASKED: "◇",
    RuleStatus.NOT_EXERCISED: "○",
    RuleStatus.NOT_APPLICABLE: "·",
}
"""A sign for each state, beside its word."""


@dataclass(frozen=True, kw_only=True)
class RuleRow:
    """One rule: what is known of it, when it counts as exercised, and ``finding``, the id of what breaks it."""

    id: str
    sign: str
    status: str
    state: str
    statement: str
    witness: str
    missed: str
    finding: str


@dataclass(frozen=True, kw_only=True)
class Figures:
    """One source of scenes, in words and as data."""

    says: str
    strength: str
    source: str
    scenes: int
    independent: str
    bound: str
    residual: str


@dataclass(frozen=True, kw_only=True)
class EdgeRow:
    """One edge: how many scenes reached it, of how many that could, and how near the nearest came."""

    id: str
    statement: str
    reached: bool
    scenes: str
    least: str


@dataclass(frozen=True, kw_only=True)
class CostRow:
    """What one machine's pictures cost."""

    machine: str
    says: str


def rules_of(verdict: Verdict) -> tuple[RuleRow, ...]:
    """All rules that were asked for."""
    findings = {finding.rule: f"f{number}" for number, finding in enumerate(verdict.findings, 1)}
    return tuple(_rule(verdict, report, findings.get(report.rule, "")) for report in verdict.rules)


def _rule(verdict: Verdict, report: RuleReport, finding: str) -> RuleRow:
    rule = report.rule
    missed = listed([f"that {edge.statement}" for edge in report.missed])
    return RuleRow(
        id=rule.id,
        sign=SIGNS[report.status],
        status=report.status.value,
        state=rule_state(verdict, report),
        statement=rule.statement,
        witness=rule.witness,
        missed=f"the generated scenes never reached it {missed}" if missed else "",
        finding=finding,
    )


def basis_of(verdict: Verdict) -> tuple[Figures, ...]:
    """All sources of scenes."""
    clean = verdict.fault is None and not any(outcome in _BROKEN_OFF for outcome in verdict.outcomes)
    return tuple(_figures(basis, clean=clean) for basis in verdict.basis)


def _figures(basis: Basis, *, clean: bool) -> Figures:
    bound, residual = basis.bound if clean else None, basis.residual
    return Figures(
        says=basis_sentence(basis, clean=clean),
        strength=basis.strength.value,
        source=basis.source,
        scenes=basis.scenes,
        independent="yes" if basis.independent else "no",
        bound="none" if bound is None else f"fewer than {share_at_most(bound)} fail",
        residual="not counted" if residual is None else f"{residual:.2g}",
    )


def edges_of(verdict: Verdict) -> tuple[EdgeRow, ...]:
    """All edges that were measured, those that were not reached first."""
    rows = [_edge(report) for report in verdict.edges]
    return tuple(sorted(rows, key=lambda row: row.reached))


def _edge(report: EdgeReport) -> EdgeRow:
    return EdgeRow(
        id=report.edge.id,
        statement=report.edge.statement,
        reached=report.scenes > 0,
        scenes=f"{report.scenes} of {report.admitting}"
        if report.admitting
        else "no machine here lets a scene get there",
        least="reached" if report.scenes else distance(report) or "nothing to measure",
    )


def costs_of(verdict: Verdict) -> tuple[CostRow, ...]:
    """A line for each machine."""
    return tuple(CostRow(machine=cost.machine, says=cost_sentence(cost)) for cost in verdict.costs)
