"""What is asked, looked at before any test runs: a name that names nothing is refused at once, with what to do."""

from dataclasses import replace
from pathlib import Path

from planeproof.contract import rule as rule_of
from planeproof.hosts import load
from planeproof.judge import Profile
from planeproof.machines import read_machine
from planeproof.search.expected import read_expected
from planeproof.testing.asked import Asked, name_of, saved_cases
from planeproof.testing.options import rooted
from planeproof.testing.questions import AboutCase, AboutRule, Question


def require(asked: Asked) -> None:
    """Raise `ValueError` where a target, machine, profile or list is named that is not there."""
    load(asked.target)
    Profile(asked.profile)
    if asked.scenes < 1:
        raise ValueError(f"scenes is {asked.scenes}: at least 1 must be played")
    for machine in asked.machines:
        if isinstance(machine, str):
            read_machine(machine)
    names = [name_of(machine) for machine in asked.machines]
    if len(set(names)) < len(names) or not names:
        raise ValueError(f"machines are {', '.join(names) or 'none'}: name at least one, and each once")
    if asked.expected is not None:
        read_expected(asked.expected)


def questions_about(asked: Asked, rule: str, root: Path) -> dict[str, Question]:
    """What a test made by `holds` asks, by name: each saved case, then each machine; paths are relative to ``root``.

    Raises `ValueError` as `require`, and for a rule that there is not.
    """
    rule_of(rule)
    cases = None if asked.cases is None else root / asked.cases
    here = replace(asked, cases=cases, machines=tuple(rooted(machine, root) for machine in asked.machines))
    require(here)
    questions: dict[str, Question] = {}
    for case in saved_cases(here):
        about = AboutCase(asked=here, case=case, rule=rule)
        questions[about.path[1]] = about
    for machine in here.machines:
        questions[name_of(machine)] = AboutRule(asked=here, machine=machine, rule=rule, alone=True)
    return questions
