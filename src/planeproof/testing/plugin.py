"""The pytest plugin: hooks that do nothing unless they are used. See `planeproof.testing` for what it is for."""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that pytest starts at once

from collections.abc import Generator

import pytest

from planeproof.testing.holding import ARGUMENT, MARK
from planeproof.testing.options import add_options, asked_of


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add the options."""
    add_options(parser)


def pytest_sessionstart(session: pytest.Session) -> None:
    """Refuse what can't be used before any test runs, and before there are any workers."""
    asked = asked_of(session.config)
    if asked is None:
        return
    from planeproof.testing.refusing import require

    try:
        require(asked)
    except ValueError as error:
        raise pytest.UsageError(f"planeproof: {error}") from error


@pytest.hookimpl(wrapper=True)
def pytest_make_collect_report(
    collector: pytest.Collector,
) -> Generator[None, pytest.CollectReport, pytest.CollectReport]:
    """Put the tests of the target before all others."""
    report = yield
    if isinstance(collector, pytest.Session):
        asked = asked_of(collector.config)
        if asked is not None:
            from planeproof.testing.items import Target

            report.result = [Target.of(collector, asked), *report.result]
    return report


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    """Of a test made by `planeproof.testing.holds`, make one for each saved case and each machine."""
    made = getattr(metafunc.function, MARK, None)
    if made is None:
        return
    from planeproof.testing.refusing import questions_about

    asked, rule = made
    try:
        questions = questions_about(asked, rule, metafunc.config.rootpath)
    except ValueError as error:
        raise pytest.Collector.CollectError(f"holds: {error}") from error
    metafunc.parametrize(ARGUMENT, list(questions.values()), ids=list(questions))
