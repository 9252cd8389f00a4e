"""The journal of a long check: what each unit came to, a line each, so that a check that was ended can go on.

The first line says what was checked: the candidate with a digest of its file and of those of the user that it imports,
the machines, rules, profile and seed, and with which versions. A check of anything else is refused. How long it was
to take does not matter: a longer check goes on from a shorter.
"""

import hashlib
import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Self

import msgspec

from planeproof.contract import RULES, Machine
from planeproof.hosts.sources import files_of
from planeproof.machines.wire import from_machine, write_cycles
from planeproof.scenes.cases import CaseError
from planeproof.search.order import Order
from planeproof.search.posting import posted, received
from planeproof.search.tally import Tally
from planeproof.search.units import Unit
from planeproof.search.versions import versions

VERSION = 1
"""The form of a journal that is written here, and the only one that is read."""


class JournalError(ValueError):
    """A journal that is of another check, or none at all. The message says the file and what to do."""


class _Line(msgspec.Struct, frozen=True, kw_only=True):
    unit: str
    tally: msgspec.Raw


@dataclass(kw_only=True)
class Journal:
    """What units came to; see `of`. Without a ``file`` nothing is kept."""

    file: Path | None
    lines: dict[str, bytes] = field(default_factory=dict)

    @classmethod
    def none(cls) -> Self:
        """No journal: nothing is known, nothing is kept."""
        return cls(file=None)

    @classmethod
    def of(cls, file: Path, order: Order) -> Self:
        """The journal in ``file``, which is begun if there is none. Raises `JournalError`, `OSError`.

        A last line that was not written to its end, by a process that died in it, is dropped.
        """
        head, text = _head(order), _text(file)
        first, *others = text.split(b"\n")[:-1] or [b""]
        if not first:
            file.parent.mkdir(parents=True, exist_ok=True)
            file.write_bytes(json.dumps(head).encode() + b"\n")
            return cls(file=file)
        _require_same(file, _read_head(file, first), head)
        kept = {line.unit: bytes(line.tally) for line in (_line(file, text) for text in others)}
        with file.open("r+b") as journal:
            journal.truncate(text.rindex(b"\n") + 1)
        return cls(file=file, lines=kept)

    def __contains__(self, unit: Unit) -> bool:
        """Whether it is known what ``unit`` came to."""
        return unit.key in self.lines

    def of_unit(self, unit: Unit, order: Order) -> Tally:
        """What ``unit`` came to, which is in the journal; what it found is played again."""
        try:
            return received(self.lines[unit.key], order.trial())
        except (msgspec.MsgspecError, CaseError, ValueError) as error:
            raise JournalError(f"{self.file}: {unit.key}: {error}; {_ANEW}") from error

    def keep(self, unit: Unit, tally: Tally) -> None:
        """Keep what ``unit`` came to, unless it was cut short: then it is for another day."""
        if self.file is None or tally.cut_short or tally.interrupted or unit in self:
            return
        line = msgspec.json.encode(_Line(unit=unit.key, tally=msgspec.Raw(posted(tally))))
        with self.file.open("ab") as file:
            file.write(line + b"\n")


_ANEW = "delete the file to begin anew, or name another"
_BEGINNING = b'{"planeproof_journal"'
_UNLIKE = {"source": "the candidate's file, or one that it imports, has been changed since"}


def seed_in(file: Path) -> int | None:
    """The seed of the check whose journal is in ``file``; None if none has begun there. Raises as `Journal.of`."""
    first, *others = _text(file).split(b"\n")
    if not others:
        return None
    seed = _read_head(file, first).get("seed")
    if not isinstance(seed, int):
        raise JournalError(f"{file}: the seed is {seed!r} there; {_ANEW}")
    return seed


def units_in(file: Path) -> int:
    """How many units are in the journal in ``file``. Raises as `Journal.of`."""
    return max(_text(file).count(b"\n") - 1, 0)


def _text(file: Path) -> bytes:
    """All that is in it; nothing where there is no file. What can't be the beginning of a journal is refused."""
    try:
        text = file.read_bytes()
    except FileNotFoundError:
        return b""
    if text[: len(_BEGINNING)] != _BEGINNING[: len(text)]:
        raise JournalError(f"{file}: is not a journal of a check; name another file")
    return text


def _read_head(file: Path, first: bytes) -> dict[str, Any]:
    try:
        return msgspec.json.decode(first, type=dict[str, Any])
    except msgspec.MsgspecError as error:
        raise JournalError(f"{file}: its first line does not say what was checked ({error}); {_ANEW}") from error


def _line(file: Path, text: bytes) -> _Line:
    try:
        return msgspec.json.decode(text, type=_Line)
    except msgspec.MsgspecError as error:
        raise JournalError(f"{file}: a line is no part of a journal ({error}); {_ANEW}") from error


def _require_same(file: Path, there: Mapping[str, Any], here: Mapping[str, Any]) -> None:
    unlike = [
        _UNLIKE.get(key, f"{key} is {there.get(key)!r} there and {here[key]!r} here")
        for key in here
        if there.get(key) != here[key]
    ]
    if unlike:
        raise JournalError(f"{file}: is of another check ({'; '.join(unlike)}); {_ANEW}")


def _head(order: Order) -> dict[str, Any]:
    return {
        "planeproof_journal": VERSION,
        "target": order.candidate.name,
        "source": _digest_of_source(order),
        "machines": [f"{machine.name} {_digest(_written(machine))}" for machine in order.machines],
        "edges": order.edges.digests,
        "rules": [rule.id for rule in RULES if rule in order.asked],
        "excused": [rule.id for rule in RULES if rule in order.excused],
        "profile": order.profile.value,
        "seed": order.seed,
        "as_given": order.as_given,
        "versions": versions(),
    }


def _written(machine: Machine) -> bytes:
    return msgspec.json.encode(from_machine(machine), enc_hook=write_cycles)


def _digest(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()[:16]


def _digest_of_source(order: Order) -> str:
    """Of the files that the candidate is written in, wherever they are; empty where it is in none."""
    digests = sorted(_digest(file.read_bytes()) for file in files_of(order.candidate))
    return _digest("".join(digests).encode()) if digests else ""
