"""A verdict as Markdown, for the page of a CI job."""

import re

from planeproof.judge import Outcome, Verdict
from planeproof.report.evidence import basis_sentence, cost_sentence, rule_state
from planeproof.report.story import again_lines, finding_lines
from planeproof.report.text import meaning

_MARKS = re.compile(r"([\\`*_{}\[\]<>|#~&])")
_LONGEST_STORY = 60


def markdown_summary(verdict: Verdict) -> str:
    """The verdict in short: outcome, rules, the smallest scene, what it rests on."""
    parts = [_head(verdict), _rules(verdict), *_story(verdict), _rests(verdict), _costs(verdict)]
    return "\n\n".join(part for part in parts if part) + "\n"


def _head(verdict: Verdict) -> str:
    first = verdict.outcome
    also = "".join(f"; also {outcome.name.replace('_', ' ')}" for outcome in verdict.outcomes[1:])
    return (
        f"## Planeproof: {first.name.replace('_', ' ')}\n\n"
        f"{plain(verdict.target)}: {meaning(verdict, first)}{also}.\n\n"
        f"Profile {verdict.profile.value}, seed {verdict.seed}, asked about {plain(', '.join(verdict.machines))}."
    )


def _rules(verdict: Verdict) -> str:
    rows = [f"| {report.rule.id} | {plain(rule_state(verdict, report))} |" for report in verdict.rules]
    return "\n".join(["| rule | state |", "| --- | --- |", *rows])


def _story(verdict: Verdict) -> list[str]:
    if verdict.fault is not None:
        return [f"### What happened\n\n{plain(str(verdict.fault))}\n\n{plain(verdict.fault.advice)}"]
    if not verdict.findings:
        return []
    finding = verdict.findings[0]
    lines = finding_lines(finding)
    more = [] if len(lines) <= _LONGEST_STORY else [f"... {len(lines) - _LONGEST_STORY} more lines in the record"]
    again = plain(" ".join(line.strip() for line in again_lines(finding.case)))
    return [f"### The smallest scene\n\n{_fenced([*lines[:_LONGEST_STORY], *more])}", again]


def _fenced(lines: list[str]) -> str:
    """A block that nothing in it can end: its fence is longer than any row of backquotes inside."""
    text = "\n".join(lines)
    fence = "`" * max(3, 1 + max((len(row) for row in re.findall("`+", text)), default=0))
    return f"{fence}text\n{text}\n{fence}"


def _rests(verdict: Verdict) -> str:
    clean = verdict.fault is None and verdict.outcome is not Outcome.FAIL
    sentences = [f"- {plain(basis_sentence(basis, clean=clean))}" for basis in verdict.basis]
    return "\n".join(["### What this rests on", "", *(sentences or ["- nothing: no scene was played"])])


def _costs(verdict: Verdict) -> str:
    if not verdict.costs:
        return ""
    rows = [f"- {plain(cost.machine)}: {plain(cost_sentence(cost))}" for cost in verdict.costs]
    return "\n".join(["### What it costs, over turning crystals", "", *rows])


def plain(text: str) -> str:
    """``text`` so that Markdown and HTML show it as it is."""
    return _MARKS.sub(r"\\\1", " ".join(text.split()))
