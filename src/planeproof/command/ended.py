"""The report of a check whose process ended before there was a verdict: by the candidate, or by somebody outside."""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that --help answers at once

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from planeproof.command.refusing import refusing, writing
from planeproof.command.reporting import from_record, write_report

if TYPE_CHECKING:
    from planeproof.contract import Scene
    from planeproof.judge import CandidateFault, Verdict

_SOUGHT = "the one that was being played when the process ended; those before it are not counted"
_NONE_KNOWN = "of those that were played before the process ended, none is counted"

_OWN = (
    "Find what ends the process, in the candidate or in a library that it calls: os._exit, an abort, a crash. What "
    "raises an exception instead is told with its line."
)
_OUTSIDE = (
    "See who sent that signal, for a candidate hardly does so itself: a limit of time, a lack of memory, a person. "
    "Then check again."
)


def report_of_the_end(line: Sequence[str], *, how: str, case: str | None, seed: str | None, outside: bool) -> None:
    """Write the report that the ``line`` of the command asked for, if any.

    ``how`` the process ended; ``case``: the scene that was being played, None if that isn't known; ``seed``: the one
    that was drawn, where the line names none; ``outside``: whether the candidate hardly did it itself. What can't be
    written is told, and changes nothing of how the command ends.
    """
    from planeproof.command.check import check
    from planeproof.machines import MachineFileError
    from planeproof.scenes.cases import CaseError

    try:
        asked = check.make_context("check", list(line)).params
        folder: Path | None = asked["report"]
        if folder is None:
            return
        with refusing(MachineFileError, CaseError), writing(folder, "--report folder"):
            folder.mkdir(parents=True, exist_ok=True)
            drawn = asked["seed"] if seed is None else int(seed)
            write_report(from_record(_verdict(asked, _fault(how, outside=outside), case, drawn, outside)), folder)
    except click.ClickException as refused:
        refused.show()
    else:
        click.echo(f"planeproof: the report is in {folder}: look at {folder / 'index.html'}", err=True)


def _fault(how: str, *, outside: bool) -> "CandidateFault":
    from planeproof.judge.conversation import THE_PROCESS, CandidateFault

    said = f"ended {how} while the candidate was running"
    return CandidateFault(THE_PROCESS, -1, said, _OUTSIDE if outside else _OWN)


def _verdict(asked: dict[str, Any], fault: "CandidateFault", case: str | None, seed: int, outside: bool) -> "Verdict":
    from planeproof.contract import RULES
    from planeproof.judge import Basis, Outcome, Profile, RuleReport, RuleStatus, Strength, Verdict
    from planeproof.machines import read_machine

    rules = [rule for rule in RULES if not asked["only"] or rule.id in asked["only"]]
    source = _NONE_KNOWN if case is None else _SOUGHT
    return Verdict(
        target=asked["target"],
        machines=tuple(read_machine(machine).name for machine in asked["machines"]),
        profile=Profile(asked["profile"]),
        seed=seed,
        outcomes=(Outcome.UNKNOWN if outside else Outcome.CANDIDATE_ERROR,),
        basis=(Basis(strength=Strength.SAMPLED, source=source, scenes=int(case is not None)),),
        rules=tuple(RuleReport(rule=rule, status=RuleStatus.NOT_EXERCISED) for rule in rules),
        findings=(),
        costs=(),
        fault=fault,
        fault_case=case,
        fault_scene=None if case is None else _scene(case),
    )


def _scene(case: str) -> "Scene":
    from planeproof.scenes.cases import load_case

    return load_case(case).scene
