import subprocess
import sys
from pathlib import Path

import pytest
from cosmic_ray.mutating import mutate_code  # type: ignore[import-untyped]

from planeproof.candidates import reference
from planeproof.candidates.reference import Delta
from tests.mutants.making import OURS, mutants_of
from tests.mutants.sources import digest, loaded, made, mutated, needs, sources
from tests.mutants.table import PAGE, Reason, Row, complaints, page_text, read_reasons, read_rows, rows_text

ROOT = Path(__file__).parents[2]
EVERY, SHORT = 80, 30
"""The sample that is tried again: of the mutants that were found out within `SHORT` scenes, one in `EVERY`."""

SIMPLE = """
def pay(held: dict[int, int] | None, cost: int) -> int:
    if held is None:
        return 0
    held |= {1: cost}
    note(held)
    return cost + sum(each for each in held if each > 2)
"""


def test_the_table_covers_every_reference_module_as_it_is() -> None:
    """A module that has changed since, or has come or gone, makes the table stale: run `python -m tests.mutants`."""
    now = {module: digest(sources()[module]) for module in mutated()}
    told = {row.module: row.source for row in read_rows()}
    stale = sorted(module for module in now.keys() | told.keys() if now.get(module) != told.get(module))
    assert stale == [], f"try their mutants again: python -m tests.mutants {' '.join(stale)}"


def test_the_rows_are_the_mutants_that_are_made() -> None:
    """Of a module, each mutant that is made today has a row, with its line and what it changes; none is left over."""
    for module in ("delta", "split_pool"):
        rows = {row.id: (row.line, row.before, row.after) for row in read_rows() if row.module == module}
        now = {each.id: (each.line, each.before, each.after) for each in mutants_of(module, sources()[module])}
        assert rows == now


def test_every_survivor_is_explained() -> None:
    """Each by one reason, of a kind that fits what it said; nothing is explained that did not survive."""
    assert list(complaints(read_rows(), read_reasons())) == []


def test_the_page_is_what_rows_and_reasons_make() -> None:
    """After a change of survivors.toml: python -m tests.mutants.page writes it anew."""
    assert PAGE.read_text("utf-8") == page_text(read_rows(), read_reasons())


def test_a_sample_meets_the_same_fate_again() -> None:
    """In a process of its own; of all that were found out early, a stated part."""
    early = [row for row in read_rows() if row.fate in ("rule", "error") and 0 < row.scenes <= SHORT]
    ids = [row.id for row in early[::EVERY]]
    assert len(ids) >= 8
    line = [sys.executable, "-m", "tests.mutants", "--again", *ids]
    done = subprocess.run(line, cwd=ROOT, capture_output=True, text=True, check=False)
    assert (done.returncode, done.stderr, len(done.stdout.splitlines())) == (0, "", len(ids)), done.stdout


def test_a_mutant_that_is_not_in_the_table_is_told() -> None:
    """Nothing is tried then."""
    nobody = [sys.executable, "-m", "tests.mutants", "--again", "delta-000000"]
    done = subprocess.run(nobody, cwd=ROOT, capture_output=True, text=True, check=False)
    assert (done.returncode, done.stdout) == (1, "")
    assert done.stderr == "there is no mutant delta-000000 in mutants.csv\n"


# --- how mutants are made ---------------------------------------------------------------------------------------


def test_the_mutants_of_a_small_text() -> None:
    """Each by hand: the guard, the statements, the sign, the condition; nothing of the annotations."""
    after = {mutant.after for mutant in mutants_of("simple", SIMPLE)}
    assert {
        "if False:",
        "if held is not None:",
        "held = {1: cost}",
        "pass",
        "return cost - sum(each for each in held if each > 2)",
        "return cost + sum(each for each in held if True)",
        "return cost + sum(each for each in held if each >= 2)",
        "return 1",
    } <= after
    assert not any(text.startswith("def") for text in after)
    assert len({mutant.id for mutant in mutants_of("simple", SIMPLE)}) == len(mutants_of("simple", SIMPLE))


def test_an_id_outlives_a_change_elsewhere() -> None:
    """Lines that are put before move a mutant, and rename none."""
    moved = {mutant.id: mutant.line for mutant in mutants_of("simple", f"X = note\n\n{SIMPLE}")}
    for mutant in mutants_of("simple", SIMPLE):
        assert moved[mutant.id] == mutant.line + 2


@pytest.mark.parametrize("operator", OURS)
def test_our_operators_do_what_their_examples_say(operator: type) -> None:
    """As Cosmic Ray holds its own to theirs."""
    for example in operator.examples():  # type: ignore[attr-defined]
        mutated_code = mutate_code(example.pre_mutation_code, operator(), example.occurrence)
        assert mutated_code == example.post_mutation_code or (
            mutated_code is None and example.pre_mutation_code == example.post_mutation_code
        )


# --- how a mutant runs ------------------------------------------------------------------------------------------


def test_a_mutant_lives_in_memory_only() -> None:
    """Inside, the package is made of the texts that are given; afterwards it is the very one that was there before."""
    texts = sources()
    marked = texts["delta"] + "\n\nclass Marked(Delta):\n    pass\n"
    with loaded({**texts, "delta": marked}):
        inside = made("delta", "Marked").__bases__[0]
        assert inside is made("delta", "Delta") is not Delta
        assert made("rows", "Rows").__module__ == "planeproof.candidates.reference.rows"
    assert made("delta", "Delta") is Delta
    assert sys.modules[reference.__name__] is reference
    assert not hasattr(sys.modules[Delta.__module__], "Marked")
    assert sources() == texts


def test_what_a_module_is_made_of() -> None:
    """A change of what all have in common concerns all that are made from it."""
    needed = needs(sources())
    assert {"delta", "two_sides", "outbox", "shadow"} <= needed["delta"]
    assert "two_sides" not in needed["pairs"]
    assert needed["outbox"] == {"outbox"}


# --- what is kept -----------------------------------------------------------------------------------------------


def row(**other: object) -> Row:
    """A survivor that said the same as the right one."""
    facts: dict[str, object] = {
        "id": "m-1",
        "module": "m",
        "source": "0",
        "line": 3,
        "operator": "AddNot",
        "before": "if a,\nb:",
        "after": 'if not "a":',
        "fate": "survived",
        "by": "",
        "trial": "",
        "scenes": 10,
        "unlike": 0,
        "sent": "1.0000",
    }
    return Row(**{**facts, **other})  # type: ignore[arg-type]


def test_rows_are_read_as_they_were_written(tmp_path: Path) -> None:
    """Quotes, commas and line ends included; ordered by module and line."""
    rows = [row(id="m-2", line=9), row(), row(id="a-1", module="a", fate="rule", by="progress")]
    (tmp_path / "rows.csv").write_text(rows_text(rows), "utf-8")
    assert read_rows(tmp_path / "rows.csv") == [rows[2], rows[1], rows[0]]


@pytest.mark.parametrize(
    ("rows", "kind", "mutants", "said"),
    [
        ([row()], "equivalent", ("m-1",), []),
        ([row(unlike=2)], "another way", ("m-1",), []),
        ([row()], "equivalent", (), ["m-1 survived, and nobody says why"]),
        ([row(fate="rule")], "equivalent", ("m-1",), ["m-1 did not survive, or is no mutant"]),
        ([row()], "equivalent", ("m-1", "m-1"), ["m-1 is explained 2 times"]),
        ([row(unlike=2)], "equivalent", ("m-1",), ["m-1 is called equivalent, but said something else"]),
        ([row()], "another way", ("m-1",), ["m-1 is called another way, but never said anything else"]),
    ],
)
def test_reasons_and_survivors_are_held_together(
    rows: list[Row], kind: str, mutants: tuple[str, ...], said: list[str]
) -> None:
    """Each complaint says which mutant it is about."""
    assert list(complaints(rows, [Reason(kind=kind, why="", mutants=mutants)])) == said
