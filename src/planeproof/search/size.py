"""How big a scene is to whoever has to read it."""

import numpy as np

from planeproof.contract import Scene

Size = tuple[int, ...]


def size(scene: Scene) -> Size:
    """Smaller is easier to read: pictures come first, then occupied cells, window, disturbances, tiles, ink, ..."""
    machine = scene.machine
    ink = sum(int(np.unpackbits(picture.rows).sum()) for picture in scene.pictures)
    around = machine.window.pitch * machine.window.map_height - machine.cells
    return (
        len(scene.pictures),
        scene.occupied,
        machine.cells,
        len(scene.disturbances),
        machine.cap,
        ink,
        sum(scene.ready),
        around + machine.window.first_line + machine.tiles.count,
        sum(disturbance.refresh for disturbance in scene.disturbances),
        sum(disturbance.cycles for disturbance in scene.disturbances),
    )
