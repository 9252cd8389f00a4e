from dataclasses import replace

from planeproof.spec import OBLIGATIONS, Answer, Outcome, Report, Result, prove, prove_all, table

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


def test_the_table_has_a_line_for_each_result_and_explains_the_others() -> None:
    """A result as wanted takes one line; a contrary one is followed by its statement and its witness."""
    lines = table(prove_all((PROVED, FALSE)))
    assert lines[0].split() == ["theorem", "obligation", "size", "wanted", "answer", "resources", "seconds"]
    assert lines[1].startswith("1 hiding")
    assert "  proved  proved  " in lines[1]
    assert "  proved  refuted  " in " ".join(lines[2].split(" "))
    assert lines[3] == f"    {FALSE.statement}"
    assert any(line.startswith("    value in the other: ") for line in lines[4:])


def test_an_open_result_says_why() -> None:
    """The reason of an UNKNOWN stands below its line."""
    lines = table(Report(results=(prove(PROVED, rlimit=1),)))
    assert any(line.startswith("    z3 gave up") for line in lines)
