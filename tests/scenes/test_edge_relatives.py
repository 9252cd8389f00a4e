"""The small relatives for edge scenes: always the same, of the base's kind, and what two pictures on them differ by."""

from itertools import product

import pytest

from planeproof.contract import Demands
from planeproof.machines import read_machine, shipped
from planeproof.scenes.edge_relatives import COLUMNS, ROWS, edge_relatives, uploads
from tests.candidates.small import small


@pytest.mark.parametrize(("cells", "most"), [(1, 1), (3, 1), (3, 2), (4, 2), (4, 3), (4, 4), (5, 3)])
def test_uploads_are_all_there_are(cells: int, most: int) -> None:
    """By hand, over every two pictures that may not be declined: empty, filled, filled alike or filled otherwise."""
    pool = tuple(range(1, cells + 1))
    machine = small("vitrine-50", cells, tiles=cells + 1, pool=pool, demands=Demands(must_show=most))
    seen = set()
    for pairs in product(((0, 0), (1, 0), (0, 1), (1, 1), (1, 2)), repeat=cells):
        if max(sum(held > 0 for held, _ in pairs), sum(now > 0 for _, now in pairs)) <= most:
            patterns = sum(now > 0 and now != held for held, now in pairs)
            seen.add((patterns, sum((now > 0) != (held > 0) for held, now in pairs)))
    assert sorted(uploads(machine)) == sorted(seen)


@pytest.mark.parametrize("name", shipped())
def test_relatives_are_always_the_same(name: str) -> None:
    """Asked twice they are equal; they differ from one another in their time alone, and are as big as is said."""
    base = read_machine(name)
    relatives = edge_relatives(base)
    assert relatives == edge_relatives(base)
    assert {(m.window.columns, m.window.rows) for m in relatives} == {(COLUMNS, ROWS)}
    assert len({(m.tiles, m.map, m.colours, m.layout, m.demands) for m in relatives}) == 1
    assert len({m.blank_cycles for m in relatives}) == len(relatives) <= 2
