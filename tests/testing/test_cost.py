"""The plugin costs a run that does not use it nothing."""

import pytest

from tests.testing.running import run

pytest_plugins = "pytester"

LOOKS = """
import sys

def test_nothing_of_ours_is_here():
    heavy = {name.partition(".")[0] for name in sys.modules} & {"numpy", "msgspec", "click", "rich", "z3"}
    assert not heavy
    assert not {"hypothesis", "hypothesis.core", "hypothesis.internal"} & set(sys.modules)
    ours = {name for name in sys.modules if name.startswith("planeproof.")}
    assert ours == {
        "planeproof.testing",
        "planeproof.testing.asked",
        "planeproof.testing.holding",
        "planeproof.testing.options",
        "planeproof.testing.plugin",
        "planeproof.testing.questions",
    }
"""


def test_a_plain_run_imports_nothing_heavy(pytester: pytest.Pytester) -> None:
    """No numpy, no Hypothesis and none of our packages but the plugin's own few modules."""
    pytester.makepyfile(test_plain=LOOKS)
    result = run(pytester, "-p", "no:hypothesispytest", "test_plain.py")
    result.assert_outcomes(passed=1)


def test_the_same_run_can_tell(pytester: pytest.Pytester) -> None:
    """Where somebody does import us, the test above fails."""
    pytester.makepyfile(test_plain=f"import planeproof.search\n{LOOKS}")
    result = run(pytester, "-p", "no:hypothesispytest", "test_plain.py")
    result.assert_outcomes(failed=1)
