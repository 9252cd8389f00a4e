"""The engine `exhaustion`: every scene of the tiny machines that are of the same kind as the fault's. Nothing to seed.

Scenes are counted as the exhaustion counts them: those that a play stands for, by symmetry or because the candidate
tells no bytes apart, are counted with it. It ends with the first scene that breaks any rule, which is the smallest.
"""

from planeproof.contract import Machine
from planeproof.power.hunt import CONTRACT, Hunt, NothingToAsk
from planeproof.search.exhausting import TINY, exhaust


def hunt(hunted: Hunt) -> None:
    """Have all scenes played, up to the first that shows something."""
    alike = [tiny for tiny in TINY if kind(tiny.machine) == kind(hunted.machine)]
    if not alike:
        raise NothingToAsk(f"no tiny machine is of the kind of {hunted.machine.name}")
    verdict = exhaust(hunted.fault.make, machines=alike, seconds=hunted.limits.seconds)
    played = sum(basis.scenes for basis in verdict.basis)
    first = {finding.rule.id: played for finding in verdict.findings}
    if verdict.fault is not None:
        first.setdefault(CONTRACT, played)
    own = [finding.play.scene for finding in verdict.findings if finding.rule is hunted.fault.rule]
    hunted.hears(played, first, own[0] if own else None)


def kind(machine: Machine) -> tuple[object, ...]:
    """What makes the work of a scheduler different: two machines of a kind differ in their sizes alone."""
    tiles, tile_map = machine.tiles, machine.map
    layout = (tiles.planes, tiles.depth, tiles.storage, tiles.byte)
    return (*layout, tile_map.pages, tile_map.banks, tile_map.entry_bytes, machine.colours.fixed)
