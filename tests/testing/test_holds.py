"""`holds`: one line gives a test of one's own a rule."""

import pytest

from planeproof.testing import holds
from tests.testing.running import run

pytest_plugins = "pytester"

SUITE = """
from mine import Early, Right
from planeproof.testing import holds

test_writes = holds(Early, "hidden-writes", machines="tiny.toml", cases="my cases", scenes=150)
test_order = holds("mine:Right", "in-order", machines=("tiny.toml", "bench"), cases="my cases", scenes=150)
"""


def test_one_line_is_a_test_for_each_machine_and_saved_case(pytester: pytest.Pytester) -> None:
    """What is found is saved, and from then on replayed before the machines; each test judges by its rule alone."""
    pytester.mkdir("sub").joinpath("test_own.py").write_text(SUITE, "utf-8")
    result = run(pytester, "-v", "sub/test_own.py", "--rootdir", str(pytester.path))
    result.assert_outcomes(passed=2, failed=1)
    result.stdout.fnmatch_lines(["sub/test_own.py::test_writes[[]tiny[]] FAILED*", "*<-- here, byte*"])
    saved = sorted(path.name for path in (pytester.path / "my cases").iterdir())
    assert "Early-hidden-writes-tiny.json" in saved

    again = run(pytester, "-v", "sub/test_own.py", "--rootdir", str(pytester.path))
    again.assert_outcomes(passed=2 + len(saved), failed=1 + len(saved))
    again.stdout.fnmatch_lines(
        [
            "sub/test_own.py::test_writes[[]Early-hidden-writes-tiny[]] FAILED*",
            "sub/test_own.py::test_writes[[]tiny[]] FAILED*",
            "sub/test_own.py::test_order[[]Early-hidden-writes-tiny[]] PASSED*",
            "sub/test_own.py::test_order[[]bench[]] PASSED*",
        ]
    )


def test_a_machine_may_be_a_value_and_workers_may_share(pytester: pytest.Pytester) -> None:
    """Both at once."""
    pytester.makepyfile(
        test_own="""
        from mine import Right
        from planeproof import read_machine
        from planeproof.testing import holds

        test_order = holds(Right, "in-order", machines=[read_machine("tiny.toml")], scenes=150)
        test_reveal = holds(Right, "exact-reveal", machines=read_machine("tiny.toml"), scenes=150)
        """
    )
    result = run(pytester, "-v", "-n", "2", "test_own.py")
    result.assert_outcomes(passed=2)
    result.stdout.fnmatch_lines(["*test_order[[]tiny[]]*"])


def test_a_fault_of_the_candidate_is_told_in_full(pytester: pytest.Pytester) -> None:
    """There is no other test that would."""
    pytester.makepyfile(
        test_own="""
        from planeproof.testing import holds
        test_order = holds("mine:Raises", "in-order", machines="tiny.toml", scenes=150)
        """
    )
    result = run(pytester, "test_own.py")
    result.assert_outcomes(failed=1)
    result.stdout.fnmatch_lines(["The candidate broke a law of the contract", "*ZeroDivisionError*"])


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("holds('mine:Right', 'exact-revel')", "there is no rule 'exact-revel'; there are: hidden-writes"),
        ("holds('mine:Rihgt', 'in-order')", "did you mean 'Right'?"),
        ("holds('mine:Right', 'in-order', machines=())", "machines are none: name at least one"),
        ("holds('mine:Right', 'in-order', machines='lost.toml')", "no such file: check the path"),
        ("holds('mine:Right', 'in-order', profile='lax')", "'lax' is not a valid Profile"),
        ("holds('mine:Right', 'in-order', scenes=0)", "scenes is 0: at least 1 must be played"),
    ],
)
def test_a_mistake_in_the_line_is_an_error_of_the_collection(line: str, said: str, pytester: pytest.Pytester) -> None:
    """In one line, so that no test can be lost in silence."""
    pytester.makepyfile(test_own=f"from planeproof.testing import holds\ntest_order = {line}\n")
    result = run(pytester, "test_own.py")
    result.assert_outcomes(errors=1)
    assert result.ret == pytest.ExitCode.INTERRUPTED
    result.stdout.fnmatch_lines([f"holds: *{said}*".replace("[", "[[]")])


def test_without_the_plugin_it_fails(pytester: pytest.Pytester) -> None:
    """Turned off, nothing asks the question; that is an error and no pass."""
    pytester.makepyfile(test_own=SUITE)
    pytester.makepyfile(mine="class Early: pass\nclass Right: pass\n")
    off = ("-p", "no:planeproof", "-p", "no:planeproof.testing.plugin")
    result = pytester.runpytest_subprocess(*off, "test_own.py")
    result.assert_outcomes(errors=2)
    result.stdout.fnmatch_lines(["*fixture 'planeproof_question' not found*"])


def test_it_says_what_it_is() -> None:
    """The docstring that pytest and editors show."""
    assert holds("mine:Right", "in-order").__doc__ == "in-order holds."
