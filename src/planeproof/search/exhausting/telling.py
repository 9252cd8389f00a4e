"""What an exhaustion rests on, in words."""

from dataclasses import dataclass

from planeproof.contract import TILE_SIDE
from planeproof.search.exhausting.bounds import Bounds
from planeproof.search.exhausting.letters import Letters
from planeproof.search.exhausting.premises import PREMISE_SCENES, RENAMINGS, Premises
from planeproof.search.exhausting.tiny import TINY, Tiny
from planeproof.search.exhausting.tree import SceneTree
from planeproof.search.exhausting.walking import Leaf, Walk

_RENAMED = {Letters.PATTERNS: "patterns", Letters.BYTES: "bytes"}

_CANDIDATES = {
    Letters.PATTERNS: "copies and compares patterns",
    Letters.BYTES: "copies and compares bytes",
    Letters.VALUES: "does more with them",
}


@dataclass(kw_only=True)
class Progress:
    """How far an exhaustion is: ``scenes`` of ``total``, in ``plays``; ``ended`` says why it is not finished."""

    total: int = 0
    scenes: int = 0
    plays: int = 0
    ended: str = ""

    def add(self, leaf: Leaf) -> None:
        """One more play."""
        self.scenes += leaf.scenes
        self.plays += 1


def source_of(tiny: Tiny, premises: Premises, walk: Walk, progress: Progress, *, decided: bool) -> str:
    """Which scenes they are, what stands for what, and what that takes for granted."""
    letters = walk.tree.letters
    parts = [_scenes_said(walk.tree.bounds, letters, alone=premises.letters is not letters)]
    if progress.ended or decided:
        why = progress.ended or "one of them showed what is told above"
        parts.append(f"in order of size, of {progress.total:,} that there are, until {why}")
    parts.append(f"{progress.plays:,} plays stand for them, {_copies_said(premises, walk)}")
    parts.append(_premise_said(premises))
    return f"{tiny.name}, {tiny.said}: {'; '.join(parts)}"


def tiny_lines() -> list[str]:
    """The tiny machines, each with its scenes by what can be taken for granted of a candidate."""
    return [line for one in TINY for line in _tiny_said(one)]


def _tiny_said(one: Tiny) -> list[str]:
    lines = [f"{one.name}: {one.said}"]
    for letters in Letters:
        bounds = one.bounds(letters)
        total = SceneTree(one.machine, bounds, letters).total
        lines.append(f"  {_CANDIDATES[letters]}: {total:,} scenes: {_scenes_said(bounds, letters)}")
    return lines


def bounds_said(bounds: Bounds) -> str:
    """The bounds, all but the letters."""
    said = [f"up to {bounds.pictures} picture{'s' * (bounds.pictures > 1)}"]
    if bounds.empty:
        said[0] += f", {_listed(bounds.empty)} of them (from 0) empty"
    if bounds.gaps != (0,):
        said.append(f"each ready {_listed(bounds.gaps)} refreshes after the one before")
    if bounds.disturbed:
        left = [f"{cycles} cycles" if cycles else "nothing" for cycles in bounds.left]
        said.append(f"up to {bounds.disturbed} of the first {bounds.within} blankings with {_listed(left)} left")
    return ", ".join(said)


def _scenes_said(bounds: Bounds, letters: Letters, *, alone: bool = False) -> str:
    return f"{bounds_said(bounds)}, {_letters_said(bounds, letters)}{', which stand for no others' if alone else ''}"


def _letters_said(bounds: Bounds, letters: Letters) -> str:
    rows = TILE_SIDE // bounds.parts
    if letters is Letters.PATTERNS:
        return "in patterns up to renaming"
    if letters is Letters.BYTES:
        return f"in bytes up to renaming, each in {rows} rows of a pattern"
    where = "the last row" if bounds.parts == 1 else f"the last of every {rows} rows"
    return f"with every byte from 0 to {bounds.values - 1} in {where} of a pattern and nothing in the others"


def _copies_said(premises: Premises, walk: Walk) -> str:
    if premises.unlike is not None:
        return f"each played from its beginning, for {premises.unlike}"
    saved = f"{walk.told - walk.played:,} of {walk.told:,} refreshes"
    if not walk.copying:
        return f"{saved} saved by copies of the candidate, until one could not be had"
    return f"{saved} saved by going on from copies of the candidate, which did as it does on {PREMISE_SCENES} scenes"


def _premise_said(premises: Premises) -> str:
    broken = [
        f"it does not only copy and compare {_RENAMED[letters]} ({said})"
        for letters, said in premises.told_apart.items()
    ]
    if premises.letters in _RENAMED:
        kept = _RENAMED[premises.letters]
        tried = f"{PREMISE_SCENES} scenes with their {kept} renamed in {RENAMINGS} ways each"
        broken.append(
            f"that a candidate only copies and compares {kept} is a premise; on {tried} it did the same, which is an "
            "observation and no proof"
        )
    else:
        broken.append("so no byte stands for another, and of other bytes this says nothing")
    return "; ".join(broken)


def _listed(items: tuple[object, ...] | list[str]) -> str:
    words = [str(item) for item in items]
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} or {words[-1]}"
