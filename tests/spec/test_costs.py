from planeproof.contract import Storage
from planeproof.spec.costs import PatternCost, pattern_costs


def test_costs_of_one_plane_of_a_tile_by_hand() -> None:
    """Planar: one burst of 8. Interleaved: 8 bursts of a byte, or one of 15 with a shadow copy. Packed: all bytes."""
    assert pattern_costs(Storage.PLANAR, 4) == (PatternCost(bursts=1, n_bytes=8, shadow=False),)
    assert pattern_costs(Storage.INTERLEAVED, 2) == (
        PatternCost(bursts=8, n_bytes=8, shadow=False),
        PatternCost(bursts=1, n_bytes=15, shadow=True),
    )
    assert pattern_costs(Storage.PACKED, 2) == (PatternCost(bursts=1, n_bytes=16, shadow=True),)
    assert pattern_costs(Storage.PACKED, 4) == (PatternCost(bursts=1, n_bytes=32, shadow=True),)


def test_one_plane_costs_the_same_everywhere() -> None:
    """A tile of one plane is 8 bytes in a row, with nobody to share them."""
    assert {pattern_costs(storage, 1) for storage in Storage} == {(PatternCost(bursts=1, n_bytes=8, shadow=False),)}
