"""The rules: what a scheduler must never do, and what it must eventually do. Read the tuple `RULES`."""

from dataclasses import dataclass
from enum import Enum


class Kind(Enum):
    """Whether a rule holds at every moment, or must come true within the machine's patience."""

    ALWAYS = "always"
    EVENTUALLY = "eventually"


class RuleClass(Enum):
    """Where a rule is judged.

    ``SEEN``: from frames and answers alone. ``OWN``: it protects the rest of the screen. ``DISCIPLINE``: local, write
    by write, and what makes the seen rules safe however blankings are cut.
    """

    SEEN = "seen"
    OWN = "own"
    DISCIPLINE = "discipline"


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Rule:
    """One rule: ``statement`` in a sentence, ``why`` it matters, ``theorem`` what is known about it.

    ``witness`` is the situation that must have occurred for the rule to have been exercised at all. There is one
    value for each rule, so rules are compared by identity, also after pickling.
    """

    id: str
    statement: str
    kind: Kind
    rule_class: RuleClass
    why: str
    theorem: str
    witness: str

    def __repr__(self) -> str:
        return f"<rule {self.id}>"

    def __reduce__(self) -> tuple[object, tuple[str]]:
        return rule, (self.id,)


HIDDEN_WRITES = Rule(
    id="hidden-writes",
    statement="No pattern or map byte changes a pixel that can be seen under the current view.",
    kind=Kind.ALWAYS,
    rule_class=RuleClass.DISCIPLINE,
    why="A change of what is being seen is right only if the whole of it fits what is left of this blanking; the day a "
    "blanking is cut short, the viewer sees half of it.",
    theorem="A blanking keeps this rule if and only if, wherever it is cut short, the old view still shows the old "
    "frame unless the view change is over, and the new view already shows the new frame once that change has begun.",
    witness="a pattern or map byte changed its value while a picture that is not empty was being seen",
)
EXACT_REVEAL = Rule(
    id="exact-reveal",
    statement="When the view has changed, what the new view shows is the current picture or the next one taken.",
    kind=Kind.ALWAYS,
    rule_class=RuleClass.DISCIPLINE,
    why="Half a picture, or an old one, is revealed, and no rule about writes notices.",
    theorem="hidden-writes, exact-reveal and blanking-only together imply whole-reveal.",
    witness="a change of view showed another picture than before",
)
BLANKING_ONLY = Rule(
    id="blanking-only",
    statement="Every byte lands inside blanking.",
    kind=Kind.ALWAYS,
    rule_class=RuleClass.DISCIPLINE,
    why="Picture memory can't be written while the beam reads it: a late byte is lost, tears the frame or wrecks it.",
    theorem="hidden-writes, exact-reveal and blanking-only together imply whole-reveal.",
    witness="a blanking ended with work left that did not fit into it any more",
)
WHOLE_REVEAL = Rule(
    id="whole-reveal",
    statement="Every frame is, exactly and whole, the background or a picture that was taken.",
    kind=Kind.ALWAYS,
    rule_class=RuleClass.SEEN,
    why="This is what the method is for: the viewer never sees a picture being built.",
    theorem="It follows from hidden-writes, exact-reveal and blanking-only, but does not imply them.",
    witness="a picture that is not empty was seen",
)
IN_ORDER = Rule(
    id="in-order",
    statement="Among whole frames, each is the one seen before or the next taken; none skipped, none brought back.",
    kind=Kind.ALWAYS,
    rule_class=RuleClass.SEEN,
    why="A picture shown twice or out of turn makes the drawing jerk, though every frame is whole.",
    theorem="Judged by looks: a picture that looks like the current one is seen at once.",
    witness="two taken pictures that look different followed one another on the display",
)
PROGRESS = Rule(
    id="progress",
    statement="A taken picture is seen, and BUSY ends, within the machine's patience.",
    kind=Kind.EVENTUALLY,
    rule_class=RuleClass.SEEN,
    why="Without this rule a scheduler that never shows anything would be right.",
    theorem="Counted in full blankings, from the later of TAKEN and the predecessor being seen.",
    witness="a taken picture had to be waited for, through at least one full blanking",
)
FAIR_REFUSAL = Rule(
    id="fair-refusal",
    statement="No picture with at most must_show occupied cells is declined.",
    kind=Kind.ALWAYS,
    rule_class=RuleClass.SEEN,
    why="A scheduler that declines what is hard is right about nothing.",
    theorem="A picture of n occupied cells needs no more than n tiles.",
    witness="a picture of exactly must_show occupied cells, all different, was offered",
)
TILE_CAP = Rule(
    id="tile-cap",
    statement="The shown page names, and every changed pattern byte is in, no tile outside the pool (the blank tile "
    "may be mapped).",
    kind=Kind.ALWAYS,
    rule_class=RuleClass.OWN,
    why="The other tiles are the rest of the screen's; staying in the pool keeps the count of tiles below the cap.",
    theorem="No map shows more different patterns than there are tiles. With this rule dropped and own-memory kept, no "
    "byte that somebody else owns is changed, but a run exists in which a frame depends on one.",
    witness="a picture that needs as many different patterns as must_show allows was taken",
)
OWN_MEMORY = Rule(
    id="own-memory",
    statement="Every write is to a pattern of the pool, a map cell of the window, the window's colours or a view "
    "register.",
    kind=Kind.ALWAYS,
    rule_class=RuleClass.OWN,
    why="A stray byte spoils a panel beside the window, or comes back as a fault much later.",
    theorem="A pattern write that keeps this rule changes no byte outside the pool; with the rule dropped, a run "
    "exists that changes a byte somebody else owns.",
    witness="patterns and map cells were written after the set-up",
)

RULES: tuple[Rule, ...] = (
    HIDDEN_WRITES,
    EXACT_REVEAL,
    BLANKING_ONLY,
    OWN_MEMORY,
    TILE_CAP,
    WHOLE_REVEAL,
    IN_ORDER,
    PROGRESS,
    FAIR_REFUSAL,
)
"""All rules, causes before effects: where one fault breaks several, the earlier in this order names it."""


def rule(rule_id: str) -> Rule:
    """The rule of that id. Raises `ValueError`, naming those there are."""
    for candidate in RULES:
        if candidate.id == rule_id:
            return candidate
    raise ValueError(f"there is no rule {rule_id!r}; there are: {', '.join(rule.id for rule in RULES)}")
