"""What is kept of a run: a row a mutant in ``mutants.csv``, why survivors survive, and a page about both."""

import csv
import io
import tomllib
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass, fields
from pathlib import Path

from tests.mutants.judging import Fate, Judgement
from tests.mutants.making import Mutant
from tests.mutants.trials import RECIPES

FOLDER = Path(__file__).parents[2] / "specs" / "mutants"
ROWS, PAGE, REASONS = FOLDER / "mutants.csv", FOLDER / "README.md", FOLDER / "survivors.toml"

KINDS = {
    "equivalent": "says the same as the right scheduler on every machine it may meet, so there is nothing to find",
    "another way": "is right: it sends more, or the same in other bursts or tiles, and breaks no rule",
    "out of reach": "would differ only on machines that the scheduler is not meant for",
    "hole": "is wrong, and the scenes do not show it",
}
"""Why a mutant may survive; a reason has one of these kinds. The last is a debt."""


@dataclass(frozen=True, kw_only=True)
class Row:
    """One mutant and its fate; ``source`` is the digest of the text it was made of, ``sent`` a share."""

    id: str
    module: str
    source: str
    line: int
    operator: str
    before: str
    after: str
    fate: str
    by: str
    trial: str
    scenes: int
    unlike: int
    sent: str

    @classmethod
    def of(cls, mutant: Mutant, source: str, judgement: Judgement) -> "Row":
        """What is kept of ``mutant``, made of a text with the digest ``source``."""
        return cls(
            id=mutant.id,
            module=mutant.module,
            source=source,
            line=mutant.line,
            operator=mutant.operator,
            before=mutant.before,
            after=mutant.after,
            fate=judgement.fate.value,
            by=judgement.by,
            trial=judgement.trial,
            scenes=judgement.scenes,
            unlike=judgement.unlike,
            sent=f"{judgement.sent:.4f}",
        )


@dataclass(frozen=True, kw_only=True)
class Reason:
    """Why some survivors survive: a kind of `KINDS`, and in words."""

    kind: str
    why: str
    mutants: tuple[str, ...]


def read_rows(path: Path = ROWS) -> list[Row]:
    """The rows of the last run."""
    with path.open(encoding="utf-8", newline="") as file:
        return [_row(record) for record in csv.DictReader(file)]


def _row(record: Mapping[str, str]) -> Row:
    whole = {field.name for field in fields(Row) if field.type is int}
    values: dict[str, object] = {name: int(value) if name in whole else value for name, value in record.items()}
    return Row(**values)  # type: ignore[arg-type]  # a name that is not a field is refused by Row itself


def rows_text(rows: Iterable[Row]) -> str:
    """The rows as CSV, by module and line."""
    text = io.StringIO()
    writer = csv.DictWriter(text, [field.name for field in fields(Row)], lineterminator="\n")
    writer.writeheader()
    writer.writerows(asdict(row) for row in sorted(rows, key=lambda row: (row.module, row.line, row.id)))
    return text.getvalue()


def read_reasons(path: Path = REASONS) -> list[Reason]:
    """The reasons, which are written by hand."""
    written = tomllib.loads(path.read_text("utf-8")).get("survivors", [])
    return [
        Reason(kind=one["kind"], why=" ".join(one["why"].split()), mutants=tuple(one["mutants"])) for one in written
    ]


def complaints(rows: Sequence[Row], reasons: Sequence[Reason]) -> Iterator[str]:
    """What is not in order between the survivors and the reasons; each survivor has just one."""
    survivors = {row.id: row for row in rows if row.fate == Fate.SURVIVED.value}
    given = Counter(mutant for reason in reasons for mutant in reason.mutants)
    yield from (f"{mutant} survived, and nobody says why" for mutant in survivors.keys() - given.keys())
    yield from (f"{mutant} did not survive, or is no mutant" for mutant in given.keys() - survivors.keys())
    yield from (f"{mutant} is explained {times} times" for mutant, times in given.items() if times > 1)
    for reason in reasons:
        if reason.kind not in KINDS:
            yield f"{reason.kind!r} is no kind of reason: take one of {', '.join(KINDS)}"
        if reason.kind in ("equivalent", "out of reach"):
            unlike = [mutant for mutant in reason.mutants if mutant in survivors and survivors[mutant].unlike]
            yield from (f"{mutant} is called {reason.kind}, but said something else" for mutant in unlike)
        if reason.kind == "another way":
            same = [mutant for mutant in reason.mutants if mutant in survivors and not survivors[mutant].unlike]
            yield from (f"{mutant} is called another way, but never said anything else" for mutant in same)


def page_text(rows: Sequence[Row], reasons: Sequence[Reason]) -> str:
    """``README.md``: how to read it, the fates by module, and every survivor with its reason."""
    return "\n".join([*_head(rows), *_summary(rows), "", *_killers(rows), "", *_survivors(rows, reasons)]) + "\n"


_HEAD = """\
# Mutants of the reference schedulers

Every reference scheduler, changed in one place in every way that a tool knows: {mutants} mutants, of which {killed} are
found out and {survived} survive. What finds them out is a short check by Planeproof: some {recipes} recipes, and on
each machine that the changed code is meant for a scene at its limit and a crystal that turns, until the first scene
that shows something. None of our unit tests has a say.

* A row a mutant: [mutants.csv](mutants.csv). Why each survivor survives, by hand: [survivors.toml](survivors.toml).
* This page and the rows are written by `python -m tests.mutants`, some minutes on two processors. No file of the
  source is touched: a mutant lives in the memory of a process of its own. A test says when a text has changed since,
  and tries a sample again.
* The tool is Cosmic Ray 8.7.0. It turns a text into a text, so that we choose who kills, and it changes properties
  too, which some strategies here consist of (mutmut 3.8.1 leaves decorated functions out). Its operators are a class
  each, so three that it lacks are added: a statement forgotten, a guard left out, a shadow replaced where it should be
  added to. Changes inside annotations are left out.
"""


def _head(rows: Sequence[Row]) -> list[str]:
    killed = sum(row.fate != Fate.SURVIVED.value for row in rows)
    return _HEAD.format(mutants=len(rows), killed=killed, survived=len(rows) - killed, recipes=RECIPES).splitlines()


def _summary(rows: Sequence[Row]) -> list[str]:
    fates = [fate.value for fate in Fate]
    lines = [
        "",
        "## Fates",
        "",
        f"| module | text | mutants | {' | '.join(fates)} |",
        f"|---|---|---{'|---' * len(fates)}|",
    ]
    for module in sorted({row.module for row in rows}):
        own = [row for row in rows if row.module == module]
        counts = Counter(row.fate for row in own)
        numbers = " | ".join(str(counts[fate] or "") for fate in fates)
        lines.append(f"| {module} | `{own[0].source}` | {len(own)} | {numbers} |")
    every = Counter(row.fate for row in rows)
    return [*lines, f"| all | | {len(rows)} | {' | '.join(str(every[fate] or '') for fate in fates)} |"]


def _killers(rows: Sequence[Row]) -> list[str]:
    lines = ["## What finds them out", "", "| by | mutants | scenes, median | scenes, most |", "|---|---|---|---|"]
    found: dict[str, list[int]] = {}
    for row in rows:
        if row.fate != Fate.SURVIVED.value:
            name = row.by if row.fate == Fate.RULE.value else row.fate
            found.setdefault(name, []).append(row.scenes)
    for name, scenes in sorted(found.items(), key=lambda item: (-len(item[1]), item[0])):
        lines.append(f"| {name} | {len(scenes)} | {sorted(scenes)[len(scenes) // 2]} | {max(scenes)} |")
    return lines


def _survivors(rows: Sequence[Row], reasons: Sequence[Reason]) -> list[str]:
    by_id = {row.id: row for row in rows}
    lines = ["## Survivors", ""]
    for kind, meaning in KINDS.items():
        chosen = [reason for reason in reasons if reason.kind == kind]
        if chosen:
            lines += [f"### {kind.capitalize()}", "", f"It {meaning}.", ""]
        for reason in chosen:
            lines += [f"**Why:** {reason.why}", ""]
            lines += [_survivor(by_id[mutant]) for mutant in reason.mutants if mutant in by_id]
            lines.append("")
    return lines[:-1]


def _survivor(row: Row) -> str:
    same = "says the same" if not row.unlike else f"says something else in {row.unlike} of {row.scenes} scenes"
    sent = "" if not row.unlike else f", {100 * float(row.sent):.2f} % of the bytes"
    after = f"`{row.after}`" if row.after else "nothing"
    return f"* `{row.id}`, line {row.line}: `{row.before}` becomes {after}; {same}{sent}"
