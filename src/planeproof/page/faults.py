"""A candidate that broke a law of the contract, for the page: where, what, its own lines, and the scene."""

from dataclasses import dataclass

from planeproof.judge import CandidateFault, CandidateHung, Verdict
from planeproof.judge.conversation import THE_PROCESS
from planeproof.page.scenes import SceneView, view_of_scene
from planeproof.page.shots import Gallery
from planeproof.report.fault import own_lines
from planeproof.report.story import again_lines


@dataclass(frozen=True, kw_only=True)
class FaultView:
    """What the candidate did; ``trace`` is as much of the traceback as is not Planeproof's own."""

    sentence: str
    where: str
    did: str
    advice: str
    trace: str
    scene: SceneView | None
    again: str


def fault_of(verdict: Verdict, gallery: Gallery) -> FaultView | None:
    """The fault of the verdict, if there is one."""
    fault = verdict.fault
    if fault is None:
        return None
    scene = verdict.fault_scene
    return FaultView(
        sentence=_sentence(fault),
        where=_where(fault),
        did=fault.said,
        advice=fault.advice,
        trace="\n".join(own_lines(fault.trace)),
        scene=view_of_scene(scene, gallery) if scene is not None and fault.in_scene else None,
        again="" if verdict.fault_case is None else again_lines(verdict.fault_case)[1].strip(),
    )


def _sentence(fault: CandidateFault) -> str:
    if fault.method == THE_PROCESS:
        return f"There is no verdict: {THE_PROCESS} {fault.said}"
    did = "did not come to an end" if isinstance(fault, CandidateHung) else "failed before any rule could be judged"
    return f"The scheduler itself {did}: {fault.method} {fault.said}"


def _where(fault: CandidateFault) -> str:
    if fault.refresh >= 0:
        return f"{fault.method}, in refresh {fault.refresh}"
    if fault.method == THE_PROCESS:
        return "one of its calls; which is not known"
    return "start, in the set-up, display off" if fault.method == "start" else f"{fault.method}, before the set-up"
