"""The bodies of one run's pictures, kept in ``golden/``. Write them anew, then look at every one.

python -m tests.pictures.golden_pictures
"""

from dataclasses import replace
from pathlib import Path

import numpy as np
from PIL import Image

from planeproof.candidates.reference import Delta
from planeproof.contract import Burst
from planeproof.pictures import KINDS, Course, Kind, Style, figure_of
from planeproof.pictures.marks import Canvas
from tests.pictures.runs import EMPTY, NARROW, SLOPE, SQUARE, course, machine

GOLDEN = Path(__file__).parent / "golden"
REFRESH = 2
"""The refresh that is drawn: its blanking is too narrow, and a byte that comes too late wrecks part of the frame."""

ON = machine(timing=replace(NARROW, lines=54, cycles_per_line=4))


class Hasty(Delta):
    """Right, but for a burst that it adds to every blanking."""

    def blank(self, cycles: int) -> list[Burst]:
        """The work, and then as much again to a tile that nobody sees."""
        return [*super().blank(cycles), Burst(ON.pattern_address(3, 1), bytes(SQUARE))]


def run() -> Course:
    """A square, then a slope, on a machine whose display is wrecked by late bytes."""
    return course(ON, Hasty, [SQUARE, EMPTY], [SLOPE, SQUARE])


def body(of: Course, kind: Kind) -> Canvas:
    """The picture without its words, three pixels for one."""
    return figure_of(of, REFRESH, kind, Style(scale=3)).body


def kept(kind: Kind) -> Canvas:
    """The picture as it was kept."""
    with Image.open(GOLDEN / f"{kind.name}.png") as image:
        return np.asarray(image.convert("RGB"))


def main() -> None:
    """Write all of them."""
    GOLDEN.mkdir(exist_ok=True)
    drawn = run()
    for kind in KINDS:
        Image.fromarray(body(drawn, kind)).save(GOLDEN / f"{kind.name}.png", optimize=True)


if __name__ == "__main__":
    main()
