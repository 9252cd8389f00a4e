from pathlib import Path

import z3

from planeproof.spec import OBLIGATIONS, Answer, prove
from planeproof.spec.certificates import certificate, file_name, stale, write_all

FOLDER = Path(__file__).parents[2] / "specs" / "obligations"


def test_the_committed_certificates_are_fresh() -> None:
    """specs/obligations holds exactly what would be written now."""
    assert stale(OBLIGATIONS, FOLDER) == []


def test_what_is_written_is_read_back_with_the_same_answer() -> None:
    """z3 answers the text of each obligation as its status line announces."""
    for obligation in OBLIGATIONS:
        text = (FOLDER / file_name(obligation)).read_text("utf-8")
        solver = z3.Solver(ctx=z3.Context())
        solver.from_string(text)
        announced = "unsat" if obligation.wanted is Answer.PROVED else "sat"
        assert f"(set-info :status {announced})" in text
        assert str(solver.check()) == announced, obligation.id


def test_stale_files_are_named(tmp_path: Path) -> None:
    """A changed, a missing and a left-over file are each found, and writing again mends all three."""
    some = OBLIGATIONS[:3]
    write_all(some, tmp_path)
    assert stale(some, tmp_path) == []
    changed, missing, _ = (tmp_path / file_name(obligation) for obligation in some)
    changed.write_text(changed.read_text("utf-8").replace("unsat", "sat"), encoding="utf-8")
    missing.unlink()
    (tmp_path / "0-left-over.smt2").write_text("(check-sat)\n", encoding="utf-8")
    assert stale(some, tmp_path) == sorted(["0-left-over.smt2", changed.name, missing.name])
    write_all(some, tmp_path)
    assert stale(some, tmp_path) == []


def test_a_certificate_speaks_of_what_is_asked() -> None:
    """Without a premise the text lacks it and announces the opposite; statement and size stand in comments."""
    whole = OBLIGATIONS[0]
    dropped = whole.without("the palette shows the side")
    assert "; the palette shows the side\n" in certificate(whole)
    assert "; the palette shows the side\n" not in certificate(dropped)
    assert ":status unsat" in certificate(whole)
    assert ":status sat" in certificate(dropped)
    assert prove(dropped).answer is Answer.REFUTED
    assert "; Theorem 1, hiding-2-planes-depth-1: Two memories that agree" in certificate(whole)
