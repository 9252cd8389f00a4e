"""The story of one broken rule: its sentence, the scene, what happened, and what was seen instead."""

from planeproof.contract import Kind, Rule, RuleClass
from planeproof.contract.rules import HIDDEN_WRITES
from planeproof.judge import Finding, Play, Violation
from planeproof.judge.play import KEPT_OF_A_RULE
from planeproof.report.compared import compared_lines
from planeproof.report.figures import counted, cycles, listed, wrapped
from planeproof.report.refreshes import Trace
from planeproof.report.scene import cell_name, scene_lines
from planeproof.report.writes import place_of
from planeproof.scenes.relatives import RELATIVE

_CLASS = {
    RuleClass.SEEN: "judged from what the viewer sees",
    RuleClass.OWN: "protects the rest of the screen",
    RuleClass.DISCIPLINE: "judged write by write, so that no cut of a blanking can do harm",
}
_KIND = {Kind.ALWAYS: "at every moment", Kind.EVENTUALLY: "within the machine's patience"}


def rule_lines(rule: Rule, indent: int) -> list[str]:
    """A rule in full."""
    label = " " * indent
    return [
        *wrapped(rule.statement, indent),
        f"{label}class     {rule.rule_class.value}: {_CLASS[rule.rule_class]}",
        f"{label}kind      {rule.kind.value}: must hold {_KIND[rule.kind]}",
        *_labelled("why", rule.why, indent),
        *_labelled("known", rule.theorem, indent),
        *_labelled("witness", f"it counts as exercised once {rule.witness}", indent),
    ]


def _labelled(label: str, text: str, indent: int) -> list[str]:
    first, *others = wrapped(text, indent + 10)
    return [f"{' ' * indent}{label:<10}{first.strip()}", *others]


def finding_lines(finding: Finding, *, full: bool = False) -> list[str]:
    """The whole story of a finding, headings at the margin."""
    play, violation = finding.play, finding.violation
    how = "The scene" if full else "The smallest scene found that shows it"
    pictures = None if full else _concerned(play, violation)
    return [
        *summary_lines(finding),
        "",
        how,
        *scene_lines(play.scene, 2, concerned=pictures),
        "",
        "What happened",
        *Trace(play=play, marked=violation, full=full).lines(2),
        *_compared(play, violation),
    ]


def summary_lines(finding: Finding, indent: int = 0) -> list[str]:
    """The rule's sentence, where it was broken and why that matters."""
    play, violation = finding.play, finding.violation
    said = [
        f"Broken {_where(violation)}: {violation.said}.",
        *_byte(play, violation),
        f"Why it matters: {violation.rule.why}",
        *_spared(play, violation),
        *_counts(play, violation.rule),
    ]
    head = wrapped(f"{violation.rule.id}: {violation.rule.statement}", indent)
    return head + [line for text in said for line in wrapped(text, indent + 2)]


def given_lines(finding: Finding) -> list[str]:
    """The same on the machine as given, in short, or that it was not seen there."""
    if finding.given is None:
        said = not_seen_as_given(finding)
        return ["", "On the machine as given", *wrapped(said, 2)] if said else []
    scene = finding.given.scene
    violation = next(violation for violation in finding.given.violations if violation.rule is finding.rule)
    pictures, cells = counted(len(scene.pictures), "picture"), counted(scene.occupied, "occupied cell")
    said = f"{scene.machine.name} itself shows it with {pictures} and {cells}, {_where(violation)}: {violation.said}."
    return ["", "On the machine as given", *wrapped(said, 2)]


def not_seen_as_given(finding: Finding) -> str:
    """Says of what was found on a small relative that it was not seen on the machine itself; else nothing."""
    name = finding.play.scene.machine.name
    if finding.given is not None or not name.startswith(RELATIVE):
        return ""
    machine, cycles = name.removeprefix(RELATIVE), finding.play.scene.machine.blank_cycles
    return (
        f"It has not been seen on {machine} as given, though it was tried; that does not rule it out. The small "
        f"relative has blankings of {cycles} cycles: if yours needs more of them for what it does in one (to change "
        "the view in several bursts, say), check with --as-given."
    )


def again_lines(case: str | None, given_case: str | None = None) -> list[str]:
    """The lines to paste to see a scene again."""
    if case is None:
        return ["To see it again", "  Nothing was saved. Give check a folder for cases: --cases DIR, then replay."]
    return ["To see it again", *(f"  planeproof replay {_quoted(path)}" for path in (case, given_case) if path)]


def _quoted(path: str) -> str:
    return f"'{path}'" if any(sign in path for sign in " ()&;$") else path


def _where(violation: Violation) -> str:
    place = "in the set-up" if violation.refresh < 0 else f"in refresh {violation.refresh}"
    if violation.burst is None:
        return place
    return f"{place}, burst {violation.burst}, byte {violation.byte} (counted from 0)"


def _byte(play: Play, violation: Violation) -> list[str]:
    machine = play.scene.machine
    said = []
    if violation.address is not None:
        said.append(f"The byte at address {violation.address}: {place_of(machine, violation.address)}.")
    if violation.cell is not None:
        said.append(f"The cell: {cell_name(machine, violation.cell)}.")
    return said


def _spared(play: Play, violation: Violation) -> list[str]:
    """What the margin means, for a write to what was being seen that no frame shows."""
    seen = any(v.refresh == violation.refresh and v.rule.rule_class is RuleClass.SEEN for v in play.violations)
    if violation.margin is None or violation.margin < 0 or violation.rule is not HIDDEN_WRITES or seen:
        return []
    left = f"{cycles(violation.margin)} cycles of that blanking were left over"
    return [f"The viewer was spared, for {left}: shorter by more, it could have ended before the change did."]


def _counts(play: Play, rule: Rule) -> list[str]:
    times = play.counts.get(rule, 0)
    said = f"In this scene it is broken {counted(times, 'time')}" if times > 1 else ""
    if times > KEPT_OF_A_RULE:
        said += f"; the first {KEPT_OF_A_RULE} were kept, the other {times - KEPT_OF_A_RULE} only counted"
    others = [f"{other.id} ({counted(n, 'time')})" for other, n in play.counts.items() if other is not rule and n]
    lines = [f"{said}."] if said else []
    return lines + ([f"Also broken in this scene: {listed(others)}."] if others else [])


def _concerned(play: Play, violation: Violation) -> list[int]:
    """All pictures of a small scene, otherwise those that could be seen at the violation."""
    if len(play.scene.pictures) <= 6:
        return list(range(len(play.scene.pictures)))
    refresh = play.refreshes[max(violation.refresh, 0)]
    near = [violation.picture, refresh.offered, refresh.current, refresh.upcoming]
    return sorted({number for number in near if number is not None and number >= 0})


def _compared(play: Play, violation: Violation) -> list[str]:
    lines = compared_lines(play, violation, 2)
    return ["", "Expected and seen", *lines] if lines else []
