"""The verdict: a closed set of outcomes, what each rests on, and what was found."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum

from planeproof.contract import Rational, Rule, RuleClass, Scene
from planeproof.judge.conversation import CandidateFault
from planeproof.judge.edges import Edge
from planeproof.judge.expected import Expected
from planeproof.judge.play import Play
from planeproof.judge.violation import Violation


class Outcome(Enum):
    """The answer to a check; the value is the exit code. It refuses to be used as a bool."""

    PASS = 0
    FAIL = 1
    UNKNOWN = 2
    VACUOUS = 3
    CANDIDATE_ERROR = 4
    HUNG = 5

    def __bool__(self) -> bool:
        raise TypeError(f"an outcome is not a bool: compare it, as in `verdict.outcome is Outcome.{self.name}`")


SERIOUSNESS: tuple[Outcome, ...] = (
    Outcome.HUNG,
    Outcome.CANDIDATE_ERROR,
    Outcome.FAIL,
    Outcome.UNKNOWN,
    Outcome.VACUOUS,
    Outcome.PASS,
)
"""When several outcomes apply, the first of these is reported."""


def by_seriousness(outcomes: Iterable[Outcome]) -> tuple[Outcome, ...]:
    """The outcomes that apply, the most serious first; PASS stands alone or not at all."""
    applying = set(outcomes) or {Outcome.PASS}
    if len(applying) > 1:
        applying.discard(Outcome.PASS)
    return tuple(outcome for outcome in SERIOUSNESS if outcome in applying)


class Profile(Enum):
    """``STRICT``: every rule must be kept. ``SEEN``: breaches of discipline are exposed, and do not fail."""

    STRICT = "strict"
    SEEN = "seen"

    def fails_on(self, rule: Rule) -> bool:
        """Whether breaking ``rule`` makes the verdict FAIL."""
        return self is Profile.STRICT or rule.rule_class is not RuleClass.DISCIPLINE


class RuleStatus(Enum):
    """What is known of one rule after a check."""

    KEPT = "kept"
    BROKEN = "broken"
    EXPECTED = "expected"
    MASKED = "masked"
    EXPOSED = "exposed"
    NOT_EXERCISED = "not exercised"
    NOT_APPLICABLE = "not applicable"


class Strength(Enum):
    """What kind of evidence an answer rests on; see ``Basis``."""

    SAMPLED = "sampled"
    EXHAUSTED = "exhausted"
    PROVED = "proved"
    OBSERVED = "observed"


@dataclass(frozen=True, kw_only=True)
class Basis:
    """What an answer rests on: ``scenes`` scenes of ``source``.

    ``independent`` tells whether they were drawn independently of one another from one generator, ``failed`` whether
    one of them failed, as far as that was kept apart; there is a ``bound`` only if they were and none did.
    ``singletons``: behaviours of the candidate that were seen in one of the scenes only, None where that was not
    counted. ``let_be``: scenes that failed as is expected, which are no failures, and leave no bound.
    """

    strength: Strength
    source: str
    scenes: int
    independent: bool = False
    failed: bool = False
    singletons: int | None = None
    let_be: int = 0

    @property
    def residual(self) -> float | None:
        """Good-Turing: an estimate of the chance that one more scene shows a behaviour not seen before."""
        return None if self.singletons is None or not self.scenes else self.singletons / self.scenes

    @property
    def bound(self) -> float | None:
        """One-sided 95 % upper bound on the share of the generator's scenes that fail, when none failed.

        1 - 0.05^(1/n), the exact (Clopper-Pearson) bound. None where it would mean nothing.
        """
        if not self.independent or not self.scenes or self.failed or self.let_be:
            return None
        return float(1 - 0.05 ** (1 / self.scenes))


@dataclass(frozen=True, kw_only=True, eq=False)
class Finding:
    """A rule that was broken: the smallest play found that shows it, and its first violation.

    ``after``: how many scenes had been played when it first was, None where that was not counted. ``given``: the
    smallest play found that shows it on a machine as given, None if none was or ``play`` is it. ``case`` and
    ``given_case`` are where their scenes were saved, None if they were not.
    """

    rule: Rule
    play: Play
    violation: Violation
    after: int | None = None
    given: Play | None = None
    case: str | None = None
    given_case: str | None = None


@dataclass(frozen=True, kw_only=True)
class RuleReport:
    """One rule that was asked for, and what is known of it.

    ``margin``: least cycles that spared the viewer. ``missed``: edges that the search should have reached, and did
    not, for the rule to count as exercised.
    """

    rule: Rule
    status: RuleStatus
    margin: Rational | None = None
    missed: tuple[Edge, ...] = ()


@dataclass(frozen=True, kw_only=True)
class EdgeReport:
    """How the generated scenes stand to one edge: ``scenes`` reached it, of the ``admitting`` whose machine lets them.

    ``least``: the least distance, in the edge's unit; None where there was nothing to measure.
    """

    edge: Edge
    scenes: int
    admitting: int
    least: Rational | None


@dataclass(frozen=True, kw_only=True)
class Cost:
    """What showing pictures cost on one machine, over the plays of the turning crystals.

    ``shown``: pictures seen. ``refreshes_each``: mean refreshes a picture. ``bytes_each``: mean bytes a picture.
    ``fullest``: the largest share of a blanking that was used. ``longest_wait`` and ``patience`` are in full blankings.
    """

    machine: str
    shown: int
    refreshes_each: float
    bytes_each: float
    fullest: float
    longest_wait: int
    patience: int


@dataclass(frozen=True, kw_only=True)
class Source:
    """Where a candidate is written: a file, and the line on which its class or function begins, from 1."""

    file: str
    line: int


@dataclass(frozen=True, kw_only=True, eq=False)
class Verdict:
    """The answer of a check. ``outcomes`` are all that apply, the most serious first.

    ``edges``: how near the generated scenes came to each. ``source``: where the candidate is written, if that is known.
    ``expected``: the failures that are let be, and entries of their list that can't stand.
    ``fault``: the candidate's own breach of the contract, if any, or that its process ended (where somebody outside
    seems to have ended it, the outcome is UNKNOWN); ``fault_scene``: the scene in which it happened;
    ``fault_case``: where that was saved.
    """

    target: str
    machines: tuple[str, ...]
    profile: Profile
    seed: int
    outcomes: tuple[Outcome, ...]
    basis: tuple[Basis, ...]
    rules: tuple[RuleReport, ...]
    findings: tuple[Finding, ...]
    costs: tuple[Cost, ...]
    fault: CandidateFault | None = None
    fault_case: str | None = None
    fault_scene: Scene | None = None
    source: Source | None = None
    edges: tuple[EdgeReport, ...] = ()
    expected: tuple[Expected, ...] = ()

    @property
    def outcome(self) -> Outcome:
        """The most serious outcome."""
        return self.outcomes[0]

    def __repr__(self) -> str:
        said = [", ".join(outcome.name for outcome in self.outcomes), self.target, f"on {', '.join(self.machines)}"]
        broken = [finding.rule.id for finding in self.findings]
        said += [f"broken: {', '.join(broken)}"] if broken else []
        return f"<Verdict {'; '.join(said)}>"

    def __bool__(self) -> bool:
        return bool(self.outcome)
