"""Verdicts whose pages are looked at, made from scenes that never change."""

from collections.abc import Callable
from dataclasses import replace
from functools import cache
from pathlib import Path

from planeproof.candidates.faults import PatternsToSeenPlane, RevealOneBurstEarly
from planeproof.contract import Disturbance, Rational, Scene
from planeproof.contract.rules import BLANKING_ONLY, EXACT_REVEAL, FAIR_REFUSAL, HIDDEN_WRITES, PROGRESS, WHOLE_REVEAL
from planeproof.judge import CandidateHung, EdgeReport, Outcome, RuleReport, RuleStatus, Verdict
from planeproof.judge.edges import EDGES
from planeproof.machines import read_machine
from planeproof.scenes.crystals import crystal_scenes
from tests.report.schedulers import Early, Idle, Late, Torn
from tests.report.stories import COST, NICHE, findings, full_scene, niche_scene, raised, verdict, wide_scene

GOLDEN = Path(__file__).parent / "golden"

HOSTILE = (
    "</script><script>window.hurt=1</script>",
    "\"' onmouseover=window.hurt=1 x='",
    "</style><style>*{display:none}</style>",
    "<img src=x onerror=window.hurt=1>",
    "{{ 7 * 7 }}{% raw %}",
    "a\u202etxt.exe\u2066\x00\x1b[31m\ud800",
    "javascript:window.hurt=1",
)
"""Names that would act on a page that believed them."""


def _edges() -> tuple[EdgeReport, ...]:
    """Half of the edges reached, the others at some distance, one not to be measured."""
    least: list[Rational | None] = [0, 3, None]
    return tuple(
        EdgeReport(edge=edge, scenes=5 * (n % 2), admitting=20, least=0 if n % 2 else least[n % 3])
        for n, edge in enumerate(EDGES)
    )


def passed() -> Verdict:
    """No rule broken; edges and costs are known."""
    return replace(verdict(Outcome.PASS, costs=(COST,)), edges=_edges())


def failed() -> Verdict:
    """Two rules broken in a small scene, the first on a machine as given too."""
    found = findings(niche_scene(), Early, EXACT_REVEAL, HIDDEN_WRITES)
    given = findings(wide_scene(), Early, EXACT_REVEAL)[0]
    first = replace(found[0], given=given.play, given_case="cases/given.json", after=12)
    return verdict(Outcome.FAIL, found=[first, *found[1:]], costs=(COST,))


def failed_late() -> Verdict:
    """A byte that came too late, and wrecked the frame."""
    return verdict(Outcome.FAIL, found=findings(niche_scene([Disturbance(3, 0)]), Late, BLANKING_ONLY, case=None))


def failed_silent() -> Verdict:
    """Nothing is ever shown."""
    return verdict(Outcome.FAIL, found=findings(niche_scene(), Idle, PROGRESS))


def failed_half() -> Verdict:
    """Half a picture was seen."""
    return verdict(Outcome.FAIL, found=findings(full_scene([Disturbance(0, 110)]), Torn, WHOLE_REVEAL))


def failed_large() -> Verdict:
    """The picture on show is written to, in a large window."""
    scene = crystal_scenes(read_machine("vitrine-50"))[3]
    return verdict(Outcome.FAIL, found=findings(scene, PatternsToSeenPlane, HIDDEN_WRITES))


def vacuous() -> Verdict:
    """A rule that was never exercised."""
    return verdict(
        Outcome.VACUOUS, statuses={FAIR_REFUSAL: RuleReport(rule=FAIR_REFUSAL, status=RuleStatus.NOT_EXERCISED)}
    )


def faulty() -> Verdict:
    """The candidate raised an error, after a rule had been broken in another scene."""
    found = findings(niche_scene(), Early, EXACT_REVEAL)
    outcomes = (Outcome.CANDIDATE_ERROR, Outcome.FAIL)
    return verdict(*outcomes, found=found, fault=raised(), fault_scene=niche_scene())


def hung() -> Verdict:
    """The candidate never came back."""
    fault = CandidateHung("offer", 0, "did not return in 10 s", "A call may not wait, sleep or loop for ever.")
    return verdict(Outcome.HUNG, fault=fault, fault_scene=full_scene())


def hostile() -> Verdict:
    """Names everywhere that would like to act."""
    name = " ".join(HOSTILE)
    scene = niche_scene()
    scene = Scene.of(replace(NICHE, name=name), scene.pictures, scene.ready)
    found = findings(scene, Early, EXACT_REVEAL, case=f"cases/{name}.json")
    fault = raised()
    fault.said, fault.trace, fault.advice = name, f'{fault.trace}\n  File "{name}", line 3', name
    said = verdict(Outcome.CANDIDATE_ERROR, target=name, found=found, fault=fault, fault_scene=scene)
    basis = tuple(replace(basis, source=name) for basis in said.basis)
    costs = (replace(COST, machine=name),)
    return replace(said, machines=(name,), fault_case=name, basis=basis, costs=costs)


def long() -> Verdict:
    """A run of two hundred refreshes at full size, with work in nearly all of them."""
    scene = crystal_scenes(read_machine("vitrine-50"))[3]
    pictures = [*scene.pictures] * 15
    return verdict(Outcome.FAIL, found=findings(Scene.of(scene.machine, pictures), RevealOneBurstEarly)[:1])


KINDS: dict[str, Callable[[], Verdict]] = {
    "pass": passed,
    "fail": failed,
    "fail-late": failed_late,
    "fail-silent": failed_silent,
    "fail-half": failed_half,
    "fail-large": failed_large,
    "vacuous": vacuous,
    "fault": faulty,
    "hung": hung,
    "hostile": hostile,
}
"""Kind of page -> what makes its verdict."""


@cache
def verdict_of(kind: str) -> Verdict:
    """The verdict of that kind of page."""
    return KINDS[kind]()
