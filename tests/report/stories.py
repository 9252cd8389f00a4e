"""The verdicts and plays whose text is kept in ``golden/``. Write the files anew, then read the difference.

python -m tests.report.stories
"""

from collections.abc import Callable, Iterable
from pathlib import Path

from planeproof.candidates.reference import Delta, InPlace
from planeproof.contract import RULES, Burst, Disturbance, Machine, Picture, Rule, Scene, Tiles, Window
from planeproof.contract.rules import EXACT_REVEAL, FAIR_REFUSAL, HIDDEN_WRITES, rule
from planeproof.judge import (
    Basis,
    CandidateFault,
    CandidateHung,
    Cost,
    Finding,
    MakeScheduler,
    Outcome,
    Profile,
    RuleReport,
    RuleStatus,
    Strength,
    Verdict,
    play,
)
from planeproof.machines import read_machine
from planeproof.report import fault_page, machine_page, play_lines, rule_lines, verdict_lines
from tests.report.schedulers import Early, Idle, Late, Scribbler, Torn

GOLDEN = Path(__file__).parent / "golden"

SQUARE = [255, 129, 129, 129, 129, 129, 129, 255]
SLOPE = [1, 2, 4, 8, 16, 32, 64, 128]
EMPTY = [0] * 8

NICHE = Machine(name="two cells", window=Window(columns=2, rows=1), tiles=Tiles(count=4, pool=(1, 2, 3)))
DRAWN = Basis(strength=Strength.SAMPLED, source="recipes, drawn independently", scenes=300, independent=True)
STEERED = Basis(strength=Strength.SAMPLED, source="recipes, searched by Hypothesis", scenes=300)
COST = Cost(
    machine="vitrine-50",
    shown=36,
    refreshes_each=3.25,
    bytes_each=812.4,
    fullest=0.984,
    longest_wait=4,
    patience=24,
)


def niche_scene(disturbances: Iterable[Disturbance] = ()) -> Scene:
    """A square in cell 1, then a slope in cell 0, then nothing."""
    rows = ([EMPTY, SQUARE], [SLOPE, EMPTY], [EMPTY, EMPTY])
    return Scene.of(NICHE, [Picture.from_rows(0, each) for each in rows], (0, 3, 3), disturbances)


def full_scene(disturbances: Iterable[Disturbance] = ()) -> Scene:
    """One picture that occupies both cells."""
    return Scene.of(NICHE, [Picture.from_rows(0, [SQUARE, SLOPE])], disturbances=disturbances)


def wide_scene() -> Scene:
    """Two pictures on a window of 24 x 10 cells and three inks."""
    machine = read_machine("pigment-chart")
    pictures = []
    for first in (30, 130):
        rows = [[EMPTY, EMPTY] for _ in range(machine.cells)]
        for cell in (first, first + 1, first + 25, 200):
            rows[cell] = [SQUARE, SLOPE]
        pictures.append(Picture.from_rows(0, rows))
    return Scene.of(machine, pictures)


def findings(scene: Scene, make: MakeScheduler, *rules: Rule, case: str | None = "cases/found.json") -> list[Finding]:
    """A finding for each of ``rules`` that is broken when ``scene`` is played."""
    result = play(scene, make)
    first = [result.first(frozenset({each})) for each in rules or RULES]
    return [Finding(rule=v.rule, play=result, violation=v, case=case) for v in first if v is not None]


def verdict(
    *outcomes: Outcome,
    target: str = "mine.py:Mine",
    found: Iterable[Finding] = (),
    statuses: dict[Rule, RuleReport] | None = None,
    profile: Profile = Profile.STRICT,
    fault: CandidateFault | None = None,
    fault_scene: Scene | None = None,
    basis: tuple[Basis, ...] = (STEERED, DRAWN),
    costs: tuple[Cost, ...] = (),
) -> Verdict:
    """A verdict in which all rules are kept but those in ``found`` and ``statuses``."""
    broken = {finding.rule: RuleReport(rule=finding.rule, status=RuleStatus.BROKEN) for finding in found}
    known = broken | (statuses or {})
    return Verdict(
        target=target,
        machines=("vitrine-50", "vitrine-60"),
        profile=profile,
        seed=0,
        outcomes=outcomes,
        basis=basis,
        rules=tuple(known.get(each, RuleReport(rule=each, status=RuleStatus.KEPT)) for each in RULES),
        findings=tuple(found),
        costs=costs,
        fault=fault,
        fault_case=None if fault is None else "cases/fault.json",
        fault_scene=fault_scene,
    )


def failing(scene: Scene, make: MakeScheduler, *rules: Rule, case: str | None = "cases/found.json") -> list[str]:
    """The text of a check that found ``rules`` broken in ``scene``."""
    found = findings(scene, make, *rules, case=case)
    return verdict_lines(verdict(Outcome.FAIL, found=found, basis=(DRAWN,)))


def judged_only() -> tuple[str, str]:
    """What is advised after an error, and a traceback as far as it is the judge's own."""
    judge = Path(play.__code__.co_filename).parent / "conversation.py"
    called = f'  File "{judge}", line 178, in _call\n    return call()\n           ^^^^^^\n'
    advice = "The last line of the traceback that is in your own file is where to look."
    return advice, f"Traceback (most recent call last):\n{called}"


def raised() -> CandidateFault:
    """An error out of a candidate's own code, called by the judge."""
    advice, trace = judged_only()
    trace += (
        '  File "mine.py", line 9, in blank\n    return [1 / 0]\n            ~~^~~\n'
        "ZeroDivisionError: division by zero\n"
    )
    return CandidateFault("blank", 2, "raised ZeroDivisionError: division by zero", advice, trace)


def exposed() -> list[str]:
    """A check under the seen profile that exposed a breach of discipline."""
    statuses = {
        HIDDEN_WRITES: RuleReport(rule=HIDDEN_WRITES, status=RuleStatus.EXPOSED, margin=57),
        EXACT_REVEAL: RuleReport(rule=EXACT_REVEAL, status=RuleStatus.NOT_EXERCISED),
    }
    return verdict_lines(verdict(Outcome.PASS, statuses=statuses, profile=Profile.SEEN, costs=(COST,)))


def vacuous() -> list[str]:
    """A check in which two rules could not be broken, and one says nothing."""
    states = {
        FAIR_REFUSAL: RuleStatus.NOT_EXERCISED,
        EXACT_REVEAL: RuleStatus.NOT_EXERCISED,
        HIDDEN_WRITES: RuleStatus.NOT_APPLICABLE,
    }
    statuses = {each: RuleReport(rule=each, status=status) for each, status in states.items()}
    return verdict_lines(verdict(Outcome.VACUOUS, statuses=statuses))


def replayed(make: MakeScheduler, profile: Profile, wanted: str = "") -> list[str]:
    """What replay says of the niche's scene."""
    result = play(niche_scene(), make)
    return play_lines(result, target="mine.py:Mine", case="cases/found.json", profile=profile, wanted=wanted)


def hung() -> list[str]:
    """The page about a candidate that never returns."""
    fault = CandidateHung("offer", 0, "did not return in 10 s", "A call may not wait, sleep or loop for ever.")
    return fault_page(fault, target="mine.py:Mine", outcome=Outcome.HUNG, case="cases/fault.json", scene=full_scene())


def error_and_findings() -> list[str]:
    """A check that met an error, after a rule had been broken in another scene."""
    outcomes, found = (Outcome.CANDIDATE_ERROR, Outcome.FAIL), findings(niche_scene(), Early, EXACT_REVEAL)
    return verdict_lines(verdict(*outcomes, found=found, fault=raised(), fault_scene=full_scene(), basis=(STEERED,)))


def uncallable() -> list[str]:
    """A candidate that can't even be made: no line of its own is reached."""
    fault = CandidateFault("the candidate itself", -1, "raised TypeError: too few arguments", *judged_only())
    return verdict_lines(verdict(Outcome.CANDIDATE_ERROR, fault=fault, fault_scene=full_scene(), basis=(STEERED,)))


def stray() -> list[str]:
    """Writes that are nobody's business, more of them than are kept."""
    beyond = max(region.end for region in NICHE.regions)
    return failing(niche_scene(), lambda: Scribbler(Burst(beyond, bytes(70))), rule("own-memory"), case=None)


STORIES: dict[str, Callable[[], list[str]]] = {
    "fail-early-reveal": lambda: failing(niche_scene(), Early, HIDDEN_WRITES, EXACT_REVEAL),
    "fail-seen-half": lambda: failing(full_scene([Disturbance(0, 110)]), Torn, rule("whole-reveal")),
    "fail-late-byte": lambda: failing(niche_scene([Disturbance(3, 0)]), Late, rule("blanking-only")),
    "fail-nothing-shown": lambda: failing(niche_scene(), Idle, rule("progress")),
    "fail-stray-writes": stray,
    "fail-wide-window": lambda: failing(wide_scene(), Early, EXACT_REVEAL),
    "pass": lambda: verdict_lines(verdict(Outcome.PASS, costs=(COST,))),
    "pass-exposed": exposed,
    "vacuous": vacuous,
    "unknown": lambda: verdict_lines(verdict(Outcome.UNKNOWN, basis=())),
    "candidate-error": lambda: verdict_lines(
        verdict(Outcome.CANDIDATE_ERROR, fault=raised(), fault_scene=niche_scene(), basis=(STEERED,))
    ),
    "candidate-error-and-fail": error_and_findings,
    "candidate-error-when-made": uncallable,
    "hung": hung,
    "replay-fail": lambda: replayed(Early, Profile.STRICT),
    "replay-clean": lambda: replayed(Delta, Profile.STRICT, wanted="exact-reveal"),
    "replay-exposed": lambda: replayed(InPlace, Profile.SEEN),
    "machine": lambda: machine_page(read_machine("pigment-chart")),
    "rule": lambda: rule_lines(HIDDEN_WRITES, 2),
}
"""Name -> what makes the text."""


def main() -> None:
    """Write every golden file anew."""
    GOLDEN.mkdir(exist_ok=True)
    for name, make in STORIES.items():
        (GOLDEN / f"{name}.txt").write_text("\n".join(make()) + "\n", "utf-8")


if __name__ == "__main__":
    main()
