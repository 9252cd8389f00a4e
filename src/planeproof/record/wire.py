"""The written form of a record. What a field means is said where the value is defined that it is written from."""

import json
from datetime import date
from typing import Annotated, Any

import msgspec
from msgspec import Meta

from planeproof.machines.wire import Cycles
from planeproof.scenes.cases import CaseWire, cycles_schema

VERSION = 1
"""The form of a record that is written here, and the newest that is read."""

Hex = Annotated[str, Meta(pattern="^([0-9a-f]{2})+$", description="bytes as hexadecimal digits")]


class Wire(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """One group of fields."""


class BurstWire(Wire, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """`planeproof.contract.Burst`."""

    address: int
    data: Hex
    step: int = 1


class RefreshWire(Wire, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """`planeproof.judge.Refresh` without its frame."""

    number: int
    offered: int | None
    answer: str | None
    cycles: int
    used: Cycles
    bursts: tuple[BurstWire, ...]
    current: int
    upcoming: int | None


class ViolationWire(Wire, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """`planeproof.judge.Violation`; of its pixels only how many they are."""

    rule: str
    refresh: int
    said: str
    burst: int | None
    byte: int | None
    address: int | None
    cell: int | None
    picture: int | None
    pixels: int
    margin: Cycles | None


class PlayWire(Wire, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """`planeproof.judge.Play`: the scene, all that the candidate said in it, and what was found wrong."""

    scene: CaseWire
    set_up: tuple[BurstWire, ...]
    refreshes: tuple[RefreshWire, ...]
    violations: tuple[ViolationWire, ...]


class FindingWire(Wire, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """`planeproof.judge.Finding`; ``violation`` is the place of its own among those of the play."""

    rule: str
    violation: int
    after: int | None
    case: str | None
    play: PlayWire
    given_case: str | None
    given: PlayWire | None


class FaultWire(Wire, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """`planeproof.judge.CandidateFault`, its scene, and where that was saved."""

    hung: bool
    method: str
    refresh: int
    said: str
    advice: str
    trace: str
    case: str | None
    scene: CaseWire | None


class BasisWire(Wire, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """`planeproof.judge.Basis`; ``bound`` and ``residual`` follow from the others."""

    strength: str
    source: str
    scenes: int
    independent: bool
    failed: bool
    bound: float | None
    singletons: int | None
    residual: float | None
    let_be: int


class RuleWire(Wire, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """`planeproof.judge.RuleReport`; all but ``status``, ``margin`` and ``missed`` (edges) follows from the id."""

    id: str
    statement: str
    kind: str
    rule_class: str
    witness: str
    status: str
    margin: Cycles | None
    missed: tuple[str, ...]


class EdgeWire(Wire, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """`planeproof.judge.EdgeReport`; ``statement`` and ``unit`` follow from the id."""

    id: str
    statement: str
    unit: str
    scenes: int
    admitting: int
    least: Cycles | None


class CostWire(Wire, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """`planeproof.judge.Cost`."""

    machine: str
    shown: int
    refreshes_each: float
    bytes_each: float
    fullest: float
    longest_wait: int
    patience: int


class SourceWire(Wire, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Where the candidate is written."""

    file: str
    line: int


class ExpectedWire(Wire, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """`planeproof.judge.expected.Expected`."""

    place: str
    target: str
    rule: str
    case: str
    reason: str
    expires: date
    wrong: str | None


class RecordWire(Wire, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """`planeproof.judge.Verdict`. ``closing`` is the SHA-256 of the rest, as it is written without it."""

    planeproof_record: Annotated[int, Meta(ge=1, le=VERSION)]
    made_by: str
    target: str
    source: SourceWire | None
    machines: tuple[str, ...]
    profile: str
    seed: int
    outcomes: tuple[str, ...]
    exit_code: int
    basis: tuple[BasisWire, ...]
    rules: tuple[RuleWire, ...]
    findings: tuple[FindingWire, ...]
    edges: tuple[EdgeWire, ...]
    costs: tuple[CostWire, ...]
    expected: tuple[ExpectedWire, ...] = ()
    fault: FaultWire | None
    closing: str


def record_schema() -> str:
    """The text of ``record.schema.json``: a JSON Schema (draft 2020-12) made from what is read here."""
    schema = msgspec.json.schema(RecordWire, schema_hook=cycles_schema)
    head = {"$schema": "https://json-schema.org/draft/2020-12/schema", "title": "Planeproof record"}
    return json.dumps(head | schema, indent=2) + "\n"


def as_text(raw: dict[str, Any]) -> bytes:
    """JSON as it is written: the bytes that ``closing`` is reckoned from."""
    return json.dumps(raw, ensure_ascii=False, separators=(",", ":")).encode()
