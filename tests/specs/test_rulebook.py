import re
from pathlib import Path

import pytest
import z3

from planeproof.candidates.faults import ZOO
from planeproof.command.main import main
from planeproof.contract import RULES, Rule
from planeproof.contract.rules import EXACT_REVEAL
from planeproof.spec import OBLIGATIONS
from tests.specs.formulas import FORMULAS, flag, term
from tests.specs.infix import infix
from tests.specs.rulebook import FOLDER, RESTS_ON, pages, smallest_fault

SPECS = FOLDER.parent
EACH = pytest.mark.parametrize("rule", RULES, ids=lambda rule: str(rule.id))


def test_the_pages_are_fresh() -> None:
    """specs/rules holds what would be written now from contract, spec and zoo: python -m tests.specs."""
    assert {file.name: file.read_text("utf-8") for file in FOLDER.iterdir()} == pages()


@EACH
def test_a_page_has_the_formulas_of_the_code(rule: Rule) -> None:
    """Each formula of the rule's symbolic reading stands on its page, and there is one for every rule."""
    text = (FOLDER / f"{rule.id}.md").read_text("utf-8")
    assert FORMULAS[rule]
    for formula in FORMULAS[rule].values():
        assert f"```\n{infix(formula)}\n```" in text


@EACH
def test_no_fault_of_the_rule_is_smaller(rule: Rule) -> None:
    """The fault on the page is one that the rule stops, and none that it stops shows in a smaller scene."""
    shown = smallest_fault(rule)
    assert shown.rule is rule
    rest = [(fault.pictures, fault.cells) for fault in ZOO if fault.rule is rule]
    assert (shown.pictures, shown.cells) == min(rest)
    assert f"`{shown.id}` (`planeproof check {shown.target}" in (FOLDER / f"{rule.id}.md").read_text("utf-8")


def test_a_changed_rule_changes_its_text() -> None:
    """Exact-reveal with current and next exchanged does not read as the one on the page."""
    (formula,) = FORMULAS[EXACT_REVEAL].values()
    exchanged = z3.substitute(
        formula, (term("current picture"), term("next picture")), (term("next picture"), term("current picture"))
    )
    assert infix(exchanged) != infix(formula)


def test_formulas_are_written_as_one_reads_them() -> None:
    """By hand: precedence is bracketed, an `or` in an `or` is one, a long one stands on several lines."""
    a, b, c = flag("a"), flag("b"), flag("c")
    x, y = term("x"), term("y")
    assert infix(z3.Or(a, z3.Or(b, z3.Not(c)))) == "a or b or (not c)"
    assert infix(z3.And(a, z3.Or(b, c))) == "a and (b or c)"
    assert infix(z3.Implies(z3.ULE(x + y * 2, 7), x != y)) == "((x + (y x 2)) <= 7) implies x is not y"
    assert infix(z3.If(a, x, y) == y) == "(x if a, else y) = y"
    assert infix(z3.Extract(0, 0, z3.LShR(x, y)) == 1) == "(bit y of x) = 1"
    assert infix(z3.Extract(3, 3, x) == 0) == "(bit 3 of x) = 0"
    long = flag("a claim that takes half of a line of text, and then some more")
    assert infix(z3.Or(long, z3.And(a, long))) == f"  {long}\nor\n  a and {long}"


def test_what_has_no_words_is_an_error() -> None:
    """A term that the rulebook can't say stops it; it is not left out."""
    with pytest.raises(NotImplementedError, match="bvxor"):
        infix(term("x") ^ term("y") == term("x"))


def test_every_obligation_that_a_page_rests_on_exists() -> None:
    """The ids of the rulebook are ids of the spec."""
    assert {name for names in RESTS_ON.values() for name in names} <= {obligation.id for obligation in OBLIGATIONS}
    assert RESTS_ON.keys() == set(RULES)


@pytest.mark.parametrize("file", [SPECS / "README.md", *sorted(FOLDER.glob("*.md"))], ids=lambda file: str(file.name))
def test_links_lead_somewhere(file: Path) -> None:
    """Every link to a file is to one that is there."""
    links = re.findall(r"\]\(([^)#]+)\)", file.read_text("utf-8"))
    assert links
    assert [link for link in links if not (file.parent / link).exists()] == []


def test_the_argument_names_what_there_is() -> None:
    """Each name in backticks that reads like an id is a rule, an obligation or a fault, and its commands exist."""
    text = (SPECS / "README.md").read_text("utf-8")
    known = {rule.id for rule in RULES} | {one.id for one in OBLIGATIONS} | {fault.id for fault in ZOO}
    assert set(re.findall(r"`([a-z0-9]+(?:-[a-z0-9]+)+)`", text)) - known == set()
    assert [rule.id for rule in RULES if f"`{rule.id}`" not in text] == []
    assert set(re.findall(r"`planeproof (\w+)", text)) <= set(main.commands)
