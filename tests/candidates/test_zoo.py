"""The zoo is what it says: each fault shows in its smallest scene, in nothing smaller, and is its base otherwise."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import combinations, product

import pytest

from planeproof.candidates import faults, reference
from planeproof.candidates.faults import ZOO, Fault
from planeproof.contract import RULES, Machine, Scheduler
from planeproof.hosts import load
from planeproof.judge import Play, not_applicable, play
from planeproof.machines import shipped
from tests.candidates.small import scene, small


@dataclass(frozen=True, kw_only=True)
class Least:
    """The least scene of a fault: a machine, pictures in letters, what is left of some blankings.

    ``too_many``: there are more smaller scenes than can be tried, so only those with one picture or one cell less are.
    """

    machine: Machine
    pictures: tuple[str, ...]
    cut: dict[int, int] = field(default_factory=dict)
    too_many: bool = False

    @property
    def letters(self) -> str:
        """What the pictures are made of, the empty cell included."""
        return "".join(sorted({".", *"".join(self.pictures)}))

    def smaller(self) -> Iterator[tuple[str, ...]]:
        """All pictures in the same letters that are fewer, or as many with fewer occupied cells."""
        cells = sum(letter != "." for letter in "".join(self.pictures))
        if self.too_many:
            yield from self._thinned()
            return
        for number in range(len(self.pictures)):
            yield from self._sequences(number, number * self.machine.cells)
        yield from self._sequences(len(self.pictures), cells - 1)

    def _sequences(self, number: int, most: int) -> Iterator[tuple[str, ...]]:
        """All sequences of ``number`` pictures with at most so many occupied cells."""
        if number == 0:
            yield ()
            return
        for occupied in range(min(most, self.machine.cells) + 1):
            for drawing in self._drawings(occupied):
                for rest in self._sequences(number - 1, most - occupied):
                    yield (drawing, *rest)

    def _drawings(self, occupied: int) -> Iterator[str]:
        inked = self.letters.replace(".", "")
        for cells in combinations(range(self.machine.cells), occupied):
            for letters in product(inked, repeat=occupied):
                drawn = dict(zip(cells, letters, strict=True))
                yield "".join(drawn.get(cell, ".") for cell in range(self.machine.cells))

    def _thinned(self) -> Iterator[tuple[str, ...]]:
        for place, drawing in enumerate(self.pictures):
            before, after = self.pictures[:place], self.pictures[place + 1 :]
            yield (*before, *after)
            for cell, letter in enumerate(drawing):
                if letter != ".":
                    yield (*before, f"{drawing[:cell]}.{drawing[cell + 1 :]}", *after)


V50, V60 = small("vitrine-50"), small("vitrine-60")
WIDE_50, WIDE_60 = (small(f"vitrine-{hertz}", 2, tiles=3, pool=(1, 2)) for hertz in (50, 60))
NICHE = small("twin-niche", tiles=3, pool=(1, 2))
FRIEZE = small("long-frieze", tiles=257, pool=(256,))
LABEL = small("case-label", 2, tiles=5, pool=(1, 2, 3, 4))
PLATE = small("name-plate")
COLUMN = small("case-label", 1, 3, tiles=5, pool=(1, 2, 3, 4), around=1)

LEAST: dict[str, Least] = {
    "patterns-to-seen-plane": Least(machine=V50, pictures=("A",)),
    "wrong-pitch": Least(machine=small("vitrine-60", 1, 2, around=1), pictures=("..",)),
    "counts-tiles-from-one": Least(machine=V50, pictures=("A",)),
    "pool-begins-too-early": Least(machine=small("vitrine-60", tiles=3, pool=(2,)), pictures=("A",)),
    "panel-colours": Least(machine=V50, pictures=(".",)),
    "blank-tile-written": Least(machine=V60, pictures=(".",)),
    "panel-tile-for-blank": Least(machine=small("vitrine-50", tiles=3, pool=(2,)), pictures=(".",)),
    "seen-plane-too": Least(machine=LABEL, pictures=("A.",)),
    "pool-not-split": Least(machine=NICHE, pictures=("A", "B")),
    "tile-index-wraps": Least(machine=FRIEZE, pictures=("A",)),
    "map-bytes-swapped": Least(machine=small("long-frieze"), pictures=("A",)),
    "low-byte-only": Least(machine=FRIEZE, pictures=("A",)),
    "packed-written-whole": Least(machine=small("drawer-front"), pictures=("A", "A")),
    "interleaved-as-planar": Least(machine=small("pigment-chart"), pictures=("A",)),
    "last-row-not-sent": Least(machine=V60, pictures=("A",)),
    "last-cell-not-sent": Least(machine=WIDE_50, pictures=(".A",)),
    "stale-entry": Least(machine=V60, pictures=("A", ".", ".")),
    "old-ink-left": Least(machine=V50, pictures=("A", ".", "C")),
    "empty-plane-left": Least(machine=small("mosaic-floor"), pictures=("a", ".", "B")),
    "palette-entry-forgotten": Least(machine=V60, pictures=("A", "B")),
    "checksum-for-compare": Least(machine=V50, pictures=("A", ".", "B")),
    "tile-in-use-reused": Least(machine=WIDE_60, pictures=("A.", "..", "AB")),
    "found-on-seen-side": Least(machine=V50, pictures=("A", "A")),
    "shadow-ahead": Least(machine=V60, pictures=("A", "."), cut={0: 0}),
    "lost-blanking-counted": Least(machine=V50, pictures=("A", "."), cut={0: 0}),
    "palette-before-page": Least(machine=WIDE_60, pictures=("A.", ".B"), cut={1: 162}),
    "page-a-refresh-late": Least(machine=WIDE_50, pictures=("A.", ".B")),
    "reveal-one-burst-early": Least(machine=V60, pictures=("A",)),
    "bank-without-page": Least(machine=small("two-wings", tiles=4, pool=(1, 3)), pictures=("A",)),
    "nothing-sent-not-revealed": Least(machine=V50, pictures=("A", ".")),
    "flips-when-idle": Least(machine=V60, pictures=("A",)),
    "order-swapped": Least(machine=V50, pictures=(".", "A"), cut={0: 0}),
    "picture-skipped": Least(machine=V60, pictures=("A", "."), cut={0: 0}),
    "pairs-without-release": Least(
        machine=small("case-label", 3, tiles=5, pool=(1, 2, 3, 4)), pictures=("A..", ".AA", ".B.")
    ),
    "pairs-map-first": Least(machine=LABEL, pictures=("AA", "B.")),
    "seen-pattern-not-copied": Least(machine=LABEL, pictures=("AA", "B.")),
    "set-up-not-charged": Least(machine=V60, pictures=(".",), cut={0: 20}),
    "burst-across-the-end": Least(machine=small("twin-niche", 2, tiles=3, pool=(1, 2)), pictures=("..",), cut={0: 20}),
    "full-blanking-assumed": Least(machine=LABEL, pictures=("..",), cut={0: 1}),
    "split-in-place": Least(machine=PLATE, pictures=("A",), cut={0: 80}),
    "cleared-first": Least(machine=PLATE, pictures=("A", "B")),
    "old-list-replayed": Least(machine=PLATE, pictures=("A", ".")),
    "takes-one-too-many": Least(machine=small("vitrine-50", 2), pictures=("AA",)),
    "declines-the-largest": Least(machine=NICHE, pictures=("A",)),
    "always-busy": Least(machine=V50, pictures=(".",)),
    "declines-everything": Least(machine=V60, pictures=(".",)),
    "does-nothing": Least(machine=V50, pictures=("A",)),
    "taken-and-dropped": Least(machine=V60, pictures=("A", "."), cut={0: 0}),
    "takes-more-than-half": Least(machine=small("case-label", 3, tiles=3, pool=(1, 2)), pictures=("AB.", "..A")),
    "planes-exchanged": Least(machine=small("mosaic-floor"), pictures=("A",)),
    "found-by-lowest-plane": Least(machine=small("pigment-chart", 2, tiles=3, pool=(1, 2)), pictures=("ab",)),
    "replaced-still-listed": Least(machine=NICHE, pictures=("A", "B", "C", "A")),
    "found-in-other-bank": Least(machine=small("two-wings", tiles=4, pool=(1, 3)), pictures=("A", "A")),
    "listed-by-ink": Least(machine=small("scroll-case", 2, tiles=5, pool=(1, 2, 3, 4)), pictures=("AB",)),
    "one-page-cleared": Least(machine=V50, pictures=(".", "A", ".", ".")),
    "seen-page-cleared": Least(machine=V60, pictures=("A",)),
    "cleared-as-far-as-it-goes": Least(machine=FRIEZE, pictures=("A", ".", "."), cut={1: 60}),
    "tile-cleared-first": Least(machine=small("drawer-front"), pictures=("A", "A")),
    "queue-overrun": Least(machine=V60, pictures=("A", ".", "."), cut={0: 0, 1: 0}),
    "revealed-twice": Least(machine=V50, pictures=("A", "."), cut={0: 0}),
    "row-compared-by-its-ends": Least(machine=small("vitrine-60", 3), pictures=(".A.",)),
    "kept-tiles-given-away": Least(
        machine=small("vitrine-50", 1, 2, tiles=3, pool=(1, 2)), pictures=("A.", "..", "AB")
    ),
    "one-entry-too-many": Least(machine=small("vitrine-60", around=1), pictures=("A",)),
    "rest-of-burst-dropped": Least(machine=V50, pictures=("A",), cut={0: 60}),
    "column-one-too-long": Least(machine=COLUMN, pictures=(".AA",)),
    "column-goes-on-along-the-row": Least(machine=COLUMN, pictures=("A.A",), cut={0: 110}),
    "passed-over-blanked": Least(machine=COLUMN, pictures=(".A.", "B.B")),
    "one-cycle-more": Least(machine=V50, pictures=(".",), cut={0: 45}),
    "view-charged-as-memory": Least(machine=small("pigment-chart"), pictures=(".",), cut={0: 190}),
    "fractions-dropped": Least(machine=small("mosaic-floor"), pictures=(".",), cut={0: 162}),
    "cycles-of-the-other-standard": Least(
        machine=small("vitrine-60", 4, 3, around=1), pictures=("." * 12,), cut={0: 183}
    ),
    "cut-not-noticed": Least(machine=PLATE, pictures=("A",), cut={0: 90}),
    "burst-index-in-a-byte": Least(
        machine=small("scroll-case", 16, 17, tiles=3, pool=(1, 2)), pictures=("A" + "." * 271,)
    ),
    "cell-number-in-a-byte": Least(machine=small("vitrine-50", 37, 7), pictures=("." * 258 + "A",)),
    "bytes-left-in-a-byte": Least(machine=small("vitrine-60", 37, 7), pictures=("A" + "." * 258,)),
    "queue-places-in-a-byte": Least(
        machine=small("pigment-chart", 24, 10, tiles=32, pool=tuple(range(1, 32)), around=1),
        pictures=("A" * 31 + "." * 209,),
        too_many=True,
    ),
    "reveals-counted-in-a-byte": Least(machine=V50, pictures=(*["."] * 256, "A"), too_many=True),
    "high-byte-forgotten": Least(machine=FRIEZE, pictures=("A",)),
    "pending-replaced": Least(machine=PLATE, pictures=("A", "."), cut={0: 0}),
}

EACH = pytest.mark.parametrize("fault", ZOO, ids=lambda fault: fault.id)


def played(least: Least, make: type[Scheduler]) -> Play:
    """The play of a least scene, by the fault or by its base."""
    return play(scene(least.machine, least.pictures, least.cut), make)


@EACH
def test_the_least_scene_shows_the_fault(fault: Fault) -> None:
    """In its least scene, the first violation of a fault is of the rule that it names."""
    found = played(LEAST[fault.id], fault.make)
    first = found.first(frozenset(RULES) - not_applicable(found.scene))
    assert first is not None
    assert first.rule is fault.rule, first.said


@EACH
def test_the_base_is_right_in_that_scene(fault: Fault) -> None:
    """Without its mistake a fault breaks no rule in that scene."""
    found = played(LEAST[fault.id], fault.base)
    assert [violation.said for violation in found.violations] == []


@EACH
def test_the_least_scene_has_the_stated_size(fault: Fault) -> None:
    """The zoo states the pictures and the occupied cells of the least scene, and the machine it is on."""
    least = LEAST[fault.id]
    whole = scene(least.machine, least.pictures, least.cut)
    assert (len(whole.pictures), whole.occupied) == (fault.pictures, fault.cells)
    assert least.machine.name == f"{fault.machine}, small"


@EACH
def test_nothing_smaller_shows_it(fault: Fault) -> None:
    """No scene of fewer pictures, or of as many with fewer occupied cells, breaks any rule.

    All of them on the least machine in the letters of the least scene, undisturbed and disturbed as it is.
    """
    least = LEAST[fault.id]
    for pictures in least.smaller():
        for cut in ({}, least.cut) if least.cut else ({},):
            found = play(scene(least.machine, pictures, cut), fault.make)
            assert [violation.said for violation in found.violations] == [], (pictures, cut)


def test_ids_are_the_class_names() -> None:
    """Every fault is a class of its own, named by its id, found under its target, and tells its story."""
    assert len({fault.id for fault in ZOO}) == len({fault.make for fault in ZOO}) == len(ZOO)
    for fault in ZOO:
        assert fault.id.replace("-", "") == fault.make.__name__.lower()
        assert load(fault.target).make is fault.make
        assert fault.story.endswith(".")
        assert len(fault.story.split()) > 5


def test_every_class_is_in_the_zoo() -> None:
    """What the package exports is the zoo, and all of its faults."""
    names = {fault.make.__name__ for fault in ZOO}
    assert set(faults.__all__) == {"ZOO", "Fault", *names}


def test_the_zoo_covers_rules_machines_and_strategies() -> None:
    """There are at least 60 faults, some for every rule, three for every strategy, all on machines that ship."""
    assert len(ZOO) >= 60
    assert {fault.rule for fault in ZOO} == set(RULES)
    assert {fault.machine for fault in ZOO} == set(shipped()) - {"bench"}
    strategies = {getattr(reference, name) for name in reference.__all__} - {reference.TwoSides}
    for strategy in strategies:
        assert sum(fault.base is strategy for fault in ZOO) >= 3, strategy
    assert {fault.base for fault in ZOO} == strategies


def test_the_zoo_has_faults_that_need_history_and_size() -> None:
    """Some faults need three pictures, some four, and some more cells, bursts or bytes than a byte can count."""
    assert sum(fault.pictures >= 3 for fault in ZOO) >= 8
    assert sum(fault.pictures >= 4 for fault in ZOO) >= 2
    assert sum(LEAST[fault.id].machine.cells > 200 for fault in ZOO) >= 4
