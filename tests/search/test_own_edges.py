"""A check of a user's own machine plays its edge scenes where they are kept, and says so where they are not."""

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from planeproof.candidates.reference import Delta
from planeproof.contract import Machine
from planeproof.judge import Verdict
from planeproof.machines import machine_toml, read_machine
from planeproof.page import page_html
from planeproof.record import read_record, write_record
from planeproof.report import verdict_lines
from planeproof.report.formats import junit_xml, markdown_summary, sarif_log
from planeproof.scenes.edges import edge_scenes, keep_edges
from planeproof.search import check
from planeproof.search.journal import JournalError
from tests.scenes.own import OWN, TOML, some_edges

VITRINE = read_machine("vitrine-60")


def checked(machines: object, edges: Path, **asked: Any) -> Verdict:  # noqa: ANN401 -- any argument of `check`
    """A short check of a scheduler that is right."""
    asked = {"scenes": 4, "smaller_seconds": 0} | asked
    return check("planeproof.candidates.reference:Delta", machines=machines, edges=edges, **asked)  # type: ignore[arg-type]


def told(verdict: Verdict) -> list[tuple[int, str]]:
    """How many edge scenes were played, and what is said of them."""
    return [(basis.scenes, basis.source) for basis in verdict.basis if "stated edges" in basis.source]


def test_kept_scenes_are_played(tmp_path: Path) -> None:
    """All of them, or as given those on the machine itself; and nothing is said to be lacking."""
    keep_edges(some_edges(), OWN, tmp_path)
    where = "scenes at stated edges, supplied by a solver, on the machines as given"
    assert told(checked(OWN, tmp_path)) == [(2, f"{where} and on small relatives")]
    assert told(checked(OWN, tmp_path, as_given=True)) == [(1, where)]


def test_what_is_lacking_is_told_with_the_line_to_type(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """With the file as it was named and the folder, unless it is the one that is looked into by itself."""
    monkeypatch.chdir(tmp_path)
    (tmp_path / "my plate.toml").write_text(TOML, "utf-8")
    start = "scenes at stated edges; none are kept for my plate, to have them solved: planeproof edges"
    assert told(checked("my plate.toml", Path("kept"))) == [(0, f"{start} 'my plate.toml' --into kept")]
    assert told(check(Delta, machines="my plate.toml", scenes=4)) == [(0, f"{start} 'my plate.toml'")]
    assert told(checked(OWN, Path("kept"))) == [(0, f"{start} FILE.toml --into kept")]


def test_an_altered_machine_is_not_served_with_old_scenes(tmp_path: Path) -> None:
    """It has a tile less than when they were solved."""
    keep_edges(some_edges(), OWN, tmp_path)
    altered = replace(OWN, tiles=replace(OWN.tiles, pool=(1, 2, 3, 4, 5)))
    ((scenes, source),) = told(checked(altered, tmp_path))
    assert scenes == 0
    assert "none are kept for my plate" in source


def test_it_is_told_wherever_the_verdict_is(tmp_path: Path) -> None:
    """On the terminal, in the record and as it is read back, on the page, in JUnit, SARIF and Markdown."""
    verdict = checked(OWN, tmp_path / "kept")
    record = write_record(verdict)
    texts = [
        " ".join(verdict_lines(verdict)),
        " ".join(verdict_lines(read_record(record, "record.json"))),
        record.decode(),
        page_html(verdict),
        junit_xml(verdict).decode(),
        sarif_log(verdict),
        markdown_summary(verdict),
    ]
    missing = [text for text in texts if "none are kept for my plate" not in " ".join(text.split())]
    assert missing == []


def test_machines_that_ship_are_as_they_were(tmp_path: Path) -> None:
    """Their scenes are those that ship, whatever is kept for them; beside one of them another's lack is told."""
    shipped = len(edge_scenes(VITRINE))
    keep_edges(some_edges(VITRINE), VITRINE, tmp_path)
    where = "scenes at stated edges, supplied by a solver, on the machines as given and on small relatives"
    assert told(checked(VITRINE, tmp_path)) == [(shipped, where)]
    ((scenes, source),) = told(checked([VITRINE, OWN], tmp_path))
    assert scenes == shipped
    assert source.startswith(f"{where}; none are kept for my plate, to have them solved: planeproof edges ")


def test_each_machine_has_its_own(tmp_path: Path) -> None:
    """Of two machines, one that has scenes and one that has not, each is played and told by itself."""
    other = replace(OWN, name="other")
    keep_edges(some_edges(), OWN, tmp_path)
    ((scenes, source),) = told(checked([other, OWN], tmp_path))
    assert scenes == len(some_edges().scenes)
    assert "none are kept for other, to" in source


@pytest.mark.parametrize("machines", [[OWN], [VITRINE, OWN]], ids=["alone", "beside one that ships"])
def test_how_many_share_the_work_does_not_matter(machines: list[Machine], tmp_path: Path) -> None:
    """With 1 and 2 processes the record is the same to the byte, with the scenes in it that are kept."""
    keep_edges(some_edges(), OWN, tmp_path)
    one, two = (checked(machines, tmp_path, jobs=jobs) for jobs in (1, 2))
    assert write_record(one) == write_record(two)
    assert told(two)[0][0] == sum(len(edge_scenes(machine)) for machine in machines) + len(some_edges().scenes)


def test_a_journal_is_of_a_check_with_these_scenes(tmp_path: Path) -> None:
    """One that was begun without them, or with others, is of another check."""
    journal, kept = tmp_path / "journal", tmp_path / "kept"
    checked(OWN, kept, journal=journal)
    keep_edges(some_edges(), OWN, kept)
    with pytest.raises(JournalError, match=r"edges is \[\] there and \['my plate "):
        checked(OWN, kept, journal=journal)
    journal.unlink()
    checked(OWN, kept, journal=journal)
    checked(OWN, kept, journal=journal)
    keep_edges(replace(some_edges(), scenes=some_edges().scenes[1:]), OWN, kept)
    with pytest.raises(JournalError, match=r"edges is \['my plate "):
        checked(OWN, kept, journal=journal)


def test_a_saved_machine_is_the_same_machine(tmp_path: Path) -> None:
    """A value that is written as TOML, and solved by that file, gets its scenes as a value too."""
    file = tmp_path / "saved.toml"
    file.write_text(machine_toml(OWN), "utf-8")
    keep_edges(some_edges(), read_machine(file), tmp_path / "kept")
    assert told(checked(OWN, tmp_path / "kept"))[0][0] == len(some_edges().scenes)
