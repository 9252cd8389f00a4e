"""What an answer rests on, in words."""

from planeproof.judge import Basis, Strength
from planeproof.report.evidence import basis_sentence


def test_what_no_scene_was_played_of_claims_nothing() -> None:
    """Neither that nothing failed, nor why there is no bound; what is to be done stands in the source."""
    basis = Basis(source="scenes at edges; have them solved", scenes=0, strength=Strength.SAMPLED, failed=False)
    for clean in (True, False):
        assert basis_sentence(basis, clean=clean) == "sampled: no scene (scenes at edges; have them solved)"
