"""From a finished trial to its verdict."""

from planeproof.contract import RULES, Rule, RuleClass, Scene
from planeproof.judge import (
    Basis,
    CandidateHung,
    EdgeReport,
    Finding,
    Outcome,
    Play,
    RuleReport,
    RuleStatus,
    Source,
    Verdict,
    by_seriousness,
)
from planeproof.judge.edges import EDGES, Edge
from planeproof.judge.expected import Expected
from planeproof.judge.reached import Reached, hardly_exercised
from planeproof.scenes.cases import Case, Found, keep_case, stem_of
from planeproof.search.size import size
from planeproof.search.trial import Trial


def verdict_of(
    trial: Trial,
    *,
    machines: tuple[str, ...],
    seed: int,
    basis: tuple[Basis, ...],
    source: Source | None = None,
    expected: tuple[Expected, ...] = (),
) -> Verdict:
    """The verdict; the scenes of its findings are saved, where the trial saves cases."""
    judged = {rule for rule in trial.asked & trial.applicable if trial.profile.fails_on(rule)}
    missed = {} if trial.decided else hardly_exercised(trial.reached, judged)
    rules = tuple(_report(trial, rule, missed.get(rule, ())) for rule in RULES if rule in trial.asked)
    broken = sorted(trial.smallest, key=lambda rule: _telling(rule, trial.smallest[rule]))
    findings = tuple(_finding(trial, rule) for rule in broken)
    fault_case = None if trial.fault_scene is None else _save(trial, trial.fault_scene, "contract", str(trial.fault))
    return Verdict(
        target=trial.name,
        machines=machines,
        profile=trial.profile,
        seed=seed,
        outcomes=by_seriousness(_outcomes(trial, rules, basis, expected)),
        basis=basis,
        rules=rules,
        findings=findings,
        costs=tuple(trial.costs),
        fault=trial.fault,
        fault_case=fault_case,
        fault_scene=trial.fault_scene,
        source=source,
        edges=_edges(trial.reached),
        expected=expected,
    )


def _edges(reached: Reached) -> tuple[EdgeReport, ...]:
    """None where no generated scene was played to its end."""
    if not any(reached.admitting.values()):
        return ()
    return tuple(
        EdgeReport(
            edge=edge, scenes=reached.scenes[edge], admitting=reached.admitting[edge], least=reached.least.get(edge)
        )
        for edge in EDGES
    )


def _outcomes(
    trial: Trial, rules: tuple[RuleReport, ...], basis: tuple[Basis, ...], expected: tuple[Expected, ...]
) -> list[Outcome]:
    outcomes = []
    if trial.fault is not None:
        outcomes.append(Outcome.HUNG if isinstance(trial.fault, CandidateHung) else Outcome.CANDIDATE_ERROR)
    if trial.smallest or any(entry.wrong is not None for entry in expected):
        outcomes.append(Outcome.FAIL)
    # A search that stopped at a finding has not had the time to exercise every rule.
    judged = {report.status for report in rules if trial.profile.fails_on(report.rule)}
    idle = RuleStatus.NOT_EXERCISED in judged or RuleStatus.KEPT not in judged
    searched = any(one.independent for one in basis)
    if not trial.decided and (idle or not searched):
        outcomes.append(Outcome.VACUOUS)
    return outcomes


def _telling(rule: Rule, play: Play) -> tuple[bool, tuple[object, ...], int]:
    """Before others goes what names a byte, then the smallest scene: the cause, and what is quickest to read."""
    return (rule.rule_class is RuleClass.SEEN, size(play.scene), RULES.index(rule))


def _report(trial: Trial, rule: Rule, missed: tuple[Edge, ...]) -> RuleReport:
    status = _status(trial, rule, missed)
    missed = missed if status is RuleStatus.NOT_EXERCISED else ()
    return RuleReport(rule=rule, status=status, margin=trial.margins.get(rule), missed=missed)


def _status(trial: Trial, rule: Rule, missed: tuple[Edge, ...]) -> RuleStatus:
    if rule in trial.excused:
        return RuleStatus.EXPECTED
    if rule in trial.broken:
        return RuleStatus.BROKEN
    if rule in trial.masked:
        return RuleStatus.MASKED
    if rule in trial.margins:
        return RuleStatus.EXPOSED
    if rule not in trial.applicable and trial.applicable:
        return RuleStatus.NOT_APPLICABLE
    return RuleStatus.KEPT if rule in trial.exercised and not missed else RuleStatus.NOT_EXERCISED


def _finding(trial: Trial, rule: Rule) -> Finding:
    play = trial.smallest[rule]
    violation = next(violation for violation in play.violations if violation.rule is rule)
    given = trial.given.get(rule)
    return Finding(
        rule=rule,
        play=play,
        violation=violation,
        after=trial.after.get(rule),
        given=given,
        case=_save(trial, play.scene, rule.id, violation.said),
        given_case=None if given is None else _save(trial, given.scene, rule.id, violation.said, "as-given"),
    )


def _save(trial: Trial, scene: Scene, name: str, note: str, *more: str) -> str | None:
    if trial.cases is None:
        return None
    found = Found(target=trial.name, rule=name if name != "contract" else "", profile=trial.profile.value, note=note)
    return str(keep_case(trial.cases, "-".join([stem_of(trial.name), name, *more]), Case(scene=scene, found=found)))
