from collections.abc import Mapping

from planeproof.spec import OBLIGATIONS, THEOREMS, Answer, Outcome, Report

AFFORDABLE = 100_000_000
"""Resource units of z3 for all obligations together (about 53 million when written), whatever the machine."""


def witness(report: Report, name: str) -> Mapping[str, int | bool]:
    """The witness of the obligation of that id."""
    (found,) = (result.witness for result in report.results if result.obligation.id == name)
    assert found is not None
    return found


def test_every_obligation_gives_the_wanted_answer(report: Report) -> None:
    """What is wanted proved is proved and what is wanted refuted is refuted, at a known cost."""
    assert [result.obligation.id for result in report.results if result.outcome is not Outcome.AS_WANTED] == []
    assert report.outcome is Outcome.AS_WANTED
    assert sum(result.used or 0 for result in report.results) < AFFORDABLE


def test_the_theorems_that_are_there() -> None:
    """Each theorem has obligations, and ids name one obligation each."""
    assert {obligation.theorem for obligation in OBLIGATIONS} == set(THEOREMS)
    assert len({obligation.id for obligation in OBLIGATIONS}) == len(OBLIGATIONS)


def test_what_is_refuted_has_a_witness_and_what_is_proved_has_none(report: Report) -> None:
    """A refutation always comes with values to look at; a proof never does."""
    for result in report.results:
        assert bool(result.witness) == (result.answer is Answer.REFUTED), result.obligation.id


def test_the_plane_wise_wording_fails_on_a_palette_that_can_be_checked_by_hand(report: Report) -> None:
    """In the witness two pixel values that differ in the written plane alone differ in colour: it is not hidden."""
    for planes in (2, 3, 4):
        found = witness(report, f"plane-wise-rule-is-needed-{planes}-planes")
        colours, bit = [found[f"colour of value {value}"] for value in range(1 << planes)], 1 << found["plane written"]
        assert any(colours[value] != colours[value ^ bit] for value in range(1 << planes))


def test_colours_go_one_to_one_to_pixel_values_in_the_witness(report: Report) -> None:
    """Two pictures of four colours in four planes use all sixteen pixel values, each for one combination."""
    assert sorted(witness(report, "colours-4-planes-4-4").values()) == list(range(16))


def test_a_burst_on_interleaved_storage_changes_another_plane_in_the_witness(report: Report) -> None:
    """Eight bytes from the first row of plane 0 on reach plane 1 in the first rows, and no further."""
    found = witness(report, "interleaved-by-burst-2-planes")
    changed = [row for row in range(8) if found[f"plane 1, row {row}, before"] != found[f"plane 1, row {row}, after"]]
    assert changed
    assert max(changed) < 4


def test_the_schedule_that_the_solver_finds_reveals_the_hidden_side(report: Report) -> None:
    """A pattern byte in plane 1 and an entry of page 1 that names its tile come first, then side 1 is shown."""
    found = witness(report, "rules-let-nothing-be-seen")
    kinds = [found[f"refresh {number}: 0 sends a pattern byte, 1 a map entry, 2 shows"] for number in range(3)]
    assert sorted(kinds[:2]) == [0, 1]
    assert kinds[2] == 2
    sent, placed = kinds.index(0), kinds.index(1)
    assert found[f"refresh {sent}: tile"] == found[f"refresh {placed}: entry"]
    assert (
        found[f"refresh {sent}: plane"] == found[f"refresh {placed}: page"] == found["refresh 2: side then seen"] == 1
    )
    assert found[f"refresh {sent}: byte"] != 0
    assert found["refresh 2: the picture is seen"]
