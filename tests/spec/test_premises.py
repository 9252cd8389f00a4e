from pathlib import Path

import pytest

from planeproof.spec import OBLIGATIONS, Answer
from planeproof.spec.premises import Change, changes, text

TABLE = Path(__file__).parents[2] / "specs" / "premises.md"


@pytest.fixture(scope="module")
def found() -> list[Change]:
    """Every obligation without each premise, and with each wrong goal."""
    return list(changes(OBLIGATIONS))


def test_every_premise_is_needed_and_every_wrong_goal_is_refuted(found: list[Change]) -> None:
    """No proof survives the loss of any premise of its own, or a wrong goal."""
    spared = [(change.obligation.id, change.words) for change in found if change.answer is not Answer.REFUTED]
    assert spared == []


def test_every_proof_with_premises_was_changed(found: list[Change]) -> None:
    """The table speaks of each proved obligation, but those that hold without any premise."""
    changed = {change.obligation.id for change in found}
    left = [o for o in OBLIGATIONS if o.wanted is Answer.PROVED and o.id not in changed]
    assert all(o.premises == () and o.id.startswith(("planar-by", "interleaved-by-byte")) for o in left)
    assert len(changed) + len(left) == sum(o.wanted is Answer.PROVED for o in OBLIGATIONS)


def test_the_published_table_is_fresh(found: list[Change]) -> None:
    """specs/premises.md is what would be written now."""
    assert TABLE.read_text("utf-8") == text(found)
