"""A scene for the page: its machine, its pictures, when they are ready, and the disturbances."""

from dataclasses import dataclass

from planeproof.contract import Picture, Scene
from planeproof.display import look_of
from planeproof.page.shots import Gallery, Shot
from planeproof.report.figures import counted
from planeproof.report.machine import demands, machine_headline

FEW = 3
"""Disturbances that are told in short."""


@dataclass(frozen=True, kw_only=True)
class SceneView:
    """A scene in words and pictures: the machine's name, what it has, and what is demanded on it."""

    machine: str
    has: str
    demands: str
    pictures: tuple[Shot, ...]
    disturbances: tuple[str, ...]


def view_of_scene(scene: Scene, gallery: Gallery) -> SceneView:
    """All of the scene."""
    return SceneView(
        machine=scene.machine.name,
        has=machine_headline(scene.machine).removeprefix(scene.machine.name).strip(),
        demands=demands(scene.machine),
        pictures=tuple(_picture(scene, picture, gallery) for picture in scene.pictures),
        disturbances=_disturbances(scene),
    )


def in_short(scene: Scene) -> str:
    """The scene in a sentence or two: how big it is, and which of its blankings are cut."""
    window, number = scene.machine.window, len(scene.pictures)
    size = f"{counted(number, 'picture')} on a window of {window.columns} x {window.rows} cells"
    cut = _disturbances(scene)
    few = "; ".join(cut[:FEW]) + (f"; and {len(cut) - FEW} more" if len(cut) > FEW else "")
    return f"{size}." + (f" Disturbed: {few}." if cut else " No blanking is cut.")


def _disturbances(scene: Scene) -> tuple[str, ...]:
    full = scene.machine.blank_cycles
    return tuple(
        f"blanking {d.refresh} is lost" if not d.cycles else f"blanking {d.refresh} has {d.cycles} of {full} cycles"
        for d in scene.disturbances
    )


def _picture(scene: Scene, picture: Picture, gallery: Gallery) -> Shot:
    number, machine = picture.number, scene.machine
    occupied = f"{len(picture.occupied)} of {counted(machine.cells, 'cell')} occupied" if picture.occupied else "empty"
    caption = f"ready from refresh {scene.ready[number]} on; {occupied}"
    return gallery.frame(machine, look_of(machine, picture), (f"picture {number}", caption, f"Picture {number}."))
