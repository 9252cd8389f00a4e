"""What a statement about a machine rests on: obligations of the spec by their ids, or the machine's own description."""

from dataclasses import dataclass
from enum import Enum

from planeproof.contract import Machine, Storage


class Ground(Enum):
    """How a statement is known.

    ``PROVED``: obligations that a solver proves. ``WITNESS``: obligations that a solver refutes, so that there is an
    example of it. ``COUNTED``: from the machine's addresses and costs. ``DESCRIBED``: the machine says so.
    ``ARGUED``: no obligation has this size, so it is reasoned only.
    """

    PROVED = "proved"
    WITNESS = "witness"
    COUNTED = "counted"
    DESCRIBED = "described"
    ARGUED = "argued"


@dataclass(frozen=True, kw_only=True)
class Statement:
    """One sentence and what it rests on; ``obligations`` are ids, and theorem numbers are found with them."""

    says: str
    ground: Ground
    obligations: tuple[str, ...] = ()


LARGEST = 4
"""Planes up to which the spec's obligations about writes and storage go."""
HIDING = {(2, 1), (3, 1), (4, 1), (4, 2)}
REVEALING = {(1, 1), (2, 1), (2, 2), (3, 1), (4, 1), (4, 2)}
"""(planes, depth) that obligations of theorems 1 and 3 are about."""
PALETTES_EXIST = {(2, 2), (3, 2), (4, 4)}
NO_PALETTES = {(1, 2), (2, 3), (3, 3)}
"""(planes, colours) of two pictures that obligations of theorem 7 are about."""


def proved(says: str, *obligations: str, known: bool = True) -> Statement:
    """A statement that rests on proofs; where none has this size (not ``known``), it is argued."""
    return _of(Ground.PROVED, says, obligations, known)


def witnessed(says: str, *obligations: str, known: bool = True) -> Statement:
    """A statement that an example shows; where no obligation has this size (not ``known``), it is argued."""
    return _of(Ground.WITNESS, says, obligations, known)


def counted(says: str) -> Statement:
    """A statement that is counted from addresses and costs."""
    return Statement(says=says, ground=Ground.COUNTED)


def described(says: str) -> Statement:
    """A statement that is in the machine's description."""
    return Statement(says=says, ground=Ground.DESCRIBED)


def _of(ground: Ground, says: str, obligations: tuple[str, ...], known: bool) -> Statement:
    return Statement(says=says, ground=ground if known else Ground.ARGUED, obligations=obligations if known else ())


def is_hidden(machine: Machine) -> Statement:
    """That planes which the palette does not show can't be seen."""
    shape = (machine.tiles.planes, machine.tiles.depth)
    return proved(
        "under the palette of one side, colour depends on that side's planes alone",
        f"hiding-{shape[0]}-planes-depth-{shape[1]}",
        known=shape in HIDING,
    )


def is_revealed(machine: Machine) -> Statement:
    """That a side which holds the picture is seen as the picture."""
    shape = (machine.tiles.planes, machine.tiles.depth)
    return proved(
        "once the view shows a side that holds the picture, the frame is the picture, whole",
        f"reveal-{shape[0]}-planes-depth-{shape[1]}",
        known=shape in REVEALING,
    )


def colours_exist(planes: int, colours: int) -> Statement:
    """That two independent pictures of so many colours each are held in the same tiles."""
    return witnessed(
        f"two independent pictures of {colours} colours each, background included, are held in the same tiles",
        f"colours-{planes}-planes-{colours}-{colours}",
        known=(planes, colours) in PALETTES_EXIST,
    )


def no_more_colours(planes: int, colours: int) -> Statement:
    """That two independent pictures of so many colours each are not, because their square is above 2^planes."""
    says = f"two independent pictures of {colours} colours in the same tiles: {colours} x {colours} > 2^{planes}, never"
    if (planes, colours) in NO_PALETTES:
        return proved(says, f"colours-{planes}-planes-{colours}-{colours}")
    return proved(says, "colours-a-value-for-each-combination", "pigeonhole-step")


def in_tiles_of_their_own() -> Statement:
    """That the limit of theorem 7 is one of the same tiles: in tiles of their own even one plane holds two pictures."""
    return witnessed(
        "the two pictures stand in tiles of their own, so every pixel value is free for either", "colours-in-any-tiles"
    )


def nothing_early(machine: Machine) -> Statement:
    """That nothing of the next picture can be written to what is seen while the old frame is to stand."""
    planes = machine.tiles.planes
    return proved(
        "as long as the old frame is to stand, no byte that is sent ahead may change a pixel that is seen",
        f"pattern-rule-is-needed-{planes}-planes",
        f"map-rule-is-needed-{planes}-planes",
        known=planes <= LARGEST,
    )


def breaks_discipline(machine: Machine) -> Statement:
    """That what is written to what is seen breaks hidden-writes as soon as a pixel changes, where that rule applies."""
    planes = machine.tiles.planes
    if machine.sides == 1:
        return described("there is one side, so hidden-writes does not apply: only the cycles left spare the viewer")
    return proved(
        "each byte that changes a seen pixel breaks hidden-writes: only the cycles left spare the viewer",
        f"pattern-rule-is-enough-{planes}-planes",
        f"map-rule-is-enough-{planes}-planes",
        known=planes <= LARGEST,
    )


def storage_obligations(machine: Machine) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The ids of what is proved, and of what has a witness, about writing one plane on the machine's storage."""
    storage, planes = machine.tiles.storage, machine.tiles.planes
    if planes > LARGEST:
        return (), ()
    if storage is Storage.PLANAR:
        return (f"planar-by-burst-{planes}-planes",), ()
    remedy, burst = f"{storage.value}-read-modify-write-{planes}-planes", f"{storage.value}-by-burst-{planes}-planes"
    if storage is Storage.INTERLEAVED:
        return (f"interleaved-by-byte-{planes}-planes", remedy), (burst,)
    return (remedy,), (f"packed-by-byte-{planes}-planes", f"packed-no-byte-to-spare-{planes}-planes")
