"""A check that keeps a journal goes on from it: nothing is played twice, nothing is made of another check."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from planeproof.candidates.reference import Delta, Fresh
from planeproof.contract import RULES, Scheduler
from planeproof.judge import Profile
from planeproof.machines import read_machine
from planeproof.record import write_record
from planeproof.search import check
from planeproof.search.journal import JournalError, seed_in, units_in
from tests.search.wrong import DeclinesSecond, RaisesInOffer

VITRINE = read_machine("vitrine-50")
SCENES = 300


@pytest.fixture
def journal(tmp_path: Path) -> Path:
    """A file that is not there yet, in a folder that is not there yet."""
    return tmp_path / "kept" / "journal"


class Counted:
    """A candidate that counts how many schedulers are made, so how many scenes are played."""

    def __init__(self, make: Callable[[], Scheduler]) -> None:
        self.made = 0
        self._make = make

    def __call__(self) -> Scheduler:
        """Make one."""
        self.made += 1
        return self._make()


def kept(make: object, journal: Path | None, **asked: Any) -> bytes:  # noqa: ANN401 -- any argument of `check`
    """The record of a check that keeps ``journal``."""
    asked = {"machines": [VITRINE], "scenes": SCENES, "smaller_seconds": 0} | asked
    return write_record(check(make, journal=journal, **asked))  # type: ignore[arg-type]


def played(lines: list[bytes]) -> int:
    """Scenes of the units in these lines of a journal."""
    return sum(json.loads(line)["tally"]["played"] for line in lines)


def test_a_check_that_is_over_plays_nothing_again(journal: Path) -> None:
    """The same record to the byte, without a scheduler being made; what was played before is all in the journal."""
    counted = Counted(Delta)
    first = kept(counted, journal)
    _, *units = journal.read_bytes().splitlines()
    assert counted.made == played(units) > SCENES
    assert units_in(journal) == len(units) >= 7
    assert kept(counted, journal) == first
    assert counted.made == played(units)
    assert kept(Counted(Delta), None) == first


@pytest.mark.parametrize("torn", [b"", b'{"unit":"independent 0, 100 from'])
def test_only_what_is_missing_is_played(journal: Path, torn: bytes) -> None:
    """Where the process died after three units, perhaps in the middle of a line: the rest, and the same record."""
    counted = Counted(Delta)
    first = kept(counted, journal)
    lines = journal.read_bytes().splitlines(keepends=True)
    journal.write_bytes(b"".join(lines[:4]) + torn)
    counted.made = 0
    assert kept(counted, journal) == first
    assert counted.made == played(lines[4:]) > 0
    assert journal.read_bytes().splitlines(keepends=True) == lines


def test_a_longer_check_goes_on_from_a_shorter(journal: Path) -> None:
    """How much was to be played is not part of what was checked; only a unit that was a shorter one is played anew."""
    counted = Counted(Delta)
    kept(counted, journal, scenes=600)
    counted.made = 0
    kept(counted, journal, scenes=1000)
    assert counted.made == (500 - 250) + (500 - 300)


@pytest.mark.parametrize("wrong", [DeclinesSecond, RaisesInOffer])
def test_what_was_found_is_in_it(journal: Path, wrong: type[Scheduler]) -> None:
    """A rule that was broken is seen again in the scenes that showed it; what broke the contract is told as it was."""
    counted = Counted(wrong)
    first = kept(counted, journal)
    counted.made = 0
    assert kept(counted, journal) == first
    _, *units = journal.read_bytes().splitlines()
    assert counted.made == sum(len(json.loads(unit)["tally"]["smallest"]) for unit in units)


def test_what_was_cut_short_is_for_another_day(journal: Path) -> None:
    """A unit that the clock ended is not kept; the check by scenes that follows plays it whole."""
    kept(Fresh, journal, seconds=0.3)
    assert kept(Fresh, journal) == kept(Fresh, None)


@pytest.mark.parametrize(
    ("other", "said"),
    [
        ({"seed": 1}, "seed is 0 there and 1 here"),
        ({"machines": ["vitrine-60"]}, "machines is ['vitrine-50 "),
        ({"profile": Profile.SEEN}, "profile is 'strict' there and 'seen' here"),
        ({"as_given": True}, "as_given is False there and True here"),
        ({"only": RULES[:1]}, "rules is ["),
        ({"make": Fresh}, "target is 'planeproof.candidates.reference.delta:Delta' there and"),
    ],
)
def test_the_journal_of_another_check_is_refused(journal: Path, other: dict[str, Any], said: str) -> None:
    """With what differs, and nothing is changed in it."""
    kept(Delta, journal, scenes=4)
    changed: dict[str, Any] = {"make": Delta, "journal": journal, "scenes": 4} | other
    before = journal.read_bytes()
    with pytest.raises(JournalError) as refused:
        kept(**changed)
    assert said in str(refused.value)
    assert str(refused.value).startswith(f"{journal}: is of another check (")
    assert str(refused.value).endswith("delete the file to begin anew, or name another")
    assert journal.read_bytes() == before


def test_an_edited_candidate_is_another(journal: Path, tmp_path: Path) -> None:
    """Its name is the same, its file is not."""
    mine = tmp_path / "mine.py"
    mine.write_text("from planeproof.candidates.reference import Delta as Mine\n__all__ = ['Mine']\n", "utf-8")
    text = "from planeproof.candidates.reference import Delta\nclass Mine(Delta):\n    pass\n"
    mine.write_text(text, "utf-8")
    kept(f"{mine}:Mine", journal, scenes=4)
    mine.write_text(text + "\n# edited\n", "utf-8")
    with pytest.raises(JournalError, match="the candidate's file, or one that it imports, has been changed since"):
        kept(f"{mine}:Mine", journal, scenes=4)


def test_an_edited_file_that_a_candidate_imports_makes_it_another(
    journal: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """However far off: its base is in another file, and that takes a figure from a third."""
    monkeypatch.syspath_prepend(str(tmp_path))
    figures = tmp_path / "journal_figures.py"
    figures.write_text("LIMIT = 3\n", "utf-8")
    base = "from planeproof.candidates.reference import Delta\nimport journal_figures\nclass Base(Delta):\n    pass\n"
    (tmp_path / "journal_base.py").write_text(base, "utf-8")
    mine = tmp_path / "journal_mine.py"
    mine.write_text("from journal_base import Base\nclass Mine(Base):\n    pass\n", "utf-8")
    kept(f"{mine}:Mine", journal, scenes=4)
    kept(f"{mine}:Mine", journal, scenes=4)
    figures.write_text("LIMIT = 4\n", "utf-8")
    with pytest.raises(JournalError, match="or one that it imports, has been changed since"):
        kept(f"{mine}:Mine", journal, scenes=4)


def test_other_versions_are_another_check(journal: Path) -> None:
    """A seed would mean other scenes."""
    kept(Delta, journal, scenes=4)
    head, *others = journal.read_bytes().splitlines(keepends=True)
    older = json.loads(head)
    older["versions"]["hypothesis"] = "6.0.0"
    journal.write_bytes(json.dumps(older).encode() + b"\n" + b"".join(others))
    with pytest.raises(JournalError, match=r"versions is .*'hypothesis': '6.0.0'"):
        kept(Delta, journal, scenes=4)


@pytest.mark.parametrize("text", [b"notes of mine", b"notes\nof mine\n", b"{}\n", b'{"planeproof_record": 1}\n'])
def test_a_file_that_is_no_journal_is_refused_and_left_alone(journal: Path, text: bytes) -> None:
    """Also one without any line end, which must not be taken for one that was begun."""
    journal.parent.mkdir()
    journal.write_bytes(text)
    reads: tuple[Callable[[Path], object], ...] = (seed_in, units_in, lambda file: kept(Delta, file, scenes=4))
    for read in reads:
        with pytest.raises(JournalError, match="is not a journal of a check; name another file"):
            read(journal)
    assert journal.read_bytes() == text


@pytest.mark.parametrize("text", [b"", b'{"planepr', b'{"planeproof_journal": 1, "tar'])
def test_a_journal_that_was_hardly_begun_is_begun_anew(journal: Path, text: bytes) -> None:
    """The process died in the first line."""
    journal.parent.mkdir()
    journal.write_bytes(text)
    assert (seed_in(journal), units_in(journal)) == (None, 0)
    kept(Delta, journal, scenes=4, seed=9)
    assert (seed_in(journal), units_in(journal)) == (9, len(journal.read_bytes().splitlines()) - 1)


@pytest.mark.parametrize(
    ("where", "old", "new", "said"),
    [
        (b"independent 0", b'"played":2', b'"plaid":2', "independent 0, 2 from 0: "),
        (b"full", b'{"unit":"full', b'{"part":"full', "a line is no part of a journal"),
        (b"planeproof_journal", b'"seed": 0', b'"seed" 0', "its first line does not say what was checked"),
    ],
)
def test_a_damaged_journal_is_refused(journal: Path, where: bytes, old: bytes, new: bytes, said: str) -> None:
    """With the part that is damaged, and nothing is guessed."""
    kept(Delta, journal, scenes=4)
    lines = journal.read_bytes().splitlines(keepends=True)
    changed = [line.replace(old, new) if where in line else line for line in lines]
    assert changed != lines
    journal.write_bytes(b"".join(changed))
    with pytest.raises(JournalError) as refused:
        kept(Delta, journal, scenes=4)
    assert said in str(refused.value)


def test_a_place_that_can_t_be_written_is_an_error_before_anything_is_played(tmp_path: Path) -> None:
    """A folder stands where the file should be, or a file where the folder should be."""
    counted = Counted(Fresh)
    (tmp_path / "file").write_text("")
    for place in (tmp_path, tmp_path / "file" / "journal"):
        with pytest.raises(OSError, match=str(tmp_path)):
            kept(counted, place, scenes=4)
    assert counted.made == 0
