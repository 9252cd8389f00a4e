"""A scene in words: its machine, the pictures as text, when they are ready, and the disturbances."""

from collections.abc import Sequence

from planeproof.contract import Machine, Picture, Scene
from planeproof.contract.picture import same_rows
from planeproof.display import look_of
from planeproof.report.figures import counted, spans, wrapped
from planeproof.report.machine import machine_lines
from planeproof.report.strip import Cut, Panel, cell_panel, cut_round, frame_panel, legend, side_by_side

PICTURES_SHOWN = 6
"""Pictures of a scene that are drawn unless all are asked for."""


def scene_lines(scene: Scene, indent: int, *, concerned: Sequence[int] | None = None) -> list[str]:
    """The whole scene; of its pictures those ``concerned`` are drawn, all of them if None."""
    lines = machine_lines(scene.machine, indent)
    if not scene.pictures:
        return [*lines, " " * indent + "no pictures at all"]
    shown = range(len(scene.pictures)) if concerned is None else _first(concerned)
    for number, picture in enumerate(scene.pictures):
        if number in shown:
            lines += wrapped(_picture(scene, number, picture), indent)
    left_out = len(scene.pictures) - len(set(shown))
    if left_out:
        lines.append(" " * indent + f"{counted(left_out, 'more picture')}, not shown here")
    lines += _disturbances(scene, indent)
    return [*lines, *_drawn(scene, [picture for picture in _new(scene) if picture.number in shown], indent)]


def cell_name(machine: Machine, cell: int) -> str:
    """``cell 4 (column 0, row 1)``; without the place where there is one cell only."""
    row, column = divmod(cell, machine.window.columns)
    return f"cell {cell}" if machine.cells == 1 else f"cell {cell} (column {column}, row {row})"


def _first(concerned: Sequence[int]) -> list[int]:
    return sorted(set(concerned))[:PICTURES_SHOWN]


def _picture(scene: Scene, number: int, picture: Picture) -> str:
    ready = f"picture {number}, ready from refresh {scene.ready[number]} on: "
    if not picture.occupied:
        return ready + "empty"
    total = scene.machine.cells
    first = next(n for n in range(number + 1) if same_rows([scene.pictures[n]], [picture]))
    again = "" if first == number else f"; the same as picture {first}"
    few = total > 1 and len(picture.occupied) <= 2 * PICTURES_SHOWN
    cells = f" (cell{'s' * (len(picture.occupied) > 1)} {spans(picture.occupied)})" if few else ""
    return f"{ready}{len(picture.occupied)} of {counted(total, 'cell')} occupied{cells}{again}"


def _new(scene: Scene) -> list[Picture]:
    """The pictures that are worth drawing: neither empty nor the same as an earlier one."""
    first = {picture.rows.tobytes(): picture for picture in reversed(scene.pictures)}
    return [picture for picture in scene.pictures if picture.occupied and first[picture.rows.tobytes()] is picture]


def _disturbances(scene: Scene, indent: int) -> list[str]:
    full = scene.machine.blank_cycles
    said = [
        f"blanking {d.refresh} is lost"
        if d.cycles == 0
        else f"blanking {d.refresh} has only {d.cycles} of {full} cycles"
        for d in scene.disturbances
    ]
    return wrapped("disturbances: " + ("; ".join(said) if said else "none"), indent)


def _drawn(scene: Scene, pictures: Sequence[Picture], indent: int) -> list[str]:
    """Each picture whole where the window is small; otherwise which cells it occupies."""
    machine = scene.machine
    if not pictures:
        return []
    cut = cut_round(machine, ())
    if cut.within(machine):
        panels = [cell_panel(machine, _title(picture), picture.occupied, "#") for picture in pictures]
        return ["", *side_by_side(panels, indent=indent), " " * indent + "a character a cell: # occupied, · empty"]
    looks = [look_of(machine, picture) for picture in pictures]
    drawn = [_panel(machine, picture, cut) for picture in pictures]
    return ["", *side_by_side(drawn, indent=indent), " " * indent + legend(machine, looks, mask=False)]


def _panel(machine: Machine, picture: Picture, cut: Cut) -> Panel:
    return frame_panel(machine, _title(picture), look_of(machine, picture), cut)


def _title(picture: Picture) -> str:
    return f"picture {picture.number}"
