"""A record holds all of a verdict: what is made from it is what would have been made from the verdict itself."""

from pathlib import Path

import numpy as np
import pytest

from planeproof.judge import Outcome, RuleStatus
from planeproof.record import load_record, read_record, write_record
from planeproof.report import verdict_lines
from tests.record.verdicts import KINDS, verdict_of_kind


@pytest.mark.parametrize("kind", KINDS)
def test_what_is_read_is_what_was_written(kind: str) -> None:
    """The whole text of the answer is the same, and written again so is the record, byte for byte."""
    verdict = verdict_of_kind(kind)
    record = write_record(verdict)
    again = read_record(record, "record.json")
    assert verdict_lines(again) == verdict_lines(verdict)
    assert write_record(again) == record
    assert (again.basis, again.rules, again.costs, again.source) == (
        verdict.basis,
        verdict.rules,
        verdict.costs,
        verdict.source,
    )


def test_the_kinds_are_what_they_are_called() -> None:
    """All outcomes that a check can have, one with a rule that is only exposed, and one with several findings."""
    outcomes = {kind: verdict_of_kind(kind).outcome for kind in KINDS}
    assert set(outcomes.values()) == set(Outcome) - {Outcome.UNKNOWN}
    assert RuleStatus.EXPOSED in {report.status for report in verdict_of_kind("exposed").rules}
    assert len(verdict_of_kind("fail by several rules").findings) > 1


@pytest.mark.parametrize("kind", [kind for kind in KINDS if kind.startswith("fail")])
def test_frames_are_judged_again_not_believed(kind: str) -> None:
    """A record holds no pixel of a frame, and yet every frame and every violation's mask is there again."""
    verdict = verdict_of_kind(kind)
    again = read_record(write_record(verdict), "record.json")
    for one, other in zip(verdict.findings, again.findings, strict=True):
        assert one.play.transcript == other.play.transcript
        frames = zip(one.play.refreshes, other.play.refreshes, strict=True)
        assert all(np.array_equal(a.frame, b.frame) for a, b in frames)
        assert np.array_equal(one.violation.pixels, other.violation.pixels)  # type: ignore[arg-type]


def test_a_record_can_be_a_file(tmp_path: Path) -> None:
    """As `check --report` leaves it."""
    verdict = verdict_of_kind("fail")
    (tmp_path / "record.json").write_bytes(write_record(verdict))
    assert verdict_lines(load_record(tmp_path / "record.json")) == verdict_lines(verdict)


def test_where_the_candidate_is_written_is_told() -> None:
    """File and line of its class, for those who show findings beside the code."""
    source = read_record(write_record(verdict_of_kind("candidate error")), "record.json").source
    assert source is not None
    assert Path(source.file).read_text("utf-8").splitlines()[source.line - 1] == "class Raises(Fresh):"
