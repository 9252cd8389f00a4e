"""A tally on its way from one process to another, or to a journal: versioned JSON, with scenes as cases.

Plays are not sent: whoever receives a scene that shows something plays it again. So nothing is believed that is not
seen here too, and a candidate that behaves otherwise in another process is found out.
"""

from collections import Counter
from fractions import Fraction

import msgspec

from planeproof.contract import RULES, Rational, Rule, Scene, rule
from planeproof.judge import CandidateFault, Cost
from planeproof.judge.edges import edge
from planeproof.judge.reached import Reached
from planeproof.machines.wire import Cycles, read_cycles, write_cycles
from planeproof.record.reading import fault_of
from planeproof.record.wire import CostWire, FaultWire
from planeproof.record.writing import cost_wire, fault_wire, scene_wire
from planeproof.scenes.cases import CaseWire, case_of
from planeproof.search.residual import Behaviours
from planeproof.search.tally import Tally
from planeproof.search.trial import Trial

_UNLIKE = "Make it deterministic: no clock, no randomness, nothing that differs from one process to the next."


class TallyWire(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """`Tally`: rules by their ids, and of the smallest plays the scenes."""

    played: int
    smallest: dict[str, CaseWire]
    after: dict[str, int]
    broken: tuple[str, ...]
    exercised: tuple[str, ...]
    applicable: tuple[str, ...]
    margins: dict[str, Cycles]
    let_be: int
    masked: tuple[str, ...]
    costs: tuple[CostWire, ...]
    nearest: dict[str, Cycles]
    reached: dict[str, int]
    admitting: dict[str, int]
    behaviours: dict[str, int]
    cut_short: bool
    fault: FaultWire | None


def posted(tally: Tally) -> bytes:
    """The tally as one line of JSON."""
    fault = tally.fault
    wire = TallyWire(
        played=tally.played,
        smallest={rule.id: scene_wire(play.scene) for rule, play in tally.smallest.items()},
        after={rule.id: after for rule, after in tally.after.items()},
        broken=_ids(tally.broken),
        exercised=_ids(tally.exercised),
        applicable=_ids(tally.applicable),
        margins={rule.id: Fraction(margin) for rule, margin in tally.margins.items()},
        let_be=tally.let_be,
        masked=_ids(tally.masked),
        costs=tuple(cost_wire(cost) for cost in tally.costs),
        nearest={edge.id: Fraction(distance) for edge, distance in tally.reached.least.items()},
        reached={edge.id: scenes for edge, scenes in tally.reached.scenes.items()},
        admitting={edge.id: scenes for edge, scenes in tally.reached.admitting.items()},
        behaviours=dict(tally.behaviours.counts),
        cut_short=tally.cut_short,
        fault=None if fault is None else fault_wire(fault, tally.fault_scene),
    )
    return msgspec.json.format(msgspec.json.encode(wire, enc_hook=write_cycles), indent=-1)


def received(data: bytes, trial: Trial) -> Tally:
    """The tally of `posted` ``data``; what it has found is played again in ``trial``, which has not played yet.

    Raises `msgspec.MsgspecError` where ``data`` is no tally, `planeproof.scenes.cases.CaseError` for its scenes.
    """
    wire = msgspec.json.decode(data, type=TallyWire, dec_hook=read_cycles)
    tally = Tally(
        played=wire.played,
        after={rule(name): after for name, after in wire.after.items()},
        broken=_rules(wire.broken),
        exercised=_rules(wire.exercised),
        applicable=_rules(wire.applicable),
        margins={rule(name): _plain(margin) for name, margin in wire.margins.items()},
        let_be=wire.let_be,
        masked=_rules(wire.masked),
        costs=[Cost(**msgspec.structs.asdict(cost)) for cost in wire.costs],
        reached=Reached(
            least={edge(name): _plain(distance) for name, distance in wire.nearest.items()},
            scenes={edge(name): scenes for name, scenes in wire.reached.items()},
            admitting={edge(name): scenes for name, scenes in wire.admitting.items()},
        ),
        behaviours=Behaviours(counts=Counter(wire.behaviours)),
        cut_short=wire.cut_short,
    )
    for name, scene in wire.smallest.items():
        _see_again(tally, trial, rule(name), _scene_of(scene))
    if wire.fault is not None and wire.fault.scene is not None:
        tally.blame(fault_of(wire.fault), _scene_of(wire.fault.scene))
    return tally


def _see_again(tally: Tally, trial: Trial, rule: Rule, scene: Scene) -> None:
    shown = trial.shows(scene)
    if isinstance(shown, CandidateFault):
        tally.blame(shown, scene)
    elif shown is rule:
        tally.smallest[rule] = trial.smallest[rule]
    else:
        said = f"broke {rule.id} in another process, and not when the same scene was played in this one"
        tally.blame(CandidateFault("offer or blank", 0, said, _UNLIKE), scene)


def _scene_of(wire: CaseWire) -> Scene:
    return case_of(wire, "a posted scene").scene


def _ids(rules: set[Rule]) -> tuple[str, ...]:
    return tuple(rule.id for rule in RULES if rule in rules)


def _rules(ids: tuple[str, ...]) -> set[Rule]:
    return {rule(name) for name in ids}


def _plain(cycles: Fraction) -> Rational:
    return cycles.numerator if cycles.denominator == 1 else cycles
