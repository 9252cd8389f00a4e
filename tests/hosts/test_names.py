"""A name that a module has not: what it has is said, and what was probably meant."""

import sys
from pathlib import Path

import pytest

from planeproof.hosts import TargetError, load

METHODS = """
    def start(self, machine): return []
    def offer(self, picture): return None
    def blank(self, cycles): return []
"""


def refusal(folder: Path, name: str, text: str) -> str:
    """What is said when ``name`` is asked of a file of this text."""
    (folder / "of_another.py").write_text(f"class Lent:{METHODS}\nclass Tool: ...\n")
    (folder / "candidate.py").write_text(text)
    with pytest.raises(TargetError) as caught:
        load(f"{folder / 'candidate.py'}:{name}")
    return str(caught.value).partition("; ")[2]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("class Mine: ...\ndef make(): ...\nclass _Hidden: ...\nLIMIT = 3\n", "it has Mine, make"),
        # A scheduler counts wherever it comes from; what else is imported is only needed there.
        ("from of_another import Lent, Tool\nfrom pathlib import Path\nclass Mine: ...\n", "it has Lent, Mine"),
        ("from planeproof import Burst, Scheduler\n", "it has no class or function of its own"),
        # What the module says of itself goes first.
        ("from of_another import Lent, Tool\n__all__ = ['Tool', 'LIMIT']\nLIMIT = 3\nclass Mine: ...\n", "it has Tool"),
    ],
)
def test_what_a_module_offers_is_listed(text: str, said: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Its own classes and functions, schedulers of others, or just what its __all__ names."""
    monkeypatch.syspath_prepend(tmp_path)
    monkeypatch.delitem(sys.modules, "of_another", raising=False)
    assert refusal(tmp_path, "Zzz", text) == said


@pytest.mark.parametrize("name", ["Strater", "starter", "STARTER", "Startr"])
def test_a_near_miss_is_put_right(name: str, tmp_path: Path) -> None:
    """Letters exchanged, left out, or in the wrong case."""
    assert refusal(tmp_path, name, "class Starter: ...\nclass Other: ...\n") == (
        "did you mean 'Starter'? it has Other, Starter"
    )


def test_the_reference_schedulers_are_offered_by_their_package() -> None:
    """They stand in modules of their own."""
    with pytest.raises(TargetError, match="did you mean 'Delta'\\? it has Columns, Delta, Fresh, InPlace, LazyClear"):
        load("planeproof.candidates.reference:Detla")


def test_a_syntax_error_names_its_line_once(tmp_path: Path) -> None:
    """As Python says it."""
    (tmp_path / "syn.py").write_text("\nclass Right\n")
    with pytest.raises(TargetError) as caught:
        load(f"{tmp_path / 'syn.py'}:Right")
    assert str(caught.value).endswith("(syn.py, line 2)")
    assert str(caught.value).count("line 2") == 1
