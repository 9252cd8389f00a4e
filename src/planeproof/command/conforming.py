"""``check --conforms``: whether what a candidate was seen to write are steps of a scheduler that is proved."""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that --help answers at once

from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

import click

from planeproof.command.refusing import refusing
from planeproof.command.steps import decided, steps_named

if TYPE_CHECKING:
    from planeproof.conformance import Observation
    from planeproof.contract import Machine
    from planeproof.judge import Play, Verdict
    from planeproof.spec.steps import Decision

SCENES = 20
"""Scenes that are observed; each byte of one takes the proof's own formula, which is slow."""


@dataclass(frozen=True, kw_only=True)
class Conforming:
    """The steps ``named`` to compare with, which are proved, and the machines that they are for."""

    named: str
    decision: "Decision"
    machines: "tuple[Machine, ...]"

    @classmethod
    def to(cls, named: str, machines: Sequence[str]) -> "Conforming":
        """Have the steps proved. Refused if they are not, or are not for one of the machines."""
        from planeproof.machines import MachineFileError, read_machine
        from planeproof.spec import RLIMIT, Answer
        from planeproof.spec.steps.addresses import Addresses

        steps = steps_named(named)
        with refusing(MachineFileError, ValueError):
            chosen = tuple(map(read_machine, machines))
            for machine in chosen:
                Addresses(machine=machine, sharing=steps.sharing)
        decision = decided(named, steps, RLIMIT)
        if decision.answer is not Answer.PROVED:
            raise click.ClickException(
                f"the steps {named} are not proved, so to conform to them would mean nothing: planeproof prove {named}"
            )
        return cls(named=named, decision=decision, machines=chosen)

    def observed(self, verdict: "Verdict", cases: Path) -> "tuple[Verdict, list[str]]":
        """The verdict with what was observed, and that in words. A stray burst makes UNKNOWN of what would pass."""
        from planeproof.conformance import observe
        from planeproof.judge import CandidateFault, Outcome, by_seriousness
        from planeproof.report import wrapped

        try:
            plays = self._plays(verdict)
        except CandidateFault:
            # The same scenes were played in the check, so it does not do the same twice.
            said = "Nothing was observed: played again, the candidate broke the contract, so there is no answer."
            return replace(verdict, outcomes=by_seriousness([*verdict.outcomes, Outcome.UNKNOWN])), self._told(said)
        if not plays:
            return verdict, self._told("Nothing was observed: no scene was played to its end on a small relative.")
        observation = observe(self.decision.steps, *plays)
        lines = self._told(observation.words, self._known())
        if observation.stray is None:
            return replace(verdict, basis=(*verdict.basis, observation.basis)), lines
        lines += wrapped(_consequence(verdict), 2)
        lines += self._kept(verdict, plays[observation.plays - 1], observation, cases)
        if not (verdict.findings or verdict.fault):
            verdict = replace(verdict, outcomes=by_seriousness([*verdict.outcomes, Outcome.UNKNOWN]))
        return verdict, lines

    def _plays(self, verdict: "Verdict") -> "list[Play]":
        """What was found, or else the first of the scenes that were drawn independently, played once more."""
        from planeproof.hosts import load
        from planeproof.judge import play
        from planeproof.search.order import draw

        if verdict.findings or verdict.fault:
            return [finding.play for finding in verdict.findings]
        count = min(SCENES, sum(basis.scenes for basis in verdict.basis if basis.independent))
        make, each = load(verdict.target).make, len(self.machines)
        scenes = [draw(self.machines[n % each], "scene", n // each, seed=verdict.seed) for n in range(count)]
        return [play(scene, make) for scene in scenes]

    def _told(self, *said: str) -> list[str]:
        from planeproof.report import wrapped

        return [f"Whether it takes the steps of {self.named}", *(line for text in said for line in wrapped(text, 2))]

    def _known(self) -> str:
        from planeproof.spec.steps.induction import cases

        asked, answer = ", ".join(cases(self.decision.steps)), self.decision.answer.name
        return f"Of the steps themselves, by induction as in theorem 5 ({asked}): {answer}. {self.decision.words}"

    def _kept(self, verdict: "Verdict", play: "Play", observation: "Observation", cases: Path) -> list[str]:
        from planeproof.report.story import again_lines
        from planeproof.scenes.cases import Case, Found, keep_case, stem_of

        found = Found(target=verdict.target, rule="", profile=verdict.profile.value, note=str(observation.stray))
        path = keep_case(cases, f"{stem_of(verdict.target)}-conformance", Case(scene=play.scene, found=found))
        return [f"  {line.strip()}" for line in again_lines(str(path))[1:]]


def _consequence(verdict: "Verdict") -> str:
    if verdict.findings:
        return "So the proof of the steps says nothing of this candidate, which breaks a rule besides."
    return (
        "So the proof of the steps says nothing of this candidate. No rule was broken, and it may be right in another "
        "way; but what was asked for does not hold, so the verdict is UNKNOWN."
    )
