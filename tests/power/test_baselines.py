import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planeproof.contract import Machine, Scene
from planeproof.machines import read_machine, shipped
from planeproof.power import arrays, fitting, uniform

MACHINES = {name: read_machine(name) for name in shipped()}
"""All that ship: of one and of two bits a pixel, every storage."""


def made(machine: Machine, make: str) -> list[Scene]:
    """Thirty scenes of a baseline that draws by itself."""
    source = np.random.default_rng(1)
    draw = {"uniform": uniform.random_scene, "fitting": fitting.random_scene}[make]
    return [draw(machine, source) for _ in range(30)]


@pytest.mark.parametrize("make", ["uniform", "fitting"])
@pytest.mark.parametrize("name", MACHINES)
def test_random_scenes_are_on_the_machine_as_given(name: str, make: str) -> None:
    """1 to 6 pictures, all ready at once, no blanking disturbed, and every number of pictures is drawn."""
    scenes = made(MACHINES[name], make)
    assert {scene.machine for scene in scenes} == {MACHINES[name]}
    assert {len(scene.pictures) for scene in scenes} == {1, 2, 3, 4, 5, 6}
    assert all(not scene.disturbances and not any(scene.ready) for scene in scenes)


def test_uniform_draws_every_byte() -> None:
    """Mean and share of zeros as they must be: 127.5 and 1 in 256, within five standard deviations."""
    drawn = np.concatenate(
        [p.rows.ravel() for scene in made(MACHINES["vitrine-50"], "uniform") for p in scene.pictures]
    )
    deviation = 73.9 / np.sqrt(drawn.size)
    assert abs(drawn.mean() - 127.5) < 5 * deviation
    assert abs((drawn == 0).mean() - 1 / 256) < 5 * np.sqrt(1 / 256 / drawn.size)


@pytest.mark.parametrize("name", MACHINES)
def test_fitting_stays_within_what_must_be_shown(name: str) -> None:
    """From few cells to as many as that, and no picture of more."""
    counts = [len(picture.occupied) for scene in made(MACHINES[name], "fitting") for picture in scene.pictures]
    most = min(MACHINES[name].must_show, MACHINES[name].cells)
    assert max(counts) <= most
    assert max(counts) >= 0.8 * most
    assert min(counts) <= 0.2 * most


@given(st.sampled_from(sorted(MACHINES)).flatmap(lambda name: arrays.scenes(MACHINES[name])))
@settings(max_examples=20, deadline=None)
def test_arrays_are_pictures_of_the_machine_as_given(scene: Scene) -> None:
    """1 to 6 of them, all ready at once, no blanking disturbed."""
    assert 1 <= len(scene.pictures) <= 6
    assert scene.machine is MACHINES[scene.machine.name]
    assert not scene.disturbances
    assert not any(scene.ready)
