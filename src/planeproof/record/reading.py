"""From a record back to its verdict."""

import hashlib
import os
from fractions import Fraction
from pathlib import Path
from typing import Any

import msgspec

from planeproof.contract import Answer, Burst, Rational, rule
from planeproof.judge import (
    Basis,
    CandidateFault,
    CandidateHung,
    Cost,
    EdgeReport,
    Finding,
    Outcome,
    Play,
    Profile,
    RuleReport,
    RuleStatus,
    Source,
    Strength,
    Verdict,
    play,
)
from planeproof.judge.edges import edge
from planeproof.judge.expected import Expected
from planeproof.machines.complaint import complaint
from planeproof.machines.wire import read_cycles
from planeproof.record.scripted import Scripted
from planeproof.record.wire import (
    VERSION,
    BasisWire,
    BurstWire,
    EdgeWire,
    ExpectedWire,
    FaultWire,
    FindingWire,
    PlayWire,
    RecordWire,
    RuleWire,
    as_text,
)
from planeproof.record.writing import play_wire
from planeproof.scenes.cases import case_of


class RecordError(ValueError):
    """A record that can't be read. The message says file, what is wrong, and what to do."""

    def __init__(self, file: str, text: str) -> None:
        super().__init__(f"{file}: {text}")
        self.file = file


_ANEW = "have it written anew by `planeproof check --report`"


def load_record(path: str | os.PathLike[str]) -> Verdict:
    """The verdict in the file ``path``. Raises `RecordError`."""
    file = os.fspath(path)
    try:
        data = Path(path).read_bytes()
    except OSError as error:
        raise RecordError(file, f"can't be read ({error.strerror}): check the path") from error
    return read_record(data, file)


def read_record(data: bytes, file: str) -> Verdict:
    """The verdict in ``data``; ``file`` is what messages call it.

    Raises `RecordError` where it is cut off, was changed, is newer, or tells of a play what is not so.
    """
    wire = _wire(_closed(_json(data, file), file), file)
    try:
        return _verdict(wire, file)
    except (KeyError, ValueError) as error:
        raise RecordError(file, f"holds what can't be ({error}): {_ANEW}") from error


def _json(data: bytes, file: str) -> dict[str, Any]:
    try:
        raw = msgspec.json.decode(data)
    except (ValueError, RecursionError) as error:
        raise RecordError(file, f"is not whole JSON ({error}), so it was cut off: {_ANEW}") from error
    if not isinstance(raw, dict) or "planeproof_record" not in raw:
        raise RecordError(file, "is not a record: it has no planeproof_record")
    found = raw["planeproof_record"]
    if isinstance(found, int) and found > VERSION:
        raise RecordError(file, f"planeproof_record is {found}: this version reads up to {VERSION}, take a newer one")
    return raw


def _closed(raw: dict[str, Any], file: str) -> dict[str, Any]:
    """``raw``, if it ends in the digest of the rest."""
    closing = raw.get("closing")
    rest = {key: value for key, value in raw.items() if key != "closing"}
    if closing != hashlib.sha256(as_text(rest)).hexdigest():
        raise RecordError(file, f"its closing is not that of what it says, so it was changed or not finished: {_ANEW}")
    return raw


def _wire(raw: dict[str, Any], file: str) -> RecordWire:
    try:
        return msgspec.convert(raw, RecordWire, dec_hook=read_cycles)
    except msgspec.ValidationError as error:
        raise RecordError(file, complaint(error, RecordWire, raw)) from error


def _verdict(wire: RecordWire, file: str) -> Verdict:
    fault = wire.fault
    return Verdict(
        target=wire.target,
        source=None if wire.source is None else Source(file=wire.source.file, line=wire.source.line),
        machines=wire.machines,
        profile=Profile(wire.profile),
        seed=wire.seed,
        outcomes=tuple(Outcome[name] for name in wire.outcomes),
        basis=tuple(_basis(basis) for basis in wire.basis),
        rules=tuple(_rule(each) for each in wire.rules),
        findings=tuple(_finding(finding, file) for finding in wire.findings),
        edges=tuple(_edge(each) for each in wire.edges),
        costs=tuple(Cost(**msgspec.structs.asdict(cost)) for cost in wire.costs),
        expected=tuple(_expected(entry) for entry in wire.expected),
        fault=None if fault is None else fault_of(fault),
        fault_case=None if fault is None else fault.case,
        fault_scene=None if fault is None or fault.scene is None else case_of(fault.scene, file).scene,
    )


def _basis(wire: BasisWire) -> Basis:
    return Basis(
        strength=Strength(wire.strength),
        source=wire.source,
        scenes=wire.scenes,
        independent=wire.independent,
        failed=wire.failed,
        singletons=wire.singletons,
        let_be=wire.let_be,
    )


def _rule(wire: RuleWire) -> RuleReport:
    missed = tuple(edge(name) for name in wire.missed)
    return RuleReport(rule=rule(wire.id), status=RuleStatus(wire.status), margin=_plain(wire.margin), missed=missed)


def _edge(wire: EdgeWire) -> EdgeReport:
    return EdgeReport(edge=edge(wire.id), scenes=wire.scenes, admitting=wire.admitting, least=_plain(wire.least))


def _expected(wire: ExpectedWire) -> Expected:
    return Expected(**msgspec.structs.asdict(wire) | {"rule": rule(wire.rule)})


def fault_of(wire: FaultWire) -> CandidateFault:
    """The fault of a written form."""
    kind = CandidateHung if wire.hung else CandidateFault
    return kind(wire.method, wire.refresh, wire.said, wire.advice, wire.trace)


def _finding(wire: FindingWire, file: str) -> Finding:
    played = _play(wire.play, file)
    if not 0 <= wire.violation < len(played.violations):
        raise ValueError(f"the finding {wire.rule} names a violation that its play has not")
    violation = played.violations[wire.violation]
    if violation.rule is not rule(wire.rule):
        raise ValueError(f"the violation of the finding {wire.rule} is of {violation.rule.id}")
    return Finding(
        rule=violation.rule,
        play=played,
        violation=violation,
        after=wire.after,
        given=None if wire.given is None else _play(wire.given, file),
        case=wire.case,
        given_case=wire.given_case,
    )


def _play(wire: PlayWire, file: str) -> Play:
    """The play, judged again."""
    answers = [Answer[refresh.answer] for refresh in wire.refreshes if refresh.answer is not None]
    blankings = [_bursts(refresh.bursts) for refresh in wire.refreshes if refresh.cycles > 0]
    set_up = _bursts(wire.set_up)
    played = play(case_of(wire.scene, file).scene, lambda: Scripted(set_up, answers, blankings))
    if play_wire(played) != wire:
        raise ValueError("judged again, the play of a finding comes out otherwise than it says")
    return played


def _bursts(wires: tuple[BurstWire, ...]) -> tuple[Burst, ...]:
    return tuple(Burst(wire.address, bytes.fromhex(wire.data), wire.step) for wire in wires)


def _plain(cycles: Fraction | None) -> Rational | None:
    return cycles.numerator if cycles is not None and cycles.denominator == 1 else cycles
