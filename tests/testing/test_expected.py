"""``--planeproof-expected``: a failure that is expected is told as such, with its reason, and is no pass."""

import json

import pytest

from tests.testing.running import about, run

pytest_plugins = "pytester"


def listed(pytester: pytest.Pytester, rule: str, expires: str = "2999-12-31") -> tuple[str, ...]:
    """Options of a run in which Early is expected to break ``rule``, by a case that was found before."""
    run(pytester, *about("Early"))
    (pytester.path / "kept" / "expected").mkdir()
    for case in (pytester.path / "kept").glob("*.json"):
        case.rename(case.parent / "expected" / case.name)
    written = json.dumps("kept/expected/Early-hidden-writes-tiny.json")
    entry = f'target = "mine:Early"\nrule = "{rule}"\ncase = {written}\nreason = "not yet"\nexpires = {expires}\n'
    pytester.makefile(".toml", listed=f"[[expected]]\n{entry}")
    return ("-v", "-rx", *about("Early"), "--planeproof-expected", "listed.toml")


def test_a_failure_that_is_expected_is_told_with_its_reason(pytester: pytest.Pytester) -> None:
    """Its rule is an expected failure on every machine, its entry passes, and the other rules have their answers."""
    result = run(pytester, *listed(pytester, "hidden-writes"))
    result.stdout.fnmatch_lines(
        [
            "planeproof::expected::1-hidden-writes PASSED*",
            "planeproof::tiny::hidden-writes XFAIL*",
            "XFAIL planeproof::tiny::hidden-writes - *not yet (let be until 2999-12-31: *",
        ]
    )
    came = result.parseoutcomes()
    assert came["xfailed"] == 1
    assert "is BROKEN" not in result.stdout.str()
    assert not list((pytester.path / "kept").glob("*hidden-writes*.json"))


@pytest.mark.parametrize(
    ("rule", "expires", "said"),
    [
        ("whole-reveal", "2999-12-31", "hidden-writes is broken first, not whole-reveal"),
        ("hidden-writes", "2001-01-01", "it expired on 2001-01-01"),
    ],
)
def test_an_entry_that_does_not_hold_excuses_nothing(
    rule: str, expires: str, said: str, pytester: pytest.Pytester
) -> None:
    """Its own test fails, and that of the rule as without it."""
    result = run(pytester, *listed(pytester, rule, expires))
    result.stdout.fnmatch_lines([f"planeproof::expected::1-{rule} FAILED*", "planeproof::tiny::hidden-writes FAILED*"])
    assert said in " ".join(result.stdout.str().split())
