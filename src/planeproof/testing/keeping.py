"""Where what a check finds is kept, so that it is replayed first from then on.

Several processes may check at once, and each has the scene it is playing on disk in case it dies: they play in folders
of their own, and put what they have found into the common one.
"""

import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import replace
from pathlib import Path
from typing import Any

from planeproof.judge import Finding, Verdict
from planeproof.scenes.cases import keep_case, load_case
from planeproof.search.trial import PLAYING as SCENE
from planeproof.testing.asked import PLAYING, Asked, name_of

Moved = Callable[[Verdict], Verdict]


@contextmanager
def kept(asked: Asked, machine: Any) -> Iterator[tuple[Path | None, Moved]]:  # noqa: ANN401 -- text or a Machine
    """The folder to check in, and what makes a verdict name the files where they are afterwards."""
    if asked.cases is None:
        yield None, lambda verdict: verdict
        return
    name, places = _plain(name_of(machine)), dict[str, str]()
    folder = asked.cases / f"{PLAYING}-{name}-{os.environ.get('PYTEST_XDIST_WORKER', 'main')}"
    earlier = set(folder.glob("*.json"))
    yield folder, lambda verdict: _naming(verdict, places)
    for found in sorted(set(folder.glob("*.json")) - earlier):
        if found.name != SCENE and not found.name.startswith("left-over"):
            places[str(found)] = str(_put(found, asked.cases, name))
    with suppress(OSError):  # what a process has left behind in it stays
        folder.rmdir()


def _put(found: Path, cases: Path, machine: str) -> Path:
    """Move ``found``: what failed once is worth replaying for ever."""
    place = keep_case(cases, f"{found.stem}-{machine}", load_case(found))
    found.unlink()
    return place


def _naming(verdict: Verdict, places: dict[str, str]) -> Verdict:
    findings = tuple(_finding(finding, places) for finding in verdict.findings)
    return replace(verdict, findings=findings, fault_case=_place(verdict.fault_case, places))


def _finding(finding: Finding, places: dict[str, str]) -> Finding:
    return replace(finding, case=_place(finding.case, places), given_case=_place(finding.given_case, places))


def _place(case: str | None, places: dict[str, str]) -> str | None:
    return None if case is None else places.get(case, case)


def _plain(name: str) -> str:
    """A machine's own name as part of a file name."""
    return "".join(letter if letter.isalnum() else "-" for letter in name)
