from dataclasses import replace

from planeproof.spec import OBLIGATIONS, Answer, Outcome, Report, Result, prove, prove_all

PROVED = OBLIGATIONS[0]
FALSE = replace(PROVED.without("the palette shows the side"), wanted=Answer.PROVED)


def test_the_weakest_result_decides() -> None:
    """One contrary result outweighs an open one, which outweighs all that are as wanted; nothing asked is open."""
    good, wrong, spent = prove(PROVED), prove(FALSE), prove(PROVED, rlimit=1)
    assert Report(results=(good,)).outcome is Outcome.AS_WANTED
    assert Report(results=(good, spent)).outcome is Outcome.OPEN
    assert Report(results=(good, spent, wrong)).outcome is Outcome.CONTRARY
    assert Report(results=()).outcome is Outcome.OPEN


def test_the_watcher_is_told_each_result_in_turn() -> None:
    """What the watcher saw is what the report holds."""
    seen: list[Result] = []
    report = prove_all((PROVED, FALSE), seen.append)
    assert tuple(seen) == report.results
    assert [result.obligation for result in seen] == [PROVED, FALSE]
