from dataclasses import replace

from planeproof.spec import OBLIGATIONS, Answer, Report, confirmation_lines, prove, prove_all, report_lines

PROVED = OBLIGATIONS[0]
FALSE = replace(PROVED.without("the palette shows the side"), id="false", wanted=Answer.PROVED)


def test_a_line_for_each_answer_below_its_statement() -> None:
    """What is as wanted takes one line; what is contrary is followed by the witness."""
    lines = report_lines(prove_all((PROVED, FALSE)))
    assert lines[0].startswith("FAIL  z3 ")
    assert lines[1].startswith("  1 of 2 as wanted; ")
    assert lines[3] == "1  hiding"
    (good,) = (number for number, line in enumerate(lines) if line.startswith(f"    {PROVED.id}  proved, as wanted"))
    assert lines[good + 1].startswith("    false ")
    assert "  REFUTED, wanted proved" in lines[good + 1]
    assert lines[good + 2] == "      witness: it is not so where"
    assert any(line.startswith("        value in the other: ") for line in lines[good + 3 :])


def test_a_statement_is_told_once() -> None:
    """However the obligations of a theorem are ordered, those of one statement stand together below it."""
    chosen = [one for one in OBLIGATIONS if one.theorem == 1]
    lines = report_lines(prove_all(chosen[::2] + chosen[1::2]))
    assert [line[:20] for line in lines].count(f"  {chosen[0].statement[:18]}") == 1
    below = [line.split()[0] for line in lines if line.startswith("    ")]
    assert below == sorted(below, key=lambda name: name.startswith("seen-"))


def test_an_open_answer_says_why() -> None:
    """The reason of an UNKNOWN stands below its line, also where only what is not as wanted is told."""
    report = Report(results=(prove(PROVED, rlimit=1),))
    for lines in (report_lines(report), confirmation_lines(report, unit="units")):
        assert lines[0].startswith("UNKNOWN  z3 ")
        assert any(line.startswith("      z3 gave up") for line in lines)


def test_a_confirmation_tells_only_what_is_not_as_wanted() -> None:
    """Two lines in sum where all is well; then a line, with its witness, for the one that is not."""
    assert len(confirmation_lines(prove_all((PROVED,)), unit="units")) == 2
    assert confirmation_lines(prove_all((PROVED, FALSE)), unit="units")[2].startswith("    false  REFUTED")


def test_nothing_asked_is_nothing_proved() -> None:
    """An empty report is UNKNOWN, not PASS."""
    assert report_lines(Report(results=())) == ["UNKNOWN  nothing was asked, so nothing is proved"]
