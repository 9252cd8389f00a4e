"""One page about a candidate that broke a law of the contract, in the order of the run."""

import re
from collections.abc import Iterator
from pathlib import Path

from planeproof.contract import Scene
from planeproof.judge import CandidateFault, CandidateHung
from planeproof.judge.conversation import THE_PROCESS
from planeproof.report.figures import wrapped
from planeproof.report.scene import PICTURES_SHOWN, scene_lines
from planeproof.report.story import again_lines

_OURS = tuple(str(Path(__file__).parents[1] / package) for package in ("judge", "search"))
_FRAME = re.compile(r'  File "(?P<file>.*)", line \d+')

_NOT_REACHED = (
    "No line of its own was reached. Planeproof makes it without arguments and calls start(machine), offer(picture) "
    "and blank(cycles): see that it can be called so."
)


def fault_lines(fault: CandidateFault, case: str | None, scene: Scene | None, *, full: bool = False) -> list[str]:
    """Where it was called, what it did, its own lines of the traceback, what to do, and the scene it happened in.

    Of a long scene some pictures are drawn, all of them if ``full``.
    """
    return [
        _heading(fault),
        *wrapped(f"Where: {_call(fault)}.", 2),
        *wrapped(f"What it did: {_sentence(fault.said)}", 2),
        *_trace(fault),
        *wrapped(f"What to do: {fault.advice if _own_code(fault) or not fault.trace else _NOT_REACHED}", 2),
        *_whose(fault),
        *_scene(fault, scene, full=full),
        "",
        *again_lines(case),
    ]


def _heading(fault: CandidateFault) -> str:
    hung = isinstance(fault, CandidateHung)
    if fault.method == THE_PROCESS and not hung:
        return "The process ended while the candidate was running"
    return "The candidate did not come to an end" if hung else "The candidate broke a law of the contract"


def _call(fault: CandidateFault) -> str:
    if fault.refresh >= 0:
        return f"in {fault.method}, in refresh {fault.refresh}"
    if fault.method == "start":
        return "in start, in the set-up, display off"
    if fault.method == THE_PROCESS:
        return "in one of its calls; in which is not known"
    if fault.trace or (isinstance(fault, CandidateHung) and " " not in fault.method):
        return "when the scheduler was made, before any method of it was called"
    return "before the set-up" if " " not in fault.method else f"in no one call: it concerns {fault.method}"


def _sentence(said: str) -> str:
    return said if said.endswith(".") else f"{said}."


def _whose(fault: CandidateFault) -> list[str]:
    """The likely culprit; where the process ended, the advice says what is known of that."""
    if isinstance(fault, CandidateHung):
        said = "a loop or a wait in the candidate's own code; no rule is judged before it ends."
    elif fault.method == THE_PROCESS:
        return []
    elif _own_code(fault):
        said = "the candidate itself, for the error came out of its own code."
    else:
        said = "the candidate itself; this comes before any rule is judged."
    return wrapped(f"Likely culprit: {said}", 2)


def _trace(fault: CandidateFault) -> list[str]:
    if not _own_code(fault):
        return []
    return ["  The candidate's own lines:", *(f"    {line}" for line in own_lines(fault.trace))]


def _own_code(fault: CandidateFault) -> bool:
    """Whether the error came out of a line that is not Planeproof's own."""
    return any(_FRAME.match(line) for line in own_lines(fault.trace))


def _scene(fault: CandidateFault, scene: Scene | None, *, full: bool) -> list[str]:
    """The scene, where the candidate had come to know anything of it."""
    if scene is None or not fault.in_scene:
        return []
    drawn = None if full else range(min(len(scene.pictures), PICTURES_SHOWN))
    return ["", "The scene in which it happened", *scene_lines(scene, 2, concerned=drawn)]


def own_lines(trace: str) -> Iterator[str]:
    """A traceback without the lines that are Planeproof's own."""
    ours = False
    for line in trace.rstrip().splitlines():
        frame = _FRAME.match(line)
        if frame is not None:
            ours = frame["file"].startswith(_OURS)
        elif not line.startswith("    "):
            ours = False
        if not ours:
            yield line
