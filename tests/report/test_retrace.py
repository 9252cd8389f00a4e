import numpy as np
import pytest

from planeproof.contract import Disturbance, Rule
from planeproof.contract.rules import EXACT_REVEAL, HIDDEN_WRITES, IN_ORDER, PROGRESS
from planeproof.judge import play
from planeproof.report.retrace import moment_of
from tests.report.schedulers import Early, Idle, Torn
from tests.report.stories import full_scene, niche_scene


@pytest.mark.parametrize("make", [Early, Torn])
def test_the_pixels_of_every_hidden_write_are_those_between_before_and_after(make: type) -> None:
    """Going through the play again, byte by byte, changes just the pixels that the judge reported."""
    result = play(niche_scene([Disturbance(1, 60)]), make)
    violations = [v for v in result.violations if v.rule is HIDDEN_WRITES]
    assert len(violations) >= 15
    for violation in violations:
        moment = moment_of(result, violation)
        assert moment is not None
        assert violation.pixels is not None
        np.testing.assert_array_equal(moment.before != moment.after, violation.pixels)


def test_the_last_moment_of_a_blanking_is_its_frame() -> None:
    """After the last byte of a blanking, what would be seen is what was seen."""
    result = play(full_scene(), Torn)
    last = [v for v in result.violations if v.rule is HIDDEN_WRITES][-1]
    moment = moment_of(result, last)
    assert moment is not None
    np.testing.assert_array_equal(moment.after, result.refreshes[last.refresh].frame)


@pytest.mark.parametrize(("make", "rule"), [(Idle, PROGRESS)])
def test_what_names_no_byte_has_no_moment(make: type, rule: Rule) -> None:
    """A rule that is broken by what was not done can't be traced to a byte."""
    result = play(niche_scene(), make)
    violation = result.first(frozenset({rule}))
    assert violation is not None
    assert moment_of(result, violation) is None
    assert result.first(frozenset({EXACT_REVEAL, IN_ORDER})) is None
