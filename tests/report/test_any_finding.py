"""Whatever is found on whatever machine can be told."""

import pytest

from planeproof.candidates.faults import ZOO, Fault
from planeproof.contract import RULES, Scene
from planeproof.judge import Finding, Play, Profile, play
from planeproof.machines import read_machine
from planeproof.report import play_lines
from planeproof.report.story import finding_lines
from planeproof.scenes.recipes import recipe
from planeproof.scenes.source import RandomSource

SCENES = 6
WIDEST = 100


def scene_of(fault: Fault, number: int) -> Scene:
    """A drawn scene: on small relatives of the fault's machine, the last on the machine itself."""
    source = RandomSource(f"{fault.id}/{number}")
    return recipe(read_machine(fault.machine), source, as_given=number == SCENES - 1)


def told(result: Play) -> list[list[str]]:
    """Every rule that is broken, short and in full, and what replay says."""
    broken = [violation for rule in RULES if (violation := result.first(frozenset({rule}))) is not None]
    findings = [Finding(rule=violation.rule, play=result, violation=violation) for violation in broken]
    pages = [finding_lines(finding, full=full) for finding in findings for full in (False, True)]
    return [*pages, *(play_lines(result, target="x:Y", case="c.json", profile=profile) for profile in Profile)]


@pytest.mark.parametrize("fault", ZOO, ids=lambda fault: fault.id)
def test_every_violation_can_be_told(fault: Fault) -> None:
    """All texts fit the page, are plain, and point at just one place where something can be pointed at."""
    pages = [page for number in range(SCENES) for page in told(play(scene_of(fault, number), fault.make))]
    for page in pages:
        assert sum("<-- here" in line for line in page) <= 1
        for line in page:
            assert len(line) <= WIDEST, line
            assert line == line.rstrip(), repr(line)
            assert line.isprintable(), repr(line)


def test_there_is_something_to_tell() -> None:
    """The scenes above are not idle: most faults break a rule in them, though some need more scenes."""
    drawn = [any(play(scene_of(fault, number), fault.make).violations for number in range(SCENES)) for fault in ZOO]
    assert sum(drawn) >= len(ZOO) * 3 // 5
