"""The bounds of an exhaustion: which scenes are all."""

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Bounds:
    """All scenes of up to ``pictures`` pictures, each ready one of ``gaps`` refreshes after the one before.

    Up to ``disturbed`` of the first ``within`` blankings have only one of ``left`` cycles left (0: lost). A pattern is
    made of ``parts`` runs of equal rows, each of which may be filled by a byte of its own; where bytes are not up to
    renaming, it is one of the lowest ``values``. Pictures whose numbers are in ``empty`` have no occupied cell.
    Raises `ValueError` for bounds that hold no scene or some scene twice.
    """

    pictures: int
    gaps: tuple[int, ...] = (0,)
    disturbed: int = 0
    within: int = 0
    left: tuple[int, ...] = (0,)
    parts: int = 1
    values: int = 256
    empty: tuple[int, ...] = ()

    def __post_init__(self) -> None:
        _require(self.pictures >= 1, "pictures", self.pictures, "at least 1")
        _require(_ascending(self.gaps), "gaps", self.gaps, "refreshes, 0 or more, each once and in order")
        _require(_ascending(self.left), "left", self.left, "cycles, 0 or more, each once and in order")
        _require(0 <= self.disturbed <= self.within, "disturbed", self.disturbed, f"0 to within, {self.within}")
        _require(self.parts in (1, 2, 4, 8), "parts", self.parts, "1, 2, 4 or 8, so that all are as long")
        _require(2 <= self.values <= 256, "values", self.values, "2 to 256, 0 being one of them")
        _require(not self.empty or _ascending(self.empty), "empty", self.empty, "picture numbers, each once, in order")


def _ascending(numbers: tuple[int, ...]) -> bool:
    return len(numbers) > 0 and numbers[0] >= 0 and list(numbers) == sorted(set(numbers))


def _require(holds: bool, field: str, value: object, wanted: str) -> None:
    if not holds:
        raise ValueError(f"bounds: {field} is {value!r}: it must be {wanted}")
