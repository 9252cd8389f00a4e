"""A strict list of expected failures: read from TOML, and each entry held to what its saved case shows today.

    [[expected]]
    target = "mine.py:Mine"
    rule = "exact-reveal"
    case = "cases/expected/Mine-exact-reveal.json"      # relative to this file
    reason = "Two pages are not told apart yet."
    expires = 2027-03-31                                 # the last day on which it is let be

A scene whose first broken rule is one of those is no failure then. An entry that is late, whose case shows something
else or nothing any more, or that belongs to another check, is a failure itself.
"""

import os
import tomllib
from collections.abc import Callable, Iterable
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Annotated

import msgspec
from msgspec import Meta

from planeproof.contract import RULES, Rule
from planeproof.judge import CandidateFault, Profile
from planeproof.judge.expected import Expected
from planeproof.machines.complaint import complaint, nearest
from planeproof.scenes.cases import CaseError, load_case
from planeproof.search.trial import Trial

Shows = Callable[[str], Rule | CandidateFault | None]
"""Plays the saved case at that path again: the rule that is broken first, the candidate's fault, or None for neither.

Raises `CaseError`.
"""

_Words = Annotated[str, Meta(pattern=r"\S", description="text in quotes that is not empty")]
_Day = Annotated[date, Meta(description="a day without quotes, as 2027-03-31")]


class ExpectedFileError(ValueError):
    """A list that can't be read. The message says file, field, what stood there and what may stand there."""

    def __init__(self, file: str, text: str) -> None:
        super().__init__(f"{file}: {text}")
        self.file = file


class EntryWire(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """`Expected`, as it is written."""

    target: _Words
    rule: _Words
    case: _Words
    reason: _Words
    expires: _Day


class ListWire(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """The whole file."""

    expected: tuple[EntryWire, ...] = ()


def read_expected(path: str | os.PathLike[str]) -> tuple[Expected, ...]:
    """The entries of the file ``path``, not yet held to anything. Raises `ExpectedFileError`."""
    file = os.fspath(path)
    raw = _toml(file)
    try:
        wire = msgspec.convert(raw, ListWire)
    except msgspec.ValidationError as error:
        raise ExpectedFileError(file, complaint(error, ListWire, raw)) from error
    return tuple(_entry(file, number, entry) for number, entry in enumerate(wire.expected))


def _toml(file: str) -> dict[str, object]:
    try:
        return tomllib.loads(Path(file).read_bytes().decode("utf-8-sig"))
    except FileNotFoundError as error:
        raise ExpectedFileError(file, "no such file: check the path") from error
    except OSError as error:
        raise ExpectedFileError(file, f"can't be read ({error.strerror}): name a TOML file") from error
    except (ValueError, RecursionError) as error:
        raise ExpectedFileError(file, f"is not TOML in UTF-8: {error}; mend it there") from error


def _entry(file: str, number: int, wire: EntryWire) -> Expected:
    known = {rule.id: rule for rule in RULES}
    if wire.rule not in known:
        names = f"{nearest(wire.rule, list(known))}the rules are {', '.join(known)}"
        raise ExpectedFileError(file, f"expected[{number}].rule is {wire.rule!r}: there is no such rule; {names}")
    return Expected(
        place=f"{file}, entry {number + 1}",
        target=wire.target,
        rule=known[wire.rule],
        case=str(Path(file).parent / wire.case),
        reason=wire.reason,
        expires=wire.expires,
    )


def held(listed: Iterable[Expected], trial: Trial, *, today: date) -> tuple[Expected, ...]:
    """The entries, each held to what the candidate of ``trial`` does today; those that can't stand say so."""

    def shows(case: str) -> Rule | CandidateFault | None:
        return trial.anew().shows(load_case(case).scene)

    return settled(listed, target=trial.name, asked=trial.asked, profile=trial.profile, today=today, shows=shows)


def settled(
    listed: Iterable[Expected],
    *,
    target: str,
    asked: frozenset[Rule],
    profile: Profile,
    today: date,
    shows: Shows,
) -> tuple[Expected, ...]:
    """The entries, each with what is ``wrong`` with it in a check of ``target`` by ``asked`` under ``profile``."""
    return tuple(
        replace(entry, wrong=_of_another_check(entry, target, asked, profile) or _wrong_today(entry, today, shows))
        for entry in listed
    )


def excused(entries: Iterable[Expected]) -> frozenset[Rule]:
    """The rules that may be broken: those of the entries that stand."""
    return frozenset(entry.rule for entry in entries if entry.wrong is None)


def _of_another_check(entry: Expected, target: str, asked: frozenset[Rule], profile: Profile) -> str | None:
    if entry.target != target:
        return (
            f"it is about the target {entry.target!r}, which is not what is checked here ({target!r}): mend the name, "
            "or keep a list for each target"
        )
    if entry.rule not in asked:
        return f"{entry.rule.id} is not asked for in this check: ask for it too, or leave the list out"
    if not profile.fails_on(entry.rule):
        return f"profile {profile.value} does not fail on {entry.rule.id} anyway: remove the entry"
    return None


def _wrong_today(entry: Expected, today: date, shows: Shows) -> str | None:
    if today > entry.expires:
        return (
            f"it expired on {entry.expires} (today is {today}): mend the scheduler and remove the entry, or, if its "
            "reason still holds, give it a later date"
        )
    try:
        shown = shows(entry.case)
    except CaseError as error:
        return f"its case can't be played: {error}"
    if shown is entry.rule:
        return None
    return _shows_otherwise(entry, shown)


def _shows_otherwise(entry: Expected, shown: Rule | CandidateFault | None) -> str:
    if shown is None:
        return (
            f"no rule is broken in {entry.case} any more: remove the entry, and put the case among those that are "
            "replayed, so that it stays so"
        )
    if isinstance(shown, CandidateFault):
        return f"in {entry.case} the candidate breaks the contract, not {entry.rule.id} ({shown}): mend that first"
    return (
        f"in {entry.case} {shown.id} is broken first, not {entry.rule.id}: look at it with planeproof replay, then "
        "mend the scheduler, or have the entry name a case that shows the rule it is about"
    )
