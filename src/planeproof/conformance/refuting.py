"""From a refutation in steps to a scene: played on the display, and kept as a case that `planeproof replay` shows."""

from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from pprint import pformat

from planeproof.contract import (
    RULES,
    Colours,
    Disturbance,
    Machine,
    Scene,
    Storage,
    TileMap,
    Tiles,
    Window,
)
from planeproof.judge import Play, Violation, play
from planeproof.scenes.cases import Case, Found, save_case
from planeproof.spec.steps.addresses import Addresses
from planeproof.spec.steps.course import Course
from planeproof.spec.steps.deciding import Decision
from planeproof.spec.steps.executing import executed
from planeproof.spec.steps.searching import BLANK, CELLS, HALF_OF, TILES
from planeproof.spec.steps.sharing import Sharing


@dataclass(frozen=True, kw_only=True, eq=False)
class Shown:
    """A refutation that the display shows: the scene, its play and the first rule that it breaks."""

    decision: Decision
    scene: Scene
    play: Play
    violation: Violation


def searched_machine(sharing: Sharing) -> Machine:
    """The machine that the bounded search speaks of, as the contract has it."""
    depth = 1 if sharing.packed else sharing.rows // 8
    storage = Storage.PACKED if sharing.packed else Storage.PLANAR
    shades = ((0, 0, 0), (255, 255, 255), (200, 120, 40), (60, 140, 200))
    colours = Colours(meaning=shades, inks=(1, 2, 3)[: (1 << depth) - 1])
    return Machine(
        name=f"two cells, {sharing.name}",
        window=Window(columns=CELLS, rows=1),
        tiles=Tiles(
            count=TILES,
            pool=tuple(HALF_OF),
            blank=BLANK,
            planes=sharing.stores * depth,
            depth=depth,
            storage=storage,
        ),
        map=TileMap(pages=2),
        colours=colours,
    )


def scene_of(sharing: Sharing, course: Course) -> Scene:
    """The scene in which a scheduler that follows the course is given its pictures."""
    machine = searched_machine(sharing)
    addresses = Addresses(machine=machine, sharing=sharing)
    taken = [(number, turn.taken) for number, turn in enumerate(course) if turn.taken is not None]
    return Scene.of(
        machine,
        [addresses.picture(0, picture.units) for _, picture in taken],
        [number for number, _ in taken],
        [Disturbance(number, 0) for number, turn in enumerate(course) if turn.lost],
    )


def shown(decision: Decision) -> Shown:
    """Play the course of a refutation.

    Raises `ValueError` if there is none, and `AssertionError` if the display shows nothing wrong: then the steps and
    the display do not mean the same, which is our mistake and not the scheduler's.
    """
    if decision.course is None:
        raise ValueError(f"{decision.steps.name}: {decision.words} There is no course to show")
    scene = scene_of(decision.steps.sharing, decision.course)
    played = play(scene, executed(decision.steps, decision.course))
    violation = played.first(frozenset(RULES))
    assert violation is not None, f"the course of {decision.steps.name} breaks no rule on the display"
    return Shown(decision=decision, scene=scene, play=played, violation=violation)


FOLLOWER = '''\
"""Takes the steps of {target} through the scene of {case}. Written by Planeproof."""

from planeproof.hosts import load
from planeproof.spec.steps import {names}
from planeproof.spec.steps.executing import executed, steps_of

COURSE = (
{course},
)

Follower = executed(steps_of(load({target!r}).make()), COURSE)
'''


def save(refutation: Shown, target: str, folder: Path) -> Path:
    """Write the case of a refutation, and beside it a scheduler that follows the course; the answer is the case.

    ``target`` is where the steps are found: ``package.module:Name`` or ``file.py:Name``, without arguments to make.
    ``planeproof replay CASE`` then shows it.
    """
    stem = "".join(letter if letter.isalnum() else "-" for letter in target.rpartition(":")[2]).lower()
    case, follower = folder / f"{stem}.json", folder / f"{stem}.py"
    course = refutation.decision.course
    assert course is not None
    follower.write_text(_follower(target, case.name, course), encoding="utf-8")
    found = Found(
        target=f"{follower}:Follower", rule=refutation.violation.rule.id, note=f"REFUTED: {refutation.decision.words}"
    )
    save_case(case, Case(scene=refutation.scene, found=found))
    return case


def _follower(target: str, case: str, course: Course) -> str:
    names = "Taken, Turn" if any(turn.taken for turn in course) else "Turn"
    return FOLLOWER.format(target=target, case=case, names=names, course=",\n".join(_lines(course)))


def _lines(course: Course) -> Iterable[str]:
    return ("    " + pformat(turn, width=110).replace("\n", "\n    ") for turn in course)
