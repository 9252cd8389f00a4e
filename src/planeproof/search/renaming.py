"""Renaming the pattern bytes of a scene, and whether a candidate behaves the same up to that: data independence.

A candidate that only copies pattern bytes and compares them for equality can't tell a scene from the same scene with
its bytes renamed one to one. Then a few tokens stand for all bytes (Wolper, POPL 1986), and exhausting scenes over them
exhausts all scenes. The page ``specs/data-independence.md`` says where this applies, and what its sources are.

Two renamings, for two ways to compare. `ByteRenaming` is for candidates that compare byte by byte, `PatternRenaming`
for those that compare whole patterns only, which is a stronger premise. Empty stays empty in both.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import zip_longest
from typing import Protocol, Self

import numpy as np

from planeproof.contract import TILE_SIDE, Burst, Machine, Picture, RegionKind, Scene
from planeproof.judge import MakeScheduler, Play, Refresh, play


class Renaming(Protocol):
    """One to one, and empty stays empty."""

    def picture(self, picture: Picture) -> Picture:
        """The picture with its bytes renamed."""

    def byte(self, byte: int) -> int | None:
        """What a byte written to a pattern becomes; None where that can't be told of a byte alone."""


@dataclass(frozen=True, kw_only=True)
class ByteRenaming:
    """``table[b]`` is what byte b becomes, the same in every row, plane, cell and picture.

    Raises `ValueError` unless it holds each of 0..255 once, 0 in its own place.
    """

    table: bytes

    def __post_init__(self) -> None:
        if sorted(self.table) != list(range(256)) or self.table[0] != 0:
            raise ValueError("renaming: table must hold each byte once, and 0 first: empty must stay empty")

    @classmethod
    def shifted(cls, by: int) -> Self:
        """Bytes 1..255 moved on by ``by`` places, round and round."""
        return cls(table=bytes([0, *((byte + by) % 255 + 1 for byte in range(255))]))

    def picture(self, picture: Picture) -> Picture:
        """The picture with each byte renamed."""
        return Picture.from_rows(picture.number, np.frombuffer(self.table, dtype=np.uint8)[picture.rows])

    def byte(self, byte: int) -> int:
        """What ``byte`` becomes."""
        return self.table[byte]


@dataclass(frozen=True, kw_only=True)
class PatternRenaming:
    """``table`` says what each pattern becomes: the 8 bytes of one bit of a cell's pixels, wherever they stand.

    Raises `ValueError` unless it is one to one, of 8 bytes each, none of them all zero. A pattern that it does not name
    raises `KeyError`: had it stayed as it is, another might have become the same.
    """

    table: Mapping[bytes, bytes]

    def __post_init__(self) -> None:
        patterns = [*self.table, *self.table.values()]
        if any(len(pattern) != TILE_SIDE or not any(pattern) for pattern in patterns):
            raise ValueError(f"renaming: table must hold patterns of {TILE_SIDE} bytes, none of them empty")
        if len(set(self.table.values())) != len(self.table):
            raise ValueError("renaming: table must be one to one, but two patterns become the same")

    def picture(self, picture: Picture) -> Picture:
        """The picture with each pattern renamed."""
        patterns = [bytes(rows) for rows in picture.planes.reshape(-1, TILE_SIDE)]
        renamed = b"".join(self.table[pattern] if any(pattern) else pattern for pattern in patterns)
        return Picture.from_rows(picture.number, np.frombuffer(renamed, dtype=np.uint8).reshape(picture.rows.shape))

    def byte(self, byte: int) -> None:
        """Of a byte alone nothing can be told: the same byte becomes another in another pattern."""


@dataclass(frozen=True, kw_only=True)
class Difference:
    """Where a candidate told a renamed scene from the scene: in refresh ``refresh`` (-1: in the set-up), and how."""

    refresh: int
    said: str


def renamed(scene: Scene, renaming: Renaming) -> Scene:
    """The scene with its pictures renamed; machine, times and disturbances stay."""
    pictures = [renaming.picture(picture) for picture in scene.pictures]
    return Scene.of(scene.machine, pictures, scene.ready, scene.disturbances)


def first_difference(scene: Scene, make: MakeScheduler, renaming: Renaming) -> Difference | None:
    """None if the candidate behaves the same on ``scene`` and on the renamed one, else where it first does not.

    The same is: each answer; of each burst address, step and length, and each byte that is not a pattern's; each byte
    that is, renamed, where that can be told of a byte alone; and which picture is seen after each refresh.

    Raises `ValueError` on a machine whose bytes hold several planes at once, for such bytes are made, not copied, and
    `CandidateFault` where the candidate breaks a law.
    """
    if not scene.machine.tile_bits.isolated:
        raise ValueError(
            f"renaming: {scene.machine.name!r} has packed storage, where a byte is made from several planes; use a "
            "machine with planar or interleaved storage"
        )
    one, other = play(scene, make), play(renamed(scene, renaming), make)
    return _unlike_set_up(one, other, renaming) or _unlike_refreshes(one, other, renaming)


def _unlike_set_up(one: Play, other: Play, renaming: Renaming) -> Difference | None:
    said = _unlike_bursts(one.scene.machine, one.set_up, other.set_up, renaming)
    return None if said is None else Difference(refresh=-1, said=said)


def _unlike_refreshes(one: Play, other: Play, renaming: Renaming) -> Difference | None:
    for number, (here, there) in enumerate(zip_longest(one.refreshes, other.refreshes)):
        if here is None or there is None:
            return Difference(refresh=number, said="one of the two runs is longer")
        said = _unlike(one.scene.machine, here, there, renaming)
        if said is not None:
            return Difference(refresh=number, said=said)
    return None


def _unlike(machine: Machine, here: Refresh, there: Refresh, renaming: Renaming) -> str | None:
    if here.answer is not there.answer:
        return f"it answered {_name(here)} to the picture, and {_name(there)} to the renamed one"
    said = _unlike_bursts(machine, here.bursts, there.bursts, renaming)
    if said is None and here.current != there.current:
        said = f"picture {here.current} is seen, and {there.current} of the renamed ones"
    return said


def _name(refresh: Refresh) -> str:
    return "nothing" if refresh.answer is None else refresh.answer.name


def _unlike_bursts(
    machine: Machine, here: tuple[Burst, ...], there: tuple[Burst, ...], renaming: Renaming
) -> str | None:
    (patterns,) = (region for region in machine.regions if region.kind is RegionKind.PATTERNS)
    for number, (one, other) in enumerate(zip_longest(here, there)):
        if one is None or other is None:
            return f"it wrote {len(here)} bursts, and {len(there)} for the renamed pictures"
        if one.addresses != other.addresses:
            return f"burst {number} is {_place(one)}, and {_place(other)} for the renamed pictures"
        for address, byte, found in zip(one.addresses, one.data, other.data, strict=True):
            wanted = renaming.byte(byte) if address in patterns else byte
            if wanted is not None and found != wanted:
                return f"burst {number} writes {found} to address {address} for the renamed pictures, not {wanted}"
    return None


def _place(burst: Burst) -> str:
    many = "1 byte" if len(burst.data) == 1 else f"{len(burst.data)} bytes"
    return f"{many} from address {burst.address} in steps of {burst.step}"
