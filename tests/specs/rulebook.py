"""The rulebook, specs/rules: a page for each rule, made from contract, spec and zoo; `tests.specs` writes it anew."""

from collections.abc import Iterator
from pathlib import Path

from planeproof.candidates.faults import ZOO, Fault
from planeproof.contract import RULES, Rule
from planeproof.contract.rules import (
    BLANKING_ONLY,
    EXACT_REVEAL,
    FAIR_REFUSAL,
    HIDDEN_WRITES,
    IN_ORDER,
    OWN_MEMORY,
    PROGRESS,
    TILE_CAP,
    WHOLE_REVEAL,
)
from planeproof.judge import Finding
from planeproof.report.story import finding_lines
from planeproof.spec import OBLIGATIONS, THEOREMS, Obligation
from tests.candidates.test_zoo import LEAST, played
from tests.specs.formulas import FORMULAS
from tests.specs.infix import infix

FOLDER = Path(__file__).parents[2] / "specs" / "rules"

RESTS_ON: dict[Rule, tuple[str, ...]] = {
    HIDDEN_WRITES: (
        "pattern-rule-is-enough-2-planes",
        "pattern-rule-is-needed-2-planes",
        "map-rule-is-enough-2-planes",
        "map-rule-is-needed-2-planes",
        "pattern-step-2-planes",
        "pattern-cut-rule-2-planes",
        "map-cut-rule-2-planes",
        "without-hidden-writes",
    ),
    EXACT_REVEAL: ("reveal-2-planes-depth-1", "whole-reveal-follows", "without-exact-reveal"),
    BLANKING_ONLY: ("whole-reveal-follows", "without-blanking-only"),
    OWN_MEMORY: ("own-memory-keeps-the-bytes-of-others", "without-own-memory", "addresses-planar"),
    TILE_CAP: ("different-patterns", "pigeonhole-base", "pigeonhole-step", "without-tile-cap"),
    WHOLE_REVEAL: (
        "whole-reveal-follows",
        "pattern-cut-outside-the-change-only",
        "hidden-plane-show",
        "frame-of-the-invariant-2-planes",
    ),
    IN_ORDER: ("rules-let-nothing-be-seen",),
    PROGRESS: ("rules-let-nothing-be-seen", "a-schedule-within-the-rules"),
    FAIR_REFUSAL: ("rank-step", "rank-apart", "one-page-pairs", "split-pool-patterns"),
}
"""Rule -> the obligations to read first; those in two planes stand for all sizes."""


def page(rule: Rule) -> str:
    """The page of one rule."""
    return "\n".join([*_head(rule), *_formulas(rule), *_theorems(rule), *_fault(rule)]) + "\n"


def pages() -> dict[str, str]:
    """File name -> text."""
    return {f"{rule.id}.md": page(rule) for rule in RULES}


def smallest_fault(rule: Rule) -> Fault:
    """The fault of the zoo that this rule stops in the least scene: fewest pictures, then fewest occupied cells."""
    return min((fault for fault in ZOO if fault.rule is rule), key=lambda fault: (fault.pictures, fault.cells))


def _head(rule: Rule) -> Iterator[str]:
    yield f"# {rule.id}\n"
    yield f"> {rule.statement}\n"
    yield f"Class {rule.rule_class.value}, kind {rule.kind.value}. It counts as exercised once {rule.witness}.\n"
    yield f"**Why.** {rule.why}\n"


def _formulas(rule: Rule) -> Iterator[str]:
    yield "## Formula\n"
    for about, formula in FORMULAS[rule].items():
        yield f"{about[0].upper()}{about[1:]}:\n"
        yield f"```\n{infix(formula)}\n```\n"


def _theorems(rule: Rule) -> Iterator[str]:
    known = {obligation.id: obligation for obligation in OBLIGATIONS}
    yield "## What is known\n"
    yield f"{rule.theorem}\n"
    for name in RESTS_ON[rule]:
        yield _obligation(known[name])
    yield ""


def _obligation(obligation: Obligation) -> str:
    theorem, wanted = f"{obligation.theorem}, {THEOREMS[obligation.theorem]}", obligation.wanted.value
    file = f"../obligations/{obligation.theorem}-{obligation.id}.smt2"
    return f"* Theorem {theorem}: [{obligation.id}]({file}), {wanted}: {obligation.statement}"


def _fault(rule: Rule) -> Iterator[str]:
    fault = smallest_fault(rule)
    found = played(LEAST[fault.id], fault.make)
    violation = next(violation for violation in found.violations if violation.rule is rule)
    yield "## The smallest fault that it stops\n"
    yield f"`{fault.id}` (`planeproof check {fault.target} --machine {fault.machine}`): {fault.story}\n"
    yield "```"
    yield from finding_lines(Finding(rule=rule, play=found, violation=violation))
    yield "```\n"
    others = [other.id for other in ZOO if other.rule is rule and other is not fault]
    if others:
        yield f"It stops {', '.join(f'`{name}`' for name in others)} as well."


def write() -> None:
    """Write every page anew."""
    FOLDER.mkdir(parents=True, exist_ok=True)
    for name, text in pages().items():
        (FOLDER / name).write_text(text, encoding="utf-8")
