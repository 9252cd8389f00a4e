"""Scenes are on disk before the candidate runs, so that a crash loses nothing; what was found can be shown again."""

import subprocess
import sys
from collections.abc import Iterable
from pathlib import Path

import pytest

from planeproof.candidates.reference import Fresh
from planeproof.contract import RULES, Burst
from planeproof.contract.rules import FAIR_REFUSAL
from planeproof.judge import Outcome, Profile, play
from planeproof.machines import read_machine
from planeproof.scenes.cases import load_case
from planeproof.search import check
from planeproof.search.trial import PLAYING
from tests.search.wrong import DeclinesSecond, RaisesInOffer

VITRINE = read_machine("vitrine-50")
ROOT = Path(__file__).parents[2]


def test_the_scene_is_on_disk_while_it_is_played(tmp_path: Path) -> None:
    """A candidate that looks finds the very scene it is in, whole; when the check is over it is gone."""
    looks: list[bool] = []

    class Looks(Fresh):
        """Looks into the folder in every blanking."""

        def blank(self, cycles: int) -> Iterable[Burst]:
            """Compare what is there with the machine that it has been given."""
            case = load_case(tmp_path / PLAYING)
            assert case.found is not None
            looks.append(case.scene.machine == self.machine and case.found.target.endswith("Looks"))
            return super().blank(cycles)

    verdict = check(Looks, machines=[VITRINE], scenes=4, cases=tmp_path)
    assert verdict.outcome in (Outcome.PASS, Outcome.VACUOUS)
    assert len(looks) > 20
    assert all(looks)
    assert list(tmp_path.iterdir()) == []


def test_a_folder_that_is_not_there_is_made(tmp_path: Path) -> None:
    """With those above it; and without one nothing is written, and the finding says so."""
    folder = tmp_path / "some" / "where"
    (finding,) = check(DeclinesSecond, machines=[VITRINE], scenes=20, cases=folder).findings
    assert finding.case is not None
    assert Path(finding.case).parent == folder
    (unsaved,) = check(DeclinesSecond, machines=[VITRINE], scenes=20).findings
    assert unsaved.case is None


def test_no_scene_is_lost_to_another_of_its_name(tmp_path: Path) -> None:
    """The second machine's has a number, which is what is told; the same again is the same file."""
    told = [
        check(DeclinesSecond, machines=[machine], scenes=6, as_given=True, cases=tmp_path, smaller_seconds=0)
        .findings[0]
        .case
        for machine in ("vitrine-50", "bench", "vitrine-50", "bench")
    ]
    first, second = (str(tmp_path / f"DeclinesSecond-fair-refusal{more}.json") for more in ("", "-2"))
    assert told == [first, second] * 2
    assert [load_case(case).scene.machine.name for case in (first, second)] == ["vitrine-50", "bench"]
    assert len(list(tmp_path.iterdir())) == 2


def test_what_is_no_case_is_not_written_over(tmp_path: Path) -> None:
    """Whatever stands under the name stays as it is."""
    (tmp_path / "DeclinesSecond-fair-refusal.json").write_text("mine", "utf-8")
    (finding,) = check(
        DeclinesSecond, machines=[VITRINE], scenes=6, as_given=True, cases=tmp_path, smaller_seconds=0
    ).findings
    assert finding.case == str(tmp_path / "DeclinesSecond-fair-refusal-2.json")
    assert (tmp_path / "DeclinesSecond-fair-refusal.json").read_text("utf-8") == "mine"


@pytest.mark.parametrize("profile", Profile)
def test_a_finding_on_disk_shows_the_same_again(tmp_path: Path, profile: Profile) -> None:
    """Loaded and played, the case breaks the rule that it names, first of all, with the same words."""
    (finding,) = check(DeclinesSecond, machines=[VITRINE], scenes=6, cases=tmp_path, profile=profile).findings
    names = ["DeclinesSecond-fair-refusal-as-given.json", "DeclinesSecond-fair-refusal.json"]
    assert sorted(path.name for path in tmp_path.iterdir()) == names
    assert finding.case is not None
    case = load_case(finding.case)
    assert case.found is not None
    assert (case.found.rule, case.found.profile) == ("fair-refusal", profile.value)
    assert case.found.target == "tests.search.wrong:DeclinesSecond"
    again = play(case.scene, DeclinesSecond).first(frozenset(RULES))
    assert again is not None
    assert (again.rule, again.said) == (FAIR_REFUSAL, case.found.note)


def test_a_candidates_own_fault_is_kept_too(tmp_path: Path) -> None:
    """The scene in which it raised, under no rule's name."""
    verdict = check(RaisesInOffer, machines=[VITRINE], scenes=20, cases=tmp_path)
    assert verdict.fault_case is not None
    case = load_case(verdict.fault_case)
    assert case.found is not None
    assert case.found.rule == ""
    assert "IndexError" in case.found.note
    assert any(len(picture.occupied) >= 2 for picture in case.scene.pictures)


DYING = """
from pathlib import Path
from planeproof.search import check
check("tests.search.wrong:DiesInBlank", machines=["vitrine-50"], scenes=20, cases=Path({folder!r}))
"""


REPLAYING = """
from planeproof.judge import play
from planeproof.scenes.cases import load_case
from tests.search.wrong import DiesInBlank
play(load_case({case!r}).scene, DiesInBlank)
"""


def test_a_crash_of_the_whole_process_leaves_the_scene(tmp_path: Path) -> None:
    """The process is gone at once, without a word; the case that is left kills the next process as well."""
    for _ in range(2):
        ended = subprocess.run([sys.executable, "-c", DYING.format(folder=str(tmp_path))], cwd=ROOT, check=False)
        assert ended.returncode == 9
    assert sorted(path.name for path in tmp_path.iterdir()) == ["left-over-1.json", PLAYING]
    case = load_case(tmp_path / PLAYING)
    assert case.found is not None
    assert case.found.target == "tests.search.wrong:DiesInBlank"
    assert "when the process ended" in case.found.note
    again = REPLAYING.format(case=str(tmp_path / PLAYING))
    assert subprocess.run([sys.executable, "-c", again], cwd=ROOT, check=False).returncode == 9


def test_an_interrupted_check_leaves_no_scene_behind(tmp_path: Path) -> None:
    """Ctrl-C is not the candidate's fault: it ends the check, and nothing claims that the process died."""

    class Interrupted(Fresh):
        """As if somebody pressed it in a blanking."""

        def blank(self, cycles: int) -> Iterable[Burst]:
            """Raise what the key does."""
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        check(Interrupted, machines=[VITRINE], scenes=4, cases=tmp_path)
    assert list(tmp_path.iterdir()) == []
