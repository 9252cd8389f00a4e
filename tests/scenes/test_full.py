"""Scenes at the limits of a machine as it is given."""

import pytest

from planeproof.machines import read_machine, shipped
from planeproof.scenes.full import full_scene


@pytest.mark.parametrize("name", shipped())
def test_as_many_cells_as_must_be_shown_all_different(name: str) -> None:
    """On every machine that ships: four pictures at the limit, in different places, an empty one, and one of equals."""
    machine = read_machine(name)
    scene = full_scene(machine)
    assert scene.machine is machine
    full = [picture for picture in scene.pictures if picture.occupied]
    assert {len(picture.occupied) for picture in full} == {machine.must_show}
    patterns = [len({picture.rows[cell].tobytes() for cell in picture.occupied}) for picture in full]
    assert patterns == [machine.must_show] * 4 + [1]
    assert len({picture.occupied for picture in full}) == 3
    assert machine.cells - 1 in full[1].occupied
    assert 0 in full[0].occupied
