"""Detection power as text for a terminal, and as Markdown to be kept: fault x rule x engine, and what it comes to."""

from collections.abc import Iterator, Sequence

from planeproof.power import Beside, EngineRow, FaultRow, Summary, engine_named
from planeproof.report.figures import counted, listed, wrapped

_READING = (
    "A cell says how many scenes were played up to and with the first that shows the fault: the median over the seeds "
    "/ the worst, and how many seeds, where not all found it. 'none in 90': no rule was broken in so many scenes. "
    "'other rule in 90': only other rules than its own were. '-': nothing to ask. Of spec, which names no rule: until "
    "the fault left the proved steps of the scheduler that it is made from."
)


def power_lines(summary: Summary) -> list[str]:
    """The whole page; headings stand at the margin, the first line says what came of it."""
    return [
        headline(summary),
        *(line for text in _failures(summary) for line in wrapped(text, 2)),
        "",
        "Scenes to find",
        *wrapped(_READING, 2),
        "",
        *_columns(_table(summary)),
        "",
        "Engines, over the faults that each finds",
        *_columns([_ENGINES, *map(_engine, summary.engines)]),
        *_beside_page(summary.beside),
    ]


def power_markdown(summary: Summary) -> str:
    """The same as Markdown."""
    parts = [
        ["# Detection power", "", headline(summary), *(f"\n* {text}" for text in _failures(summary))],
        ["## Engines, over the faults that each finds", "", *_grid([_ENGINES, *map(_engine, summary.engines)])],
        ["## Scenes to find", "", _READING, "", *_grid(_table(summary))],
    ]
    if summary.beside:
        rows = [_BESIDE, *map(_beside, summary.beside)]
        parts.insert(2, ["## Beside what one would otherwise write", "", _HOW, "", *_grid(rows)])
    return "\n\n".join("\n".join(part) for part in parts) + "\n"


def headline(summary: Summary) -> str:
    """PASS, FAIL or UNKNOWN, and why."""
    if not summary.must:
        return "UNKNOWN  no engine was asked that must find every fault"
    if summary.survivors or summary.wrong:
        survive, wrong = counted(len(summary.survivors), "fault"), counted(len(summary.wrong), "fault")
        return f"FAIL  not caught: {survive}; caught by other rules than their own only: {wrong}"
    faults = counted(len({row.fault for row in summary.faults}), "fault")
    seeds = max(row.seeds for row in summary.faults)
    enough = "the one seed that was tried" if seeds == 1 else f"enough of {seeds} seeds"
    return f"PASS  {faults}, each caught by its own rule with {enough}"


def _failures(summary: Summary) -> Iterator[str]:
    for row in summary.faults:
        if engine_named(row.engine).must and not row.enough:
            seen = f"; broken first were {listed(row.others)}" if row.others else ""
            yield f"{row.fault}: {row.wanted} was found by {row.engine} with {row.found} of {row.seeds} seeds{seen}"


# --- the table ------------------------------------------------------------------------------------------------


def _table(summary: Summary) -> list[tuple[str, ...]]:
    engines = [row.engine for row in summary.engines]
    cells = {(row.fault, row.engine): row for row in summary.faults}
    rules = {row.fault: row.wanted for row in summary.faults}
    rows = [
        (fault, rule, *(_cell(cells[fault, engine]) if (fault, engine) in cells else "-" for engine in engines))
        for fault, rule in rules.items()
    ]
    return [("fault", "rule", *engines), *rows]


def _cell(row: FaultRow) -> str:
    if not row.asked:
        return "-"
    if row.scenes is None or row.worst_scenes is None:
        return f"{'other rule' if row.wrong else 'none'} in {row.tried}"
    scenes = f"{row.scenes:g}" if row.seeds == 1 else f"{row.scenes:g} / {row.worst_scenes}"
    return scenes if row.found == row.seeds else f"{scenes}, {row.found} of {row.seeds}"


_ENGINES = ("engine", "finds", "of", "scenes", "worst", "seconds", "worst", "what it is")


def _engine(row: EngineRow) -> tuple[str, ...]:
    figures = (_figure(row.scenes), _figure(row.worst_scenes), _seconds(row.seconds), _seconds(row.worst_seconds))
    return (row.engine, str(row.found), str(row.asked), *figures, engine_named(row.engine).what)


_HOW = (
    "How many times as many scenes, and seconds, the baseline takes as recipes: 20 x is twenty times as many, 0.5 x "
    "half as many; the median over the faults that both find. At most: what that would be if recipes needed one scene "
    "for each of them, fewer than which there is not. At least: over all faults, those that it does not find counted "
    "with the scenes that it has tried."
)
_BESIDE = ("baseline", "finds", "of", "scenes", "at most", "seconds", "scenes at least")


def _beside_page(rows: Sequence[Beside]) -> list[str]:
    if not rows:
        return []
    heading = "Beside what one would otherwise write"
    return ["", heading, *wrapped(_HOW, 2), "", *_columns([_BESIDE, *map(_beside, rows)])]


def _beside(row: Beside) -> tuple[str, ...]:
    times = (row.ratio, row.at_most, row.slower, row.at_least)
    return (row.engine, str(row.found), str(row.asked), *map(_times, times))


def _figure(value: float | None) -> str:
    return "-" if value is None else f"{value:g}"


def _seconds(value: float | None) -> str:
    return "-" if value is None else f"{value:.2f}"


def _times(value: float | None) -> str:
    return "-" if value is None else f"{value:.0f} x" if value >= 100 else f"{value:.3g} x"


# --- rows as text ---------------------------------------------------------------------------------------------


def _columns(rows: Sequence[Sequence[str]]) -> list[str]:
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    return ["  " + "  ".join(map(str.ljust, row, widths)).rstrip() for row in rows]


def _grid(rows: Sequence[Sequence[str]]) -> list[str]:
    head, *others = ["| " + " | ".join(row) + " |" for row in rows]
    return [head, "|" + "---|" * len(rows[0]), *others]
