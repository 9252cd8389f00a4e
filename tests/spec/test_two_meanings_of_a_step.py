"""What a step is proved to do is what its bytes do on the display: the frames are the same, right or wrong."""

from collections.abc import Iterable

import numpy as np
import pytest
import z3

from planeproof.conformance.refuting import scene_of, searched_machine
from planeproof.contract import Burst, Scene
from planeproof.display import Frame, blank_frame, look_of
from planeproof.judge import play
from planeproof.spec.steps import Course, Steps, decide
from planeproof.spec.steps.executing import Executed
from planeproof.spec.steps.reference import REFERENCES
from tests.candidates.seeded import seeded_scene, tight
from tests.spec.own_schedulers import WRONG


class Watched(Executed):
    """Notes after each blanking, by its steps' own account, what the viewer sees."""

    def __init__(self, steps: Steps, course: Course = ()) -> None:
        super().__init__(steps, course)
        self.frames: list[Frame] = []

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Take the steps, then look."""
        bursts = super().blank(cycles)
        state, site = self.ghost.state, self.ghost.site
        units = tuple(
            tuple(int(z3.simplify(state.shown(cell, row)).as_long()) for row in site.all_rows)
            for cell in site.all_cells
        )
        self.frames.append(look_of(self.machine, self.ghost.addresses.picture(0, units)))
        return bursts


def assert_the_same(scene: Scene, watched: Watched) -> None:
    """Each frame of the play is that of the account, and not all of them are background."""
    refreshes = [refresh for refresh in play(scene, lambda: watched).refreshes if refresh.cycles > 0]
    assert len(refreshes) == len(watched.frames)
    for refresh, frame in zip(refreshes, watched.frames, strict=True):
        assert np.array_equal(refresh.frame, frame), f"refresh {refresh.number}"
    assert any((frame != blank_frame(scene.machine)).any() for frame in watched.frames)


@pytest.mark.parametrize("steps", REFERENCES, ids=lambda steps: str(steps.name))
def test_frames_of_steps_that_are_proved(steps: Steps) -> None:
    """In a scene with disturbances and blankings that hold next to nothing."""
    assert_the_same(seeded_scene(tight(searched_machine(steps.sharing)), 1), Watched(steps))


@pytest.mark.parametrize("steps", WRONG, ids=lambda steps: str(steps.name))
def test_frames_of_steps_that_are_refuted(steps: Steps) -> None:
    """In the scene of the refutation: the wrong frame is the one that the solver meant."""
    course = decide(steps).course
    assert course is not None
    assert_the_same(scene_of(steps.sharing, course), Watched(steps, course))
