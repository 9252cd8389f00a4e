"""Data independence, tried: who only copies and compares can't tell renamed bytes apart, and who computes can."""

import random
from collections.abc import Callable

import numpy as np
import pytest
from numpy.typing import NDArray

from planeproof.candidates.faults.stale import ChecksumForCompare
from planeproof.candidates.reference import Delta, Fresh, Pairs, Reuse, SplitPool
from planeproof.contract import Answer, Burst, Machine, Picture, Scene, Scheduler
from planeproof.search.renaming import ByteRenaming, Difference, PatternRenaming, Renaming, first_difference, renamed
from tests.candidates.seeded import seeded_scene, tight
from tests.candidates.small import small

ONE_BIT = small("vitrine-50", 3, 2, tiles=7, pool=(2, 3, 4, 5), around=1)
TWO_BITS = small("mosaic-floor", 3, 2, tiles=7, pool=(2, 3, 4, 5), around=1)
INTERLEAVED = small("pigment-chart", 3, 2, tiles=7, pool=(2, 3, 4, 5), around=1)
ONE_PLANE = small("twin-niche", 3, 2, tiles=7, pool=(2, 3, 4, 5), around=1)
ONE_PAGE = small("case-label", 3, 2, tiles=7, pool=(2, 3, 4, 5), around=1)
PACKED = small("drawer-front", 3, 2, tiles=7, pool=(2, 3, 4, 5))
SEEDS = range(12)

Candidate = Callable[[], Scheduler]
MEANT_FOR: list[tuple[Candidate, Machine]] = [
    *((candidate, machine) for candidate in (Fresh, Delta, Reuse) for machine in (ONE_BIT, TWO_BITS, INTERLEAVED)),
    (SplitPool, ONE_PLANE),
    (Pairs, ONE_PAGE),
]
NAMES = [f"{candidate.__name__}, {machine.name}" for candidate, machine in MEANT_FOR]
BYTE_WISE = pytest.mark.parametrize(("candidate", "machine"), MEANT_FOR, ids=NAMES)


def shuffled(seed: int) -> ByteRenaming:
    """The bytes 1..255 in any order."""
    others = list(range(1, 256))
    random.Random(seed).shuffle(others)
    return ByteRenaming(table=bytes([0, *others]))


def patterns_of(scene: Scene) -> list[bytes]:
    """The patterns that occur in the scene, in an order of their own."""
    rows = [row for picture in scene.pictures for row in picture.planes.reshape(-1, 8)]
    return sorted({bytes(row) for row in rows if row.any()})


def alike_in_rows(scene: Scene) -> PatternRenaming:
    """Patterns that agree in seven rows of eight, however different those were that they stand for."""
    return PatternRenaming(table={p: bytes([n, *[129] * 7]) for n, p in enumerate(patterns_of(scene), 1)})


def differences(candidate: Candidate, machine: Machine, name: Callable[[Scene, int], Renaming]) -> list[Difference]:
    """Where the candidate tells scenes from renamed ones, in blankings long and short."""
    scenes = [(seeded_scene(shape, seed), seed) for shape in (machine, tight(machine)) for seed in SEEDS]
    found = [first_difference(scene, candidate, name(scene, seed)) for scene, seed in scenes]
    return [difference for difference in found if difference is not None]


# --- who keeps the premise ----------------------------------------------------------------------------------


@BYTE_WISE
def test_a_candidate_that_copies_and_compares_keeps_the_premise(candidate: Candidate, machine: Machine) -> None:
    """Each reference strategy, with any shuffle of the bytes: the same bursts, answers and pictures up to renaming."""
    assert differences(candidate, machine, lambda _scene, seed: shuffled(seed)) == []


@pytest.mark.parametrize(("candidate", "machine"), [(Fresh, ONE_BIT), (Fresh, INTERLEAVED), (SplitPool, ONE_PLANE)])
def test_one_that_compares_nothing_keeps_it_also_by_patterns(candidate: Candidate, machine: Machine) -> None:
    """Patterns may become any others, also such as agree in most of their rows."""
    assert differences(candidate, machine, lambda scene, _seed: alike_in_rows(scene)) == []


@pytest.mark.parametrize(("candidate", "machine"), [(Delta, ONE_BIT), (Reuse, ONE_BIT), (Pairs, ONE_PAGE)])
def test_one_that_compares_bytes_does_not_keep_it_by_patterns(candidate: Candidate, machine: Machine) -> None:
    """A row that the tile holds already is not sent, and which rows those are is not told by the patterns' names."""
    assert differences(candidate, machine, lambda scene, _seed: alike_in_rows(scene))


def one_cell(*rows: list[int]) -> Scene:
    """Pictures of one cell."""
    return Scene.of(small("vitrine-50"), [Picture.from_rows(0, [row]) for row in rows])


def test_a_checksum_breaks_the_premise() -> None:
    """3 and 1 + 2 have one sum, and renamed they have two, so what was left out is sent. `Delta` compares bytes."""
    scene = one_cell([3, 0, 0, 0, 0, 0, 0, 0], [8] * 8, [1, 2, 0, 0, 0, 0, 0, 0])
    found = first_difference(scene, ChecksumForCompare, ByteRenaming.shifted(1))
    assert found is not None
    assert (found.refresh, found.said.split(",")[0]) == (2, "burst 0 is 4 bytes from address 5 in steps of 1")
    assert first_difference(scene, Delta, ByteRenaming.shifted(1)) is None


def test_a_check_on_other_scenes_may_miss_it() -> None:
    """None of 24 seeded scenes has two patterns of one sum in a place, so none of them tells: a check is no proof."""
    assert differences(ChecksumForCompare, ONE_BIT, lambda _scene, seed: shuffled(seed)) == []


class Inverted(Fresh):
    """Sends each byte of a pattern upside down: computes what it should copy."""

    def blank(self, cycles: int) -> list[Burst]:
        """The same bursts, other bytes."""
        first, end = self.machine.layout.patterns, self.machine.layout.maps[0]
        assert first > end
        return [
            Burst(burst.address, bytes(byte ^ 0xFF for byte in burst.data)) if burst.address >= first else burst
            for burst in super().blank(cycles)
        ]


class DeclinesInk(Fresh):
    """Answers by what a picture holds."""

    def offer(self, picture: Picture) -> Answer:
        """Nothing that has a byte above 200."""
        return Answer.TOO_BIG if picture.rows.max() > 200 else super().offer(picture)


def test_computed_bytes_and_answers_are_told_apart() -> None:
    """Each with the refresh and what was different, in words."""
    scene, to_top = one_cell([3] * 8), ByteRenaming.shifted(250)
    inverted, declined = (first_difference(scene, candidate, to_top) for candidate in (Inverted, DeclinesInk))
    assert inverted == Difference(refresh=0, said="burst 1 writes 2 to address 35 for the renamed pictures, not 247")
    assert declined == Difference(refresh=0, said="it answered TAKEN to the picture, and TOO_BIG to the renamed one")


# --- renaming itself ----------------------------------------------------------------------------------------


@pytest.mark.parametrize("machine", [ONE_BIT, TWO_BITS], ids=["one bit", "two bits"])
def test_renaming_keeps_what_is_empty_and_what_is_equal(machine: Machine) -> None:
    """Cells are occupied as before, and two cells are equal if and only if they were; the rest of the scene stays."""
    for seed in SEEDS:
        scene = seeded_scene(machine, seed)
        for renaming in (shuffled(seed), alike_in_rows(scene)):
            other = renamed(scene, renaming)
            cells, twins = (np.concatenate([p.planes for p in one.pictures]) for one in (scene, other))
            assert [p.occupied for p in scene.pictures] == [p.occupied for p in other.pictures]
            assert (equal_pairs(cells) == equal_pairs(twins)).all()
            assert (other.machine, other.ready, other.disturbances) == (scene.machine, scene.ready, scene.disturbances)


def equal_pairs(cells: NDArray[np.uint8]) -> NDArray[np.bool_]:
    """Which cells are equal, pair by pair."""
    equal: NDArray[np.bool_] = (cells[:, None] == cells[None, :]).all(axis=(2, 3))
    return equal


def test_moving_on_and_back_is_nothing() -> None:
    """Shifts by 100 and by 155 undo each other, for there are 255 bytes that are not 0."""
    there, back = ByteRenaming.shifted(100), ByteRenaming.shifted(155)
    assert [back.byte(there.byte(byte)) for byte in range(256)] == list(range(256))
    assert there.byte(255) == 100


def test_a_renaming_that_is_none_is_refused() -> None:
    """Not one to one, or one under which empty would not stay empty; and patterns that nobody named."""
    with pytest.raises(ValueError, match="each byte once, and 0 first"):
        ByteRenaming(table=bytes(256))
    with pytest.raises(ValueError, match="each byte once, and 0 first"):
        ByteRenaming(table=bytes([1, 0, *range(2, 256)]))
    with pytest.raises(ValueError, match="patterns of 8 bytes, none of them empty"):
        PatternRenaming(table={b"\x01" * 8: bytes(8)})
    with pytest.raises(ValueError, match="one to one, but two patterns become the same"):
        PatternRenaming(table={b"\x01" * 8: b"\x03" * 8, b"\x02" * 8: b"\x03" * 8})
    with pytest.raises(KeyError):
        renamed(one_cell([5] * 8), PatternRenaming(table={}))


def test_packed_storage_is_refused() -> None:
    """A byte of it is made from several planes, so there is nothing that could only be copied."""
    with pytest.raises(ValueError, match="has packed storage, where a byte is made from several planes"):
        first_difference(seeded_scene(PACKED, 0), Fresh, shuffled(0))
