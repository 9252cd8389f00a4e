"""Witnesses: for each rule, whether the situation in which it could have been broken did occur."""

import copy
from typing import Self

from planeproof.contract import Machine, Picture, Rational, Rule
from planeproof.contract.rules import (
    BLANKING_ONLY,
    EXACT_REVEAL,
    FAIR_REFUSAL,
    HIDDEN_WRITES,
    IN_ORDER,
    OWN_MEMORY,
    PROGRESS,
    TILE_CAP,
    WHOLE_REVEAL,
)


class Witnesses:
    """Collects, during one run, the rules that were exercised; see ``Rule.witness`` for what each asks for."""

    def __init__(self, machine: Machine) -> None:
        self._machine = machine
        self._seen: set[Rule] = set()
        self._patterns = self._map = False
        self._left: Rational | None = None

    def twin(self) -> Self:
        """Another that has collected the same."""
        twin = copy.copy(self)
        twin._seen = set(self._seen)
        return twin

    @property
    def exercised(self) -> frozenset[Rule]:
        """The rules that were exercised so far."""
        return frozenset(self._seen)

    def offered(self, picture: Picture, *, taken: bool) -> None:
        """A picture was offered, and taken or not."""
        if self._is_hardest(picture):
            self._seen |= {FAIR_REFUSAL, TILE_CAP} if taken else {FAIR_REFUSAL}

    def wrote(self, *, patterns: bool, map_entries: bool, something_seen: bool) -> None:
        """In one blanking, pattern bytes or map bytes changed their values."""
        self._patterns |= patterns
        self._map |= map_entries
        if self._patterns and self._map:
            self._seen.add(OWN_MEMORY)
        if (patterns or map_entries) and something_seen and self._machine.sides > 1:
            self._seen.add(HIDDEN_WRITES)

    def used(self, cycles: Rational, left: Rational, *, waiting: bool) -> None:
        """A blanking was had: ``cycles`` of it were used, ``left`` were not; a taken picture is ``waiting`` or not."""
        if self._left is not None and cycles > self._left:
            self._seen.add(BLANKING_ONLY)
        self._left = left if waiting else None

    def revealed(self) -> None:
        """A change of view showed another picture than before."""
        self._seen.add(EXACT_REVEAL)

    def saw(self, *, something: bool, changes: int, waited: int) -> None:
        """A frame was seen; ``changes`` pictures have followed one another, ``waited`` is the longest wait so far."""
        if something:
            self._seen.add(WHOLE_REVEAL)
        if changes > 1:
            self._seen.add(IN_ORDER)
        if waited:
            self._seen.add(PROGRESS)

    def _is_hardest(self, picture: Picture) -> bool:
        wanted = min(self._machine.must_show, self._machine.cells)
        if len(picture.occupied) != wanted or not wanted:
            return False
        return len({picture.rows[cell].tobytes() for cell in picture.occupied}) == wanted
