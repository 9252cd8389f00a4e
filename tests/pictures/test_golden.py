import numpy as np
import pytest

from planeproof.pictures import KINDS, Kind
from tests.pictures.golden_pictures import GOLDEN, body, kept, run


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_a_picture_is_pixel_for_pixel_what_was_kept(kind: Kind) -> None:
    """Compared as arrays: how a file is packed is no matter. Words are left out, for a face may change."""
    assert np.array_equal(body(run(), kind), kept(kind))


def test_nothing_is_kept_that_no_kind_draws() -> None:
    """A kind that goes takes its picture along."""
    assert {path.stem for path in GOLDEN.glob("*")} == {kind.name for kind in KINDS}
