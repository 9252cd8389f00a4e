"""From a verdict to its record."""

import hashlib
import json
from fractions import Fraction
from importlib.metadata import version

import msgspec

from planeproof.contract import Burst, Rational, Scene
from planeproof.judge import (
    Basis,
    CandidateFault,
    CandidateHung,
    Cost,
    EdgeReport,
    Finding,
    Play,
    Refresh,
    RuleReport,
    Verdict,
    Violation,
)
from planeproof.machines.wire import write_cycles
from planeproof.record.wire import (
    VERSION,
    BasisWire,
    BurstWire,
    CostWire,
    EdgeWire,
    ExpectedWire,
    FaultWire,
    FindingWire,
    PlayWire,
    RecordWire,
    RefreshWire,
    RuleWire,
    SourceWire,
    ViolationWire,
    as_text,
)
from planeproof.scenes.cases import Case, CaseWire, case_wire


def write_record(verdict: Verdict) -> bytes:
    """The record of ``verdict`` as JSON, which ends in its own digest."""
    raw = msgspec.to_builtins(_record(verdict), enc_hook=write_cycles)
    del raw["closing"]
    closing = hashlib.sha256(as_text(raw)).hexdigest()
    return json.dumps(raw | {"closing": closing}, ensure_ascii=False, indent=1).encode() + b"\n"


def _record(verdict: Verdict) -> RecordWire:
    source, fault = verdict.source, verdict.fault
    return RecordWire(
        planeproof_record=VERSION,
        made_by=f"planeproof {version('planeproof')}",
        target=verdict.target,
        source=None if source is None else SourceWire(file=source.file, line=source.line),
        machines=verdict.machines,
        profile=verdict.profile.value,
        seed=verdict.seed,
        outcomes=tuple(outcome.name for outcome in verdict.outcomes),
        exit_code=verdict.outcome.value,
        basis=tuple(_basis(basis) for basis in verdict.basis),
        rules=tuple(_rule(report) for report in verdict.rules),
        findings=tuple(_finding(finding) for finding in verdict.findings),
        edges=tuple(_edge(report) for report in verdict.edges),
        costs=tuple(cost_wire(cost) for cost in verdict.costs),
        expected=tuple(ExpectedWire(**vars(entry) | {"rule": entry.rule.id}) for entry in verdict.expected),
        fault=None if fault is None else fault_wire(fault, verdict.fault_scene, verdict.fault_case),
        closing="",
    )


def _basis(basis: Basis) -> BasisWire:
    return BasisWire(
        strength=basis.strength.value,
        source=basis.source,
        scenes=basis.scenes,
        independent=basis.independent,
        failed=basis.failed,
        bound=basis.bound,
        singletons=basis.singletons,
        residual=basis.residual,
        let_be=basis.let_be,
    )


def _rule(report: RuleReport) -> RuleWire:
    rule = report.rule
    return RuleWire(
        id=rule.id,
        statement=rule.statement,
        kind=rule.kind.value,
        rule_class=rule.rule_class.value,
        witness=rule.witness,
        status=report.status.value,
        margin=_cycles(report.margin),
        missed=tuple(edge.id for edge in report.missed),
    )


def _edge(report: EdgeReport) -> EdgeWire:
    edge = report.edge
    return EdgeWire(
        id=edge.id,
        statement=edge.statement,
        unit=edge.unit,
        scenes=report.scenes,
        admitting=report.admitting,
        least=_cycles(report.least),
    )


def cost_wire(cost: Cost) -> CostWire:
    """The written form of a cost."""
    return CostWire(**vars(cost))


def _finding(finding: Finding) -> FindingWire:
    place = finding.play.violations.index(finding.violation)
    return FindingWire(
        rule=finding.rule.id,
        violation=place,
        after=finding.after,
        case=finding.case,
        play=play_wire(finding.play),
        given_case=finding.given_case,
        given=None if finding.given is None else play_wire(finding.given),
    )


def play_wire(play: Play) -> PlayWire:
    """The written form of a play."""
    return PlayWire(
        scene=scene_wire(play.scene),
        set_up=_bursts(play.set_up),
        refreshes=tuple(_refresh(refresh) for refresh in play.refreshes),
        violations=tuple(_violation(violation) for violation in play.violations),
    )


def scene_wire(scene: Scene) -> CaseWire:
    """The written form of a scene."""
    return case_wire(Case(scene=scene))


def _refresh(refresh: Refresh) -> RefreshWire:
    return RefreshWire(
        number=refresh.number,
        offered=refresh.offered,
        answer=None if refresh.answer is None else refresh.answer.name,
        cycles=refresh.cycles,
        used=Fraction(refresh.used),
        bursts=_bursts(refresh.bursts),
        current=refresh.current,
        upcoming=refresh.upcoming,
    )


def _bursts(bursts: tuple[Burst, ...]) -> tuple[BurstWire, ...]:
    return tuple(BurstWire(address=burst.address, data=burst.data.hex(), step=burst.step) for burst in bursts)


def _violation(violation: Violation) -> ViolationWire:
    return ViolationWire(
        rule=violation.rule.id,
        refresh=violation.refresh,
        said=violation.said,
        burst=violation.burst,
        byte=violation.byte,
        address=violation.address,
        cell=violation.cell,
        picture=violation.picture,
        pixels=violation.pixel_count,
        margin=_cycles(violation.margin),
    )


def fault_wire(fault: CandidateFault, scene: Scene | None, case: str | None = None) -> FaultWire:
    """The written form of a candidate's fault, the scene in which it happened, and where that was saved."""
    return FaultWire(
        hung=isinstance(fault, CandidateHung),
        method=fault.method,
        refresh=fault.refresh,
        said=fault.said,
        advice=fault.advice,
        trace=fault.trace,
        case=case,
        scene=None if scene is None else scene_wire(scene),
    )


def _cycles(cycles: Rational | None) -> Fraction | None:
    return None if cycles is None else Fraction(cycles)
